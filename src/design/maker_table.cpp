// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/maker_table.hpp"

#include "loopfolio/physics/grid.hpp"

#include <vector>

namespace loopfolio::design {

namespace {

template <class Value>
std::optional<double> by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow, Value value) {
    std::vector<physics::GridPoint> points;
    for (const auto& p : source.performance) {
        const std::optional<double> here = value(p);
        if (!here) return {};
        points.push_back({p.outdoor.celsius(), p.flow.celsius(), *here});
    }
    return physics::on_grid(points, outdoor.celsius(), flow.celsius());
}

}  // namespace

std::optional<Power> capacity_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow) {
    const auto watts = by_table(source, outdoor, flow, [](const job::PerformancePoint& p) {
        return p.capacity ? std::optional{p.capacity->si()} : std::nullopt;
    });
    if (!watts) return {};
    return static_cast<double>(source.number) * Power::from_si(*watts);
}

std::optional<double> performance_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow) {
    return by_table(source, outdoor, flow, [](const job::PerformancePoint& p) { return std::optional{p.performance}; });
}

}  // namespace loopfolio::design
