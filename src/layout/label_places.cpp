// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/label_places.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::layout {

namespace {

constexpr double over_label = 1000.0;   // a label may cross a line before it covers another label
constexpr double over_line_point = 3.0;
constexpr double later_anchor = 0.5, further_off = 2.0;
constexpr double line_step = 3.0;

double overlap(const Box& a, const Box& b) {
    const double wide = std::min(a.right, b.right) - std::max(a.left, b.left);
    const double high = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
    return wide > 0.0 && high > 0.0 ? wide * high : 0.0;
}

/// Moves a box into the plot, whole if it can be.
Box inside(Box box, const Box& plot) {
    const double dx = box.right > plot.right ? plot.right - box.right : std::max(0.0, plot.left - box.left);
    box.left += dx;
    box.right += dx;
    const double dy = box.bottom > plot.bottom ? plot.bottom - box.bottom : std::max(0.0, plot.top - box.top);
    box.top += dy;
    box.bottom += dy;
    return box;
}

}  // namespace

Point LabelPlace::nearest() const {
    return {std::clamp(anchor.x, box.left, box.right), std::clamp(anchor.y, box.top, box.bottom)};
}

void LabelPlaces::avoid_line(const std::vector<Point>& points) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        const Point a = points[i - 1], b = points[i];
        const int steps = std::clamp(static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / line_step), 1, 1000);
        for (int k = 0; k <= steps; ++k) {
            const double t = static_cast<double>(k) / steps;
            points_.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
        }
    }
}

double LabelPlaces::cost_of(const Box& box) const {
    double cost = 0.0;
    for (const auto& other : boxes_) {
        const double shared = overlap(box, other);
        if (shared > 0.0) cost += over_label + shared;
    }
    for (const auto& p : points_) {
        if (p.x > box.left && p.x < box.right && p.y > box.top && p.y < box.bottom) cost += over_line_point;
    }
    return cost;
}

LabelPlace LabelPlaces::best(const std::vector<Point>& anchors, double width, double height, double clear) const {
    LabelPlace best;
    double least = 1e300;
    for (std::size_t i = 0; i < anchors.size(); ++i) {
        const Point p = anchors[i];
        for (const double off : {clear, clear + 8.0, clear + 20.0, clear + 36.0, clear + 54.0}) {
            const Point corners[] = {{p.x + off, p.y - height / 2.0}, {p.x - off - width, p.y - height / 2.0},
                                     {p.x - width / 2.0, p.y - off - height}, {p.x - width / 2.0, p.y + off},
                                     {p.x + 0.7 * off, p.y - 0.7 * off - height}, {p.x - 0.7 * off - width, p.y - 0.7 * off - height},
                                     {p.x + 0.7 * off, p.y + 0.7 * off}, {p.x - 0.7 * off - width, p.y + 0.7 * off}};
            for (const Point& corner : corners) {
                const Box box = inside({corner.x, corner.y, corner.x + width, corner.y + height}, plot_);
                const double cost = cost_of(box) + later_anchor * static_cast<double>(i) + further_off * (off - clear) / 8.0;
                if (cost >= least) continue;
                least = cost;
                best = {box, p, off > clear + 10.0};
            }
        }
    }
    return best;
}

}  // namespace loopfolio::layout
