// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/expansion.hpp"

#include <optional>

namespace loopfolio::design {

/// The water of the whole system, what it expands by, and what is put into it.
struct WaterPlan {
    Volume sections, emitters, source, separation, other;   ///< content by what holds it
    Volume content;                                 ///< all of it
    int emitters_by_rating = 0;                     ///< that state no content: taken from their rating
    Temperature fill, highest;
    double expansion = 0.0;                         ///< share, of the system's own fluid
    double table_expansion = 0.0;                   ///< by the table of EN 12828, for water
    Pressure precharge;
    physics::VesselSize vessel;                     ///< that EN 12828 asks for
    std::optional<Volume> next_vessel;              ///< smallest usual size that is no smaller
    std::optional<Volume> second_opinion;           ///< by BS 7074-1, at the fill and final pressures found
    std::optional<physics::VesselPressures> pressures;   ///< of the vessel there is or is chosen; else of `next_vessel`
    FindingId vessel_size;             ///< figure: content of the one there is, limit: the least; m3
    FindingId valve_margin;            ///< figure: final pressure, limit: the highest in use; Pa
    std::optional<Volume> glycol;                   ///< to put in, of the concentrate
    FindingId frost;                   ///< figure: freezing point, limit: that asked for; °C
    std::optional<Volume> inhibitor;
    std::optional<Volume> open_needed;              ///< that must always be open: the most that a rule below asks for
    std::optional<Volume> for_defrost;
    FindingId open_volume;             ///< figure: what is always open, limit: `open_needed`; m3
};

/// Adds what it checks to `findings`.
[[nodiscard]] std::optional<WaterPlan> plan_water(const job::Job& values, const Design& design, Findings& findings,
                                                 std::vector<Refusal>& refusals, Trace* trace = nullptr);

}  // namespace loopfolio::design
