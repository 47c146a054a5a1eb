// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/design/plant.hpp"
#include "loopfolio/job/job.hpp"

#include <array>
#include <optional>
#include <vector>

/// Sums, differences and shares over a house that the pack prints and the record holds. They stand here so that neither
/// of the two works them out for itself.
namespace loopfolio::study {

struct RoomTotal {
    Power surplus;                        ///< output less load
    std::optional<HeatFlux> rate;         ///< loss for each square metre of floor; absent without floor
    std::optional<double> methods_apart;  ///< loss by area over loss by elements, less 1
    /// Default rate by area for the room's own size over that for a room of 16 m2, less 1; absent for stated rates.
    std::optional<double> size_effect;
};

/// Over the heated rooms.
struct HeatedTotal {
    Area floor_area;
    Power loss, heat_up, output, surplus;
    std::optional<HeatFlux> rate;
};

/// What the ratings' table lowers an emitter by: the product of its deratings, and of the ends of their ranges.
struct LoweredTotal {
    double left = 1.0, low = 1.0, high = 1.0;
};

/// The least and the largest of a figure.
template <class Q>
struct Span {
    Q low{}, high{};
};

/// Number of verdicts, by Verdict.
using Counts = std::array<int, 3>;

struct Totals {
    std::vector<RoomTotal> rooms;  ///< by room
    HeatedTotal heated;
    Power losses;                        ///< of all rooms, what moves between them included
    Power between_rooms;                 ///< zero or below: what is in `losses` and stays in the house
    Power air_not_at_once;               ///< zero or below: of `losses`, air that does not enter every room at once
    Power leaving;                       ///< the sum of the three
    TemperatureDifference drop;          ///< design flow temperature less what comes back of all emitters together
    std::vector<Pressure> index_so_far;  ///< along the index circuit: after each step, the emitter and the heat source
    std::optional<Pressure> index_left_over;            ///< that the head has over the last of these, where it counts
    Span<Velocity> velocity_preferred, velocity_limit;  ///< of all sections
    std::vector<LoweredTotal> emitters;                 ///< by emitter
    std::vector<std::optional<double>> share_served;    ///< by state: of its need, what the least served room gets
    std::vector<Energy> bin_electricity;  ///< by bin of the season: source and backup; empty without a season
    Energy electricity;                   ///< the sum of them over the season
    Duration season_time;                 ///< all hours of the season's bins, with those that need no heat
    Counts room_verdicts{}, emitter_verdicts{}, section_verdicts{},
        plant_verdicts{};  ///< a section has one for all its checks
};

[[nodiscard]] Totals totals_of(const job::Job& values, const design::Design& design, const design::Operation& operation,
                               const design::Plant& plant, const design::Findings& findings);

}  // namespace loopfolio::study
