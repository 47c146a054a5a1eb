// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/ventilation.hpp"

#include <vector>

/// Outdoor air of rooms by EN 12831-1:2017, clause 6.3.3: each room takes the greater of what comes through its
/// envelope and a minimum by its use.
namespace loopfolio::design {

struct RoomAir {
    bool in_zone = false;      ///< heated, with an outside area that the job tells
    bool by_standard = false;  ///< the job states no air of its own for it
    Area envelope;             ///< towards outdoors and unheated spaces
    Volume volume;
    VolumeFlow supply, extract, combustion;  ///< by fans; by fires and flues
    VolumeFlow technical;                    ///< of these, what counts towards the minimum
    VolumeFlow minimum;                      ///< by its use
    VolumeFlow leakage;                      ///< its part of the house's air through the envelope
    VolumeFlow through_envelope;             ///< with the wind on its side
    VolumeFlow outdoor;                      ///< to be warmed in the room, without the fans' supply
    VolumeFlow outdoor_in_house;             ///< the same where the house as a whole is reckoned
};

struct HouseAir {
    physics::AirZone zone;
    physics::ZoneAir air;
    double direction_factor = 1.0;
    double house_share = 1.0;  ///< of the minimum air of all rooms that the house needs at once
    VolumeFlow taken_out;      ///< by fans, fires and flues together
    Volume volume;             ///< of the rooms in the zone
    std::vector<RoomAir> rooms;
};

/// Whether a room takes its air from the standard, in a job that is filled or derived.
[[nodiscard]] bool air_by_standard(const job::Room& room, const job::Conditions& conditions);

/// The air of all rooms, in a filled job. Rooms that state their own have it in neither `outdoor`. Without a
/// permeability nothing leaks.
[[nodiscard]] HouseAir air_of(const job::Job& job);

/// Area of a room towards outdoors and unheated spaces: of its elements, or else by the area method. A floor over a
/// ventilated void counts; floors on the ground and walls to neighbours do not.
[[nodiscard]] Area outside_area(const job::Room& room);

}  // namespace loopfolio::design
