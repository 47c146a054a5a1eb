// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/style.hpp"
#include "loopfolio/layout/measurer.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::layout {

/// Text of one face inside a line; `x` is from the start of the line.
struct Run {
    std::string text;
    Face face = Face::regular;
    double x = 0.0, width = 0.0;
};
struct Line {
    std::vector<Run> runs;
    double width = 0.0;
};

/// Breaks text into lines no wider than `width`. Lines break at spaces, after a hyphen or slash between
/// longer words, at `\n`, and inside a word, between letters, only where the word alone is too wide. A letter
/// keeps the marks that combine with it; a no-break space (U+00A0, U+202F) counts as a letter of a word. `**`
/// switches bold on and off. No lines for empty text. A single letter wider than `width` still gets its line.
[[nodiscard]] std::vector<Line> break_lines(std::string_view text, const TextStyle& style, double width,
                                            const TextMeasurer& measurer);

/// Like `break_lines`, with the same number of lines but more even ones, so that the last is not a single short word.
/// `wholly` evens all lines, for headings.
[[nodiscard]] std::vector<Line> break_evenly(std::string_view text, const TextStyle& style, double width, bool wholly,
                                             const TextMeasurer& measurer);

/// Like `break_lines`, but text beyond the last of `most` lines is replaced by an ellipsis. For labels in drawings and
/// running heads, whose space is limited.
[[nodiscard]] std::vector<Line> break_label(std::string_view text, const TextStyle& style, double width,
                                            std::size_t most, const TextMeasurer& measurer);

/// The least width that needs no break inside a word, and the width that needs no break at all.
struct Extent {
    double least = 0.0, natural = 0.0;
};
[[nodiscard]] Extent extent(std::string_view text, const TextStyle& style, const TextMeasurer& measurer);

/// The widest of some lines.
[[nodiscard]] double widest(const std::vector<Line>& lines);

/// How far the baseline is below the top of a line's box: capitals are centred in the leading.
[[nodiscard]] double baseline_in(const TextStyle& style, const TextMeasurer& measurer);

/// Text on one baseline, without line breaks.
[[nodiscard]] TextItem text_at(Point baseline, std::string text, const TextStyle& style, const TextMeasurer& measurer);

/// Sets a line with its left end at `x` and the top of its box at `top`.
void put_line(std::vector<Item>& items, const Line& line, Point left_top, const TextStyle& style,
              const TextMeasurer& measurer);

/// Sets lines one below the other; `anchor` 0 aligns them left at `left_top.x`, 1 right, 0.5 centred.
void put_lines(std::vector<Item>& items, const std::vector<Line>& lines, Point left_top, double anchor,
               const TextStyle& style, const TextMeasurer& measurer);

}  // namespace loopfolio::layout
