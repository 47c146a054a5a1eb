// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/assessor_blocks.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/cautions.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/input_register.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopfolio::report {

namespace {

using namespace texts::input_register;

/// Names of subjects shown in one cell; the record lists all.
constexpr std::size_t named_subjects = 6;

std::string source_cell(const Context& c, const study::Assumption& a) {
    if (a.source.empty()) return a.basis == Basis::measured ? c.words(as_surveyed{}) : c.words(source_not_stated{});
    return a.is_key ? source_reference(c, a.source) : plain(a.source);
}

std::string effect_cell(const Context& c, const std::optional<study::Effect>& effect) {
    if (!effect) return "\u2013";
    const bool more = effect->source_load_change.si() >= 0.5;
    const std::string change = (more ? "+" : "") + text(effect->source_load_change, unit::watt, 0);
    if (effect->verdicts_changed <= 0) return change;
    return c.words(effect_with_verdicts{.count = static_cast<std::size_t>(effect->verdicts_changed), .change = change});
}

std::string subjects_of(const Context& c, const study::Assumption& a) {
    return plain(list_of(c.words, a.subjects, named_subjects));
}

std::string group_head(const Context& c, Basis basis) {
    switch (basis) {
        case Basis::assumed: return c.words(basis_assumed{});
        case Basis::default_value: return c.words(basis_default{});
        case Basis::document: return c.words(basis_document{});
        case Basis::measured:
        case Basis::absent:
        case Basis::derived: break;  // the register holds no input of either of these bases
    }
    return c.words(basis_measured{});
}

Row care_row(const Context& c, const study::Assumption& a) {
    return row({capital(c.named(a.what)), a.subjects.empty() ? c.words(whole_house{}) : subjects_of(c, a),
                c.named(a.value), a.range.empty() ? c.words(range_not_stated{}) : a.range, source_cell(c, a),
                effect_cell(c, a.at_low), effect_cell(c, a.at_high)});
}

Table care_table(const Context& c) {
    Table table;
    table.caption = c.words(care_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_input{}), 1.3),  words_column(c.words(column_used_for{}), 3.0),
                     name_column(c.words(column_value{})),        name_column(c.words(column_range{})),
                     words_column(c.words(column_source{}), 1.4), words_column(c.words(column_at_low{}), 0.7),
                     words_column(c.words(column_at_high{}), 0.7)};
    for (const Basis basis : {Basis::assumed, Basis::default_value}) {
        bool headed = false;
        for (const auto& a : c.study.inputs) {
            if (a.basis != basis) continue;
            if (!headed) table.rows.push_back(group_row(group_head(c, basis)));
            headed = true;
            table.rows.push_back(care_row(c, a));
        }
    }
    table.note = c.words(care_note{});
    return table;
}

/// Measured or documented inputs of one kind and source, as one row.
struct Shared {
    const study::Assumption* first;
    std::vector<std::string> values;
};

/// `0.55 W/(m²·K): Hall, Kitchen (0.4 to 0.7)`.
std::string value_text(const Context& c, const study::Assumption& a) {
    std::string out = c.named(a.value);
    if (!a.subjects.empty()) out = c.words(value_used_for{.value = out, .subjects = subjects_of(c, a)});
    return a.range.empty() ? out : c.words(value_with_range{.value = out, .range = a.range});
}

std::vector<Shared> shared_rows(const Context& c, Basis basis) {
    std::vector<Shared> out;
    for (const auto& a : c.study.inputs) {
        if (a.basis != basis) continue;
        auto same = std::find_if(out.begin(), out.end(), [&](const Shared& s) {
            return s.first->what == a.what && s.first->source == a.source;
        });
        if (same == out.end()) same = out.insert(out.end(), Shared{&a, {}});
        same->values.push_back(value_text(c, a));
    }
    return out;
}

Row firm_row(const Context& c, const Shared& shared) {
    std::string values;
    for (const auto& value : shared.values) {
        values = values.empty() ? value : c.words(values_joined{.before = values, .value = value});
    }
    return row({capital(c.named(shared.first->what)), values, source_cell(c, *shared.first)});
}

Table firm_table(const Context& c) {
    Table table;
    table.caption = c.words(firm_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_input{}), 0.8), words_column(c.words(column_values{}), 3.2),
                     words_column(c.words(column_source{}), 1.2)};
    for (const Basis basis : {Basis::document, Basis::measured}) {
        const auto rows = shared_rows(c, basis);
        if (!rows.empty()) table.rows.push_back(group_row(group_head(c, basis)));
        for (const auto& shared : rows) table.rows.push_back(firm_row(c, shared));
    }
    table.note = c.words(firm_note{});
    return table;
}

/// The change in watts at one end; NaN where it is not known.
double change_at(const std::optional<study::Effect>& effect) {
    return effect ? effect->source_load_change.si() : std::numeric_limits<double>::quiet_NaN();
}

/// The larger change of the two ends, in watts.
double reach(const study::Assumption& a) {
    const auto size = [](const auto& effect) { return effect ? std::abs(effect->source_load_change.si()) : 0.0; };
    return std::max(size(a.at_low), size(a.at_high));
}

RangeChart range_chart(const Context& c, const std::vector<const study::Assumption*>& inputs) {
    RangeChart chart;
    chart.caption = c.words(drawn_caption{});
    chart.unit = "W";
    chart.axis = c.words(drawn_axis{});
    chart.low_name = c.words(drawn_low{});
    chart.high_name = c.words(drawn_high{});
    for (const auto* a : inputs) {
        std::string label = capital(c.named(a->what));
        if (!a->subjects.empty())
            label = c.words(drawn_label{.input = label, .subjects = plain(list_of(c.words, a->subjects, 2))});
        chart.rows.push_back({std::move(label), a->low, a->high, change_at(a->at_low), change_at(a->at_high)});
    }
    chart.alternative = c.words(drawn_alternative{.count = chart.rows.size(),
                                                  .first = chart.rows.front().label,
                                                  .most = text(Power::from_si(reach(*inputs.front())), unit::watt, 0)});
    return chart;
}

}  // namespace

Blocks assumptions_drawn(const Context& c) {
    constexpr double least = 1.0;     // in watts; a smaller change would not show as a bar
    constexpr std::size_t most = 12;  // a chart of a whole page would show no order
    std::vector<const study::Assumption*> inputs;
    for (const auto& a : c.study.inputs) {
        if (reach(a) >= least && !a.low.empty()) inputs.push_back(&a);
    }
    std::stable_sort(inputs.begin(), inputs.end(), [](const auto* a, const auto* b) { return reach(*a) > reach(*b); });
    if (inputs.size() > most) inputs.resize(most);
    if (inputs.empty()) return {};
    Blocks out;
    heading(out, 2, c.words(drawn_heading{}));
    say(out, c.words(drawn_explained{}));
    out.push_back(range_chart(c, inputs));
    return out;
}

Blocks input_register(const Context& c) {
    Blocks out;
    const auto care = static_cast<std::size_t>(
        std::count_if(c.study.inputs.begin(), c.study.inputs.end(), study::needs_care));
    say(out, c.words(lead{.count = care,
                          .lines = c.words(lines{.count = c.study.inputs.size()}),
                          .most = fixed(static_cast<double>(named_subjects), 0)}));
    if (care > 0) out.push_back(care_table(c));
    else say(out, c.words(nothing_assumed{}));
    if (care < c.study.inputs.size()) out.push_back(firm_table(c));
    else say(out, c.words(nothing_measured{}));
    append(out, cautions_ruled_out(c));
    return out;
}

}  // namespace loopfolio::report
