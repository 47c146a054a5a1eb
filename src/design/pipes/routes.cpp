// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "design/pipes/network_routes.hpp"
#include "loopfolio/network/tree.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_map>

namespace loopfolio::design {

namespace {

using Refusals = std::vector<Refusal>;

/// True for pairs of open pipes that connect only emitters and the heat source.
bool is_plain(const job::Job& job) {
    const auto plain_section = [](const job::Section& s) {
        return s.carries == job::Carries::both && !s.closed && !s.heat_loss;
    };
    const auto plain_emitter = [](const job::Emitter& e) { return e.return_at.empty() || e.return_at == e.at; };
    const auto& h = job.heat_source;
    return job.mixers.empty() && job.further_circulators.empty() && std::ranges::all_of(job.sections, plain_section) &&
           std::ranges::all_of(job.emitters, plain_emitter) && (!h || h->return_at.empty() || h->return_at == h->at);
}

std::vector<network::Edge> edges_of(const Design& d) {
    std::vector<network::Edge> edges;
    edges.reserve(d.junctions.section_from.size());
    for (std::size_t i = 0; i < d.junctions.section_from.size(); ++i) {
        edges.push_back({d.junctions.section_from[i], d.junctions.section_to[i]});
    }
    return edges;
}

/// Sums the emitters' flows from the ends of the tree towards the source.
void add_up_flows(Design& d, const Routes& routes) {
    std::vector<MassFlow> at_node(d.nodes.size());
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        at_node[static_cast<std::size_t>(d.junctions.emitter_at[i])] += d.emitters[i].flow;
    }
    for (auto node = routes.order.rbegin(); node != routes.order.rend(); ++node) {
        const auto n = static_cast<std::size_t>(*node);
        if (routes.parent_node[n] < 0) continue;
        auto& section = d.sections[static_cast<std::size_t>(d.node_parent_section[n])];
        section.flow = section.flow_pipe.flow = section.return_pipe.flow = at_node[n];
        at_node[static_cast<std::size_t>(routes.parent_node[n])] += at_node[n];
    }
    d.duty.flow = at_node[static_cast<std::size_t>(d.source_node)];
}

Routes tree_routes(Design& d, network::Tree tree) {
    d.node_parent_section = d.node_return_section = tree.parent_edge;
    for (std::size_t n = 0; n < d.nodes.size(); ++n) {
        if (tree.parent_edge[n] < 0) continue;
        auto& section = d.sections[static_cast<std::size_t>(tree.parent_edge[n])];
        section.upstream = tree.parent_node[n];
        section.downstream = static_cast<int>(n);
    }
    Routes out;
    out.order = std::move(tree.order);
    out.parent_node = std::move(tree.parent_node);
    add_up_flows(d, out);
    return out;
}

}  // namespace

void number_junctions(const job::Job& job, Design& d) {
    std::unordered_map<std::string_view, int> index;
    d.nodes.reserve(job.sections.size() + 1);
    const auto number = [&](const std::string& name) {
        const auto [at, added] = index.try_emplace(name, static_cast<int>(d.nodes.size()));
        if (added) d.nodes.push_back(name);
        return at->second;
    };
    const auto or_else = [](const std::string& a, const std::string& b) -> const std::string& {
        return a.empty() ? b : a;
    };
    auto& j = d.junctions;
    d.source_node = j.source_at = number(job.heat_source ? job.heat_source->at : job.sections.front().from);
    j.source_return = job.heat_source ? number(or_else(job.heat_source->return_at, job.heat_source->at)) : j.source_at;
    for (const auto& s : job.sections) {
        j.section_from.push_back(number(s.from));
        j.section_to.push_back(number(s.to));
    }
    for (const auto& e : job.emitters) {
        j.emitter_at.push_back(number(e.at));
        j.emitter_return.push_back(number(or_else(e.return_at, e.at)));
    }
    for (const auto& m : job.mixers) {
        j.mixer_from.push_back(number(m.from));
        j.mixer_to.push_back(number(m.to));
    }
}

std::optional<Routes> find_routes(const job::Job& job, Design& d, Refusals& refusals) {
    d.sections.resize(job.sections.size());
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        d.sections[i].pipes = job.sections[i].carries == job::Carries::both ? 2 : 1;
    }
    const auto edges = edges_of(d);
    auto tree = network::grow_tree(static_cast<int>(d.nodes.size()), edges, d.source_node);
    d.tree = tree.has_value() && job.mixers.empty() &&
             std::ranges::all_of(d.sections, [](const SectionResult& s) { return s.pipes == 2; });
    if (tree && is_plain(job)) return tree_routes(d, *std::move(tree));
    return network_routes(job, d, refusals);
}

}  // namespace loopfolio::design
