// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/lay_out.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::tests {

/// Every character is half an em wide, a tenth more in bold; combining marks (U+0300 to U+036F) are not wide.
class FixedWidth final : public layout::TextMeasurer {
public:
    [[nodiscard]] double width(std::string_view utf8, layout::Face face, double size) const override;
    [[nodiscard]] double cap_height(layout::Face) const override { return 0.72; }
    [[nodiscard]] double descent(layout::Face) const override { return 0.2; }
};

/// What is wrong on the pages, one line a complaint: items outside the margins, text over text, text whose
/// width is not the measurer's, broken UTF-8. Empty where all is well. Checks nothing about looks.
[[nodiscard]] std::vector<std::string> faults(const layout::Pages& pages,
                                              const layout::TextMeasurer& measurer);

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

/// A report of every kind of block with contents that a small generator draws: the same number, the same
/// report. Strings are now and then very long, empty, without spaces or full of accents.
[[nodiscard]] report::Report random_report(unsigned number);

}  // namespace loopfolio::tests
