// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"
#include "loopfolio/report/document.hpp"

#include <string_view>
#include <vector>

/// The two steps of a table: columns are measured first, then rows are placed in them.
namespace loopfolio::layout {

struct ColumnPlan {
    double left = 0.0, width = 0.0;
    double after_point = 0.0;  ///< decimal columns: width to the right of whole numbers
};

struct TablePlan {
    TextStyle text;      ///< of plain cells; heads, units and sums are derived from it
    double width = 0.0;  ///< of the whole table, at most the frame's
    std::vector<ColumnPlan> columns;
};

/// Finds type size, gaps and column widths for the content. It tries the preferred size first, then smaller gaps, then
/// compact type, then wrapped lines, and last broken words.
[[nodiscard]] TablePlan measure_table(const report::Table& table, const Setting& setting);

/// A figure, split where a column aligns it: `whole` ends at the decimal point or after the last digit. Both parts are
/// empty if the text does not start with a number.
struct Figure {
    std::string_view whole, rest;
};
[[nodiscard]] Figure split_figure(std::string_view text);

/// The words of a cell: its text, or the word for its verdict if it has no text.
[[nodiscard]] std::string_view cell_text(const report::Cell& cell);

/// Whether nothing is printed in the rows of this column, because it is filled in by hand.
[[nodiscard]] bool is_blank(const report::Table& table, std::size_t column);

/// Width for the symbol of a verdict before the text of a cell.
[[nodiscard]] double sign_width(const report::Cell& cell, const TextStyle& style);

}  // namespace loopfolio::layout
