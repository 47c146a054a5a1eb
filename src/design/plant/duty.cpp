// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "design/pipes/pipe_plan.hpp"
#include "loopfolio/design/performance_table.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/thresholds.hpp"
#include "texts/steps_of_pump.hpp"
#include "texts/steps_shared.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace steps = texts::steps_of_pump;
namespace shared = texts::steps_shared;

namespace {

/// Pressure drop from the heat source to each node and back, of the sections alone.
std::vector<Pressure> pressure_to_nodes(const Design& d, const Routes& tree) {
    std::vector<Pressure> at(d.nodes.size());
    for (const int node : tree.order) {
        const auto n = static_cast<std::size_t>(node);
        if (tree.parent_node[n] < 0) continue;
        at[n] = at[static_cast<std::size_t>(tree.parent_node[n])] +
                d.sections[static_cast<std::size_t>(d.node_parent_section[n])].pressure_drop;
    }
    return at;
}

Pressure pressure_drop_of(const Design& d, const IndexLeg& leg) {
    const auto& s = d.sections[static_cast<std::size_t>(leg.section)];
    switch (leg.pipes) {
        case IndexPipes::both: return s.pressure_drop;
        case IndexPipes::flow: return s.flow_pipe.pressure_drop;
        case IndexPipes::return_: return s.return_pipe.pressure_drop;
    }
    return {};
}

void find_index_circuit(Design& d, const Routes& tree, const std::vector<Pressure>& at_node) {
    auto& duty = d.duty;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        auto& e = d.emitters[i];
        e.circuit = at_node[static_cast<std::size_t>(d.junctions.emitter_at[i])] + e.pressure_drop + duty.source;
        if (duty.index_emitter < 0 || e.circuit > d.emitters[static_cast<std::size_t>(duty.index_emitter)].circuit) {
            duty.index_emitter = static_cast<int>(i);
        }
    }
    if (duty.index_emitter < 0) return;
    const auto index = static_cast<std::size_t>(duty.index_emitter);
    for (int node = d.junctions.emitter_at[index]; tree.parent_node[static_cast<std::size_t>(node)] >= 0;
         node = tree.parent_node[static_cast<std::size_t>(node)]) {
        const int section = d.node_parent_section[static_cast<std::size_t>(node)];
        d.sections[static_cast<std::size_t>(section)].on_index_circuit = true;
        duty.index_sections.push_back(section);
    }
    std::reverse(duty.index_sections.begin(), duty.index_sections.end());
    for (const int section : duty.index_sections) duty.index_legs.push_back({section, IndexPipes::both, {}});
    duty.sections = at_node[static_cast<std::size_t>(d.junctions.emitter_at[index])];
    duty.emitter = d.emitters[index].pressure_drop;
    duty.head = duty.sections + duty.emitter + duty.source;
}

/// The same from the network's solution: the pressure that a circuit needs is the head less what it has to spare.
void take_index_circuit(Design& d, const Routes& routes) {
    auto& duty = d.duty;
    duty.head = routes.head;
    duty.index_emitter = routes.index_emitter;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) d.emitters[i].circuit = routes.head - routes.spare[i];
    if (duty.index_emitter < 0) return;
    duty.emitter = d.emitters[static_cast<std::size_t>(duty.index_emitter)].pressure_drop;
    duty.sections = {};
    for (const auto& leg : duty.index_legs) duty.sections += pressure_drop_of(d, leg);
    const Pressure more = duty.head - duty.sections - duty.emitter - duty.source;
    constexpr Pressure counts = Pressure::from_si(5.0);  // less than a page shows
    if (more > counts || more < -counts) duty.left_over = more;
}

/// What each step of the index circuit takes, and the section that takes most of the head, if one does.
void share_head(Design& d) {
    auto& duty = d.duty;
    for (auto& leg : duty.index_legs) {
        leg.pressure_drop = pressure_drop_of(d, leg);
        if (duty.head > Pressure{})
            d.sections[static_cast<std::size_t>(leg.section)].head_share += leg.pressure_drop / duty.head;
    }
    double most = reference::thresholds().most_of_head.value;
    for (const int section : duty.index_sections) {
        const double share = d.sections[static_cast<std::size_t>(section)].head_share;
        if (share <= most) continue;
        most = share;
        duty.heaviest_section = section;
        duty.heaviest_drop = share * duty.head;
    }
}

void find_performance(const job::Job& job, Design& d) {
    if (!job.heat_source || job.heat_source->performance.empty()) return;
    const Temperature made = d.separation ? d.separation->source_leaving : d.flow;
    const auto outdoor = job.conditions.outdoor.value;
    const auto at_flow = performance_by_table(*job.heat_source, outdoor, d.flow);
    const auto at_source = performance_by_table(*job.heat_source, outdoor, made);
    if (at_flow && at_source) d.duty.performance = PerformanceResult{*at_flow, *at_source};
    else d.flags.push_back({Caveat::outside_table, Subject::circulator, 0, made.celsius()});
}

/// Takes the capacity that the job states, or else the one in the manufacturer's table at the temperature that the heat
/// source must supply. Warns where the two differ widely.
void find_source_capacity(const job::Job& job, Design& d) {
    const auto& source = *job.heat_source;
    const auto outdoor = job.conditions.outdoor.value;
    auto by_table = capacity_by_table(source, outdoor, d.separation ? d.separation->source_leaving : d.flow);
    if (by_table) *by_table = left_by_defrost(source, outdoor) * *by_table;
    d.duty.capacity = source.capacity ? std::optional{source.capacity->value} : by_table;
    d.duty.capacity_by_table = !source.capacity && by_table;
    if (!source.capacity || !by_table || *by_table <= Power{}) return;
    const double ratio = source.capacity->value / *by_table;
    if (std::abs(ratio - 1.0) > reference::thresholds().capacities_alike.value)
        d.flags.push_back({Caveat::capacity_unlike_table, Subject::circulator, 0, ratio});
}

/// Judges the head needed against what circulators of houses usually give, where the job describes no pump of its own.
void judge_by_usual(Design& d) {
    auto& duty = d.duty;
    if (duty.volume_flow <= VolumeFlow{}) return;
    const auto usual = reference::usual_pump_head(duty.volume_flow);
    if (!usual) {
        d.flags.push_back({Caveat::flow_far_off, Subject::circulator, 0, duty.volume_flow.si()});
        return;
    }
    duty.usual_circulator = add(
        d.findings, at_most({Check::usual_head, Subject::circulator}, duty.head, usual->low_m * d.metre_of_water,
                            std::optional{usual->high_m * d.metre_of_water}));
}

void judge_plant(const job::Job& job, Design& d) {
    auto& duty = d.duty;
    if (!describes_itself(job.circulator)) judge_by_usual(d);
    if (job.circulator && (!job.circulator->curve.empty() || job.circulator->quadratic || job.circulator->set_head)) {
        duty.available = head_at(*job.circulator, duty.volume_flow);
        if (!duty.available && !job.circulator->curve.empty()) {
            const double most = job.circulator->curve.back().flow.si();
            d.flags.push_back({Caveat::curve_exceeded, Subject::circulator, 0, duty.volume_flow.si() / most});
        }
        duty.circulator = add(d.findings,
                              covered({Check::circulator_head, Subject::circulator}, duty.head,
                                      duty.available.value_or(Pressure{}), reference::limits().pump_margin.value));
    }
    if (!job.heat_source) return;
    const auto& source = *job.heat_source;
    const VolumeFlow at_source = d.separation ? d.separation->source_flow : duty.volume_flow;
    find_source_capacity(job, d);
    if (duty.capacity) {
        duty.source_capacity = add(d.findings, covered({Check::source_capacity, Subject::heat_source}, duty.source_load,
                                                       *duty.capacity, reference::limits().source_margin.value));
    }
    if (source.minimum_flow) {
        duty.source_minimum_flow = add(d.findings, at_least({Check::source_minimum_flow, Subject::heat_source},
                                                            at_source, source.minimum_flow->value, 0.0));
    }
    if (source.maximum_drop && at_source > VolumeFlow{}) {
        const auto drop = duty.carried / (at_source * d.state.density * d.state.specific_heat);
        const auto most = source.maximum_drop->value;
        duty.source_maximum_drop = add(
            d.findings, at_most({Check::source_maximum_drop, Subject::heat_source}, drop, most, std::optional{most}));
    }
}

void trace_duty(Trace& trace, const job::Job& job, const Design& d) {
    const auto& duty = d.duty;
    trace.open(Subject::circulator, "duty");
    const bool one_drop = std::ranges::all_of(d.emitters, [&](const EmitterResult& e) { return e.drop == d.drop; }) &&
                          d.mixers.empty();
    KeyedText total = steps::total_flow_summed_formula{};
    if (one_drop) {
        total = steps::total_flow_formula{.load = fixed(duty.load.si(), 0),
                                          .density = fixed(d.state.density.si(), 1),
                                          .heat = fixed(d.state.specific_heat.si(), 0),
                                          .drop = fixed(d.drop.si(), 1)};
    }
    trace.step({steps::total_flow{}, std::move(total), text(duty.volume_flow, unit::litre_per_minute, 1), ""});
    KeyedText at_emitter;
    if (duty.index_emitter >= 0) {
        const auto index = static_cast<std::size_t>(duty.index_emitter);
        trace.step({steps::index_emitter{}, steps::index_emitter_formula{}, job.emitters[index].id, ""});
        at_emitter = steps::index_emitter_drop_formula{.factor = fixed(d.emitters[index].loss_factor, 2)};
    }
    trace.step({steps::index_sections{},
                d.tree ? KeyedText{steps::index_sections_formula{}} : KeyedText{shared::from_network{}},
                text(duty.sections, unit::kilopascal, 2), ""});
    trace.step({steps::index_emitter_drop{}, std::move(at_emitter), text(duty.emitter, unit::kilopascal, 2),
                "faber-kell-2002"});
    const bool stated = job.heat_source && job.heat_source->pressure_drop;
    trace.step({steps::source_drop{},
                stated ? KeyedText{steps::source_drop_formula{}} : KeyedText{steps::source_drop_not_stated_formula{}},
                text(duty.source, unit::kilopascal, 2), ""});
    if (duty.left_over != Pressure{}) {
        trace.step(
            {duty.left_over < Pressure{} ? KeyedText{steps::index_helped{}} : KeyedText{steps::index_left_over{}},
             {},
             text(duty.left_over, unit::kilopascal, 2),
             ""});
    }
    trace.step({steps::pump_head{}, shared::sum{}, text(duty.head, unit::kilopascal, 2), ""});
    if (duty.available) {
        trace.step({steps::pump_head_there{}, steps::pump_head_there_formula{},
                    text(*duty.available, unit::kilopascal, 2), job.circulator->source});
    }
}

}  // namespace

std::optional<Pressure> head_at(const job::Circulator& pump, VolumeFlow flow) {
    if (!describes_itself(pump)) return {};
    if (!pump.curve.empty() && flow > pump.curve.back().flow) return {};
    return network::pump_rise(pump_of(pump, {}), flow);
}

Pressure source_drop(const job::HeatSource& source, VolumeFlow flow) {
    if (!source.pressure_drop || !source.pressure_drop_flow) return {};
    const double ratio = flow / source.pressure_drop_flow->value;
    return ratio * ratio * source.pressure_drop->value;
}

/// Pressure drop that the emitters' pump must overcome in addition to the pipework.
Pressure drop_before_emitters(const job::Job& job, VolumeFlow flow) {
    if (through_header(job)) return {};
    Pressure sum;
    if (!separated(job) && job.heat_source) sum += source_drop(*job.heat_source, flow);
    const auto& s = job.separation;
    if (s && s->pressure_drop && s->pressure_drop_flow) {
        const double ratio = flow / s->pressure_drop_flow->value;
        sum += ratio * ratio * s->pressure_drop->value;
    }
    return sum;
}

void check_duty(const job::Job& job, Design& design, const Routes& routes, Trace* trace) {
    auto& duty = design.duty;
    for (const auto& e : design.emitters) duty.downward += e.downward;
    for (const auto& e : design.emitters) duty.load += e.load;
    duty.load += duty.downward;
    for (const auto& r : design.rooms) {
        duty.source_load += r.loss_to_outside;
        duty.heat_up += r.heat_up;
    }
    duty.source_load += design.pipe_loss + duty.heat_up + duty.downward;
    duty.carried = duty.load + design.pipe_loss;
    duty.volume_flow = duty.flow / design.state.density;
    duty.back = duty.flow > MassFlow{} ? design.flow - duty.carried / (duty.flow * design.state.specific_heat)
                                       : design.return_;
    duty.source = drop_before_emitters(job, duty.volume_flow);
    if (routes.order.empty()) take_index_circuit(design, routes);
    else find_index_circuit(design, routes, pressure_to_nodes(design, routes));
    share_head(design);
    find_mixer_heads(job, design, routes);
    check_separation(job, design, trace);
    judge_plant(job, design);
    judge_separation(job, design);
    judge_mixers(job, design);
    find_performance(job, design);
    if (trace != nullptr) trace_duty(*trace, job, design);
}

}  // namespace loopfolio::design
