// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// The checks that make up a design, one a file. Each reads the filled job and what stands already, fills its own
// results, and writes its derivation where a trace is passed.

#include "loopfolio/design/design.hpp"

#include <span>

namespace loopfolio::design {

/// Heat loss of every room by each method that its survey allows, and the one adopted.
void find_room_losses(const job::Job& job, Design& design, Trace* trace);

/// Shares each room's loss among its emitters and finds what they give at the design temperatures.
void check_emitters(const job::Job& job, Design& design, Trace* trace);

/// What the rooms get: output against loss, and the temperature reached where it falls short.
void check_rooms(const job::Job& job, Design& design);

/// The pipework directed away from the source, and where each emitter hangs in it.
struct TreeIndex {
    std::vector<int> order;          ///< nodes, each after its parent
    std::vector<int> parent_node;    ///< by node
    std::vector<int> emitter_node;   ///< by emitter
};

/// Load, flow, velocity, pressure drop, capacity and remedies of every section.
void check_sections(const job::Job& job, Design& design, const TreeIndex& tree, Trace* trace);

/// The index circuit, the duty, and the plant that has to give it.
void check_duty(const job::Job& job, Design& design, const TreeIndex& tree, Trace* trace);

/// Fills what a section leaves out from the tables of its pipe.
void fill_section(job::Section& section);

/// Verdict on something that must be at least `needed`: kept from `needed` on, noted down to
/// `needed (1 - tolerance)`.
[[nodiscard]] Finding at_least(Check check, double figure, double needed, double tolerance);

/// Verdict on something that must be at most `limit`: noted above `preferred`.
[[nodiscard]] Finding at_most(Check check, double figure, double preferred, double limit);

/// Sum of loss factors of fittings on one pipe; inserts not included.
[[nodiscard]] double loss_factor(std::span<const job::FittingCount> fittings);
/// How many of them are joints, which narrow a pipe that has inserts.
[[nodiscard]] int joints(std::span<const job::FittingCount> fittings);

}  // namespace loopfolio::design
