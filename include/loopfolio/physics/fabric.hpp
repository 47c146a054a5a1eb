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

/// A suspended floor over a void that outside air passes through, as ISO 13370 sees it. The base of the void lies at
/// most 0.5 m below the ground outside; a deeper one is a basement.
struct SuspendedFloor {
    ThermalResistance deck;  ///< boards, joists and insulation, without surfaces
    Length height;           ///< of the floor's upper surface above the ground outside, h
    Length openings;         ///< area of the ventilation openings for each length of exposed edge
    Velocity wind;           ///< mean at 10 m, v
    double shielding;        ///< share of that wind that acts on the openings, f_w: 0.02 sheltered to 0.10 exposed
    UValue walls;            ///< of the walls of the void above ground, U_w
    ThermalResistance base;  ///< insulation on the base of the void
};
struct SuspendedUValue {
    UValue floor;   ///< 1/(1/deck + 1/(ground + beyond))
    UValue deck;    ///< from room to void, with an inside surface on both sides
    UValue ground;  ///< from void through the ground
    UValue beyond;  ///< from void through its walls and openings, 2 h U_w/B' + 1450 openings v f_w/B'
};
/// Nothing unless area, exposed perimeter and the deck's U-value are above zero and all else is at least zero. The term
/// of the ground is that of a slab, as in the standard's 2007 and 2017 editions (from memory).
[[nodiscard]] std::optional<SuspendedUValue> suspended_floor_u_value(Area area, Length exposed_perimeter,
                                                                     const SuspendedFloor& floor,
                                                                     const GroundFloor& ground = {});

/// Ventilation heat loss coefficient: c n V, with c in Wh/(m3 K) (0.34 in EN 12831-1, 0.33 in UK textbooks).
[[nodiscard]] HeatLossCoefficient ventilation_coefficient(double air_wh_per_m3k, AirChangeRate rate, Volume volume);

}  // namespace loopfolio::physics
