// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <optional>
#include <vector>

namespace loopfolio::layout {

/// A label that needs a place.
struct LabelWish {
    std::vector<Point> anchors;  ///< points beside which it may be, the best first
    double width = 0.0, height = 0.0;
    double clear = 0.0;  ///< its distance from its anchor
    int line = -1;       ///< the line it names: index in Obstacles::lines; -1 if it names a mark
};

/// The place of a label.
struct LabelPlace {
    Box box;
    Point anchor;                         ///< what it names
    bool stands_off = false;              ///< too far from its anchor to be clear without a leader line
    [[nodiscard]] Point nearest() const;  ///< point of the box where the leader line ends
};

/// What labels should not cover.
struct Obstacles {
    std::vector<std::vector<Point>> lines;
    std::vector<Point> marks;
    double mark_radius = 0.0;
};

/// Finds a place in the plot for each label: beside what it names, away from lines and marks, and if possible not
/// nearer to another line or mark than to its own. Labels never overlap: a label for which the plot has no room gets no
/// place.
[[nodiscard]] std::vector<std::optional<LabelPlace>> place_labels(const Box& plot, const Obstacles& obstacles,
                                                                  const std::vector<LabelWish>& wishes);

}  // namespace loopfolio::layout
