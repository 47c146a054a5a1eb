// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"

#include <optional>

/// What the maker's points say at one outdoor and flow temperature, bilinear between them; nothing outside, without points, or
/// where one of them leaves it out.
namespace loopfolio::design {

/// Of all units together.
[[nodiscard]] std::optional<Power> capacity_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow);
/// Heat over electricity.
[[nodiscard]] std::optional<double> performance_by_table(const job::HeatSource& source, Temperature outdoor, Temperature flow);

}  // namespace loopfolio::design
