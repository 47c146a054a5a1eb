// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/tree.hpp"

namespace loopfolio::network {

namespace {

/// Edges by node, packed: the edges of node n are in `edge` from `first[n]` up to `first[n + 1]`.
struct Incidence {
    std::vector<int> first;
    std::vector<int> edge;
};

Incidence incidence_of(int nodes, std::span<const Edge> edges) {
    Incidence in;
    in.first.assign(static_cast<std::size_t>(nodes) + 1, 0);
    for (const auto& e : edges) {
        ++in.first[static_cast<std::size_t>(e.a) + 1];
        ++in.first[static_cast<std::size_t>(e.b) + 1];
    }
    for (std::size_t n = 1; n < in.first.size(); ++n) in.first[n] += in.first[n - 1];
    in.edge.resize(edges.size() * 2);
    std::vector<int> next(in.first.begin(), in.first.end() - 1);
    for (std::size_t i = 0; i < edges.size(); ++i) {
        for (const int node : {edges[i].a, edges[i].b}) {
            in.edge[static_cast<std::size_t>(next[static_cast<std::size_t>(node)]++)] = static_cast<int>(i);
        }
    }
    return in;
}

}  // namespace

std::optional<Tree> grow_tree(int nodes, std::span<const Edge> edges, int root) {
    if (nodes < 1 || root < 0 || root >= nodes || edges.size() + 1 != static_cast<std::size_t>(nodes)) return {};
    const Incidence in = incidence_of(nodes, edges);
    const auto n = static_cast<std::size_t>(nodes);
    Tree tree{{root}, std::vector<int>(n, -1), std::vector<int>(n, -1)};
    tree.order.reserve(n);
    std::vector<bool> seen(n, false);
    seen[static_cast<std::size_t>(root)] = true;
    for (std::size_t at = 0; at < tree.order.size(); ++at) {
        const int node = tree.order[at];
        const auto from = static_cast<std::size_t>(in.first[static_cast<std::size_t>(node)]);
        const auto to = static_cast<std::size_t>(in.first[static_cast<std::size_t>(node) + 1]);
        for (std::size_t k = from; k < to; ++k) {
            const Edge& e = edges[static_cast<std::size_t>(in.edge[k])];
            const int other = e.a == node ? e.b : e.a;
            if (seen[static_cast<std::size_t>(other)]) continue;
            seen[static_cast<std::size_t>(other)] = true;
            tree.parent_node[static_cast<std::size_t>(other)] = node;
            tree.parent_edge[static_cast<std::size_t>(other)] = in.edge[k];
            tree.order.push_back(other);
        }
    }
    // With one edge fewer than nodes and every node reached, there can be no ring.
    if (tree.order.size() != n) return {};
    return tree;
}

}  // namespace loopfolio::network
