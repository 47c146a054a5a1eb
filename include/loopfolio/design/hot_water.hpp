// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/hot_water.hpp"
#include "loopfolio/physics/season.hpp"

#include <optional>

namespace loopfolio::design {

/// What a day's hot water needs from the hot water cylinder, its coil and the heat source.
struct HotWaterPlan {
    Energy drawn;         ///< heat drawn in a day
    Volume store_needed;  ///< volume that holds a day's draw at once
    /// Figure: volume, limit: a day's draw; m3. Never `change`, because the cylinder can be reheated.
    FindingId store;
    /// Of the heat source while it heats the cylinder, where it is known.
    std::optional<Power> capacity;
    /// `capacity` is the manufacturer's, at the flow temperature for hot water.
    bool by_table = false;
    std::optional<HeatLossCoefficient> transfer;  ///< of the coil or plate with the flow through it
    /// From the cold main's temperature to the stored one; absent where it is never reached.
    std::optional<physics::Reheat> reheat;
    /// The coil cannot heat the cylinder to its temperature with this flow.
    bool unreachable = false;
    /// Flow temperature that passes the whole capacity into a cylinder that is nearly hot.
    std::optional<Temperature> flow_for_capacity;
    FindingId coil;  ///< figure: `flow_for_capacity`, limit: the heat source's flow temperature; °C
    std::optional<Energy> standing_loss;       ///< in a day
    std::optional<Duration> hours_a_day;       ///< hours of a day that the heat source is not free for heating
    std::optional<Power> load_with_hot_water;  ///< output needed for heating in the hours left, on the design day
    std::optional<physics::PasteurisationUse> hot_cycle;
    Energy heat_a_year;  ///< heat drawn, and the standing loss where it is stated
    /// For `heat_a_year` and the hot cycles; only with a season whose weather the table covers.
    std::optional<Energy> electricity_a_year;
    /// A hot cycle is wanted that the heat source cannot reach, and there is no other heater.
    bool needs_immersion = false;
};

/// Adds the checks that it makes to `findings`.
[[nodiscard]] std::optional<HotWaterPlan> plan_hot_water(const job::Job& values, const Design& design,
                                                         Findings& findings, std::vector<Refusal>& refusals,
                                                         Trace* trace = nullptr);

/// Fills `electricity_a_year`: the heat is spread evenly over 8,760 hours, at the COP in the manufacturer's table for
/// each outdoor temperature of the season and the flow temperature for hot water. Hours in no bin count as the warmest
/// bin. It stays absent where the table does not reach one of these temperatures.
void find_hot_water_year(const job::Job& filled, const physics::Season& season, HotWaterPlan& plan,
                         Trace* trace = nullptr);

}  // namespace loopfolio::design
