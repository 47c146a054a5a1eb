// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/measurer.hpp"
#include "loopfolio/layout/page.hpp"
#include "loopfolio/pdf/fonts.hpp"

#include <algorithm>
#include <string>
#include <vector>

/// Where items stand on pages.
namespace loopfolio::tests {

[[nodiscard]] inline layout::Box joined(const layout::Box& a, const layout::Box& b) {
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}

[[nodiscard]] inline bool inside(const layout::Box& box, const layout::Box& frame) {
    return box.left >= frame.left && box.right <= frame.right && box.top >= frame.top &&
           box.bottom <= frame.bottom;
}

/// From baseline, height of a capital and width of a text; from the points of a drawing, without its pen.
[[nodiscard]] layout::Box box_of(const layout::Item& item, const layout::TextMeasurer& measurer);

/// What is wrong on the pages, one line a complaint; empty where nothing is. Looked for are items that leave
/// the margins of 22 mm at the sides and 13 mm at head and foot, texts that overlap by more than `tolerance`
/// points each way, texts of no size or not as wide as the fonts say, and characters that no font holds.
[[nodiscard]] std::vector<std::string> faults_of(const layout::Pages& pages, const pdf::Fonts& fonts,
                                                 double tolerance = 0.05);

/// Table cells whose text leaves its column, one line a complaint: the columns of a table, each as wide as
/// the widest text of its cells on all pages, must not meet. Cells that take several columns are left out.
[[nodiscard]] std::vector<std::string> column_faults_of(const layout::Pages& pages, double tolerance = 0.05);

}  // namespace loopfolio::tests
