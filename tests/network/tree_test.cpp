// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/tree.hpp"

#include "support/catch.hpp"

using namespace loopfolio::network;

TEST_CASE("a tree is directed away from its root, whichever way its edges were written") {
    const std::vector<Edge> edges{{1, 0}, {1, 2}, {3, 1}};
    const auto tree = grow_tree(4, edges, 0);
    REQUIRE(tree);
    CHECK(tree->order.front() == 0);
    CHECK(tree->parent_node == std::vector<int>{-1, 0, 1, 1});
    CHECK(tree->parent_edge == std::vector<int>{-1, 0, 1, 2});
}

TEST_CASE("what is not one tree is refused") {
    CHECK_FALSE(grow_tree(3, std::vector<Edge>{{0, 1}}, 0));                  // a node on its own
    CHECK_FALSE(grow_tree(3, std::vector<Edge>{{0, 1}, {1, 2}, {2, 0}}, 0));  // a ring
    CHECK_FALSE(grow_tree(4, std::vector<Edge>{{0, 1}, {2, 3}, {2, 3}}, 0));  // a ring apart
    CHECK_FALSE(grow_tree(2, std::vector<Edge>{{0, 0}}, 0));                  // from a node to itself
    CHECK_FALSE(grow_tree(0, {}, 0));
    CHECK_FALSE(grow_tree(2, std::vector<Edge>{{0, 1}}, 5));  // a root that is not there
    CHECK(grow_tree(1, {}, 0));
}
