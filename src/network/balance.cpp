// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/balance.hpp"

#include "network/at.hpp"
#include "network/link_law.hpp"
#include "network/refusals.hpp"
#include "network/topology.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace loopfolio::network {

namespace {

constexpr double unset = -std::numeric_limits<double>::infinity();
constexpr double nothing_to_add = 1e-6;  // Pa

Findings task_refusals(const Pipework& p, const BalanceTask& task) {
    Findings out;
    Refusals r{out};
    std::vector<char> used(p.links.size(), 0);
    const auto take = [&](int link, std::size_t index) {
        r.about_index(static_cast<int>(index));
        if (!r.want_index("link", link, 0, used.size())) return;
        if (used[at(link)] != 0 || p.links[at(link)].closed) r.add(FindingKind::bad_value, "link", link);
        used[at(link)] = 1;
    };
    for (std::size_t i = 0; i < task.emitters.size(); ++i) {
        take(task.emitters[i].link, i);
        r.want("design_flow", task.emitters[i].design_flow.si(), 1e-9);
    }
    for (std::size_t i = 0; i < task.pumps.size(); ++i) {
        take(task.pumps[i].link, i);
        if (task.pumps[i].flow) r.want("flow", task.pumps[i].flow->si(), 1e-9);
        else if (task.pumps.size() > 1) r.add(FindingKind::pump_flow_needed, "flow");
    }
    r.about_index(-1);
    r.want("least_added", task.least_added.si(), 0.0);
    if (task.emitters.empty() && (task.pumps.empty() || !task.pumps.front().flow)) {
        r.add(FindingKind::bad_value, "emitters", 0.0);
    }
    if (!p.drawn.empty()) r.add(FindingKind::bad_value, "drawn", static_cast<double>(p.drawn.size()));
    return out;
}

std::vector<MassFlow> pump_flows(const BalanceTask& task) {
    MassFlow sum;
    for (const auto& e : task.emitters) sum += e.design_flow;
    std::vector<MassFlow> flows;
    for (const auto& pump : task.pumps) flows.push_back(pump.flow.value_or(sum));
    return flows;
}

/// The network without the links whose flow is fixed. Their flow is drawn from the node where they start, and fed in at
/// the node where they end.
Pipework with_fixed_flows(const Pipework& pipework, const BalanceTask& task, const std::vector<MassFlow>& pumps) {
    Pipework p = pipework;
    p.drawn.assign(at(p.nodes), {});
    const auto fix = [&](int link, MassFlow flow) {
        Link& l = p.links[at(link)];
        l.closed = true;
        p.drawn[at(l.from)] += flow;
        p.drawn[at(l.to)] -= flow;
    };
    for (const auto& e : task.emitters) fix(e.link, e.design_flow);
    for (std::size_t i = 0; i < pumps.size(); ++i) fix(task.pumps[i].link, pumps[i]);
    return p;
}

double own_drop(const Link& link, MassFlow flow, const physics::FluidState& fluid) {
    return drop_at(link_law(link, fluid), flow.si()).value;
}

/// The pressure difference that an emitter needs between the parts that it connects: `high` over `low`, at least
/// `least`, Pa.
struct Ask {
    int high;
    int low;
    double least;
};

std::vector<Ask> asks_of(const Pipework& p, const BalanceTask& task, const Topology& t, const HydraulicResult& flow,
                         const physics::FluidState& fluid) {
    std::vector<Ask> asks;
    for (const auto& e : task.emitters) {
        const Link& link = p.links[at(e.link)];
        const double there = (flow.pressure[at(link.from)] - flow.pressure[at(link.to)]).si();
        const double wanted = own_drop(link, e.design_flow, fluid) + task.least_added.si();
        asks.push_back({t.part[at(link.from)], t.part[at(link.to)], wanted - there});
    }
    return asks;
}

/// The lowest pressures of the parts, relative to the suction side of the first pump, that give every emitter what it
/// needs: the longest path (Bellman and Ford). A part that no emitter needs raised stays at zero.
std::vector<double> levels_of(std::size_t parts, int suction, const std::vector<Ask>& asks) {
    std::vector<double> level(parts, unset);
    level[at(suction)] = 0.0;
    for (std::size_t round = 0; round < parts; ++round) {
        for (const auto& ask : asks) {
            if (ask.high == ask.low || ask.high == suction) continue;
            level[at(ask.high)] = std::max(level[at(ask.high)], level[at(ask.low)] + ask.least);
        }
    }
    for (auto& l : level) l = l == unset ? 0.0 : l;
    return level;
}

EmitterSetting setting_of(const BalancedEmitter& e, const Link& link, const physics::FluidState& fluid,
                          const BalanceTask& task) {
    EmitterSetting s;
    s.own = Pressure::from_si(own_drop(link, e.design_flow, fluid));
    if (e.rating) {
        const auto found = physics::balance_at_flow(*e.rating, e.design_flow, fluid.specific_heat,
                                                    task.flow_temperature, e.room);
        if (found) s.return_temperature = found->return_temperature;
    }
    return s;
}

/// Kv of a valve with the pressure drop `added` at this flow. As dp = (Q/Kv)2, Kv is one over the root of the ratio to
/// the pressure drop of a valve with Kv 1.
double kv_of(Pressure added, MassFlow flow, const physics::FluidState& fluid) {
    if (added.si() <= nothing_to_add) return 0.0;
    Link valve;
    valve.valve_resistance = valve_resistance(1.0);
    return std::sqrt(own_drop(valve, flow, fluid) / added.si());
}

void set_emitters(BalanceResult& r, const Pipework& p, const physics::FluidState& fluid, const BalanceTask& task,
                  const std::vector<Ask>& asks, const std::vector<double>& level) {
    for (std::size_t i = 0; i < task.emitters.size(); ++i) {
        const auto& e = task.emitters[i];
        EmitterSetting s = setting_of(e, p.links[at(e.link)], fluid, task);
        const double spare = level[at(asks[i].high)] - level[at(asks[i].low)] - asks[i].least;
        const double added = task.least_added.si() + spare;
        s.available = s.own + Pressure::from_si(added);
        s.added = Pressure::from_si(std::max(0.0, added));
        s.kv = kv_of(s.added, e.design_flow, fluid);
        if (added < -nothing_to_add) {
            Finding f;
            f.kind = FindingKind::emitter_out_of_reach;
            f.severity = Severity::warning;
            f.index = static_cast<int>(i);
            f.link = e.link;
            f.value = -added;
            r.findings.push_back(f);
        }
        r.emitters.push_back(s);
    }
    r.order.resize(r.emitters.size());
    std::iota(r.order.begin(), r.order.end(), 0);
    // Ordered by the pressure available less the branch's own pressure drop, so that an emitter out of reach comes
    // first.
    const auto spare = [&](int i) { return (r.emitters[at(i)].available - r.emitters[at(i)].own).si(); };
    std::ranges::stable_sort(r.order, [&](int a, int b) { return spare(a) < spare(b) - nothing_to_add; });
    r.index_emitter = r.order.empty() ? -1 : r.order.front();
}

void size_pumps(BalanceResult& r, const Pipework& p, const physics::FluidState& fluid, const BalanceTask& task,
                const Topology& t, const HydraulicResult& flow, const std::vector<double>& level) {
    for (std::size_t i = 0; i < task.pumps.size(); ++i) {
        const Link& link = p.links[at(task.pumps[i].link)];
        const double lift = (flow.pressure[at(link.to)] - flow.pressure[at(link.from)]).si() +
                            level[at(t.part[at(link.to)])] - level[at(t.part[at(link.from)])];
        r.pump_rise.push_back(Pressure::from_si(lift + own_drop(link, r.pump_flow[i], fluid)));
    }
}

}  // namespace

BalanceResult balance(const Pipework& pipework, const physics::FluidState& fluid, const BalanceTask& task,
                      Workspace& workspace) {
    BalanceResult r;
    r.findings = task_refusals(pipework, task);
    if (has_error(r.findings)) return r;
    r.pump_flow = pump_flows(task);
    Pipework fixed = with_fixed_flows(pipework, task, r.pump_flow);
    const HydraulicResult flow = solve_hydraulics(fixed, std::span{&fluid, 1}, workspace);
    if (!flow.solved) {
        r.findings = flow.findings;
        return r;
    }
    r.pressure_residual = flow.pressure_residual;
    const Topology t = topology_of(fixed);
    const int suction = task.pumps.empty() ? 0 : t.part[at(pipework.links[at(task.pumps.front().link)].from)];
    const auto asks = asks_of(pipework, task, t, flow, fluid);
    const auto level = levels_of(t.zero_node.size(), suction, asks);
    set_emitters(r, pipework, fluid, task, asks, level);
    size_pumps(r, pipework, fluid, task, t, flow, level);
    r.flow = flow.flow;
    for (const auto& e : task.emitters) r.flow[at(e.link)] = e.design_flow;
    for (std::size_t i = 0; i < task.pumps.size(); ++i) r.flow[at(task.pumps[i].link)] = r.pump_flow[i];
    r.solved = true;
    return r;
}

Pipework with_settings(Pipework pipework, const BalanceTask& task, const BalanceResult& result) {
    for (std::size_t i = 0; i < result.emitters.size(); ++i) {
        const double kv = result.emitters[i].kv;
        if (kv > 0.0) pipework.links[at(task.emitters[i].link)].valve_resistance += valve_resistance(kv);
    }
    return pipework;
}

}  // namespace loopfolio::network
