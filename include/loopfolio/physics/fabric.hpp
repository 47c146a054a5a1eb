// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>

namespace loopfolio::physics {

/// Ground that a floor lies on, and the wall round it, as ISO 13370 sees them. Defaults: clay, 0.3 m wall.
struct GroundFloor {
    Length wall_thickness = Length::from_si(0.3);
    Conductivity ground = Conductivity::from_si(1.5);
    ThermalResistance inside_surface = ThermalResistance::from_si(0.17);
    ThermalResistance outside_surface = ThermalResistance::from_si(0.04);
};

/// U-value of a slab on the ground, ISO 13370: B' = 2A/P; dt = w + lambda (Rsi + Rf + Rse); for dt < B'
/// U = 2 lambda/(pi B' + dt) ln(pi B'/dt + 1), else U = lambda/(0.457 B' + dt).
/// Nothing unless area and exposed perimeter are above zero and the insulation is at least zero.
[[nodiscard]] std::optional<UValue> ground_floor_u_value(Area area, Length exposed_perimeter,
                                                         ThermalResistance insulation, const GroundFloor& ground = {});

/// Ventilation heat loss coefficient: c n V, with c in Wh/(m3 K) (0.34 in EN 12831-1, 0.33 in UK textbooks).
[[nodiscard]] HeatLossCoefficient ventilation_coefficient(double air_wh_per_m3k, AirChangeRate rate, Volume volume);

}  // namespace loopfolio::physics
