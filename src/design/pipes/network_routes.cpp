// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/pipes/network_routes.hpp"

#include "design/pipes/pipe_plan.hpp"
#include "loopfolio/base/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double flows_alike = 1e-6;  // share by which two flows may differ and still count as the same

MassFlow flow_in(int link, const std::vector<MassFlow>& flow) { return link < 0 ? MassFlow{} : flow[at(link)]; }
MassFlow size_of(MassFlow m) { return m < MassFlow{} ? -m : m; }

/// Finds the direction and size of the flow in each section.
void direct_sections(Design& d, const network::BuiltNetwork& built, const std::vector<MassFlow>& flow) {
    for (std::size_t i = 0; i < d.sections.size(); ++i) {
        const auto& links = built.sections[i];
        const MassFlow out = flow_in(links.flow, flow);
        const MassFlow back = flow_in(links.return_, flow);
        auto& s = d.sections[i];
        s.flow_pipe.flow = size_of(out);
        s.return_pipe.flow = size_of(back);
        s.flow = std::max(s.flow_pipe.flow, s.return_pipe.flow);
        // A return pipe is described from `to` to `from`, so a positive flow counts as outwards in both pipes.
        const bool outwards = links.flow >= 0 ? out >= MassFlow{} : back >= MassFlow{};
        s.upstream = outwards ? d.junctions.section_from[i] : d.junctions.section_to[i];
        s.downstream = outwards ? d.junctions.section_to[i] : d.junctions.section_from[i];
    }
}

/// The ends of the pipe that takes water back in a section: where it leaves and where it arrives. In a circuit with a
/// reverse return it runs the same way as the flow pipe beside it.
struct WayBack {
    int leaves = -1, arrives = -1;
};
WayBack way_back(const Design& d, const job::Job& job, const network::BuiltNetwork& built,
                 const std::vector<MassFlow>& flow, std::size_t section) {
    const auto& s = d.sections[section];
    if (job.sections[section].carries == job::Carries::loop) return {s.upstream, s.downstream};
    if (built.sections[section].return_ < 0) return {};
    const int from = d.junctions.section_from[section], to = d.junctions.section_to[section];
    // A return pipe is described from `to` to `from`.
    return flow_in(built.sections[section].return_, flow) >= MassFlow{} ? WayBack{to, from} : WayBack{from, to};
}

/// By node, the section that brings most of its water and the one that takes most of it away.
void find_parents(Design& d, const network::BuiltNetwork& built, const job::Job& job,
                  const std::vector<MassFlow>& flow) {
    d.node_parent_section.assign(d.nodes.size(), -1);
    d.node_return_section.assign(d.nodes.size(), -1);
    const auto most = [&](std::vector<int>& by_node, int node, std::size_t section, MassFlow carried,
                          std::vector<MassFlow>& so_far) {
        if (by_node[at(node)] >= 0 && carried <= so_far[at(node)]) return;
        by_node[at(node)] = static_cast<int>(section);
        so_far[at(node)] = carried;
    };
    std::vector<MassFlow> brought(d.nodes.size()), taken(d.nodes.size());
    for (std::size_t i = 0; i < d.sections.size(); ++i) {
        const auto& s = d.sections[i];
        if (built.sections[i].flow >= 0 && s.downstream != d.source_node)
            most(d.node_parent_section, s.downstream, i, s.flow_pipe.flow, brought);
        const auto back = way_back(d, job, built, flow, i);
        const bool loop = job.sections[i].carries == job::Carries::loop;
        if (back.leaves >= 0 && (loop || back.leaves != d.junctions.source_return))
            most(d.node_return_section, back.leaves, i, loop ? s.flow_pipe.flow : s.return_pipe.flow, taken);
    }
}

/// The sections from a node to the heat source: against the flow along the flow pipes, or with it along the pipes that
/// take water back.
template <class NextNode>
std::vector<int> way_of(const Design& d, const std::vector<int>& by_node, int node, int end, NextNode next) {
    std::vector<int> way;
    for (std::size_t step = 0; step <= d.sections.size(); ++step) {
        const int section = by_node[at(node)];
        if (section < 0) return way;
        way.push_back(section);
        node = next(section);
        if (node == end) return way;
    }
    return way;
}

bool carry_alike(const SectionResult& s) {
    const double apart = std::abs((s.flow_pipe.flow - s.return_pipe.flow).si());
    return s.pipes == 2 && apart <= flows_alike * s.flow.si();
}

/// Lists the index circuit: the flow pipes outwards and the return pipes back. A section whose two pipes both lie on it
/// is one step where they carry the same flow, and otherwise two.
void mark_index_circuit(const job::Job& job, Design& d, const network::BuiltNetwork& built,
                        const std::vector<MassFlow>& flow, int emitter) {
    if (emitter < 0) return;
    auto& legs = d.duty.index_legs;
    auto outwards = way_of(d, d.node_parent_section, d.junctions.emitter_at[at(emitter)], d.source_node,
                           [&](int section) { return d.sections[at(section)].upstream; });
    std::ranges::reverse(outwards);
    const auto back = way_of(d, d.node_return_section, d.junctions.emitter_return[at(emitter)],
                             d.junctions.source_return,
                             [&](int section) { return way_back(d, job, built, flow, at(section)).arrives; });
    const auto on_both = [&](int section) {
        return carry_alike(d.sections[at(section)]) && std::ranges::count(outwards, section) == 1 &&
               std::ranges::count(back, section) == 1;
    };
    for (const int s : outwards) legs.push_back({s, on_both(s) ? IndexPipes::both : IndexPipes::flow, {}});
    for (const int s : back) {
        // The pipe of a one-pipe loop is its flow pipe on the way back too.
        const bool loop = job.sections[at(s)].carries == job::Carries::loop;
        if (!on_both(s)) legs.push_back({s, loop ? IndexPipes::flow : IndexPipes::return_, {}});
    }
    for (const auto& leg : legs) {
        auto& s = d.sections[at(leg.section)];
        if (!s.on_index_circuit) d.duty.index_sections.push_back(leg.section);
        s.on_index_circuit = true;
    }
}

/// Finds the temperatures that reach emitters along a loop, or through pipes that lose heat.
bool find_inlets(const job::Job& job, Design& d, const network::BuiltNetwork& built, const std::vector<MassFlow>& flow,
                 network::Workspace& workspace, std::vector<Refusal>& refusals) {
    const bool loses = std::ranges::any_of(job.sections, [](const job::Section& s) { return s.heat_loss.has_value(); });
    const bool loops = std::ranges::any_of(d.emitters, [](const EmitterResult& e) { return e.on_loop; });
    if (!loses && !loops) return true;
    const auto heat = network::solve_thermal(built.system, flow, d.state.specific_heat, workspace);
    if (!heat.solved) {
        refuse(heat.findings, job, built, refusals);
        return false;
    }
    d.pipe_loss = heat.energy.pipes;
    // An inlet follows the flow temperature in a straight line, as long as no emitter's outlet reaches it. So a second
    // solution a kelvin higher gives the slope.
    auto warmer = built.system;
    constexpr TemperatureDifference step = TemperatureDifference::from_si(1.0);
    for (auto& source : warmer.sources) source.flow_temperature = source.flow_temperature + step;
    const auto next = network::solve_thermal(warmer, flow, d.state.specific_heat, workspace);
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        auto& e = d.emitters[i];
        if (e.load <= Power{}) continue;
        e.inlet = heat.emitters[i].inlet;
        if (next.solved && !e.on_loop && e.mixer < 0)
            e.inlet_follows = std::clamp((next.emitters[i].inlet - heat.emitters[i].inlet) / step, 0.1, 1.0);
        if (!e.on_loop) continue;
        e.flow = size_of(flow[at(built.system.emitters[i].link)]);
        if (e.flow > MassFlow{}) e.drop = (e.load + e.downward) / (e.flow * d.state.specific_heat);
    }
    return true;
}

/// Leaves the outlet of each mixing set without a parent section, because its water comes from the set and not through
/// a section.
void cross_mixers(Design& d) {
    for (std::size_t i = 0; i < d.mixers.size(); ++i) d.node_parent_section[at(d.junctions.mixer_to[i])] = -1;
}

Pressure spare_of(const network::EmitterSetting& s) { return s.available - s.own; }

Routes routes_of(const job::Job& job, Design& d, const network::BuiltNetwork& built, const DesignTask& task,
                 const network::BalanceResult& r) {
    Routes out;
    out.spare.resize(d.emitters.size());
    out.head = r.pump_rise.front();
    for (std::size_t i = 0; i < task.emitters.size(); ++i) out.spare[at(task.emitters[i])] = spare_of(r.emitters[i]);
    for (const int i : r.order) {
        // The pump of a mixing set drives everything beyond it, so such an emitter cannot set the main pump's head.
        if (at(i) >= task.emitters.size() || d.emitters[at(task.emitters[at(i)])].mixer >= 0) continue;
        out.index_emitter = task.emitters[at(i)];
        break;
    }
    // On a loop no emitter is further away than another, so the one that gets the smallest share of its need is named.
    if (out.index_emitter < 0) {
        for (std::size_t i = 0; i < d.emitters.size(); ++i) {
            if (!d.emitters[i].on_loop) continue;
            const auto now = static_cast<std::size_t>(std::max(out.index_emitter, 0));
            if (out.index_emitter < 0 || d.emitters[i].drop > d.emitters[now].drop)
                out.index_emitter = static_cast<int>(i);
        }
    }
    for (std::size_t i = 1; i < r.pump_rise.size(); ++i) out.mixer_head.push_back(r.pump_rise[i]);
    mark_index_circuit(job, d, built, r.flow, out.index_emitter);
    return out;
}

}  // namespace

namespace {

/// The place in the job that a link comes from.
struct Origin {
    std::string field = "pipework";
    Place place;
    std::string name;
};

Origin origin_of(int link, const job::Job& job, const network::BuiltNetwork& built) {
    for (std::size_t i = 0; i < built.sections.size() && i < job.sections.size(); ++i) {
        if (link != built.sections[i].flow && link != built.sections[i].return_) continue;
        return Origin{fmt::format("pipework.sections[{}]", i), job.sections[i].place,
                      "section `" + job.sections[i].id + "`"};
    }
    for (std::size_t i = 0; i < built.system.emitters.size() && i < job.emitters.size(); ++i) {
        if (link != built.system.emitters[i].link) continue;
        return Origin{fmt::format("emitters[{}]", i), job.emitters[i].place, "emitter `" + job.emitters[i].id + "`"};
    }
    for (std::size_t i = 0; i < built.mixers.size() && i < job.mixers.size(); ++i) {
        const auto& m = built.mixers[i];
        if (link != m.valve && link != m.bypass && link != m.pump && link != m.back) continue;
        return Origin{fmt::format("mixers[{}]", i), job.mixers[i].place, "mixing set `" + job.mixers[i].id + "`"};
    }
    if (link >= 0 && (link == built.drive || link == built.source_pump)) {
        return Origin{"circulator", {}, "the circulator"};
    }
    return {};
}

}  // namespace

void refuse(const network::Findings& findings, const job::Job& job, const network::BuiltNetwork& built,
            std::vector<Refusal>& refusals) {
    for (const auto& f : findings) {
        if (f.severity != Severity::error) continue;
        const Origin origin = origin_of(f.link, job, built);
        // `f.field` is a name of the network's own description, which says nothing to whoever wrote the job.
        std::string rule{network::word(f.kind)};
        if (!origin.name.empty()) rule += ", at " + origin.name;
        refusals.push_back({origin.field, origin.place, rule,
                            "the pipework cannot be solved as it is described: check sizes, lengths and flows there"});
    }
}

std::optional<Routes> network_routes(const job::Job& job, Design& d, std::vector<Refusal>& refusals) {
    auto built = network::build_network(plan_of(job, d));
    refuse(built.findings, job, built, refusals);
    if (!refusals.empty()) return {};
    close_unused(d, built);
    const auto task = task_of(job, d, built);
    network::Workspace workspace;
    const auto balanced = network::balance(built.system.pipework, d.state, task.task, workspace);
    refuse(balanced.findings, job, built, refusals);
    if (!balanced.solved) return {};
    d.duty.flow = balanced.pump_flow.front();
    direct_sections(d, built, balanced.flow);
    find_parents(d, built, job, balanced.flow);
    cross_mixers(d);
    if (!find_inlets(job, d, built, balanced.flow, workspace, refusals)) return {};
    return routes_of(job, d, built, task, balanced);
}

}  // namespace loopfolio::design
