// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"

#include <optional>
#include <span>
#include <vector>

/// What the maker's points say at one outdoor and flow temperature, bilinear between them; nothing outside, without points, or
/// where one of them leaves it out.
namespace loopfolio::design {

/// Equal units with one table.
struct EqualUnits {
    std::span<const job::PerformancePoint> points;
    const std::optional<Input<Power>>* least_output;   ///< of one, where the points state none
    int number = 1;
};
/// The heat source's own kind, then the further ones.
[[nodiscard]] std::vector<EqualUnits> kinds_of(const job::HeatSource& source);

/// Of all units together.
[[nodiscard]] std::optional<Power> capacity_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow);
/// What defrosting leaves of a capacity at that outdoor temperature, 0 to 1.
[[nodiscard]] double left_by_defrost(const job::HeatSource& source, Temperature outdoor);
/// Heat over electricity, of all units together where they differ.
[[nodiscard]] std::optional<double> performance_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow);

}  // namespace loopfolio::design
