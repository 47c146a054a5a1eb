// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/thermal.hpp"

#include "network/at.hpp"
#include "network/check_system.hpp"
#include "network/workspace.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

constexpr int most_rounds = 50;
constexpr double same_temperature = 1e-6;  // K
constexpr double same_flow = 1e-9;         // of the largest
constexpr double hardly_any_flow = 1e-6;   // of the largest
constexpr int rounds_with_all = 10;        // after these, links with hardly any flow keep their properties
constexpr double same_state = 1e-8;        // K: properties are not looked up again for a smaller change

void fail(SystemResult& r, FindingKind kind, int link, double value) {
    Finding f;
    f.kind = kind;
    f.link = link;
    f.value = value;
    r.findings.push_back(f);
}

/// Looks up density and viscosity of every link at its temperature. False, with a finding, where the fluid has none.
bool look_up(PropertyState& p, const System& system, SystemResult& r) {
    for (std::size_t i = 0; i < p.wanted.size(); ++i) {
        if (std::abs(p.wanted[i] - p.held[i]) <= same_state) continue;
        if (i > 0 && p.wanted[i] == p.held[i - 1]) {
            p.fluid[i] = p.fluid[i - 1];
        } else {
            const auto state = physics::state_of(system.fluid, Temperature::from_kelvin(p.wanted[i]));
            if (!state) {
                fail(r, FindingKind::fluid_out_of_range, static_cast<int>(i), p.wanted[i]);
                return false;
            }
            p.fluid[i] = *state;
        }
        p.held[i] = p.wanted[i];
    }
    return true;
}

/// Before anything is known, every link has the temperature of the warmest source's flow.
void start_properties(PropertyState& p, const System& system) {
    const bool same_fluid = p.of.kind == system.fluid.kind && p.of.mass_fraction == system.fluid.mass_fraction;
    if (same_fluid && p.wanted.size() == system.pipework.links.size()) return;
    double warmest = 0.0;
    for (const auto& s : system.sources) warmest = std::max(warmest, s.flow_temperature.kelvin());
    p.of = system.fluid;
    p.wanted.assign(system.pipework.links.size(), warmest);
    p.held.assign(p.wanted.size(), 0.0);
    p.fluid.assign(p.wanted.size(), {});
}

/// The lowest temperature at which the fluid is liquid, kelvin; 0 where that is not known.
double coldest_liquid(const physics::Fluid& fluid) {
    constexpr double clear_of_it = 0.01;
    if (fluid.kind == physics::FluidKind::water) return 273.15 + clear_of_it;
    const auto freezing = physics::freezing_point(fluid.kind, fluid.mass_fraction);
    return freezing ? freezing->kelvin() + clear_of_it : 0.0;
}

double mean_of(const ThermalResult& t, std::size_t link) {
    return 0.5 * (t.inlet[link].kelvin() + t.outlet[link].kelvin());
}

/// Takes the mean temperature of each link, but none below freezing. Returns the largest change, kelvin. A link with
/// hardly any flow may pass from one to none and back, and its temperature with it from that of its surroundings to
/// that of the source, for ever: it says nothing of whether the rest agrees, and with `all` false it is left as it is.
double take_means(PropertyState& p, const ThermalResult& t, const std::vector<MassFlow>& flow, double coldest,
                  bool all) {
    double moved = 0.0, most = 0.0;
    for (const MassFlow m : flow) most = std::max(most, std::abs(m.si()));
    for (std::size_t i = 0; i < p.wanted.size(); ++i) {
        const double mean = std::max(mean_of(t, i), coldest);
        const bool flows = std::abs(flow[i].si()) > hardly_any_flow * most;
        if (!flows && !all) continue;
        if (flows) moved = std::max(moved, std::abs(mean - p.wanted[i]));
        p.wanted[i] = mean;
    }
    return moved;
}

/// Specific heat at the mean of the sources' inlet and outlet temperatures, weighted by their flows.
std::optional<SpecificHeat> mean_specific_heat(const System& system, const ThermalResult& t) {
    double flow = 0.0;
    double sum = 0.0;
    for (const auto& s : t.sources) {
        flow += s.flow.si();
        sum += s.flow.si() * 0.5 * (s.inlet.kelvin() + s.outlet.kelvin());
    }
    const double mean = std::max(flow > 0.0 ? sum / flow : t.sources.front().outlet.kelvin(),
                                 coldest_liquid(system.fluid));
    const auto state = physics::state_of(system.fluid, Temperature::from_kelvin(mean));
    if (!state) return {};
    return state->specific_heat;
}

double flow_change(const std::vector<MassFlow>& before, const std::vector<MassFlow>& now) {
    if (before.size() != now.size()) return 1.0;
    double most = 0.0;
    double change = 0.0;
    for (std::size_t i = 0; i < now.size(); ++i) {
        most = std::max(most, std::abs(now[i].si()));
        change = std::max(change, std::abs((now[i] - before[i]).si()));
    }
    return change / std::max(most, 1e-9);
}

/// One iteration. False, with a finding, where it cannot continue.
bool one_round(const System& system, Workspace& workspace, SystemResult& r) {
    PropertyState& p = workspace.parts().properties;
    if (!look_up(p, system, r)) return false;
    r.hydraulic = solve_hydraulics(system.pipework, p.fluid, workspace);
    if (!r.hydraulic.solved) return false;
    r.thermal = find_temperatures(system, r.hydraulic.flow, r.specific_heat, workspace);
    return r.thermal.solved;
}

/// Reports a very low flow that freezes in a room as cold as outdoors. The flow is calculated with the fluid's
/// properties at its freezing point.
void note_freezing(const System& system, SystemResult& r) {
    const double coldest = coldest_liquid(system.fluid);
    for (std::size_t i = 0; i < r.thermal.inlet.size(); ++i) {
        if (mean_of(r.thermal, i) >= coldest) continue;
        fail(r, FindingKind::would_freeze, static_cast<int>(i), mean_of(r.thermal, i));
        r.findings.back().severity = Severity::warning;
    }
}

void gather_findings(SystemResult& r) {
    r.findings.insert(r.findings.begin(), r.thermal.findings.begin(), r.thermal.findings.end());
    r.findings.insert(r.findings.begin(), r.hydraulic.findings.begin(), r.hydraulic.findings.end());
}

void iterate(const System& system, Workspace& workspace, SystemResult& r) {
    PropertyState& p = workspace.parts().properties;
    std::vector<MassFlow> before;
    double moved = 0.0;
    for (r.rounds = 1; r.rounds <= most_rounds; ++r.rounds) {
        if (!one_round(system, workspace, r)) return;
        const auto cp = mean_specific_heat(system, r.thermal);
        if (!cp) {
            fail(r, FindingKind::fluid_out_of_range, -1, r.thermal.sources.front().outlet.kelvin());
            return;
        }
        moved = take_means(p, r.thermal, r.hydraulic.flow, coldest_liquid(system.fluid), r.rounds <= rounds_with_all);
        const bool same_heat = std::abs(*cp / r.specific_heat - 1.0) <= same_flow;
        r.solved = same_heat && moved <= same_temperature && flow_change(before, r.hydraulic.flow) <= same_flow;
        if (r.solved) return;
        before = r.hydraulic.flow;
        r.specific_heat = *cp;
    }
    fail(r, FindingKind::properties_not_settled, -1, moved);
}

}  // namespace

SystemResult solve_system(const System& system, Workspace& workspace) {
    SystemResult r;
    r.findings = refusals_of(system);
    if (has_error(r.findings)) return r;
    PropertyState& p = workspace.parts().properties;
    start_properties(p, system);
    const auto first = physics::state_of(system.fluid, system.sources.front().flow_temperature);
    if (!first) {
        fail(r, FindingKind::fluid_out_of_range, -1, system.sources.front().flow_temperature.kelvin());
        return r;
    }
    r.specific_heat = p.specific_heat.si() > 0.0 ? p.specific_heat : first->specific_heat;
    iterate(system, workspace, r);
    if (r.solved) {
        p.specific_heat = r.specific_heat;
        note_freezing(system, r);
    } else {
        p = {};  // the result of a failed solution is no starting point
    }
    gather_findings(r);
    return r;
}

SystemResult solve_system(const System& system) {
    Workspace workspace;
    return solve_system(system, workspace);
}

}  // namespace loopfolio::network
