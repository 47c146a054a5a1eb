// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "layout/strip.hpp"
#include "layout/text_flow.hpp"
#include "loopfolio/report/document.hpp"

#include <vector>

/// The pipe tree. From each node, the child with most emitters beyond it continues straight down as the main; the
/// others branch off to the right, each on its own row. A branch has at most half of its parent's emitters, so n
/// emitters need at most log2(n) columns, however long the main is, and pipes never cross. The drawing is as tall as it
/// has rows, and a page may end between any two rows.
namespace loopfolio::layout {

/// The tree's shape; indices are those of the report's nodes.
struct TreeShape {
    struct Node {
        int main = -1;              ///< child that continues downwards; -1 if none does
        std::vector<int> branches;  ///< children to the right, from the top
        int column = 0;             ///< number of turns to the right on the way from the source
    };
    std::vector<Node> nodes;
    int columns = 0;  ///< highest column
};

/// A node whose parent is not before it in the list becomes a child of the source.
[[nodiscard]] TreeShape shape_of(const report::PipeTree& tree);

struct TreePlan {
    TextStyle label, bold, detail;
    std::vector<double> x;          ///< of the mains in each column; one more for the last branches' ends
    double pipe_label_width = 0.0;  ///< widest line over a branch
    double node_label_width = 0.0;  ///< widest line of a junction's label
};
/// Type size, at most `largest_type`, and column positions that fit the frame.
[[nodiscard]] TreePlan plan_tree(const report::PipeTree& tree, const TreeShape& shape, double largest_type,
                                 const Setting& setting);

// What the plan and the drawing share.
inline constexpr double tree_sign = 6.6;  ///< size of a verdict's sign on a pipe
inline constexpr double tree_sign_room = 12.0;
inline constexpr double tree_pad = 6.0;  ///< between a label and the nodes beside it
inline constexpr std::size_t tree_label_lines = 3;

}  // namespace loopfolio::layout
