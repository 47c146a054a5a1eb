// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/performance_table.hpp"

#include "loopfolio/physics/grid.hpp"

namespace loopfolio::design {

namespace {

template <class Value>
std::optional<double> by_table(std::span<const job::PerformancePoint> table, Temperature outdoor, Temperature flow,
                               Value value) {
    std::vector<physics::GridPoint> points;
    for (const auto& p : table) {
        const std::optional<double> here = value(p);
        if (!here) return {};
        points.push_back({p.outdoor.celsius(), p.flow.celsius(), *here});
    }
    return physics::on_grid(points, outdoor.celsius(), flow.celsius());
}

/// Capacity of one unit, in watts.
std::optional<double> capacity_of_one(std::span<const job::PerformancePoint> table, Temperature outdoor,
                                      Temperature flow) {
    return by_table(table, outdoor, flow, [](const job::PerformancePoint& p) {
        return p.capacity ? std::optional{p.capacity->si()} : std::nullopt;
    });
}

std::optional<double> performance_of_one(std::span<const job::PerformancePoint> table, Temperature outdoor,
                                         Temperature flow) {
    return by_table(table, outdoor, flow, [](const job::PerformancePoint& p) { return std::optional{p.performance}; });
}

}  // namespace

std::vector<EqualUnits> kinds_of(const job::HeatSource& source) {
    std::vector<EqualUnits> out{{source.performance, &source.least_output, source.number}};
    for (const auto& units : source.further) out.push_back({units.performance, &units.least_output, units.number});
    return out;
}

std::optional<Power> capacity_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow) {
    Power out;
    for (const auto& units : kinds_of(source)) {
        const auto watts = capacity_of_one(units.points, outdoor, flow);
        if (!watts) return {};
        out += static_cast<double>(units.number) * Power::from_si(*watts);
    }
    return out;
}

double left_by_defrost(const job::HeatSource& source, Temperature outdoor) {
    const bool inside = source.defrost_derating && outdoor >= source.defrost_from.value &&
                        outdoor <= source.defrost_to.value;
    return inside ? 1.0 - source.defrost_derating->value : 1.0;
}

std::optional<double> performance_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow) {
    if (source.further.empty()) return performance_of_one(source.performance, outdoor, flow);
    double heat = 0.0, electricity = 0.0;
    for (const auto& units : kinds_of(source)) {
        const auto watts = capacity_of_one(units.points, outdoor, flow);
        const auto ratio = performance_of_one(units.points, outdoor, flow);
        if (!watts || !ratio) return {};
        heat += units.number * *watts;
        electricity += units.number * *watts / *ratio;
    }
    return heat / electricity;
}

}  // namespace loopfolio::design
