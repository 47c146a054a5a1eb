// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/finding.hpp"
#include "loopfolio/network/pipework.hpp"

#include <utility>
#include <vector>

namespace loopfolio::network {

/// What follows from how the network hangs together alone; found once and kept while it stays the same.
struct Topology {
    std::vector<std::pair<int, int>> ends;   // by link
    std::vector<char> open;                  // by link
    std::vector<int> part;                   // by node: which connected part
    std::vector<int> zero_node;              // by part: where its pressure is zero
    std::vector<int> unknown;   // by node: its place among the unknown pressures; -1 at a zero node
    int unknowns = 0;
    std::vector<char> on_circuit;            // by link: some circuit of open links passes through it
    std::vector<char> on_shut_circuit;       // by link: ... or would with every link open
};

/// Whether `t` was made for a network that hangs together like this one, zero node included.
[[nodiscard]] bool fits(const Topology& t, const Pipework& pipework);

[[nodiscard]] Topology topology_of(const Pipework& pipework);

/// What the topology, the pumps and the drawn flows say before anything is solved.
[[nodiscard]] Findings findings_of(const Topology& t, const Pipework& pipework);

}  // namespace loopfolio::network
