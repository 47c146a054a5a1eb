// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace loopfolio::network {

/// An undirected edge between two nodes, by index.
struct Edge {
    int a = 0;
    int b = 0;
};

/// The direction in which water leaves the root over a set of edges that form a tree.
struct Tree {
    std::vector<int> order;        ///< nodes, each after its parent; the root first
    std::vector<int> parent_node;  ///< by node; -1 at the root
    std::vector<int> parent_edge;  ///< by node; -1 at the root
};

/// Directs the edges away from `root`. The time is linear in nodes and edges. Nothing where the edges do not connect
/// every node, or contain a ring.
[[nodiscard]] std::optional<Tree> grow_tree(int nodes, std::span<const Edge> edges, int root);

}  // namespace loopfolio::network
