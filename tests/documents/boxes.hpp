// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/measurer.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/fonts.hpp"

#include <algorithm>
#include <string>
#include <vector>

/// The positions of items on pages.
namespace loopfolio::tests {

[[nodiscard]] inline layout::Box joined(const layout::Box& a, const layout::Box& b) {
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right), std::max(a.bottom, b.bottom)};
}

[[nodiscard]] inline bool inside(const layout::Box& box, const layout::Box& frame) {
    return box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom;
}

/// The box of an item: of a text from its baseline, the height of a capital and its width; of a drawing from its
/// points, without the pen's width.
[[nodiscard]] layout::Box box_of(const layout::Item& item, const layout::TextMeasurer& measurer);

/// The faults on the pages, one line each; empty if there are none. The faults are items outside the margins of 22 mm
/// at the sides and 13 mm at head and foot, texts that overlap by more than `tolerance` points in both directions,
/// texts of no size or whose width differs from the fonts', and characters that no font holds.
[[nodiscard]] std::vector<std::string> faults_of(const layout::Pages& pages, const pdf::Fonts& fonts,
                                                 double tolerance = 0.05);

/// Table cells whose text leaves its column, one line each. Each column is as wide as the widest text of its cells on
/// all pages, and the columns of a table must not overlap. Cells that span several columns are left out.
[[nodiscard]] std::vector<std::string> column_faults_of(const layout::Pages& pages, double tolerance = 0.05);

}  // namespace loopfolio::tests
