// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// The parts of an operation, one in each file.

#include "design/pipes/pipe_plan.hpp"
#include "loopfolio/design/operation.hpp"

namespace loopfolio::design {

/// A request for one state of a job and its design: with these valves set, or with every valve open.
struct StateTask {
    StateKind kind{};
    const job::Job& job;
    const Design& design;
    const Balancing* valves = nullptr;
    Extent extent = Extent::whole;
};
[[nodiscard]] std::optional<State> solve_state(const StateTask& task, network::Workspace& workspace,
                                               std::vector<Refusal>& refusals);

[[nodiscard]] std::optional<Balancing> balance_design(const job::Job& job, const Design& design,
                                                      network::Workspace& workspace, std::vector<Refusal>& refusals);

[[nodiscard]] std::vector<JoinOption> compare_joins(const job::Job& job, const Design& design);
[[nodiscard]] std::optional<Design> design_joined_at(const job::Job& job, const std::string& junction,
                                                     Remedies remedies = Remedies::sought);
[[nodiscard]] int best_of(const std::vector<JoinOption>& joins);

[[nodiscard]] std::vector<KeptPipe> keep_pipes(const job::Job& job, const Design& design);

[[nodiscard]] std::vector<LoadCapacity> find_capacities(const job::Job& job, const Design& design);

}  // namespace loopfolio::design
