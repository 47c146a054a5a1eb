// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/evidence.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

/// Names of subjects shown in one cell; the record lists all.
constexpr std::size_t named_subjects = 6;

std::string source_cell(const Context& c, const design::Assumption& a) {
    if (a.source.empty()) return a.basis == Basis::measured ? "as surveyed" : "not stated";
    return a.is_key ? source_reference(c, a.source) : plain(a.source);
}

std::string effect_cell(const std::optional<design::Effect>& effect) {
    if (!effect) return "\u2013";
    const double watts = effect->source_load_change.si();
    std::string out = (watts >= 0.5 ? "+" : "") + text(effect->source_load_change, unit::watt, 0);
    if (effect->verdicts_changed > 0) {
        out += ", " + count_of(static_cast<std::size_t>(effect->verdicts_changed), "verdict", "verdicts");
    }
    return out;
}

std::string subjects_cell(const design::Assumption& a) {
    return a.subjects.empty() ? "whole house" : plain(list_of(a.subjects, named_subjects));
}

std::string_view group_head(Basis basis) {
    switch (basis) {
        case Basis::assumed: return "Basis assumed: judged by the surveyor or designer";
        case Basis::default_value: return "Basis default: filled from the reference tables";
        case Basis::document: return "Basis document: read in a paper named under source";
        default: return "Basis measured: surveyed, or a plain number with nothing else said";
    }
}

Table care_table(const Context& c) {
    Table table;
    table.caption = "Assumed and default values, and what their range would do";
    table.compact = true;
    table.columns = {words_column("Input", 1.3),
                     words_column("Used for", 3.0),
                     name_column("Value"),
                     name_column("Range"),
                     words_column("Source", 1.4),
                     words_column("At its low", 0.7),
                     words_column("At its high", 0.7)};
    for (const Basis basis : {Basis::assumed, Basis::default_value}) {
        bool headed = false;
        for (const auto& a : c.inputs) {
            if (a.basis != basis) continue;
            if (!headed) table.rows.push_back(group_row(std::string{group_head(basis)}));
            headed = true;
            table.rows.push_back(
                row({capital(a.what), subjects_cell(a), a.value, a.range.empty() ? "not stated" : a.range,
                     source_cell(c, a), effect_cell(a.at_low), effect_cell(a.at_high)}));
        }
    }
    table.note =
        "At its low, at its high: change of the heat that the source must make, and verdicts that would "
        "differ, with this line alone at that end of its range. A dash: no range, or no effect computed. "
        "Numbers in brackets: the list of sources. Ranges are in the unit of the value.";
    return table;
}

/// Measured or documented inputs of one kind and source, as one row.
struct Shared {
    const design::Assumption* first;
    std::vector<std::string> values;
};

std::vector<Shared> shared_rows(const Context& c, Basis basis) {
    std::vector<Shared> out;
    for (const auto& a : c.inputs) {
        if (a.basis != basis) continue;
        auto same = std::find_if(out.begin(), out.end(), [&](const Shared& s) {
            return s.first->what == a.what && s.first->source == a.source;
        });
        if (same == out.end()) same = out.insert(out.end(), Shared{&a, {}});
        std::string value =
            a.subjects.empty() ? a.value : a.value + ": " + plain(list_of(a.subjects, named_subjects));
        if (!a.range.empty()) value += " (" + a.range + ")";
        same->values.push_back(std::move(value));
    }
    return out;
}

Table firm_table(const Context& c) {
    Table table;
    table.caption = "Documented and measured values";
    table.compact = true;
    table.columns = {words_column("Input", 0.8), words_column("Values, and what each is used for", 3.2),
                     words_column("Source", 1.2)};
    for (const Basis basis : {Basis::document, Basis::measured}) {
        const auto rows = shared_rows(c, basis);
        if (!rows.empty()) table.rows.push_back(group_row(std::string{group_head(basis)}));
        for (const auto& shared : rows) {
            std::string values;
            for (const auto& value : shared.values) values += (values.empty() ? "" : "; ") + value;
            table.rows.push_back(row({capital(shared.first->what), values, source_cell(c, *shared.first)}));
        }
    }
    table.note = "A range, where the job states one, stands in brackets.";
    return table;
}

}   // namespace

Blocks input_register(const Context& c) {
    Blocks out;
    const auto care =
        static_cast<std::size_t>(std::count_if(c.inputs.begin(), c.inputs.end(), design::needs_care));
    say(out,
        "The register holds every input of the job in " + count_of(c.inputs.size(), "line", "lines") +
            ", of which " + fixed(static_cast<double>(care), 0) + (care == 1 ? " is" : " are") +
            " assumed or a default. Inputs with the same value, basis and source share a line. More than " +
            fixed(static_cast<double>(named_subjects), 0) +
            " names are cut short here and complete in the record.");
    if (care > 0) out.push_back(care_table(c));
    else say(out, "Nothing was assumed and no default was used.");
    if (care < c.inputs.size()) out.push_back(firm_table(c));
    else say(out, "Nothing was measured or taken from a document.");
    return out;
}

}   // namespace loopfolio::report
