// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/grid.hpp"

#include <algorithm>
#include <cstddef>

namespace loopfolio::physics {

namespace {

/// A table's edge is inside it to rounding.
constexpr double rounding = 1e-9;

/// Where a value lies among `count` rising ones: the index below, and the share of the way to the next.
struct Between {
    std::size_t below = 0;
    std::size_t above = 0;
    double share = 0.0;
};

template <class At>
std::optional<Between> between(std::size_t count, double value, At&& at) {
    if (value < at(0) - rounding || value > at(count - 1) + rounding) return {};
    std::size_t i = 0;
    while (i + 2 < count && value > at(i + 1)) ++i;
    if (count == 1) return Between{};
    return Between{i, i + 1, std::clamp((value - at(i)) / (at(i + 1) - at(i)), 0.0, 1.0)};
}

}  // namespace

std::optional<double> on_grid(std::span<const GridPoint> points, double x, double y) {
    if (points.empty()) return {};
    const auto row = static_cast<std::size_t>(
        std::ranges::count_if(points, [&](const GridPoint& p) { return p.x == points.front().x; }));
    const auto column = between(points.size() / row, x, [&](std::size_t i) { return points[i * row].x; });
    const auto place = between(row, y, [&](std::size_t i) { return points[i].y; });
    if (!column || !place) return {};
    const auto along = [&](std::size_t i) {
        const double a = points[i * row + place->below].value;
        return a + place->share * (points[i * row + place->above].value - a);
    };
    return along(column->below) + column->share * (along(column->above) - along(column->below));
}

}  // namespace loopfolio::physics
