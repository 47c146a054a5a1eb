// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/schedules.hpp"

#include "loopfolio/reference/pipes.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/common.hpp"
#include "texts/pipe_tree.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::pipe_tree;
using Node = PipeTree::Node;

/// The layer of the pipework to draw. If flow and return run together, one drawing shows both.
enum class Layer { flow, return_ };

/// A pipework and its design, which need not be those of the pack.
struct Drawn {
    const Context& c;
    const design::Design& design;
    Layer layer = Layer::flow;

    [[nodiscard]] bool shows(std::size_t section) const {
        const auto carries = c.job.sections[section].carries;
        return layer == Layer::flow ? carries != job::Carries::return_ : carries == job::Carries::return_;
    }
    [[nodiscard]] const std::vector<int>& parents() const {
        return layer == Layer::flow ? design.node_parent_section : design.node_return_section;
    }
    [[nodiscard]] std::string name(int node) const {
        const auto& names = design.nodes;
        return node < 0 ? std::string{} : names.at(static_cast<std::size_t>(node));
    }
};

/// What is connected to each node of the pipework.
struct Hanging {
    std::vector<std::vector<std::size_t>> sections;  ///< that leave the node, by upstream node
    std::vector<std::vector<std::size_t>> emitters;
    std::vector<std::vector<std::size_t>> mixers;  ///< by the node from which they draw
};

Hanging hanging(const Drawn& d) {
    Hanging h;
    h.sections.resize(d.design.nodes.size());
    h.emitters.resize(d.design.nodes.size());
    h.mixers.resize(d.design.nodes.size());
    for (std::size_t i = 0; i < d.design.sections.size(); ++i) {
        if (d.shows(i)) h.sections.at(static_cast<std::size_t>(d.design.sections[i].upstream)).push_back(i);
    }
    const auto& junctions = d.design.junctions;
    for (std::size_t i = 0; i < d.c.job.emitters.size(); ++i) {
        const int at = d.layer == Layer::flow ? junctions.emitter_at[i] : junctions.emitter_return[i];
        h.emitters[static_cast<std::size_t>(at)].push_back(i);
    }
    for (std::size_t i = 0; i < d.c.job.mixers.size(); ++i) {
        if (d.layer == Layer::flow) h.mixers[static_cast<std::size_t>(junctions.mixer_from[i])].push_back(i);
    }
    return h;
}

Length widest_bore(const Context& c) {
    Length widest;
    for (const auto& section : c.job.sections) widest = std::max(widest, section.bore.value);
    return widest;
}

void describe_emitter(const Drawn& d, std::size_t i, Node& node) {
    const auto& result = d.design.emitters[i];
    node.kind = Node::Kind::emitter;
    node.label = d.c.job.emitters[i].id + " " + name_of(room_of(d.c, result));
    node.detail = text(result.load, unit::watt, 0) + " · " + text(result.volume_flow, unit::litre_per_minute, 1);
    node.emitter_verdict = d.design.verdict_of(result.finding);
}

Node emitter_leaf(const Drawn& d, std::size_t i, int parent) {
    Node node;
    describe_emitter(d, i, node);
    node.parent = parent;
    node.pipe_weight = 0.0;
    node.existing = d.c.job.emitters[i].existing;
    node.on_index_circuit = static_cast<int>(i) == d.design.duty.index_emitter;
    return node;
}

Node section_end(const Drawn& d, std::size_t i, int parent, Length widest) {
    const auto& section = d.c.job.sections[i];
    const auto& result = d.design.sections[i];
    Node node;
    node.label = d.name(result.downstream);
    node.parent = parent;
    node.pipe_label = section.id + " · " + pipe_label(d.c, section.pipe) + " · " + text(result.load, unit::kilowatt, 1);
    node.pipe_weight = widest.si() > 0.0 ? section.bore.value / widest : 1.0;
    node.verdict = result.verdict;
    node.on_index_circuit = result.on_index_circuit;
    node.existing = section.existing;
    return node;
}

/// Something still to be drawn, a section or a mixing set, with the drawn node that it leaves from.
struct Pending {
    std::size_t index;
    int parent;
    bool mixer = false;
};

/// Adds to the tree what is connected to `node`, which is already drawn as `drawn`: emitters at once, the rest to the
/// stack with the first of it at the top.
void hang(const Drawn& d, const Hanging& h, std::size_t node, int drawn, PipeTree& tree, std::vector<Pending>& pile) {
    for (const std::size_t emitter : h.emitters[node]) tree.nodes.push_back(emitter_leaf(d, emitter, drawn));
    for (const std::size_t mixer : h.mixers[node]) pile.push_back({mixer, drawn, true});
    for (auto section = h.sections[node].rbegin(); section != h.sections[node].rend(); ++section) {
        pile.push_back({*section, drawn, false});
    }
}

Node mixing_node(const Drawn& d, std::size_t i, int parent) {
    const auto& result = d.design.mixers[i];
    Node node;
    node.parent = parent;
    node.label = d.c.words(mixing_set{.mixer = d.c.job.mixers[i].id});
    node.detail = text(result.flow, unit::celsius, 0) + " · " + text(result.sent, unit::litre_per_minute, 1);
    node.pipe_label = d.c.words(mixing_draws{.flow = text(result.drawn, unit::litre_per_minute, 1)});
    return node;
}

/// Draws one section. Returns the node to continue from, or -1 if the section closes a ring or returns to the source.
int draw_section(const Drawn& d, const Hanging& h, const Pending& next, Length widest, PipeTree& tree) {
    const auto& section = d.design.sections[next.index];
    tree.nodes.push_back(section_end(d, next.index, next.parent, widest));
    auto& node = tree.nodes.back();
    const auto end = static_cast<std::size_t>(section.downstream);
    if (d.parents()[end] != static_cast<int>(next.index)) {
        node.kind = Node::Kind::joint;
        const bool home = section.downstream == d.design.source_node ||
                          section.downstream == d.design.junctions.source_return;
        node.label = home ? d.c.words(back_to_source{}) : d.c.words(on_to{.junction = d.name(section.downstream)});
        return -1;
    }
    if (h.sections[end].empty() && h.mixers[end].empty() && h.emitters[end].size() == 1) {
        describe_emitter(d, h.emitters[end].front(), node);
        return -1;
    }
    return section.downstream;
}

PipeTree draw(const Drawn& d, std::string caption, int root) {
    const Hanging h = hanging(d);
    const Length widest = widest_bore(d.c);
    PipeTree tree;
    tree.caption = std::move(caption);
    Node source;
    source.kind = Node::Kind::source;
    source.label = capital(d.c.job.heat_source ? name_of(d.c, *d.c.job.heat_source)
                                               : d.c.words(texts::common::heat_source{}));
    source.detail = fixed(d.design.flow.celsius(), 0) + " / " + text(d.design.duty.back, unit::celsius, 0) + " · " +
                    text(d.design.duty.volume_flow, unit::litre_per_minute, 1);
    tree.nodes.push_back(std::move(source));
    std::vector<Pending> pile;
    hang(d, h, static_cast<std::size_t>(root), 0, tree, pile);
    while (!pile.empty()) {
        const Pending next = pile.back();
        pile.pop_back();
        int node = -1;
        if (next.mixer) {
            tree.nodes.push_back(mixing_node(d, next.index, next.parent));
            node = d.design.junctions.mixer_to[next.index];
        } else {
            node = draw_section(d, h, next, widest, tree);
        }
        const int drawn = static_cast<int>(tree.nodes.size()) - 1;
        if (node >= 0) hang(d, h, static_cast<std::size_t>(node), drawn, tree, pile);
    }
    tree.alternative = d.c.words(alternative{.sections = d.c.words(sections{.count = d.c.job.sections.size()}),
                                             .emitters = d.c.words(emitters{.count = d.c.job.emitters.size()})});
    return tree;
}

}  // namespace

Blocks pipe_drawings(const Context& c) {
    Blocks out;
    const auto& pipes = c.job.sections;
    const bool apart = std::any_of(pipes.begin(), pipes.end(),
                                   [](const auto& s) { return s.carries == job::Carries::return_; });
    out.push_back(draw({c, c.design, Layer::flow}, apart ? c.words(flow_caption{}) : c.words(pipework_caption{}),
                       c.design.source_node));
    if (apart) {
        out.push_back(draw({c, c.design, Layer::return_}, c.words(return_caption{}), c.design.junctions.source_return));
    }
    return out;
}

PipeTree drawing_joined_at(const Context& c, const design::Design& design, const std::string& junction) {
    return draw({c, design, Layer::flow}, c.words(joined_caption{.junction = junction}), design.source_node);
}

}  // namespace loopfolio::report
