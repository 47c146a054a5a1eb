// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/network/balance.hpp"
#include "loopfolio/network/build.hpp"

namespace loopfolio::design {

/// A job's pump as the network module runs it. Without a curve, a set point or a pump, its head is the constant
/// `otherwise`.
[[nodiscard]] network::Pump pump_of(const std::optional<job::Circulator>& circulator, Pressure otherwise);

/// Whether the job says what head a pump gives.
[[nodiscard]] bool describes_itself(const std::optional<job::Circulator>& circulator);

/// The pipework of a filled job as the network module sees it. Needs the numbers of junctions and the rooms of emitters
/// from `design`. Pumps without a curve or set point give the head that the design found for them.
[[nodiscard]] network::Plan plan_of(const job::Job& job, const Design& design);

/// The emitters that get their design flow, and the pumps that are sized for it. Emitters on a one-pipe loop are left
/// out: the loop's flow is given, and the flow that its tees pass through them is a result. `emitters` says which
/// emitter each entry is; entries beyond its end are the valves of mixing sets.
struct DesignTask {
    network::BalanceTask task;
    std::vector<int> emitters;
};
[[nodiscard]] DesignTask task_of(const job::Job& job, const Design& design, const network::BuiltNetwork& built);

/// Shuts the emitters that have no load: those of rooms without heat loss.
void close_unused(const Design& design, network::BuiltNetwork& built);

}  // namespace loopfolio::design
