// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/expansion.hpp"

#include <optional>

namespace loopfolio::design {

/// The water of the whole system, its expansion, and what is added to it.
struct WaterPlan {
    Volume sections, emitters, source, separation, other;  ///< water content, by what holds it
    Volume content;                                        ///< the whole system volume
    /// Emitters that state no water content: it is estimated from their rating.
    int emitters_by_rating = 0;
    Temperature fill, highest;
    double expansion = 0.0;  ///< expansion as a share of the volume, for the system's own fluid
    /// The same for water, from the table of EN 12828; absent outside it, below 30 °C.
    std::optional<double> table_expansion;
    Pressure precharge;
    physics::VesselSize vessel;                         ///< size that EN 12828 needs
    std::optional<Volume> next_vessel;                  ///< smallest usual size that is large enough
    std::optional<Volume> second_opinion;               ///< by BS 7074-1, at the fill and final pressures found
    std::optional<physics::VesselPressures> pressures;  ///< of the present or chosen vessel; else of `next_vessel`
    FindingId vessel_size;         ///< figure: volume of the present vessel, limit: the minimum; m3
    FindingId valve_margin;        ///< figure: final pressure, limit: the highest allowed in use; Pa
    std::optional<Volume> glycol;  ///< volume of concentrate to add
    FindingId frost;               ///< figure: freezing point, limit: the frost to withstand; °C
    std::optional<Volume> inhibitor;
    /// Volume that must always be open: the largest that one of the rules below needs.
    std::optional<Volume> open_needed;
    std::optional<Volume> for_defrost;
    FindingId open_volume;  ///< figure: volume that is always open, limit: `open_needed`; m3
};

/// Adds the checks that it makes to `findings`.
[[nodiscard]] std::optional<WaterPlan> plan_water(const job::Job& values, const Design& design, Findings& findings,
                                                  std::vector<Refusal>& refusals, Trace* trace = nullptr);

}  // namespace loopfolio::design
