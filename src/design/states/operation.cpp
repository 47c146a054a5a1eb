// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/states/operation.hpp"
#include "design/parts.hpp"

#include "design/pipes/network_routes.hpp"
#include "loopfolio/base/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

BalancedValve valve_of(const Design& d, int emitter, const network::EmitterSetting& setting) {
    const auto& r = d.emitters[at(emitter)];
    BalancedValve out;
    out.emitter = emitter;
    out.flow = r.volume_flow;
    out.own = setting.own;
    out.added = setting.added;
    out.kv = setting.kv;
    out.return_temperature = r.return_temperature;
    out.drop = r.inlet - r.return_temperature;
    return out;
}

/// Head of the present pump, from no flow to a little beyond its usual range.
std::vector<job::CurvePoint> curve_of(const job::Job& job, const Design& d) {
    std::vector<job::CurvePoint> out;
    if (!describes_itself(job.circulator)) return out;
    constexpr int points = 24;
    const VolumeFlow last = job.circulator->curve.empty() ? 1.6 * d.duty.volume_flow
                                                          : job.circulator->curve.back().flow;
    const auto pump = pump_of(job.circulator, {});
    for (int i = 0; i <= points; ++i) {
        const VolumeFlow flow = (static_cast<double>(i) / points) * last;
        const Pressure head = network::pump_rise(pump, flow);
        if (head < Pressure{}) break;
        out.push_back({flow, head});
    }
    return out;
}

/// Solves the states in order. False, with refusals, at the first that cannot be solved.
bool solve_states(const job::Job& job, const Design& d, Extent extent, Operation& out, std::vector<Refusal>& refusals) {
    network::Workspace workspace;
    const auto add = [&](StateTask task) {
        task.extent = extent;
        auto state = solve_state(task, workspace, refusals);
        if (!state) return false;
        out.states.push_back(*std::move(state));
        return true;
    };
    auto balancing = balance_design(job, d, workspace, refusals);
    if (!balancing) return false;
    out.as_found = *std::move(balancing);
    if (!add({StateKind::as_found, job, d, nullptr}) || !add({StateKind::balanced, job, d, &out.as_found}))
        return false;

    auto [changed_job, changes] = with_changes(job, d);
    out.changes = std::move(changes);
    auto again = design_values(changed_job, nullptr, Remedies::left_out);
    if (auto* refused = std::get_if<std::vector<Refusal>>(&again)) {
        refusals = std::move(*refused);
        return false;
    }
    const auto& changed = std::get<Design>(again);
    out.changed_head = changed.duty.head;
    for (const auto& f : changed.findings) {
        if (f.verdict == Verdict::change) out.left.push_back(f);
    }
    auto rebalanced = balance_design(changed_job, changed, workspace, refusals);
    if (!rebalanced) return false;
    out.changed = *std::move(rebalanced);
    return add({StateKind::changed, changed_job, changed, &out.changed}) &&
           add({StateKind::mild_day, changed_job, changed, &out.changed});
}

}  // namespace

std::optional<Balancing> balance_design(const job::Job& job, const Design& d, network::Workspace& workspace,
                                        std::vector<Refusal>& refusals) {
    auto built = network::build_network(plan_of(job, d));
    refuse(built.findings, job, built, refusals);
    if (!refusals.empty()) return {};
    close_unused(d, built);
    const auto task = task_of(job, d, built);
    const auto result = network::balance(built.system.pipework, d.state, task.task, workspace);
    refuse(result.findings, job, built, refusals);
    if (!result.solved) return {};
    Balancing out;
    out.head = result.pump_rise.front();
    for (const int i : result.order) {
        if (at(i) < task.emitters.size())
            out.valves.push_back(valve_of(d, task.emitters[at(i)], result.emitters[at(i)]));
    }
    for (const auto& f : result.findings) {
        if (f.kind != network::FindingKind::emitter_out_of_reach || at(f.index) >= task.emitters.size()) continue;
        for (auto& v : out.valves) v.out_of_reach = v.out_of_reach || v.emitter == task.emitters[at(f.index)];
    }
    if (!out.valves.empty()) out.index_emitter = out.valves.front().emitter;
    return out;
}

namespace {

/// With little water on its side, or a small plate, the heat source would have to send it hotter than the fluid can be.
bool refuse_separation(const job::Job& job, const Design& d, std::vector<Refusal>& refusals) {
    if (!d.separation || physics::state_of(d.fluid, d.separation->source_leaving)) return false;
    const bool plate = job.separation->kind == job::SeparationKind::plate;
    const auto& flow = job.separation->source_flow;
    refusals.push_back({"separation", !plate && flow ? flow->place : job.separation->place,
                        fmt::format("the heat source would have to send its water at {}",
                                    text(d.separation->source_leaving, unit::celsius, 0)),
                        plate ? Hint{"check the plate's UA and the flow on the heat source's side: both are too small"}
                              : Hint{"check the flow on the heat source's side: it is too small for this load"}});
    return true;
}

}  // namespace

std::variant<Operation, std::vector<Refusal>> operate(const House& house, const Design& design, Extent extent) {
    const auto& filled = house.values;
    Operation out;
    std::vector<Refusal> refusals;
    out.pump_known = describes_itself(filled.circulator);
    if (design.duty.flow <= MassFlow{}) return out;
    if (refuse_separation(filled, design, refusals) || !solve_states(filled, design, extent, out, refusals))
        return refusals;
    if (extent == Extent::states) return out;
    out.pump_curve = curve_of(filled, design);
    out.joins = compare_joins(filled, design);
    out.best_join = best_of(out.joins);
    if (out.best_join > 0) out.best_join_design = design_joined_at(filled, out.joins[at(out.best_join)].junction);
    out.kept = keep_pipes(filled, design);
    out.capacities = find_capacities(filled, design);
    return out;
}

}  // namespace loopfolio::design
