// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/reference/fabric.hpp"

#include <span>
#include <string_view>

namespace loopfolio::reference {

/// Factors of BS EN 1264-2 for pipes in wet screed (type A), for one covering and spacing; sorted by covering, then by
/// spacing.
struct FloorFactors {
    ThermalResistance covering;  ///< 0 to 0.15 m2 K/W
    Length pitch;                ///< 0.05 to 0.375 m
    double a_pitch;              ///< a_T, the same at every pitch
    double a_cover;              ///< a_U
    double a_diameter;           ///< a_D
};
[[nodiscard]] std::span<const FloorFactors> floor_factors();

/// One number of the limit curves; sorted by spacing, then by the screed's resistance.
struct FloorLimitPoint {
    Length pitch;
    ThermalResistance cover;  ///< of the screed above the pipe over its conductivity, 0.010 to 0.0792 m2 K/W
    double value;
};
[[nodiscard]] std::span<const FloorLimitPoint> floor_limit_coefficients();  ///< B_G, W/m2
[[nodiscard]] std::span<const FloorLimitPoint> floor_limit_exponents();     ///< n_G

/// Key of the source of the three tables above.
[[nodiscard]] std::string_view floor_tables_source();

/// Limit of a floor's surface temperature.
struct FloorSurfaceLimit {
    std::string_view name;  ///< in a job file: `occupied`
    std::string_view label;
    Temperature limit;  ///< of the warmest spot
    Temperature room;   ///< that the standard counts it from
    std::string_view source;
};
/// In order: occupied, edge (a strip of 1 m along outside walls), bathroom.
[[nodiscard]] std::span<const FloorSurfaceLimit> floor_surface_limits();
[[nodiscard]] const FloorSurfaceLimit* find_floor_surface_limit(std::string_view name);

/// Resistance of a covering on the screed. A product's own figure overrides it (1 tog is 0.1 m2 K/W).
struct FloorCovering {
    std::string_view name;  ///< in a job file: `ceramic_tile`
    std::string_view label;
    Cited<ThermalResistance> resistance;
};
[[nodiscard]] std::span<const FloorCovering> floor_coverings();
[[nodiscard]] const FloorCovering* find_floor_covering(std::string_view name);

/// Common practice for a loop of 16 mm pipe.
struct LoopLimits {
    Cited<Length> length;      ///< 100 m, range 100 to 120
    Cited<Pressure> pressure;  ///< 20 kPa, range 20 to 25
};
[[nodiscard]] const LoopLimits& loop_limits();

}  // namespace loopfolio::reference
