// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/reference/pipes.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace loopfolio::reference {

/// Limits and allowances of a design, used unless the job states its own. Each has its source.
struct Limits {
    Cited<PressureGradient> gradient_preferred;     ///< 300 Pa/m
    Cited<TemperatureDifference> temperature_drop;  ///< 5 K
    Cited<double> shortfall_noted;                  ///< an emitter short by up to this share is noted, not changed
    Cited<double> pump_margin;                      ///< head in hand above which a circulator is kept without a note
    Cited<double> source_margin;              ///< capacity in hand above which a heat source is kept without a note
    Cited<UValue> thermal_bridge;             ///< element method, where the job does not state one
    Cited<UValue> exposed_floor_uninsulated;  ///< floor over outside air, no insulation: 1.2 W/(m2 K)
    double air_heat_capacity_wh_per_m3k;      ///< 0.34, ventilation term of EN 12831-1
    std::string_view air_heat_capacity_source;
};
[[nodiscard]] const Limits& limits();

/// Limits of the water's velocity in one range of sizes of some materials: which line of guidance decides a verdict.
struct VelocityGuide {
    std::string_view name;   ///< in the record: `microbore_copper`
    std::string_view label;  ///< for a reader: `copper of 8 and 10 mm`
    Cited<Velocity> preferred, limit;
};
[[nodiscard]] std::span<const VelocityGuide> velocity_guides();
/// The line that holds for a pipe.
[[nodiscard]] const VelocityGuide& velocity_guide(const Pipe& pipe);

/// What a publication says of the velocity in pipes. Publications differ, and the pack shows where.
struct PublishedVelocity {
    std::string_view pipes;   ///< `copper and steel to 50 mm`
    double low, high;         ///< m/s; equal where one value is given
    std::string_view kind;    ///< `at most`, `normal practice`
    std::string_view source;  ///< key
};
[[nodiscard]] std::span<const PublishedVelocity> published_velocities();

/// Head of circulators that houses have, against the flow: the lowest curve of the 6 m class and the highest of the 8 m
/// class. Common practice, put together from published curves; linear between its points.
struct UsualPumpHead {
    double low_m, high_m;  ///< metres of the water that is pumped
};
/// Nothing for a flow outside the table, 0 to 50 L/min.
[[nodiscard]] std::optional<UsualPumpHead> usual_pump_head(VolumeFlow flow);

}  // namespace loopfolio::reference
