// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/finding.hpp"
#include "loopfolio/network/pipework.hpp"

#include <utility>
#include <vector>

namespace loopfolio::network {

/// Everything that follows from the connections of the network alone. It is found once and kept while they stay the
/// same.
struct Topology {
    std::vector<std::pair<int, int>> ends;  // by link
    std::vector<char> open;                 // by link
    std::vector<int> part;                  // by node: index of its connected part
    std::vector<int> zero_node;             // by part: node with zero pressure
    std::vector<int> unknown;  // by node: its index among the unknown pressures; -1 at a node with zero pressure
    int unknowns = 0;
    std::vector<char> on_circuit;       // by link: some circuit of open links passes through it
    std::vector<char> on_shut_circuit;  // by link: a circuit passes through it if every link is open
};

/// Whether `t` was made for a network with the same connections and reference node as this one.
[[nodiscard]] bool fits(const Topology& t, const Pipework& pipework);

[[nodiscard]] Topology topology_of(const Pipework& pipework);

/// Findings that follow from the topology, the pumps and the drawn flows before anything is solved.
[[nodiscard]] Findings findings_of(const Topology& t, const Pipework& pipework);

}  // namespace loopfolio::network
