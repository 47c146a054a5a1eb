// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/reference/thresholds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::design {

namespace {

/// The lowest return temperature that a wider drop may lead to: above every heated room.
Temperature lowest_return(const job::Job& job) {
    Temperature warmest = Temperature::from_celsius(0.0);
    for (const auto& room : job.rooms) {
        if (room.heated) warmest = std::max(warmest, room.temperature.value);
    }
    return warmest + TemperatureDifference::from_si(1.0);
}

/// The lower of the two preferred limits, as a flow.
MassFlow preferred_flow(const job::Conditions& c, const physics::Conduit& pipe, const physics::FluidState& state) {
    return std::min(physics::flow_at_velocity(c.velocity_preferred.value, pipe, state),
                    physics::flow_at_gradient(c.gradient_preferred.value, pipe, state));
}

/// The flow at the velocity limit.
MassFlow limiting_flow(const job::Conditions& c, const physics::Conduit& pipe, const physics::FluidState& state) {
    return physics::flow_at_velocity(c.velocity_limit.value, pipe, state);
}

/// Most flow that a pipe may carry, by one limit or another.
using MostFlow = MassFlow (*)(const job::Conditions&, const physics::Conduit&, const physics::FluidState&);

/// The smallest drop at which the pipe carries its load with no more than that flow. The fluid's properties move with
/// the mean temperature, so the drop is found again until it stands still; three rounds do.
std::optional<TemperatureDifference> least_drop(const job::Job& job, const Design& d, const SectionResult& r,
                                                const physics::Conduit& pipe, Temperature floor, MostFlow most) {
    TemperatureDifference drop = d.drop;
    for (int round = 0; round < 20; ++round) {
        const auto state = physics::state_of(d.fluid, d.flow - 0.5 * drop);
        if (!state) return {};
        const auto next = r.load / (most(job.conditions, pipe, *state) * state->specific_heat);
        const bool settled = std::abs((next - drop).si()) < 1e-6;
        drop = next;
        if (!std::isfinite(drop.si()) || drop > reference::thresholds().widest_drop.value || d.flow - drop < floor) return {};
        // Rounded up, so that the drop as printed keeps the pipe.
        if (settled) return TemperatureDifference::from_si(std::ceil(drop.si() * 10.0 - 1e-6) / 10.0);
    }
    return {};
}

const reference::Pipe* least_size(const job::Job& job, const job::Section& s, const SectionResult& r, const Design& d,
                                  MostFlow most) {
    const auto* pipe = reference::find_pipe(s.pipe);
    for (const auto& larger : reference::larger_sizes(*pipe)) {
        if (larger.bore <= s.bore.value) continue;
        if (r.flow <= most(job.conditions, {larger.bore, larger.roughness}, d.state)) return &larger;
    }
    return nullptr;
}

void find_capacity(const job::Job& job, const Design& d, const physics::Conduit& pipe, SectionResult& r) {
    const auto& c = job.conditions;
    const auto power = [&](MassFlow flow) { return flow * d.state.specific_heat * d.drop; };
    r.capacity[static_cast<std::size_t>(CapacityLimit::velocity_preferred)] =
        power(physics::flow_at_velocity(c.velocity_preferred.value, pipe, d.state));
    r.capacity[static_cast<std::size_t>(CapacityLimit::gradient_preferred)] =
        power(physics::flow_at_gradient(c.gradient_preferred.value, pipe, d.state));
    r.capacity[static_cast<std::size_t>(CapacityLimit::velocity)] =
        power(physics::flow_at_velocity(c.velocity_limit.value, pipe, d.state));
    r.governing = r.capacity[0] <= r.capacity[1] ? CapacityLimit::velocity_preferred : CapacityLimit::gradient_preferred;
}

void find_pressure(const job::Section& s, const Design& d, const physics::Conduit& pipe, SectionResult& r) {
    r.load = r.flow * d.state.specific_heat * d.drop;
    r.volume_flow = r.flow / d.state.density;
    r.hydraulic = physics::pipe_flow(r.flow, pipe, d.state);
    if (s.insert_bore.given()) {
        r.insert_loss_factor = narrowed_joints(s.fittings) * physics::insert_loss_factor(s.bore.value, s.insert_bore.value);
    }
    r.fitting_loss_factor = loss_factor(s.fittings) + r.insert_loss_factor;
    r.friction = static_cast<double>(r.pipes) * (r.hydraulic.gradient * s.length.value);
    r.fittings = static_cast<double>(r.pipes) * r.fitting_loss_factor * r.hydraulic.dynamic_pressure;
    r.pressure_drop = r.friction + r.fittings;
}

/// Whether every emitter runs at the design drop, so that flows are loads by another name.
bool job_drop_everywhere(const Design& d) {
    return std::ranges::all_of(d.emitters, [&](const EmitterResult& e) { return e.drop == d.drop; });
}

void trace_section(Trace& trace, const job::Section& s, const SectionResult& r, const Design& d) {
    trace.open(Subject::section, s.id);
    const auto& h = r.hydraulic;
    if (d.tree && job_drop_everywhere(d)) {
        trace.step({"load", "sum of the emitters that it feeds", text(r.load, unit::watt, 0), ""});
        trace.step({"mass flow", fmt::format("m = Φ / (c·Δθ) = {} / ({} × {})", fixed(r.load.si(), 0),
                    fixed(d.state.specific_heat.si(), 1), fixed(d.drop.si(), 1)),
                    text(r.flow, unit::kilogram_per_second, 4), ""});
    } else {
        trace.step({"mass flow", d.tree ? "sum of the emitters that it feeds" : "from the solution of the whole network with the emitters' design flows",
                    text(r.flow, unit::kilogram_per_second, 4), ""});
        trace.step({"load", fmt::format("that it carries at the design drop: Φ = m·c·Δθ = {} × {} × {}", fixed(r.flow.si(), 4),
                    fixed(d.state.specific_heat.si(), 1), fixed(d.drop.si(), 1)), text(r.load, unit::watt, 0), ""});
    }
    trace.step({"velocity", fmt::format("v = 4m / (π·ρ·d²), ρ = {}, d = {}",
                text(d.state.density, unit::kilogram_per_cubic_metre, 2), text(s.bore.value, unit::millimetre, 1)),
                text(h.velocity, unit::metre_per_second, 3), s.bore.source});
    trace.step({"Reynolds number", fmt::format("Re = 4m / (π·d·μ), μ = {}", text(d.state.viscosity, unit::millipascal_second, 4)),
                fmt::format("{}, {}", fixed(h.reynolds, 0), physics::word(h.regime)), ""});
    trace.step({"friction factor", fmt::format("1/√f = −2·log₁₀(ε/(3.7·d) + 2.51/(Re·√f)), ε = {}",
                text(s.roughness.value, unit::millimetre, 4)), fixed(h.friction_factor, 5), "colebrook-white"});
    trace.step({"pressure gradient", fmt::format("R = f·ρv²/(2d), ρv²/2 = {}", text(h.dynamic_pressure, unit::pascal, 1)),
                text(h.gradient, unit::pascal_per_metre, 1), "colebrook-white"});
    const char* twice = r.pipes == 2 ? "2·" : "";
    trace.step({r.pipes == 2 ? "straight pipe, flow and return" : "straight pipe, this pipe only",
                fmt::format("{}R·L = {}{} × {}", twice, r.pipes == 2 ? "2 × " : "", fixed(h.gradient.si(), 1),
                text(s.length.value, unit::metre, 1)), text(r.friction, unit::pascal, 0), ""});
    trace.step({r.pipes == 2 ? "fittings, flow and return" : "fittings, this pipe only",
                fmt::format("{}Σζ·ρv²/2, Σζ = {}{}", twice, fixed(r.fitting_loss_factor, 2),
                r.insert_loss_factor > 0.0 ? fmt::format(" (of which inserts {})", fixed(r.insert_loss_factor, 2)) : ""),
                text(r.fittings, unit::pascal, 0), "faber-kell-2002"});
    trace.step({"pressure drop", "sum", text(r.pressure_drop, unit::kilopascal, 3), ""});
    static constexpr std::array names{"capacity at the preferred velocity", "capacity at the preferred gradient",
                                      "capacity at the velocity limit"};
    for (std::size_t i = 0; i < names.size(); ++i) {
        trace.step({names[i], fmt::format("flow at the limit × c·Δθ, Δθ = {}", text(d.drop, unit::kelvin, 1)),
                    text(r.capacity[i], unit::kilowatt, 2), ""});
    }
    if (r.drop_to_limit) {
        trace.step({"drop at which the limit is kept", "smallest drop with the velocity limit kept",
                    text(*r.drop_to_limit, unit::kelvin, 1), ""});
    }
    if (r.drop_to_keep) {
        trace.step({"drop at which it is kept", "smallest drop with both preferred limits kept",
                    text(*r.drop_to_keep, unit::kelvin, 1), ""});
    }
}

void judge(const job::Conditions& c, int index, SectionResult& r, Findings& findings) {
    const auto about = [&](Check check) { return About{check, Subject::section, index}; };
    r.velocity = add(findings, at_most(about(Check::section_velocity), r.hydraulic.velocity, c.velocity_preferred.value,
                                       std::optional{c.velocity_limit.value}));
    // The gradient is a preference: what a steep pipe really costs is counted in the pump head.
    r.gradient = add(findings, at_most(about(Check::section_gradient), r.hydraulic.gradient, c.gradient_preferred.value, {}));
    r.verdict = worse(findings[findings.size() - 2].verdict, findings.back().verdict);
}

/// What would keep a pipe that does not keep every limit.
void find_remedies(const job::Job& job, const job::Section& s, const physics::Conduit& pipe, Temperature floor, const Design& d,
                   SectionResult& r) {
    if (r.verdict == Verdict::keep) return;
    r.next_size = least_size(job, s, r, d, preferred_flow);
    r.drop_to_keep = least_drop(job, d, r, pipe, floor, preferred_flow);
    if (r.verdict != Verdict::change) return;
    r.size_for_limit = least_size(job, s, r, d, limiting_flow);
    r.drop_to_limit = least_drop(job, d, r, pipe, floor, limiting_flow);
}

}  // namespace

void check_sections(const job::Job& job, Design& design, Remedies remedies, Trace* trace) {
    const Temperature floor = lowest_return(job);
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        const auto& s = job.sections[i];
        auto& r = design.sections[i];
        const physics::Conduit pipe{s.bore.value, s.roughness.value};
        find_pressure(s, design, pipe, r);
        find_capacity(job, design, pipe, r);
        const int index = static_cast<int>(i);
        judge(job.conditions, index, r, design.findings);
        if (remedies == Remedies::sought) find_remedies(job, s, pipe, floor, design, r);
        if (r.hydraulic.regime == physics::Regime::transition) {
            design.flags.push_back({Caveat::transition_flow, Subject::section, index, r.hydraulic.reynolds});
        }
        if (r.hydraulic.regime == physics::Regime::still) {
            design.flags.push_back({Caveat::still_section, Subject::section, index, 0.0});
        }
        if (trace != nullptr) trace_section(*trace, s, r, design);
    }
}

}  // namespace loopfolio::design
