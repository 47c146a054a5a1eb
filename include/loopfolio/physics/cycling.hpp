// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/physics/fluid.hpp"

#include <optional>

/// A heat source below its least output: it runs and rests, and the water that it heats carries the
/// house in between. All by the heat balance of water mixed through and through, which swings by a
/// stated number of kelvin between start and stop.
namespace loopfolio::physics {

/// Share of the time that it runs: load / least output, at most 1. Load >= 0, least output > 0.
[[nodiscard]] std::optional<double> run_share(Power load, Power least_output);

/// Heat that a volume of water takes up over a swing: rho cp V dT. All > 0.
[[nodiscard]] std::optional<Energy> heat_in(Volume volume, TemperatureDifference swing, const FluidState& fluid);

/// Water whose swing takes up `heat`: V = Q / (rho cp dT). All > 0. With the heat of one defrost
/// this is the least volume that gives it: the maker's energy, or power times time.
[[nodiscard]] std::optional<Volume> volume_holding(Energy heat, TemperatureDifference swing, const FluidState& fluid);

/// Water that keeps it running for at least `run`: V = (least output - load) run / (rho cp dT). 0
/// where the load takes all of the least output: it does not cycle. Load >= 0, the rest > 0.
[[nodiscard]] std::optional<Volume> volume_for_run(Power least_output, Power load, Duration run,
                                                   TemperatureDifference swing, const FluidState& fluid);

/// One start to the next.
struct RunCycle {
    Duration run;   ///< C / (least output - load), with C = rho cp V dT
    Duration rest;  ///< C / load
    double starts_per_hour = 0.0;
};

/// Nothing unless 0 < load < least output: otherwise it does not cycle, or does not start again.
[[nodiscard]] std::optional<RunCycle> run_cycle(Volume volume, Power least_output, Power load,
                                                TemperatureDifference swing, const FluidState& fluid);

/// The cycle with the most starts: that at half of the least output, least output / (4 C) starts a
/// second.
[[nodiscard]] std::optional<RunCycle> busiest_cycle(Volume volume, Power least_output, TemperatureDifference swing,
                                                    const FluidState& fluid);

/// Water that keeps it to at most `starts_per_hour` at any load. All > 0.
[[nodiscard]] std::optional<Volume> volume_for_starts(double starts_per_hour, Power least_output,
                                                      TemperatureDifference swing, const FluidState& fluid);

}  // namespace loopfolio::physics
