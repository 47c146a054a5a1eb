// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/lay_out.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::tests {

/// Every character is half an em wide, and a tenth wider in bold; combining marks (U+0300 to U+036F) have no width.
class FixedWidth final : public layout::TextMeasurer {
public:
    [[nodiscard]] double width(std::string_view utf8, layout::Face face, double size) const override;
    [[nodiscard]] double cap_height(layout::Face) const override { return 0.72; }
    [[nodiscard]] double descent(layout::Face) const override { return 0.2; }
};

/// The faults on the pages, one line each: items outside the margins, text over text, text whose width is not the
/// measurer's, broken UTF-8. Empty if there are none. The looks of a page are not checked.
[[nodiscard]] std::vector<std::string> faults(const layout::Pages& pages, const layout::TextMeasurer& measurer);

/// A report of one part with these blocks.
[[nodiscard]] report::Report report_of(std::vector<report::Block> blocks);

/// The text items of a page whose text contains `words`, in order of appearance.
[[nodiscard]] std::vector<layout::TextItem> texts(const layout::Page& page, std::string_view words = "");

/// All text of a page, one item a line.
[[nodiscard]] std::string words_of(const layout::Page& page);

/// Words `w1 w2 ... wn`.
[[nodiscard]] std::string words(int count);

/// A table with one left column and one decimal column and rows `row 1`, `row 2`...
[[nodiscard]] report::Table plain_table(int rows);

/// A report with every kind of block, whose contents come from a small generator: the same number gives the same
/// report. Strings may be very long, empty, without spaces or full of accents.
[[nodiscard]] report::Report random_report(unsigned number);

}  // namespace loopfolio::tests
