// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/limits.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace {

/// Head of a curve at a flow, straight between its points: a falling, bulging curve lies above its
/// chords, so the head is never overstated. Nothing beyond the last point.
std::optional<Pressure> head_at(const std::vector<job::CurvePoint>& curve, VolumeFlow flow) {
    if (curve.empty() || flow > curve.back().flow) return {};
    if (flow <= curve.front().flow) return curve.front().head;
    const auto after = std::upper_bound(curve.begin(), curve.end(), flow,
                                        [](VolumeFlow f, const job::CurvePoint& p) { return f < p.flow; });
    if (after == curve.end()) return curve.back().head;
    const auto before = after - 1;
    const double share = (flow - before->flow) / (after->flow - before->flow);
    return before->head + share * (after->head - before->head);
}

Pressure source_drop(const job::HeatSource& source, VolumeFlow flow) {
    if (!source.pressure_drop || !source.pressure_drop_flow) return {};
    const double ratio = flow / source.pressure_drop_flow->value;
    return ratio * ratio * source.pressure_drop->value;
}

/// Pressure from the source to each node and back, sections only.
std::vector<Pressure> pressure_to_nodes(const Design& d, const TreeIndex& tree) {
    std::vector<Pressure> at(d.nodes.size());
    for (const int node : tree.order) {
        const auto n = static_cast<std::size_t>(node);
        if (tree.parent_node[n] < 0) continue;
        at[n] = at[static_cast<std::size_t>(tree.parent_node[n])] +
                d.sections[static_cast<std::size_t>(d.node_parent_section[n])].pressure_drop;
    }
    return at;
}

void find_index_circuit(Design& d, const TreeIndex& tree, const std::vector<Pressure>& at_node) {
    auto& duty = d.duty;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        auto& e = d.emitters[i];
        e.circuit = at_node[static_cast<std::size_t>(tree.emitter_node[i])] + e.pressure_drop + duty.source;
        if (duty.index_emitter < 0 || e.circuit > d.emitters[static_cast<std::size_t>(duty.index_emitter)].circuit) {
            duty.index_emitter = static_cast<int>(i);
        }
    }
    if (duty.index_emitter < 0) return;
    const auto index = static_cast<std::size_t>(duty.index_emitter);
    for (int node = tree.emitter_node[index]; tree.parent_node[static_cast<std::size_t>(node)] >= 0;
         node = tree.parent_node[static_cast<std::size_t>(node)]) {
        const int section = d.node_parent_section[static_cast<std::size_t>(node)];
        d.sections[static_cast<std::size_t>(section)].on_index_circuit = true;
        duty.index_sections.push_back(section);
    }
    std::reverse(duty.index_sections.begin(), duty.index_sections.end());
    duty.sections = at_node[static_cast<std::size_t>(tree.emitter_node[index])];
    duty.emitter = d.emitters[index].pressure_drop;
    duty.head = duty.sections + duty.emitter + duty.source;
}

/// Verdict on plant that has something in hand over what is needed of it.
Finding in_hand(Check check, double needed, double there, double margin_kept) {
    Finding f{check, Verdict::change, needed, there, 0.0};
    f.margin = there > 0.0 ? (there - needed) / there : -1.0;
    if (f.margin >= margin_kept) f.verdict = Verdict::keep;
    else if (f.margin >= 0.0) f.verdict = Verdict::keep_noted;
    return f;
}

void judge_plant(const job::Job& job, Design& d) {
    auto& duty = d.duty;
    if (job.circulator && !job.circulator->curve.empty()) {
        duty.available = head_at(job.circulator->curve, duty.volume_flow);
        if (!duty.available) {
            const double most = job.circulator->curve.back().flow.si();
            d.flags.push_back({Caveat::curve_exceeded, Subject::circulator, 0, duty.volume_flow.si() / most});
        }
        duty.circulator = in_hand(Check::circulator_head, duty.head.si(), duty.available.value_or(Pressure{}).si(),
                                  reference::limits().pump_margin.value);
    }
    if (!job.heat_source) return;
    const auto& source = *job.heat_source;
    if (source.capacity) {
        duty.source_capacity = in_hand(Check::source_capacity, duty.source_load.si(), source.capacity->value.si(),
                                       reference::limits().source_margin.value);
    }
    if (source.minimum_flow) {
        duty.source_minimum_flow = at_least(Check::source_minimum_flow, duty.volume_flow.si(),
                                            source.minimum_flow->value.si(), 0.0);
    }
}

void trace_duty(Trace& trace, const job::Job& job, const Design& d) {
    const auto& duty = d.duty;
    trace.open(Subject::circulator, "duty");
    trace.step({"total flow", fmt::format("V = ΣΦ / (ρ·c·Δθ) = {} / ({} × {} × {})", fixed(duty.load.si(), 0),
                fixed(d.state.density.si(), 1), fixed(d.state.specific_heat.si(), 0), fixed(d.drop.si(), 1)),
                text(duty.volume_flow, unit::litre_per_minute, 1), ""});
    if (duty.index_emitter >= 0) {
        trace.step({"index emitter", "the emitter whose circuit drops most",
                    job.emitters[static_cast<std::size_t>(duty.index_emitter)].id, ""});
    }
    trace.step({"sections of its circuit", "sum along the way, flow and return", text(duty.sections, unit::kilopascal, 2), ""});
    trace.step({"emitter and its valves", duty.index_emitter < 0 ? std::string{} : fmt::format("Σζ·ρv²/2 in the connection, Σζ = {}",
                fixed(d.emitters[static_cast<std::size_t>(duty.index_emitter)].loss_factor, 2)), text(duty.emitter, unit::kilopascal, 2), "faber-kell-2002"});
    trace.step({"heat source", job.heat_source && job.heat_source->pressure_drop ? "stated drop × (flow / stated flow)²"
                                                                                 : "not stated: taken as none",
                text(duty.source, unit::kilopascal, 2), ""});
    trace.step({"pump head", "sum", text(duty.head, unit::kilopascal, 2), ""});
    if (duty.available) {
        trace.step({"head of the circulator at that flow", "straight between the points of its curve",
                    text(*duty.available, unit::kilopascal, 2), job.circulator->source});
    }
}

}  // namespace

void check_duty(const job::Job& job, Design& design, const TreeIndex& tree, Trace* trace) {
    auto& duty = design.duty;
    for (const auto& e : design.emitters) duty.load += e.load;
    for (const auto& r : design.rooms) duty.source_load += r.loss_to_outside;
    duty.flow = duty.load / (design.state.specific_heat * design.drop);
    duty.volume_flow = duty.flow / design.state.density;
    if (job.heat_source) duty.source = source_drop(*job.heat_source, duty.volume_flow);
    find_index_circuit(design, tree, pressure_to_nodes(design, tree));
    judge_plant(job, design);
    if (trace != nullptr) trace_duty(*trace, job, design);
}

}  // namespace loopfolio::design
