// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/parts.hpp"

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
[[nodiscard]] Facts fluid_facts(const Context& context);

/// The pipework as a tree: an emitter alone at the end of a pipe is one node with it.
[[nodiscard]] PipeTree pipe_tree(const Context& context);

/// Checklists and tables to fill in on site, in the order of the work.
[[nodiscard]] Blocks commissioning(const Context& context);

/// What stands less firmly, one line for each caveat that the design carries; empty if there is none.

}   // namespace loopfolio::report
