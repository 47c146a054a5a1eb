// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "loopfolio/reference/pipes.hpp"
#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using Node = PipeTree::Node;

/// What hangs on each node of the pipework.
struct Hanging {
    std::vector<std::vector<std::size_t>> sections;   ///< going out, by upstream node
    std::vector<std::vector<std::size_t>> emitters;
};

Hanging hanging(const Context& c) {
    Hanging h;
    h.sections.resize(c.design.nodes.size());
    h.emitters.resize(c.design.nodes.size());
    for (std::size_t i = 0; i < c.design.sections.size(); ++i) {
        h.sections.at(static_cast<std::size_t>(c.design.sections[i].upstream)).push_back(i);
    }
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        const auto at = std::find(c.design.nodes.begin(), c.design.nodes.end(), c.job.emitters[i].at);
        if (at != c.design.nodes.end())
            h.emitters[static_cast<std::size_t>(at - c.design.nodes.begin())].push_back(i);
    }
    return h;
}

Length widest_bore(const Context& c) {
    Length widest;
    for (const auto& section : c.job.sections) widest = std::max(widest, section.bore.value);
    return widest;
}

void describe_emitter(const Context& c, std::size_t i, Node& node) {
    const auto& result = c.design.emitters[i];
    node.kind = Node::Kind::emitter;
    node.label = c.job.emitters[i].id + " " + name_of(room_of(c, result));
    node.detail =
        text(result.load, unit::watt, 0) + " · " + text(result.volume_flow, unit::litre_per_minute, 1);
    node.emitter_verdict = result.finding.verdict;
}

Node emitter_leaf(const Context& c, std::size_t i, int parent) {
    Node node;
    describe_emitter(c, i, node);
    node.parent = parent;
    node.pipe_weight = 0.0;
    node.existing = c.job.emitters[i].existing;
    node.on_index_circuit = static_cast<int>(i) == c.design.duty.index_emitter;
    return node;
}

Node section_end(const Context& c, std::size_t i, int parent, Length widest) {
    const auto& section = c.job.sections[i];
    const auto& result = c.design.sections[i];
    Node node;
    node.label = node_label(c, result.downstream);
    node.parent = parent;
    node.pipe_label =
        section.id + " · " + pipe_label(section.pipe) + " · " + text(result.load, unit::kilowatt, 1);
    node.pipe_weight = widest.si() > 0.0 ? section.bore.value / widest : 1.0;
    node.verdict = result.verdict;
    node.on_index_circuit = result.on_index_circuit;
    node.existing = section.existing;
    return node;
}

/// Sections still to be drawn, with the drawn node that they leave from.
struct Pending {
    std::size_t section;
    int parent;
};

/// Puts what hangs on `node`, already drawn as `drawn`, into the tree: emitters now, sections onto the pile,
/// the first of them on top.
void hang(const Context& c, const Hanging& h, std::size_t node, int drawn, PipeTree& tree,
          std::vector<Pending>& pile) {
    for (const std::size_t emitter : h.emitters[node]) tree.nodes.push_back(emitter_leaf(c, emitter, drawn));
    for (auto section = h.sections[node].rbegin(); section != h.sections[node].rend(); ++section) {
        pile.push_back({*section, drawn});
    }
}

}   // namespace

PipeTree pipe_tree(const Context& c) {
    const Hanging h = hanging(c);
    const Length widest = widest_bore(c);
    PipeTree tree;
    tree.caption = "The pipework as it leaves the heat source";
    Node source;
    source.kind = Node::Kind::source;
    source.label = capital(c.job.heat_source ? name_of(*c.job.heat_source) : "heat source");
    source.detail = fixed(c.design.flow.celsius(), 0) + " / " + text(c.design.return_, unit::celsius, 0) +
                    " · " + text(c.design.duty.volume_flow, unit::litre_per_minute, 1);
    tree.nodes.push_back(std::move(source));
    std::vector<Pending> pile;
    hang(c, h, static_cast<std::size_t>(c.design.source_node), 0, tree, pile);
    while (!pile.empty()) {
        const Pending next = pile.back();
        pile.pop_back();
        tree.nodes.push_back(section_end(c, next.section, next.parent, widest));
        const auto end = static_cast<std::size_t>(c.design.sections[next.section].downstream);
        const int drawn = static_cast<int>(tree.nodes.size()) - 1;
        if (h.sections[end].empty() && h.emitters[end].size() == 1) {
            describe_emitter(c, h.emitters[end].front(), tree.nodes.back());
        } else {
            hang(c, h, end, drawn, tree, pile);
        }
    }
    tree.alternative = "Tree of " + count_of(c.job.sections.size(), "section", "sections") + " and " +
                       count_of(c.job.emitters.size(), "emitter", "emitters") +
                       ", from the heat source outwards; the schedule of sections holds the same figures.";
    return tree;
}

}   // namespace loopfolio::report
