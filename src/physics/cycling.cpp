// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/cycling.hpp"

#include "loopfolio/base/unit.hpp"
#include "physics/valid.hpp"

#include <algorithm>

namespace loopfolio::physics {

std::optional<double> run_share(Power load, Power least_output) {
    if (!none_below_zero(load) || !all_above_zero(least_output)) return std::nullopt;
    return std::min(1.0, load / least_output);
}

std::optional<Energy> heat_in(Volume volume, TemperatureDifference swing, const FluidState& fluid) {
    if (!all_above_zero(volume, swing, fluid.density, fluid.specific_heat)) return std::nullopt;
    return fluid.density * fluid.specific_heat * volume * swing;
}

std::optional<Volume> volume_holding(Energy heat, TemperatureDifference swing, const FluidState& fluid) {
    if (!all_above_zero(heat, swing, fluid.density, fluid.specific_heat)) return std::nullopt;
    return heat / (fluid.density * fluid.specific_heat * swing);
}

std::optional<Volume> volume_for_run(Power least_output, Power load, Duration run, TemperatureDifference swing,
                                     const FluidState& fluid) {
    if (!none_below_zero(load) || !all_above_zero(least_output, run, swing)) return std::nullopt;
    if (!all_above_zero(fluid.density, fluid.specific_heat)) return std::nullopt;
    if (load >= least_output) return Volume{};
    return volume_holding((least_output - load) * run, swing, fluid);
}

std::optional<RunCycle> run_cycle(Volume volume, Power least_output, Power load, TemperatureDifference swing,
                                  const FluidState& fluid) {
    const auto heat = heat_in(volume, swing, fluid);
    if (!heat || !all_above_zero(load, least_output) || !(load < least_output)) return std::nullopt;
    const Duration run = *heat / (least_output - load);
    const Duration rest = *heat / load;
    return RunCycle{run, rest, unit::hour(1.0) / (run + rest)};
}

std::optional<RunCycle> busiest_cycle(Volume volume, Power least_output, TemperatureDifference swing,
                                      const FluidState& fluid) {
    return run_cycle(volume, least_output, 0.5 * least_output, swing, fluid);
}

std::optional<Volume> volume_for_starts(double starts_per_hour, Power least_output, TemperatureDifference swing,
                                        const FluidState& fluid) {
    if (!all_above_zero(starts_per_hour, least_output)) return std::nullopt;
    const Duration between = unit::hour(1.0) / starts_per_hour;
    return volume_holding(0.25 * least_output * between, swing, fluid);
}

}  // namespace loopfolio::physics
