// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/hydraulics.hpp"

#include "network/at.hpp"
#include "network/check_pipework.hpp"
#include "network/workspace.hpp"

#include <algorithm>

namespace loopfolio::network {

namespace {

void take_topology(FlowState& s, const Pipework& p) {
    if (s.ready && fits(s.topology, p)) return;
    s.ready = false;
    s.topology = topology_of(p);
    s.matrix.set_pattern(s.topology);
    s.right.resize(s.topology.unknowns);
    const std::size_t links = p.links.size();
    for (auto* v : {&s.flow, &s.miss, &s.slope, &s.conductance, &s.step, &s.trial}) v->assign(links, 0.0);
    s.drop.assign(links, {});
    s.pump_of.assign(links, -1);
    s.pressure.assign(at(p.nodes), 0.0);
    s.warm = false;
    s.ready = true;
}

void take_start(FlowState& s) {
    if (s.start.size() == s.flow.size()) {
        s.flow = s.start;
        s.warm = true;
    }
    s.start.clear();
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (s.topology.open[i] == 0) s.flow[i] = 0.0;
    }
}

void take_laws(FlowState& s, const Pipework& p, std::span<const physics::FluidState> fluid) {
    s.laws.resize(p.links.size());
    s.pump_links.clear();
    for (std::size_t i = 0; i < p.links.size(); ++i) {
        s.laws[i] = link_law(p.links[i], fluid[fluid.size() == 1 ? 0 : i]);
        s.pump_of[i] = p.links[i].pump;
        if (s.pump_of[i] >= 0 && !p.links[i].closed) s.pump_links.push_back(static_cast<int>(i));
    }
    s.pumps.clear();
    for (const auto& pump : p.pumps) s.pumps.push_back(pump_law(pump));
    s.drawn.resize(p.drawn.size());
    std::ranges::transform(p.drawn, s.drawn.begin(), [](MassFlow m) { return m.si(); });
}

void report_pumps(const FlowState& s, HydraulicResult& r) {
    for (const int link : s.pump_links) {
        const auto i = at(link);
        const auto& law = s.pumps[at(s.pump_of[i])];
        const double volume_flow = s.flow[i] * s.laws[i].volume;
        r.rise[at(s.pump_of[i])] = Pressure::from_si(rise_at(law, volume_flow).value);
        Finding f;
        f.severity = Severity::warning;
        f.link = link;
        f.index = s.pump_of[i];
        if (s.flow[i] < -1e-9) {
            f.kind = FindingKind::pump_driven_backwards;
            f.value = s.flow[i];
            r.findings.push_back(f);
        } else if (past_curve(law, volume_flow)) {
            f.kind = FindingKind::pump_past_curve;
            f.value = volume_flow;
            r.findings.push_back(f);
        }
    }
}

void take_result(const FlowState& s, const NewtonOutcome& found, HydraulicResult& r) {
    r.solved = true;
    r.continuity_residual = MassFlow::from_si(found.continuity_residual);
    r.pressure_residual = Pressure::from_si(found.pressure_residual);
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        r.flow.push_back(MassFlow::from_si(s.flow[i]));
        r.reynolds.push_back(s.laws[i].reynolds_per_flow * std::abs(s.flow[i]));
    }
    for (const double p : s.pressure) r.pressure.push_back(Pressure::from_si(p));
    r.rise.assign(s.pumps.size(), Pressure{});
    report_pumps(s, r);
}

}  // namespace

Workspace::Workspace() : parts_{std::make_unique<Parts>()} {}
Workspace::~Workspace() = default;
Workspace::Workspace(Workspace&&) noexcept = default;
Workspace& Workspace::operator=(Workspace&&) noexcept = default;

void Workspace::start_from(std::span<const MassFlow> flows) {
    auto& start = parts_->flow.start;
    start.clear();
    for (const auto m : flows) start.push_back(m.si());
}

void Workspace::forget() { parts_->flow.warm = false; }

HydraulicResult solve_hydraulics(const Pipework& pipework, std::span<const physics::FluidState> fluid,
                                 Workspace& workspace) {
    HydraulicResult r;
    r.findings = refusals_of(pipework, fluid);
    if (has_error(r.findings)) return r;
    FlowState& s = workspace.parts().flow;
    take_topology(s, pipework);
    take_start(s);
    take_laws(s, pipework, fluid);
    r.findings = findings_of(s.topology, pipework);
    if (has_error(r.findings)) return r;
    const NewtonOutcome found = find_flows(s);
    r.iterations = found.iterations;
    s.warm = found.converged;
    if (found.converged) {
        take_result(s, found, r);
        return r;
    }
    Finding f;
    f.kind = FindingKind::not_converged;
    f.link = found.worst_link;
    f.value = found.pressure_residual;
    r.findings.push_back(f);
    return r;
}

HydraulicResult solve_hydraulics(const Pipework& pipework, const physics::FluidState& fluid) {
    Workspace workspace;
    return solve_hydraulics(pipework, std::span{&fluid, 1}, workspace);
}

}  // namespace loopfolio::network
