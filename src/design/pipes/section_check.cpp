// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/reference/thresholds.hpp"
#include "texts/steps_of_pipes.hpp"
#include "texts/steps_shared.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace steps = texts::steps_of_pipes;
namespace shared = texts::steps_shared;

namespace {

/// The lowest return temperature that a wider temperature drop may lead to: above every heated room.
Temperature lowest_return(const job::Job& job) {
    Temperature warmest = Temperature::from_celsius(0.0);
    for (const auto& room : job.rooms) {
        if (room.heated) warmest = std::max(warmest, room.temperature.value);
    }
    return warmest + TemperatureDifference::from_si(1.0);
}

/// The limits that hold in a pipe.
struct PipeLimits {
    VelocityLimits velocity;
    PressureGradient gradient;
};

/// The flow at the lower of the two preferred values.
MassFlow preferred_flow(const PipeLimits& l, const physics::Conduit& pipe, const physics::FluidState& state) {
    return std::min(physics::flow_at_velocity(l.velocity.preferred, pipe, state),
                    physics::flow_at_gradient(l.gradient, pipe, state));
}

/// The flow at the velocity limit.
MassFlow limiting_flow(const PipeLimits& l, const physics::Conduit& pipe, const physics::FluidState& state) {
    return physics::flow_at_velocity(l.velocity.limit, pipe, state);
}

/// The largest flow that a pipe may carry, by one limit or another.
using MostFlow = MassFlow (*)(const PipeLimits&, const physics::Conduit&, const physics::FluidState&);

/// The smallest temperature drop at which the pipe carries its load within that flow. The fluid's properties depend on
/// the mean temperature, so the calculation repeats until the drop converges; three iterations are enough.
std::optional<TemperatureDifference> least_drop(const PipeLimits& limits, const Design& d, const SectionResult& r,
                                                const physics::Conduit& pipe, Temperature floor, MostFlow most) {
    TemperatureDifference drop = d.drop;
    for (int round = 0; round < 20; ++round) {
        const auto state = physics::state_of(d.fluid, d.flow - 0.5 * drop);
        if (!state) return {};
        const auto next = r.load / (most(limits, pipe, *state) * state->specific_heat);
        const bool settled = std::abs((next - drop).si()) < 1e-6;
        drop = next;
        if (!std::isfinite(drop.si()) || drop > reference::thresholds().widest_drop.value || d.flow - drop < floor)
            return {};
        // Rounded up, so that the pipe still passes at the temperature drop as printed.
        if (settled) return TemperatureDifference::from_si(std::ceil(drop.si() * 10.0 - 1e-6) / 10.0);
    }
    return {};
}

const reference::Pipe* least_size(const job::Job& job, const job::Section& s, const SectionResult& r, const Design& d,
                                  MostFlow most) {
    const auto* pipe = reference::find_pipe(s.pipe);
    for (const auto& larger : reference::larger_sizes(*pipe)) {
        if (larger.bore <= s.bore.value) continue;
        const PipeLimits limits{velocity_limits_in(s, larger), job.conditions.gradient_preferred.value};
        if (r.flow <= most(limits, {larger.bore, larger.roughness}, d.state)) return &larger;
    }
    return nullptr;
}

void find_capacity(const PipeLimits& limits, const Design& d, const physics::Conduit& pipe, SectionResult& r) {
    const auto power = [&](MassFlow flow) { return flow * d.state.specific_heat * d.drop; };
    r.capacity[static_cast<std::size_t>(CapacityLimit::velocity_preferred)] = power(
        physics::flow_at_velocity(limits.velocity.preferred, pipe, d.state));
    r.capacity[static_cast<std::size_t>(CapacityLimit::gradient_preferred)] = power(
        physics::flow_at_gradient(limits.gradient, pipe, d.state));
    r.capacity[static_cast<std::size_t>(CapacityLimit::velocity)] = power(
        physics::flow_at_velocity(limits.velocity.limit, pipe, d.state));
    r.governing = r.capacity[0] <= r.capacity[1] ? CapacityLimit::velocity_preferred
                                                 : CapacityLimit::gradient_preferred;
}

void find_pressure(const job::Section& s, const Design& d, const physics::Conduit& pipe, SectionResult& r) {
    r.load = r.flow * d.state.specific_heat * d.drop;
    r.volume_flow = r.flow / d.state.density;
    r.hydraulic = physics::pipe_flow(r.flow, pipe, d.state);
    if (s.insert_bore.given()) {
        r.insert_loss_factor = narrowed_joints(s.fittings) *
                               physics::insert_loss_factor(s.bore.value, s.insert_bore.value);
    }
    r.fitting_loss_factor = loss_factor(s.fittings) + r.insert_loss_factor;
    for (auto* const one : {&r.flow_pipe, &r.return_pipe}) {
        if (one->flow <= MassFlow{}) continue;
        // Most pairs carry the same flow, and the larger flow is calculated already.
        const auto hydraulic = one->flow == r.flow ? r.hydraulic : physics::pipe_flow(one->flow, pipe, d.state);
        one->volume_flow = one->flow / d.state.density;
        one->friction = hydraulic.gradient * s.length.value;
        one->fittings = r.fitting_loss_factor * hydraulic.dynamic_pressure;
        one->pressure_drop = one->friction + one->fittings;
    }
    r.friction = r.flow_pipe.friction + r.return_pipe.friction;
    r.fittings = r.flow_pipe.fittings + r.return_pipe.fittings;
    r.pressure_drop = r.friction + r.fittings;
}

/// Whether every emitter runs at the design temperature drop, so that flows are in proportion to loads.
bool job_drop_everywhere(const Design& d) {
    return std::ranges::all_of(d.emitters, [&](const EmitterResult& e) { return e.drop == d.drop; });
}

KeyedText reynolds_result(const physics::PipeFlow& h) {
    std::string number = fixed(h.reynolds, 0);
    switch (h.regime) {
        case physics::Regime::still: return steps::reynolds_still{.number = std::move(number)};
        case physics::Regime::laminar: return steps::reynolds_laminar{.number = std::move(number)};
        case physics::Regime::transition: return steps::reynolds_transition{.number = std::move(number)};
        case physics::Regime::turbulent: return steps::reynolds_turbulent{.number = std::move(number)};
    }
    return {};
}

void trace_pressure(Trace& trace, const job::Section& s, const SectionResult& r) {
    std::string gradient = fixed(r.hydraulic.gradient.si(), 1), length = text(s.length.value, unit::metre, 1);
    Figure factor = fixed(r.fitting_loss_factor, 2);
    if (r.insert_loss_factor > 0.0) {
        factor = steps::factor_with_inserts{.factor = std::move(factor), .inserts = fixed(r.insert_loss_factor, 2)};
    }
    const bool both = r.pipes == 2;
    KeyedText straight = both ? KeyedText{steps::straight_both_formula{.gradient = gradient, .length = length}}
                              : KeyedText{steps::straight_alone_formula{.gradient = gradient, .length = length}};
    KeyedText fittings = both ? KeyedText{steps::fittings_both_formula{.factor = std::move(factor)}}
                              : KeyedText{steps::fittings_alone_formula{.factor = std::move(factor)}};
    trace.step({both ? KeyedText{steps::straight_both{}} : KeyedText{steps::straight_alone{}}, std::move(straight),
                text(r.friction, unit::pascal, 0), ""});
    trace.step({both ? KeyedText{steps::fittings_both{}} : KeyedText{steps::fittings_alone{}}, std::move(fittings),
                text(r.fittings, unit::pascal, 0), "faber-kell-2002"});
    trace.step({steps::section_pressure_drop{}, shared::sum{}, text(r.pressure_drop, unit::kilopascal, 3), ""});
}

KeyedText capacity_at(CapacityLimit limit) {
    switch (limit) {
        case CapacityLimit::velocity_preferred: return steps::capacity_velocity_preferred{};
        case CapacityLimit::gradient_preferred: return steps::capacity_gradient_preferred{};
        case CapacityLimit::velocity: return steps::capacity_velocity{};
    }
    return {};
}

void trace_section(Trace& trace, const job::Section& s, const SectionResult& r, const Design& d) {
    trace.open(Subject::section, s.id);
    const auto& h = r.hydraulic;
    if (d.tree && job_drop_everywhere(d)) {
        trace.step({steps::section_load{}, shared::sum_of_emitters{}, text(r.load, unit::watt, 0), ""});
        trace.step({steps::mass_flow{},
                    steps::mass_flow_formula{.load = fixed(r.load.si(), 0),
                                             .heat = fixed(d.state.specific_heat.si(), 1),
                                             .drop = fixed(d.drop.si(), 1)},
                    text(r.flow, unit::kilogram_per_second, 4), ""});
    } else {
        trace.step({steps::mass_flow{},
                    d.tree ? KeyedText{shared::sum_of_emitters{}} : KeyedText{shared::from_network{}},
                    text(r.flow, unit::kilogram_per_second, 4), ""});
        trace.step({steps::section_load{},
                    steps::section_load_formula{.flow = fixed(r.flow.si(), 4),
                                                .heat = fixed(d.state.specific_heat.si(), 1),
                                                .drop = fixed(d.drop.si(), 1)},
                    text(r.load, unit::watt, 0), ""});
    }
    trace.step({steps::velocity{},
                steps::velocity_formula{.density = text(d.state.density, unit::kilogram_per_cubic_metre, 2),
                                        .bore = text(s.bore.value, unit::millimetre, 1)},
                text(h.velocity, unit::metre_per_second, 3), s.bore.source});
    trace.step({steps::reynolds{},
                steps::reynolds_formula{.viscosity = text(d.state.viscosity, unit::millipascal_second, 4)},
                reynolds_result(h), ""});
    trace.step({steps::friction_factor{},
                steps::friction_factor_formula{.roughness = text(s.roughness.value, unit::millimetre, 4)},
                fixed(h.friction_factor, 5), "colebrook-white"});
    trace.step({steps::gradient{}, steps::gradient_formula{.dynamic = text(h.dynamic_pressure, unit::pascal, 1)},
                text(h.gradient, unit::pascal_per_metre, 1), "colebrook-white"});
    trace_pressure(trace, s, r);
    for (std::size_t i = 0; i < r.capacity.size(); ++i) {
        trace.step({capacity_at(static_cast<CapacityLimit>(i)),
                    steps::capacity_formula{.drop = text(d.drop, unit::kelvin, 1)},
                    text(r.capacity[i], unit::kilowatt, 2), ""});
    }
    if (r.drop_to_limit) {
        trace.step(
            {steps::drop_to_limit{}, steps::drop_to_limit_formula{}, text(*r.drop_to_limit, unit::kelvin, 1), ""});
    }
    if (r.drop_to_keep) {
        trace.step({steps::drop_to_keep{}, steps::drop_to_keep_formula{}, text(*r.drop_to_keep, unit::kelvin, 1), ""});
    }
}

void judge(const PipeLimits& limits, int index, SectionResult& r, Findings& findings) {
    const auto about = [&](Check check) { return About{check, Subject::section, index}; };
    r.velocity = add(findings, at_most(about(Check::section_velocity), r.hydraulic.velocity, limits.velocity.preferred,
                                       std::optional{limits.velocity.limit}));
    // The pressure drop per metre is only a preferred value, because the pump's head already counts what a steep pipe
    // costs.
    r.gradient = add(findings, at_most(about(Check::section_gradient), r.hydraulic.gradient, limits.gradient, {}));
    r.verdict = worse(findings[findings.size() - 2].verdict, findings.back().verdict);
}

/// Finds the sizes and temperature drops that would bring a pipe within the limits that it exceeds.
void find_remedies(const job::Job& job, const job::Section& s, const PipeLimits& limits, const physics::Conduit& pipe,
                   Temperature floor, const Design& d, SectionResult& r) {
    if (r.verdict == Verdict::keep) return;
    r.next_size = least_size(job, s, r, d, preferred_flow);
    r.drop_to_keep = least_drop(limits, d, r, pipe, floor, preferred_flow);
    if (r.verdict != Verdict::change) return;
    r.size_for_limit = least_size(job, s, r, d, limiting_flow);
    r.drop_to_limit = least_drop(limits, d, r, pipe, floor, limiting_flow);
}

}  // namespace

VelocityLimits velocity_limits_in(const job::Section& section, const reference::Pipe& pipe) {
    const auto& guide = reference::velocity_guide(pipe);
    const auto of = [](const Input<Velocity>& input, const reference::Cited<Velocity>& guided) {
        return input.basis == Basis::default_value ? guided.value : input.value;
    };
    return {of(section.velocity_preferred, guide.preferred), of(section.velocity_limit, guide.limit)};
}

void check_sections(const job::Job& job, Design& design, Remedies remedies, Trace* trace) {
    const Temperature floor = lowest_return(job);
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        const auto& s = job.sections[i];
        auto& r = design.sections[i];
        const physics::Conduit pipe{s.bore.value, s.roughness.value};
        const PipeLimits limits{{s.velocity_preferred.value, s.velocity_limit.value},
                                job.conditions.gradient_preferred.value};
        find_pressure(s, design, pipe, r);
        find_capacity(limits, design, pipe, r);
        const int index = static_cast<int>(i);
        judge(limits, index, r, design.findings);
        if (remedies == Remedies::sought) find_remedies(job, s, limits, pipe, floor, design, r);
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
