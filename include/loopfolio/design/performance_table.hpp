// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"

#include <optional>
#include <span>
#include <vector>

/// Values from the manufacturer's table at one outdoor and one flow temperature, bilinear between its points. Nothing
/// outside the points, without points, or where one of the points needed leaves the value out.
namespace loopfolio::design {

/// Equal units that share one table.
struct EqualUnits {
    std::span<const job::PerformancePoint> points;
    const std::optional<Input<Power>>* least_output;  ///< of one unit, for points that state none
    int number = 1;
};
/// The units of the heat source itself first, then the further kinds.
[[nodiscard]] std::vector<EqualUnits> kinds_of(const job::HeatSource& source);

/// Capacity of all units together.
[[nodiscard]] std::optional<Power> capacity_by_table(const job::HeatSource& source, Temperature outdoor,
                                                     Temperature flow);
/// Share of the capacity that is left after defrosting at that outdoor temperature, 0 to 1.
[[nodiscard]] double left_by_defrost(const job::HeatSource& source, Temperature outdoor);
/// COP: heat over electricity, of all units together where they differ.
[[nodiscard]] std::optional<double> performance_by_table(const job::HeatSource& source, Temperature outdoor,
                                                         Temperature flow);

}  // namespace loopfolio::design
