// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/report/document.hpp"
#include "loopfolio/study/study.hpp"
#include "loopfolio/templates/template.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What a pack must print, said a second time from the study alone: for every column of figures its value, unit and
/// decimals.
namespace loopfolio::tests {

/// What an expectation is written from.
struct Printing {
    const study::Study& s;
    const templates::Texts& words;
    const job::Job& job = s.house.values;
    const design::Design& d = s.design;
};

/// One column: its head, its unit, and its cells without those of group heads.
struct ExpectedColumn {
    std::string head, unit;
    std::vector<std::string> cells;
};

inline const std::string no_figure = "\u2013";

template <class Q, class U>
std::string cell(Q value, const U& unit, int decimals) {
    return fixed(unit.value_of(value), decimals);
}
template <class Q, class U>
std::string cell(const std::optional<Q>& value, const U& unit, int decimals) {
    return value ? fixed(unit.value_of(*value), decimals) : no_figure;
}
template <class U>
std::string cell(std::string words, const U&, int) {
    return words;
}

using Indices = std::vector<std::size_t>;

inline Indices all(std::size_t count) {
    Indices out;
    for (std::size_t i = 0; i < count; ++i) out.push_back(i);
    return out;
}

/// A table as it must be printed.
class ExpectedTable {
public:
    explicit ExpectedTable(Indices rows) : rows_{std::move(rows)} {}

    /// A column of `value_of(i)` for each row in the unit, then the cells of the rows that end the table.
    template <class U, class F>
    ExpectedTable& figures(std::string head, const U& unit, int decimals, F value_of,
                           std::vector<std::string> ends = {}) {
        return column(
            std::move(head), std::string{unit.symbol}, [&](std::size_t i) { return cell(value_of(i), unit, decimals); },
            std::move(ends));
    }
    template <class F>
    ExpectedTable& column(std::string head, std::string unit, F words_of, std::vector<std::string> ends = {}) {
        ExpectedColumn out{std::move(head), std::move(unit), {}};
        for (const std::size_t i : rows_) out.cells.push_back(words_of(i));
        out.cells.insert(out.cells.end(), ends.begin(), ends.end());
        columns.push_back(std::move(out));
        return *this;
    }

    std::vector<ExpectedColumn> columns;

private:
    Indices rows_;
};

/// Expectations of a table by its caption.
using TableChecks = std::map<std::string, std::function<ExpectedTable()>>;

/// Adds those of the tables of each part: the installer's, the assessor's and the household's.
void add_installer_tables(const Printing& p, TableChecks& out);
void add_state_tables(const Printing& p, TableChecks& out);
void add_assessor_tables(const Printing& p, TableChecks& out);
void add_air_tables(const Printing& p, TableChecks& out);
void add_register_tables(const Printing& p, TableChecks& out);
void add_season_tables(const Printing& p, TableChecks& out);
void add_household_tables(const Printing& p, TableChecks& out);

/// Figures that must stand in a text, in their order, by the term of the fact. A term may stand on more than one sheet.
using FactChecks = std::multimap<std::string, std::vector<std::string>>;
void add_duty_facts(const Printing& p, FactChecks& out);
void add_plant_facts(const Printing& p, FactChecks& out);
void add_season_facts(const Printing& p, FactChecks& out);

/// The large figures of the first pages.
[[nodiscard]] std::vector<std::string> expected_key_figures(const Printing& p);

/// Compares a drawing with the study; an empty list where all of it is as it must be, else what is not. A drawing that
/// nothing here knows is a fault too.
[[nodiscard]] std::vector<std::string> faults_of(const Printing& p, const report::BarChart& chart);
[[nodiscard]] std::vector<std::string> faults_of(const Printing& p, const report::LineChart& chart);
[[nodiscard]] std::vector<std::string> faults_of(const Printing& p, const report::RangeChart& chart);
[[nodiscard]] std::vector<std::string> faults_of(const Printing& p, const report::PipeTree& tree);

}  // namespace loopfolio::tests
