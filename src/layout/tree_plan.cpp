// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/tree.hpp"

#include <algorithm>

namespace loopfolio::layout {

namespace {

struct Attempt {
    double size;        ///< of the type
    double pipe_label;  ///< longest line over a branch
};

// From roomy to tight; 6.5 pt is the smallest type.
constexpr double unbroken = 150.0;
constexpr Attempt attempts[] = {{8.4, unbroken}, {8.0, unbroken}, {7.6, unbroken}, {7.2, unbroken}, {7.6, 84.0},
                                {7.2, 76.0},     {6.8, unbroken}, {6.8, 60.0},     {6.5, 46.0},     {6.5, 34.0}};
constexpr double smallest_type = 6.5;
constexpr double node_label_most = 72.0;
constexpr double emitter_label_least = 92.0;

TreePlan styles_of(double size) {
    TreePlan plan;
    plan.label = {size, 1.18 * size, Face::regular, style::ink};
    plan.bold = style::in_face(plan.label, Face::bold);
    plan.detail = style::in_colour(plan.label, style::grey);
    return plan;
}

double label_width(const std::string& text, const TextStyle& style, double most, const TextMeasurer& measurer) {
    return widest(break_label(text, style, most, tree_label_lines, measurer));
}

/// The width that each column of branches needs, and the width for labels left of the first main.
struct Needs {
    std::vector<double> columns;
    double first = 0.0;
    double pipe_label = 0.0;
};

Needs needs_of(const report::PipeTree& tree, const TreeShape& shape, const TreePlan& plan, double pipe_label_most,
               const TextMeasurer& measurer) {
    Needs needs;
    needs.columns.assign(static_cast<std::size_t>(shape.columns), 0.0);
    for (std::size_t i = 1; i < tree.nodes.size(); ++i) {
        const auto column = static_cast<std::size_t>(shape.nodes[i].column);
        const bool leaf = shape.nodes[i].main < 0 && shape.nodes[i].branches.empty();
        double room = 0.0;
        if (!leaf) {
            room = label_width(tree.nodes[i].label, plan.bold, node_label_most, measurer) + 2.0 * tree_pad;
        }
        if (!leaf) {
            room = std::max(room,
                            label_width(tree.nodes[i].detail, plan.detail, node_label_most, measurer) + 2.0 * tree_pad);
        }
        if (column == 0) {
            needs.first = std::max(needs.first, room);
            continue;
        }
        const double label = label_width(tree.nodes[i].pipe_label, plan.label, pipe_label_most, measurer);
        needs.pipe_label = std::max(needs.pipe_label, label);
        needs.columns[column - 1] = std::max(
            {needs.columns[column - 1], room, label + tree_sign_room + 2.0 * tree_pad});
    }
    return needs;
}

}  // namespace

TreeShape shape_of(const report::PipeTree& tree) {
    const std::size_t count = tree.nodes.size();
    TreeShape shape;
    shape.nodes.resize(count);
    std::vector<std::vector<int>> children(count);
    std::vector<int> parent(count, 0), leaves(count, 0);
    for (std::size_t i = 1; i < count; ++i) {
        const int given = tree.nodes[i].parent;
        parent[i] = given >= 0 && static_cast<std::size_t>(given) < i ? given : 0;
        children[static_cast<std::size_t>(parent[i])].push_back(static_cast<int>(i));
    }
    for (std::size_t i = count; i-- > 0;) {
        if (children[i].empty()) leaves[i] = 1;
        if (i > 0) leaves[static_cast<std::size_t>(parent[i])] += leaves[i];
    }
    const auto leaves_of = [&](int node) { return leaves[static_cast<std::size_t>(node)]; };
    for (std::size_t i = 0; i < count; ++i) {
        auto& node = shape.nodes[i];
        node.branches = children[i];
        std::stable_sort(node.branches.begin(), node.branches.end(),
                         [&](int a, int b) { return leaves_of(a) < leaves_of(b); });
        // An end of the tree is always at the right, never below a main.
        const bool goes_on = !node.branches.empty() &&
                             !children[static_cast<std::size_t>(node.branches.back())].empty();
        if (goes_on) {
            node.main = node.branches.back();
            node.branches.pop_back();
            shape.nodes[static_cast<std::size_t>(node.main)].column = node.column;
        }
        for (const int branch : node.branches) {
            shape.nodes[static_cast<std::size_t>(branch)].column = node.column + 1;
        }
        if (!node.branches.empty()) shape.columns = std::max(shape.columns, node.column + 1);
    }
    return shape;
}

TreePlan plan_tree(const report::PipeTree& tree, const TreeShape& shape, double largest_type, const Setting& setting) {
    constexpr double least_first = 10.0;
    for (const Attempt& attempt : attempts) {
        if (attempt.size > largest_type) continue;
        TreePlan plan = styles_of(attempt.size);
        const Needs needs = needs_of(tree, shape, plan, attempt.pipe_label, setting.measurer);
        plan.pipe_label_width = needs.pipe_label + 0.01;
        plan.node_label_width = node_label_most;
        plan.x.push_back(std::max(least_first, needs.first));
        for (const double room : needs.columns) plan.x.push_back(plan.x.back() + room);
        if (plan.x.back() + emitter_label_least <= setting.width) return plan;
    }
    // Deeper than the tree of any house: columns share the width, and labels are cut to fit.
    TreePlan plan = styles_of(smallest_type);
    const double columns = static_cast<double>(shape.columns) + 1.0;
    const double step = (setting.width - 0.6 * emitter_label_least) / columns;
    for (int c = 0; c <= shape.columns; ++c) plan.x.push_back(step * (static_cast<double>(c) + 1.0));
    plan.pipe_label_width = std::max(smallest_type, step - tree_sign_room - 2.0 * tree_pad);
    plan.node_label_width = std::max(smallest_type, step - 2.0 * tree_pad);
    return plan;
}

}  // namespace loopfolio::layout
