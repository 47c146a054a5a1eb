// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "texts/input_register.hpp"
#include "texts/season.hpp"

#include <algorithm>

namespace loopfolio::tests {

namespace {

// --- register ---

std::vector<const study::Assumption*> inputs_of(const Printing& p, Basis basis) {
    std::vector<const study::Assumption*> out;
    for (const auto& a : p.s.inputs) {
        if (a.basis == basis) out.push_back(&a);
    }
    return out;
}

std::string effect(const Printing& p, const std::optional<study::Effect>& e) {
    if (!e) return no_figure;
    std::string change = text(e->source_load_change, unit::watt, 0);
    if (e->source_load_change.si() >= 0.5) change = "+" + change;
    if (e->verdicts_changed <= 0) return change;
    return p.words(texts::input_register::effect_with_verdicts{.count = static_cast<std::size_t>(e->verdicts_changed),
                                                               .change = change});
}

ExpectedTable care(const Printing& p) {
    using namespace texts::input_register;
    auto list = inputs_of(p, Basis::assumed);
    for (const auto* a : inputs_of(p, Basis::default_value)) list.push_back(a);
    const auto& w = p.words;
    ExpectedTable t{all(list.size())};
    return t.column(w(column_value{}), "", [&](std::size_t i) { return list[i]->value; })
        .column(w(column_range{}), "",
                [&](std::size_t i) { return list[i]->range.empty() ? w(range_not_stated{}) : list[i]->range; })
        .column(w(column_at_low{}), "", [&](std::size_t i) { return effect(p, list[i]->at_low); })
        .column(w(column_at_high{}), "", [&](std::size_t i) { return effect(p, list[i]->at_high); });
}

// --- season ---

ExpectedTable curve(const Printing& p) {
    using namespace texts::season;
    const auto& curve = p.s.plant.season->curve;
    constexpr std::size_t most = 7;  // points that a controller takes
    Indices rows;
    for (std::size_t i = 0; i < std::min(most, curve.size()); ++i) {
        rows.push_back(curve.size() <= most ? i : i * (curve.size() - 1) / (most - 1));
    }
    ExpectedTable t{rows};
    return t.figures(p.words(column_outdoor{}), unit::celsius, 1, [&](std::size_t i) { return curve[i].outdoor; })
        .figures(p.words(column_emitters{}), unit::celsius, 1, [&](std::size_t i) { return curve[i].emitters; })
        .figures(p.words(column_made{}), unit::celsius, 1, [&](std::size_t i) { return curve[i].made; });
}

ExpectedTable options(const Printing& p) {
    using namespace texts::season;
    const auto& plan = *p.s.plant.season;
    auto list = plan.options;
    list.insert(list.begin(), {p.d.flow, plan.season.whole_performance, design::all_electricity(plan.season),
                               plan.season.outside_share(), plan.taken_as_changed});
    const auto whole = [&](std::size_t i) { return list[i].outside <= 1e-9; };
    const auto& w = p.words;
    ExpectedTable t{all(list.size())};
    return t
        .column(w(column_flow{}), "",
                [&](std::size_t i) {
                    std::string flow = text(list[i].flow, unit::celsius, 1);
                    if (i == 0) flow = w(option_present{.flow = flow});
                    return whole(i) ? flow
                                    : w(option_part{.flow = flow, .share = text(list[i].outside, unit::percent, 1)});
                })
        .figures(w(column_performance{}), unit::number, 2,
                 [&](std::size_t i) { return whole(i) ? list[i].performance : std::nullopt; })
        .figures(w(column_electricity{}), unit::kilowatt_hour, 0,
                 [&](std::size_t i) { return whole(i) ? std::optional{list[i].electricity} : std::nullopt; })
        .column(w(column_too_small{}), "", [&](std::size_t i) { return std::to_string(list[i].too_small); });
}

ExpectedTable bins(const Printing& p) {
    using namespace texts::season;
    const auto& season = p.s.plant.season->season;
    Indices rows;
    for (std::size_t i = 0; i < season.bins.size(); ++i) {
        if (season.bins[i].load > Power{}) rows.push_back(i);
    }
    const auto bin = [&](std::size_t i) -> const physics::SeasonBin& { return season.bins[i]; };
    const auto known = [&](auto value, const auto& unit, int decimals) {
        return [&season, value, &unit, decimals](std::size_t i) {
            return season.bins[i].reached ? cell(value(season.bins[i]), unit, decimals) : std::string{};
        };
    };
    const auto energy = [](Energy e) { return cell(e, unit::kilowatt_hour, 0); };
    const auto& w = p.words;
    ExpectedTable t{rows};
    return t
        .figures(w(column_outdoor{}), unit::celsius, 1, [&](std::size_t i) { return bin(i).outdoor; }, {w(row_sum{})})
        .figures(w(column_hours{}), unit::hour, 0, [&](std::size_t i) { return bin(i).time; },
                 {cell(season.heating_time, unit::hour, 0)})
        .figures(w(column_load{}), unit::kilowatt, 2, [&](std::size_t i) { return bin(i).load; }, {""})
        .column(w(column_made_flow{}), "°C", known([](const auto& b) { return b.flow; }, unit::celsius, 1), {""})
        .column(w(column_share{}), "%", known([](const auto& b) { return b.load_ratio; }, unit::percent, 0), {""})
        .column(w(column_ratio{}), "", known([](const auto& b) { return b.performance; }, unit::number, 2),
                {cell(season.performance, unit::number, 2)})
        .column(w(column_source{}), "kWh", known([](const auto& b) { return b.source_heat; }, unit::kilowatt_hour, 0),
                {energy(season.source_heat)})
        .column(w(column_backup{}), "kWh", known([](const auto& b) { return b.backup_heat; }, unit::kilowatt_hour, 0),
                {energy(season.backup_heat)})
        .column(w(column_missing{}), "kWh", known([](const auto& b) { return b.unmet; }, unit::kilowatt_hour, 0),
                {energy(season.unmet)})
        .column(w(column_electricity{}), "kWh",
                known([](const auto& b) { return b.source_electricity + b.backup_input; }, unit::kilowatt_hour, 0),
                {energy(season.source_electricity + season.backup_input)});
}

}  // namespace

void add_register_tables(const Printing& p, TableChecks& out) {
    const auto& w = p.words;
    out[w(texts::input_register::care_caption{})] = [p] { return care(p); };
    out[w(texts::input_register::firm_caption{})] = [] { return ExpectedTable{{}}; };  // running text alone
}

void add_season_tables(const Printing& p, TableChecks& out) {
    const auto& w = p.words;
    if (!p.s.plant.season) return;
    out[w(texts::season::curve_caption{})] = [p] { return curve(p); };
    out[w(texts::season::options_caption{})] = [p] { return options(p); };
    out[w(texts::season::bins_caption{})] = [p] { return bins(p); };
}

}  // namespace loopfolio::tests
