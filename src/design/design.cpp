// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/design.hpp"

#include "design/parts.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/network/tree.hpp"

#include <fmt/format.h>

#include <string_view>
#include <unordered_map>

namespace loopfolio::design {

namespace {

using Refusals = std::vector<Refusal>;

physics::FluidKind kind_of(job::FluidName name) {
    switch (name) {
        case job::FluidName::water: return physics::FluidKind::water;
        case job::FluidName::propylene_glycol: return physics::FluidKind::propylene_glycol;
        case job::FluidName::ethylene_glycol: return physics::FluidKind::ethylene_glycol;
    }
    return physics::FluidKind::water;
}

void set_fluid(const job::Job& job, Design& d, Refusals& refusals) {
    d.fluid.kind = kind_of(job.fluid.kind);
    if (d.fluid.kind != physics::FluidKind::water) {
        const double stated = job.fluid.concentration.value;
        const auto mass = job.fluid.basis == job::ConcentrationBasis::mass
                              ? std::optional<double>{stated}
                              : physics::mass_fraction_from_volume(d.fluid.kind, stated);
        if (!mass) {
            refusals.push_back({"fluid.concentration_percent", job.fluid.concentration.place,
                                "lies outside the table that turns a volume share into a mass share", ""});
            return;
        }
        d.fluid.mass_fraction = *mass;
        d.freezing = physics::freezing_point(d.fluid.kind, *mass);
    }
    const auto state = physics::state_of(d.fluid, d.mean);
    if (state) d.state = *state;
    else refusals.push_back({"fluid", job.fluid.concentration.place,
                             fmt::format("has no properties at the mean water temperature of {}",
                                         text(d.mean, unit::celsius, 1)),
                             "the relations hold for liquid between the freezing point and 100 °C"});
}

/// An emitter gives nothing to a room that is as warm as its water.
void refuse_cold_water(const job::Job& job, const Design& d, Refusals& refusals) {
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const auto& room = job.rooms[i];
        if (!room.heated || d.return_ > room.temperature.value) continue;
        refusals.push_back({fmt::format("rooms[{}].temperature_c", i), room.temperature.place,
                            fmt::format("must lie below the return temperature of {}", text(d.return_, unit::celsius, 1)),
                            "raise the flow temperature or make the temperature drop smaller"});
    }
}

struct Nodes {
    std::unordered_map<std::string_view, int> index;
    std::vector<std::string>& names;
    int operator()(const std::string& name) {
        const auto [at, added] = index.try_emplace(name, static_cast<int>(names.size()));
        if (added) names.push_back(name);
        return at->second;
    }
};

std::optional<TreeIndex> direct_pipework(const job::Job& job, Design& d, Refusals& refusals) {
    d.nodes.reserve(job.sections.size() + 1);
    Nodes node{{}, d.nodes};
    d.source_node = node(job.heat_source ? job.heat_source->at : job.sections.front().from);
    std::vector<network::Edge> edges;
    edges.reserve(job.sections.size());
    for (const auto& s : job.sections) {
        const int from = node(s.from);
        edges.push_back({from, node(s.to)});
    }
    TreeIndex index;
    for (const auto& e : job.emitters) index.emitter_node.push_back(node(e.at));
    auto tree = network::grow_tree(static_cast<int>(d.nodes.size()), edges, d.source_node);
    if (!tree) {
        refusals.push_back({"pipework.sections", {}, "do not form one tree that reaches every emitter",
                            "look for a section that is missing, or one that closes a ring"});
        return {};
    }
    d.sections.resize(job.sections.size());
    d.node_parent_section = tree->parent_edge;
    for (std::size_t n = 0; n < d.nodes.size(); ++n) {
        if (tree->parent_edge[n] < 0) continue;
        auto& section = d.sections[static_cast<std::size_t>(tree->parent_edge[n])];
        section.upstream = tree->parent_node[n];
        section.downstream = static_cast<int>(n);
    }
    index.order = std::move(tree->order);
    index.parent_node = std::move(tree->parent_node);
    return index;
}

Verdict worst_of(const Design& d) {
    Verdict worst = Verdict::keep;
    for (const auto& r : d.rooms) worst = worse(worst, r.finding.verdict);
    for (const auto& r : d.emitters) worst = worse(worst, r.finding.verdict);
    for (const auto& r : d.sections) worst = worse(worst, r.verdict);
    for (const auto& f : {d.duty.circulator, d.duty.source_capacity, d.duty.source_minimum_flow}) {
        if (f) worst = worse(worst, f->verdict);
    }
    return worst;
}

}  // namespace

std::variant<Design, Refusals> design(const job::Job& job, Trace* trace) {
    Design d;
    Refusals refusals;
    d.flow = job.conditions.flow.value;
    d.drop = job.conditions.drop.value;
    d.return_ = d.flow - d.drop;
    d.mean = d.flow - 0.5 * d.drop;
    set_fluid(job, d, refusals);
    refuse_cold_water(job, d, refusals);
    const auto tree = direct_pipework(job, d, refusals);
    if (!refusals.empty()) return refusals;

    find_room_losses(job, d, trace);
    check_emitters(job, d, trace);
    check_rooms(job, d);
    check_sections(job, d, *tree, trace);
    check_duty(job, d, *tree, trace);
    d.verdict = worst_of(d);
    return d;
}

}  // namespace loopfolio::design
