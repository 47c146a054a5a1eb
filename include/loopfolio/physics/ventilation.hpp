// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>

/// Air that has to be warmed, and spaces that nobody warms. `ventilation_coefficient` in fabric.hpp turns
/// air changes into W/K.
namespace loopfolio::physics {

/// Air changes by leakage in use, from those under test at 50 Pa: n50 / divisor. n50 >= 0, divisor 5 to 50.
[[nodiscard]] std::optional<AirChangeRate> leakage_by_divisor(AirChangeRate at_50_pa, double divisor);

/// Leakage of one room by EN 12831:2003: 2 n50 e epsilon; twice, because all of the house's air may come in
/// on its windward side. Shielding coefficient e 0 to 0.1, height factor epsilon 1 to 2.
[[nodiscard]] std::optional<AirChangeRate> leakage_by_exposure(AirChangeRate at_50_pa, double shielding,
                                                               double height_factor);

/// Fans that bring air into a room, and what comes in besides.
struct MechanicalVentilation {
    AirChangeRate supply;        ///< >= 0, air from outdoors through the fans; 0 for extract alone
    double recovery = 0.0;       ///< share of the heat taken from extract air, 0 to 1, as in use
    AirChangeRate infiltration;  ///< >= 0, air straight from outdoors: leaks, and what extract alone draws in
};

/// Air changes at outdoor temperature that ask for as much heat: infiltration + supply (1 - recovery).
/// Nothing outside the ranges above.
[[nodiscard]] std::optional<AirChangeRate> air_changes_to_warm(const MechanicalVentilation& ventilation);

/// Rooms between which air can move, as EN 12831-1:2017 has them in clause 6.3.3: a house. Areas and flows >= 0.
struct AirZone {
    Area envelope;                    ///< outside area of its rooms
    Velocity permeability;            ///< of that area at 50 Pa, m3/(h m2)
    double volume_flow_factor = 0.0;  ///< f_qv: leakage in use as a share of that at 50 Pa, above 0, at most 1
    double facade_factor = 0.0;       ///< f_fac, above 0: how far the wind reaches
    VolumeFlow extract;               ///< that fans take out of its rooms
    VolumeFlow combustion;            ///< that fires and flues take besides
    VolumeFlow supply;                ///< that fans bring in from outdoors
};
struct ZoneAir {
    double adjustment = 1.0;      ///< f_e: leakage that is left where fans and flues change the pressure
    VolumeFlow leakage;           ///< by wind and buoyancy
    VolumeFlow drawn_in;          ///< what fans and flues take out and fans do not bring in
    VolumeFlow through_envelope;  ///< the two together
};
/// Equations 20 to 22 of EN 12831-1:2017 without openings made for air (their numbers are from memory). Nothing
/// outside the ranges above.
[[nodiscard]] std::optional<ZoneAir> air_of_zone(const AirZone& zone);

/// A room's part of the zone's air through the envelope, by its outside area: equation 19.
[[nodiscard]] VolumeFlow part_of_room(const ZoneAir& air, const AirZone& zone, Area envelope);

/// Air through a room's own envelope on its windward side: equation 18. The leakage counts `direction_factor` times
/// (f_dir, >= 1), but a room never has more than the whole zone.
[[nodiscard]] VolumeFlow air_of_room(const ZoneAir& air, VolumeFlow part, double direction_factor);

/// What fans and flues move through a room counts towards its minimum: equation 23.
[[nodiscard]] VolumeFlow technical_air(VolumeFlow supply, VolumeFlow extract, VolumeFlow combustion);

/// What an unheated space has of heat from the rooms beside it and loss to outside.
struct UnheatedSpace {
    HeatLossCoefficient to_rooms;    ///< >= 0, H_iu: transmission and air between rooms and space
    HeatLossCoefficient to_outside;  ///< >= 0, H_ue; one of both above zero
};

/// Share of the rooms' difference to outdoors that lies between rooms and space, EN ISO 13789: H_ue / (H_iu
/// + H_ue).
[[nodiscard]] std::optional<double> unheated_factor(const UnheatedSpace& space);

/// Temperature at which the space neither warms nor cools: room - factor (room - outdoor).
[[nodiscard]] std::optional<Temperature> unheated_temperature(const UnheatedSpace& space, Temperature room,
                                                              Temperature outdoor);

}  // namespace loopfolio::physics
