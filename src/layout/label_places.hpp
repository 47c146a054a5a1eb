// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <optional>
#include <vector>

namespace loopfolio::layout {

/// A label that looks for its place.
struct LabelWish {
    std::vector<Point> anchors;   ///< what it may stand beside, the best first
    double width = 0.0, height = 0.0;
    double clear = 0.0;           ///< distance that it keeps from its anchor
    int line = -1;                ///< that it names: index in Obstacles::lines; -1 where it names a mark
};

/// Where a label goes.
struct LabelPlace {
    Box box;
    Point anchor;                ///< what it names
    bool stands_off = false;     ///< so far from its anchor that a line should lead to it
    [[nodiscard]] Point nearest() const;   ///< point of the box that the line goes to
};

/// What labels should not cover.
struct Obstacles {
    std::vector<std::vector<Point>> lines;
    std::vector<Point> marks;
    double mark_radius = 0.0;
};

/// A place in the plot for each label: beside what it names, off lines and marks, and not nearer to another
/// line or mark than to its own, as far as there is room. Never over another label: one for which the whole
/// plot has no room gets no place.
[[nodiscard]] std::vector<std::optional<LabelPlace>> place_labels(const Box& plot, const Obstacles& obstacles,
                                                                  const std::vector<LabelWish>& wishes);

}  // namespace loopfolio::layout
