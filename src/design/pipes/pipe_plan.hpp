// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/network/balance.hpp"
#include "loopfolio/network/build.hpp"

namespace loopfolio::design {

/// A job's circulator as the network room runs it. Without curve, set point or circulator: a constant `otherwise`.
[[nodiscard]] network::Pump pump_of(const std::optional<job::Circulator>& circulator, Pressure otherwise);

/// Whether a circulator says what it gives.
[[nodiscard]] bool describes_itself(const std::optional<job::Circulator>& circulator);

/// The pipework of a filled job as the network room sees it. Needs the junctions' numbers and the emitters' rooms of
/// `design`. Pumps that do not describe themselves give the head that the design found for them.
[[nodiscard]] network::Plan plan_of(const job::Job& job, const Design& design);

/// The emitters that get their design flow, and the pumps that are sized for it. An emitter on a one-pipe loop is left
/// out: the loop's flow is given, and what its tees let through is a result. `emitters` says which emitter each entry is;
/// entries beyond it are the valves of mixing sets.
struct DesignTask {
    network::BalanceTask task;
    std::vector<int> emitters;
};
[[nodiscard]] DesignTask task_of(const job::Job& job, const Design& design, const network::BuiltNetwork& built);

/// Shuts the emitters that nothing is asked of: those of rooms without heat loss.
void close_unused(const Design& design, network::BuiltNetwork& built);

}  // namespace loopfolio::design
