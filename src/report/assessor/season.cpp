// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/season.hpp"

#include "loopfolio/reference/climate.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/season.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::season;
using design::SeasonPlan;

/// The hours are a part of a year, so no figure may be called a year's or a season's.
bool in_part(const Context& c) { return !c.job.season->period.empty(); }

std::string kilowatt_hours(Energy energy) { return text(energy, unit::kilowatt_hour, 0); }

template <class Q, class Say>
std::string with_band(const Context& c, const design::Band<Q>& band, Say say) {
    const std::string value = say(band.value), low = say(band.low), high = say(band.high);
    return low == high ? value : c.words(banded{.value = value, .low = low, .high = high});
}

std::string weather(const Context& c) {
    const auto& season = *c.job.season;
    if (const auto* climate = reference::find_climate(season.climate)) {
        return c.named(climate->label) + (season.climate_source.empty() ? "" : ", " + season.climate_source);
    }
    if (!season.climate_file.empty()) {
        const std::string file = plain(season.climate_file);
        std::string said = season.readings > 0
                               ? c.words(climate_readings{.file = file, .readings = fixed(season.readings, 0)})
                               : c.words(climate_of_file{.file = file, .count = season.bins.size()});
        return season.climate_source.empty()
                   ? said
                   : c.words(climate_sourced{.said = std::move(said), .source = season.climate_source});
    }
    if (season.climate_source.empty()) return c.words(climate_own_unnamed{.count = season.bins.size()});
    return c.words(climate_own{.source = season.climate_source, .count = season.bins.size()});
}

void add(Facts& facts, std::string term, std::string said) {
    facts.facts.push_back({std::move(term), std::move(said)});
}

void add_load(const Context& c, const SeasonPlan& plan, Facts& facts) {
    add(facts, c.words(climate{}), weather(c));
    add(facts, c.words(load{}),
        c.words(load_text{.load = text(plan.line.design_load, unit::kilowatt, 2),
                          .outdoor = text(plan.line.design_outdoor, unit::celsius, 1),
                          .base = text(plan.line.base, unit::celsius, 1)}));
}

/// The electricity for hot water is on the hot water sheet. It is shown as extra, as no figure of the season includes
/// it.
void add_hot_water(const Context& c, Facts& facts) {
    if (!c.plant.hot_water) return;
    const auto& electricity = c.plant.hot_water->electricity_a_year;
    add(facts, c.words(hot_water_on_top{}),
        electricity ? c.words(hot_water_on_top_text{.electricity = kilowatt_hours(*electricity)})
                    : c.words(hot_water_on_top_unknown{}));
}

void add_energy(const Context& c, const SeasonPlan& plan, Facts& facts) {
    const auto& s = plan.season;
    const auto ratio = [](double value) { return fixed(value, 2); };
    const bool part = in_part(c);
    add(facts, part ? c.words(part_performance{}) : c.words(performance{}),
        s.whole_performance ? with_band(c, plan.bands->performance, ratio) : c.words(performance_none{}));
    add(facts, part ? c.words(part_energy{}) : c.words(heat{}), with_band(c, plan.bands->demand, kilowatt_hours));
    add(facts, part ? c.words(part_electricity_used{}) : c.words(electricity{}),
        with_band(c, plan.bands->electricity, kilowatt_hours));
    add(facts, c.words(share_of_source{}), kilowatt_hours(s.source_heat));
    add(facts, c.words(share_of_backup{}),
        c.job.heat_source->backup ? kilowatt_hours(s.backup_heat) : c.words(backup_none{}));
    if (s.unmet > Energy{}) {
        add(facts, c.words(share_missing{}),
            c.words(share_missing_text{.heat = kilowatt_hours(s.unmet),
                                       .share = text(s.unmet / s.demand, unit::percent, 1)}));
    }
    if (s.outside_demand > Energy{}) {
        add(facts, c.words(outside{}),
            c.words(outside_text{.share = text(s.outside_share(), unit::percent, 1),
                                 .time = text(s.outside_time, unit::hour, 0)}));
    }
    if (s.standby_electricity > Energy{}) add(facts, c.words(standby{}), kilowatt_hours(s.standby_electricity));
    if (plan.bands->cost) {
        const auto sum = [&](double value) { return money(c, value); };
        add(facts, part ? c.words(part_cost_term{}) : c.words(cost{}),
            c.words(cost_text{.cost = with_band(c, *plan.bands->cost, sum), .price = price_text(c)}));
    }
    const auto kilograms = [](double value) { return fixed(value, 0) + "\u00a0kg"; };
    if (plan.bands->carbon)
        add(facts, part ? c.words(part_carbon_term{}) : c.words(carbon{}),
            with_band(c, *plan.bands->carbon, kilograms));
    add_hot_water(c, facts);
}

std::string alone(const Context& c, const SeasonPlan& plan) {
    if (plan.season.bivalent) return c.words(bivalent_text{.outdoor = text(*plan.season.bivalent, unit::celsius, 1)});
    return plan.largest_share <= 1.0 ? c.words(bivalent_always{}) : c.words(bivalent_never{});
}

std::string least_output(const Context& c, const SeasonPlan& plan) {
    if (!plan.least_known) return c.words(turning_down_unknown{});
    if (!plan.part_load) return c.words(turning_down_enough{});
    return c.words(turning_down_text{.least = text(plan.part_load->least_output, unit::kilowatt, 2),
                                     .time = text(plan.season.cycling_time, unit::hour, 0),
                                     .heating = text(plan.season.heating_time, unit::hour, 0)});
}

std::string mixed_units(const Context& c, const job::HeatSource& source) {
    std::vector<std::string> kinds;
    const auto add_kind = [&](int number, const std::string& model, const std::string& name) {
        kinds.push_back(
            c.words(units_of{.number = std::to_string(number), .name = plain(model.empty() ? name : model)}));
    };
    add_kind(source.number, source.model, source.name);
    for (const auto& units : source.further) add_kind(units.number, units.model, units.name);
    return c.words(units_mixed{.units = list_of(c.words, kinds)});
}

/// How much of the required volume the system water sheet finds in the system.
std::string run_volume_found(const Context& c, Volume needed) {
    const auto litres = [](Volume v) { return text(v, unit::litre, 0); };
    const auto& open = c.job.system_water->always_open;
    if (!open) return c.words(run_volume_there{.content = litres(c.plant.water->content)});
    if (open->value >= needed) return c.words(run_volume_open{.open = litres(open->value)});
    return c.words(run_volume_missing{.open = litres(open->value), .missing = litres(needed - open->value)});
}

void add_running(const Context& c, const SeasonPlan& plan, Facts& facts) {
    const auto& source = *c.job.heat_source;
    if (plan.largest_share > 0.0) {
        add(facts, c.words(bivalent{}), alone(c, plan));
        add(facts, c.words(part_load{}),
            c.words(part_load_text{.largest = text(plan.largest_share, unit::percent, 0),
                                   .cold = text(plan.largest_outdoor, unit::celsius, 1),
                                   .smallest = text(plan.smallest_share, unit::percent, 0),
                                   .mild = text(plan.smallest_outdoor, unit::celsius, 1)}));
    }
    if (!source.further.empty()) add(facts, c.words(units{}), mixed_units(c, source));
    else if (source.number > 1) add(facts, c.words(units{}), c.words(units_text{.number = fixed(source.number, 0)}));
    if (source.defrost_derating) {
        add(facts, c.words(defrost{}),
            c.words(defrost_text{.share = text(source.defrost_derating->value, unit::percent, 0),
                                 .from = text(source.defrost_from.value, unit::celsius, 1),
                                 .to = text(source.defrost_to.value, unit::celsius, 1)}));
    }
    add(facts, c.words(turning_down{}), least_output(c, plan));
    if (!plan.part_load) return;
    if (plan.part_load->for_run) {
        std::string said = c.words(run_volume_text{.volume = text(*plan.part_load->for_run, unit::litre, 0),
                                                   .run = text(source.least_run->value, unit::minute, 0),
                                                   .swing = text(source.allowed_swing->value, unit::kelvin, 1)});
        if (c.plant.water) said += "; " + run_volume_found(c, *plan.part_load->for_run);
        add(facts, c.words(run_volume{}), std::move(said));
    }
    if (const auto& cycle = plan.part_load->busiest) {
        add(facts, c.words(starts{}),
            c.words(starts_text{.starts = fixed(cycle->starts_per_hour, 1),
                                .outdoor = text(plan.part_load->busiest_outdoor, unit::celsius, 1),
                                .run = text(cycle->run, unit::minute, 0),
                                .rest = text(cycle->rest, unit::minute, 0)}));
    }
}

std::string with_valves_shut(const Context& c, const design::OpenCircuit& o) {
    if (o.own_circuit) return c.words(valves_own{});
    const std::string emitter = c.job.emitters[static_cast<std::size_t>(o.emitter)].id;
    const std::string flow = text(o.smallest, unit::litre_per_minute, 1),
                      needed = text(o.needed, unit::litre_per_minute, 1);
    if (o.always_open.empty()) return c.words(valves_enough{.emitter = emitter, .flow = flow, .needed = needed});
    std::vector<std::string> open;
    for (const int i : o.always_open) open.push_back(c.job.emitters[static_cast<std::size_t>(i)].id);
    return c.words(valves_open{.emitter = emitter, .flow = flow, .needed = needed, .open = list_of(c.words, open)});
}

/// At most seven points of the curve for a controller, spread evenly over the season and including both ends.
std::vector<design::CompensationPoint> few_of(const std::vector<design::CompensationPoint>& curve) {
    constexpr std::size_t most = 7;
    if (curve.size() <= most) return curve;
    std::vector<design::CompensationPoint> out;
    for (std::size_t i = 0; i < most; ++i) out.push_back(curve[i * (curve.size() - 1) / (most - 1)]);
    return out;
}

std::string note_on_curve(const Context& c, const SeasonPlan& plan) {
    std::string out = c.job.season->compensation
                          ? c.words(curve_note{.lowest = text(c.job.season->lowest_flow.value, unit::celsius, 1)})
                          : c.words(curve_fixed{});
    if (plan.taken_as_changed > 0)
        out += " " + c.words(curve_note_changed{.count = static_cast<std::size_t>(plan.taken_as_changed)});
    if (plan.held_by_network) out += " " + c.words(curve_note_held{});
    return out;
}

Table curve_table(const Context& c, const SeasonPlan& plan) {
    Table table;
    table.caption = c.words(curve_caption{});
    table.compact = true;
    table.columns = {figure_column(c.words(column_outdoor{}), "°C"), figure_column(c.words(column_emitters{}), "°C"),
                     figure_column(c.words(column_made{}), "°C")};
    for (const auto& p : few_of(plan.curve)) {
        table.rows.push_back(row({figure(p.outdoor, unit::celsius, 1), figure(p.emitters, unit::celsius, 1),
                                  figure(p.made, unit::celsius, 1)}));
    }
    table.note = note_on_curve(c, plan);
    return table;
}

LineChart energy_chart(const Context& c, const SeasonPlan& plan) {
    LineChart chart;
    chart.caption = in_part(c) ? c.words(part_chart_caption{}) : c.words(chart_caption{});
    chart.x = {c.words(chart_outdoor{}), "°C", false};
    chart.y = {c.words(chart_energy{}), "kWh", true};
    LineChart::Series source{c.words(chart_source{}), {}, LineChart::Dash::solid},
        electric{c.words(chart_electricity{}), {}, LineChart::Dash::dashed},
        helped{c.words(chart_backup{}), {}, LineChart::Dash::dotted};
    for (std::size_t i = 0; i < plan.season.bins.size(); ++i) {
        const auto& bin = plan.season.bins[i];
        if (!bin.reached) continue;
        const double at = bin.outdoor.celsius();
        source.points.push_back({at, bin.source_heat.in(unit::kilowatt_hour)});
        electric.points.push_back({at, c.study.totals.bin_electricity[i].in(unit::kilowatt_hour)});
        helped.points.push_back({at, bin.backup_heat.in(unit::kilowatt_hour)});
    }
    chart.series = {std::move(source), std::move(electric)};
    if (plan.season.backup_heat > Energy{}) chart.series.push_back(std::move(helped));
    chart.alternative = c.words(chart_alternative{});
    return chart;
}

/// The row of one flow temperature. If part of its season is outside the performance table, the row has dashes for
/// figures and gives the share that is outside: part of a season cannot be compared with a whole one.
Row option_row(const Context& c, std::string flow, double outside, const std::optional<double>& performance,
               Energy electricity, int too_small) {
    const bool whole = outside <= 1e-9;
    const std::string dash = "\u2013";
    if (!whole) flow = c.words(option_part{.flow = std::move(flow), .share = text(outside, unit::percent, 1)});
    return row({std::move(flow), whole ? figure(performance, unit::number, 2) : dash,
                whole ? figure(electricity, unit::kilowatt_hour, 0) : dash, fixed(too_small, 0)});
}

Table options_table(const Context& c, const SeasonPlan& plan) {
    Table table;
    table.caption = in_part(c) ? c.words(part_options_caption{}) : c.words(options_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_flow{}), 1.6), figure_column(c.words(column_performance{}), ""),
                     figure_column(c.words(column_electricity{}), "kWh"),
                     figure_column(c.words(column_too_small{}), "")};
    table.rows.push_back(option_row(c, c.words(option_present{.flow = text(c.design.flow, unit::celsius, 1)}),
                                    plan.season.outside_share(), plan.season.whole_performance,
                                    plan.bands->electricity.value, plan.taken_as_changed));
    for (const auto& o : plan.options) {
        table.rows.push_back(
            option_row(c, text(o.flow, unit::celsius, 1), o.outside, o.performance, o.electricity, o.too_small));
    }
    table.note = c.words(options_note{});
    return table;
}

Row bin_row(const Context& c, const SeasonPlan& plan, std::size_t i) {
    const auto& b = plan.season.bins[i];
    const auto known = [&](std::string words) { return b.reached ? std::move(words) : std::string{}; };
    return row({figure(b.outdoor, unit::celsius, 1), figure(b.time, unit::hour, 0), figure(b.load, unit::kilowatt, 2),
                known(figure(b.flow, unit::celsius, 1)), known(fixed(100.0 * b.load_ratio, 0)),
                known(fixed(b.performance, 2)), known(figure(b.source_heat, unit::kilowatt_hour, 0)),
                known(figure(b.backup_heat, unit::kilowatt_hour, 0)), known(figure(b.unmet, unit::kilowatt_hour, 0)),
                known(figure(c.study.totals.bin_electricity[i], unit::kilowatt_hour, 0))});
}

Table bins_table(const Context& c, const SeasonPlan& plan) {
    Table table;
    table.caption = in_part(c) ? c.words(part_bins_caption{}) : c.words(bins_caption{});
    table.compact = true;
    const auto add_column = [&](std::string head, std::string unit) {
        table.columns.push_back(figure_column(std::move(head), std::move(unit)));
    };
    add_column(c.words(column_outdoor{}), "°C");
    add_column(c.words(column_hours{}), "h");
    add_column(c.words(column_load{}), "kW");
    add_column(c.words(column_made_flow{}), "°C");
    add_column(c.words(column_share{}), "%");
    add_column(c.words(column_ratio{}), "");
    add_column(c.words(column_source{}), "kWh");
    add_column(c.words(column_backup{}), "kWh");
    add_column(c.words(column_missing{}), "kWh");
    add_column(c.words(column_electricity{}), "kWh");
    for (std::size_t i = 0; i < plan.season.bins.size(); ++i) {
        if (plan.season.bins[i].load > Power{}) table.rows.push_back(bin_row(c, plan, i));
    }
    const auto& s = plan.season;
    table.rows.push_back(sum_row(
        {c.words(row_sum{}), figure(s.heating_time, unit::hour, 0), "", "", "", figure(s.performance, unit::number, 2),
         figure(s.source_heat, unit::kilowatt_hour, 0), figure(s.backup_heat, unit::kilowatt_hour, 0),
         figure(s.unmet, unit::kilowatt_hour, 0), figure(c.study.totals.electricity, unit::kilowatt_hour, 0)}));
    table.note = c.words(bins_note{});
    return table;
}

std::string hours_of(const Context& c) { return text(c.study.totals.season_time, unit::hour, 0); }

}  // namespace

Blocks season_block(const Context& c) {
    if (!c.plant.season) return {};
    const auto& plan = *c.plant.season;
    Blocks out;
    say(out, in_part(c) ? c.words(part_lead{.period = c.job.season->period, .hours = hours_of(c)}) : c.words(lead{}));
    Facts facts;
    add_load(c, plan, facts);
    add_energy(c, plan, facts);
    add_running(c, plan, facts);
    if (plan.open_circuit) add(facts, c.words(valves{}), with_valves_shut(c, *plan.open_circuit));
    out.push_back(std::move(facts));
    if (!plan.curve.empty()) out.push_back(curve_table(c, plan));
    if (auto chart = energy_chart(c, plan); chart.series.front().points.size() >= 2) out.push_back(std::move(chart));
    if (!plan.options.empty()) out.push_back(options_table(c, plan));
    return headed(in_part(c) ? c.words(part_season_heading{}) : c.words(season_heading{}), std::move(out));
}

Blocks season_bins(const Context& c) {
    if (!c.plant.season) return {};
    Blocks out;
    out.push_back(bins_table(c, *c.plant.season));
    say(out, c.words(bands_note{.count = static_cast<std::size_t>(c.plant.season->bands->ranges)}));
    return headed(in_part(c) ? c.words(part_bins_heading{}) : c.words(bins_heading{}), std::move(out));
}

}  // namespace loopfolio::report
