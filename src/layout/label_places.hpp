// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <vector>

namespace loopfolio::layout {

/// Where a label goes.
struct LabelPlace {
    Box box;
    Point anchor;                ///< what it names
    bool stands_off = false;     ///< so far from its anchor that a line should lead to it
    [[nodiscard]] Point nearest() const;   ///< point of the box that the line goes to
};

/// Finds room for labels in a plot: beside what they name, inside the plot, and off lines, marks and other labels as far as
/// there is room. Of equal places the first tried is taken.
class LabelPlaces {
public:
    explicit LabelPlaces(const Box& plot) : plot_{plot} {}
    void avoid(const Box& box) { boxes_.push_back(box); }
    void avoid_line(const std::vector<Point>& points);

    /// The best place near one of `anchors`, `clear` away from it; earlier anchors are preferred.
    [[nodiscard]] LabelPlace best(const std::vector<Point>& anchors, double width, double height, double clear) const;

private:
    [[nodiscard]] double cost_of(const Box& box) const;

    Box plot_;
    std::vector<Box> boxes_;
    std::vector<Point> points_;   ///< along the lines, close enough that none slips through a label
};

}  // namespace loopfolio::layout
