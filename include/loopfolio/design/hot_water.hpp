// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/hot_water.hpp"
#include "loopfolio/physics/season.hpp"

#include <optional>

namespace loopfolio::design {

/// What a day's hot water asks of the store, its coil and the heat source.
struct HotWaterPlan {
    Energy drawn;                                   ///< a day
    Volume store_needed;                            ///< to hold a day's draw at once
    FindingId store;                                 ///< figure: content, limit: a day's draw; m3. Never `change`: it can be heated again
    std::optional<Power> capacity;                  ///< of the source while it heats the store, where it is known
    bool by_table = false;                          ///< that capacity is the maker's, at the temperature that it then makes
    std::optional<HeatLossCoefficient> transfer;    ///< of coil or plate with the flow through it
    std::optional<physics::Reheat> reheat;          ///< from the main's temperature to the stored; absent where it is never reached
    bool unreachable = false;                       ///< the coil cannot bring the store to its temperature with this flow
    std::optional<Temperature> flow_for_capacity;   ///< that passes the whole capacity into a store that is nearly hot
    FindingId coil;                    ///< figure: that flow temperature, limit: the source's; °C
    std::optional<Energy> standing_loss;            ///< a day
    std::optional<Duration> hours_a_day;            ///< that the source is taken from the heating
    std::optional<Power> load_with_hot_water;       ///< heating load that the source must make in the hours left, on the design day
    std::optional<physics::PasteurisationUse> hot_cycle;
    Energy heat_a_year;                             ///< drawn and, where stated, lost standing
    std::optional<Energy> electricity_a_year;       ///< for it and the hot cycles; only with a season whose weather the table covers
    bool needs_immersion = false;                   ///< a hot cycle is wanted that the source cannot reach, and nothing else is there
};

/// Adds what it checks to `findings`.
[[nodiscard]] std::optional<HotWaterPlan> plan_hot_water(const job::Job& values, const Design& design, Findings& findings,
                                                 std::vector<Refusal>& refusals, Trace* trace = nullptr);

/// Fills `electricity_a_year`: heat spread evenly over 8,760 hours, at the maker's performance at each outdoor temperature of
/// the season with the flow temperature for hot water; hours that no bin has at the warmest one. Stays absent where the
/// maker's table does not reach one of them.
void find_hot_water_year(const job::Job& filled, const physics::Season& season, HotWaterPlan& plan, Trace* trace = nullptr);

}  // namespace loopfolio::design
