// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/reference/fabric.hpp"

namespace loopfolio::reference {

/// Limits and allowances of a design, used unless the job states its own. Each has its source.
struct Limits {
    Cited<Velocity> velocity_preferred;             ///< 0.9 m/s
    Cited<Velocity> velocity_limit;                 ///< 1.5 m/s
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

}  // namespace loopfolio::reference
