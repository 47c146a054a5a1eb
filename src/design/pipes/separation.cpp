// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"
#include "design/pipes/pipe_plan.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/physics/exchanger.hpp"
#include "loopfolio/reference/limits.hpp"
#include "texts/steps_of_pump.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace steps = texts::steps_of_pump;

namespace {

VolumeFlow source_side_flow(const job::Job& job, const Design& d) {
    if (job.separation->source_flow) return job.separation->source_flow->value;
    VolumeFlow flow = d.duty.volume_flow;
    if (job.heat_source && job.heat_source->minimum_flow) flow = std::max(flow, job.heat_source->minimum_flow->value);
    return flow;
}

/// Header, close-coupled tees and buffers: when one side has more flow than the other, the difference passes through
/// and mixes.
void mix_through(const Design& d, const physics::MixedSides& sides, SeparationResult& r) {
    const auto mixed = physics::through_header(sides);
    r.source_leaving = mixed.source_leaving;
    r.source_entering = mixed.source_entering;
    r.lift = r.source_leaving - d.flow;
}

void pass_plate(const job::Job& job, const Design& d, const physics::MixedSides& sides, SeparationResult& r) {
    const HeatLossCoefficient source = sides.source * d.state.specific_heat;
    const HeatLossCoefficient emitters = sides.emitters * d.state.specific_heat;
    r.transfer_units = job.separation->plate_ua->value / std::min(source, emitters);
    r.effectiveness = physics::counterflow_effectiveness(*r.transfer_units,
                                                         std::min(source, emitters) / std::max(source, emitters));
    const Power heat = emitters * (d.flow - sides.emitter_return);
    r.source_leaving = sides.emitter_return + heat / (*r.effectiveness * std::min(source, emitters));
    r.source_entering = r.source_leaving - heat / source;
    r.lift = r.source_leaving - d.flow;
}

void find_head(const job::Job& job, SeparationResult& r) {
    r.head = job.heat_source ? source_drop(*job.heat_source, r.source_flow) : Pressure{};
    const auto& s = *job.separation;
    if (s.kind == job::SeparationKind::plate && s.pressure_drop && s.pressure_drop_flow) {
        const double ratio = r.source_flow / s.pressure_drop_flow->value;
        r.head += ratio * ratio * s.pressure_drop->value;
    }
    if (!s.source_pump) return;
    r.available = head_at(*s.source_pump, r.source_flow);
}

void trace_separation(Trace& trace, const Design& d, const SeparationResult& r) {
    trace.open(Subject::circulator, "separation");
    trace.step({steps::emitters_side_flow{}, steps::emitters_side_flow_formula{},
                text(r.emitter_flow, unit::litre_per_minute, 1), ""});
    trace.step({steps::source_side_flow{}, steps::source_side_flow_formula{},
                text(r.source_flow, unit::litre_per_minute, 1), ""});
    const auto c = [](Temperature t) { return fixed(t.celsius(), 2); };
    if (r.effectiveness) {
        trace.step({steps::transfer_units{}, steps::transfer_units_formula{}, fixed(*r.transfer_units, 3), "ntu"});
        trace.step({steps::effectiveness{}, steps::effectiveness_formula{}, fixed(*r.effectiveness, 4), "ntu"});
        trace.step({steps::source_leaving{}, steps::source_leaving_by_plate_formula{},
                    text(r.source_leaving, unit::celsius, 1), "ntu"});
    } else {
        trace.step({steps::source_leaving{}, steps::source_leaving_mixed_formula{.flow = c(d.flow)},
                    text(r.source_leaving, unit::celsius, 1), ""});
    }
    trace.step(
        {steps::source_entering{}, steps::source_entering_formula{}, text(r.source_entering, unit::celsius, 1), ""});
}

}  // namespace

void check_separation(const job::Job& job, Design& d, Trace* trace) {
    if (!separated(job) || d.duty.flow <= MassFlow{}) return;
    SeparationResult r;
    r.emitter_flow = d.duty.volume_flow;
    r.source_flow = source_side_flow(job, d);
    const MassFlow source = r.source_flow * d.state.density;
    const physics::MixedSides sides{
        .source = source, .emitters = d.duty.flow, .emitter_flow = d.flow, .emitter_return = d.duty.back};
    if (job.separation->kind == job::SeparationKind::plate) pass_plate(job, d, sides, r);
    else mix_through(d, sides, r);
    if (job.separation->kind == job::SeparationKind::buffer_four) {
        r.if_mixed = d.flow + d.duty.carried / (source * d.state.specific_heat);
    }
    find_head(job, r);
    d.separation = r;
    if (trace != nullptr) trace_separation(*trace, d, r);
}

void judge_separation(const job::Job& job, Design& d) {
    if (!d.separation || !describes_itself(job.separation->source_pump)) return;
    auto& r = *d.separation;
    // A pump gives no head beyond the end of its curve.
    r.pump = add(d.findings, covered({Check::separation_head, Subject::separation}, r.head,
                                     r.available.value_or(Pressure{}), reference::limits().pump_margin.value));
}

}  // namespace loopfolio::design
