// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"
#include "loopfolio/report/document.hpp"

#include <string_view>
#include <vector>

/// The inside of tables: columns are measured first, then rows are placed in them.
namespace loopfolio::layout {

struct ColumnPlan {
    double left = 0.0, width = 0.0;
    double after_point = 0.0;      ///< decimal columns: room right of where whole numbers end
};

struct TablePlan {
    TextStyle text;                ///< of plain cells; heads, units and sums derive from it
    double width = 0.0;            ///< of the whole table, at most the frame's
    std::vector<ColumnPlan> columns;
};

/// Finds type size, gaps and column widths that hold the content: as it would like to stand, then with
/// smaller gaps, then in compact type, then with lines broken, at last with words broken.
[[nodiscard]] TablePlan measure_table(const report::Table& table, const Setting& setting);

/// A figure split where a column of figures is aligned: `whole` ends at the decimal point or the last digit.
/// Both are empty where the text does not start as a number.
struct Figure {
    std::string_view whole, rest;
};
[[nodiscard]] Figure split_figure(std::string_view text);

/// The words of a cell: its text, or its verdict's word where it has no text.
[[nodiscard]] std::string_view cell_text(const report::Cell& cell);

/// Whether nothing is printed in the rows of this column: it is there for a pen.
[[nodiscard]] bool is_blank(const report::Table& table, std::size_t column);

/// Room for the sign of a verdict before the text of a cell.
[[nodiscard]] double sign_width(const report::Cell& cell, const TextStyle& style);

}  // namespace loopfolio::layout
