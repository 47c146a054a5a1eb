// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// The installer's tables, each a few blocks.
namespace loopfolio::report {

/// What is new and what has to change, with finding and remedy.
[[nodiscard]] Blocks work_list(const Context& context);
/// How many verdicts of each kind there are.
[[nodiscard]] Table verdict_tally(const Context& context);

[[nodiscard]] Blocks room_schedule(const Context& context);
[[nodiscard]] Blocks emitter_schedule(const Context& context);
[[nodiscard]] Blocks section_schedule(const Context& context);
[[nodiscard]] Blocks capacity_schedule(const Context& context);
[[nodiscard]] Blocks index_circuit(const Context& context);
[[nodiscard]] Facts duty_facts(const Context& context);
/// What the source can make and the house needs, against the weather; empty where the maker's table states no capacity.
[[nodiscard]] Blocks source_chart(const Context& context);
[[nodiscard]] Facts fluid_facts(const Context& context);

/// The pipework as a tree, with a second one for return pipes that run apart: an emitter alone at the end of a pipe is one
/// node with it, and a pipe that closes a ring ends where it names the junction that it goes on to.
[[nodiscard]] Blocks pipe_drawings(const Context& context);
[[nodiscard]] PipeTree drawing_joined_at(const Context& context, const design::Design& design, const std::string& junction);

/// What the water really does: states, curves, pipes that stay, where to join, how much more load could be carried.
[[nodiscard]] Blocks states_in_figures(const Context& context);
[[nodiscard]] Blocks choices(const Context& context);
/// Both sides of a separation, and mixing sets; empty where there are none.
[[nodiscard]] Blocks separation_facts(const Context& context);
/// The order of work and what each valve is set to.
[[nodiscard]] Table balancing_table(const Context& context);
/// How closely the equations of each state are met; no rows where nothing flows.
[[nodiscard]] Table states_residuals(const Context& context);
/// One plain sentence: what happens on the design day if nothing is changed.
[[nodiscard]] std::string if_nothing_is_changed(const Context& context);
/// The same for the changes made and everything set; empty where every room is then warm enough.
[[nodiscard]] std::string if_all_is_changed(const Context& context);

/// Checklists and tables to fill in on site, in the order of the work.
[[nodiscard]] Blocks commissioning(const Context& context);

}   // namespace loopfolio::report
