// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// The installer's tables, each of a few blocks.
namespace loopfolio::report {

/// What is new and what has to change, with the finding and the remedy.
[[nodiscard]] Blocks work_list(const Context& context);
/// How many verdicts of each kind there are.
[[nodiscard]] Table verdict_tally(const Context& context);

[[nodiscard]] Blocks room_schedule(const Context& context);
[[nodiscard]] Blocks emitter_schedule(const Context& context);
[[nodiscard]] Blocks section_schedule(const Context& context);
[[nodiscard]] Blocks capacity_schedule(const Context& context);
[[nodiscard]] Blocks index_circuit(const Context& context);
[[nodiscard]] Facts duty_facts(const Context& context);
/// Heat source output and heat loss against the outdoor temperature. Empty if the manufacturer's table gives no
/// capacity.
[[nodiscard]] Blocks source_chart(const Context& context);
[[nodiscard]] Facts fluid_facts(const Context& context);

/// The pipework as a tree, with a second tree for return pipes that run separately. An emitter alone at the end of a
/// pipe is drawn as one node with that end. A pipe that closes a ring ends with the name of the junction that it joins.
[[nodiscard]] Blocks pipe_drawings(const Context& context);
[[nodiscard]] PipeTree drawing_joined_at(const Context& context, const design::Design& design,
                                         const std::string& junction);

/// How the system really runs: states, curves, pipes that stay, where to join pipes, and how much more load the pipes
/// could carry.
[[nodiscard]] Blocks states_in_figures(const Context& context);
[[nodiscard]] Blocks choices(const Context& context);
/// Both sides of a separation, and the mixing sets. Empty if there are none.
[[nodiscard]] Blocks separation_facts(const Context& context);
/// The order of work and the setting of each valve.
[[nodiscard]] Table balancing_table(const Context& context);
/// The residuals of the equations of each state; no rows if no water flows.
[[nodiscard]] Table states_residuals(const Context& context);
/// One plain sentence on what happens on the design day if nothing is changed.
[[nodiscard]] std::string if_nothing_is_changed(const Context& context);
/// The same with the changes made and everything set. Empty if every room is then warm enough.
[[nodiscard]] std::string if_all_is_changed(const Context& context);

/// Checklists and tables to fill in on site, in the order of the work.
[[nodiscard]] Blocks commissioning(const Context& context);

}  // namespace loopfolio::report
