// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/season.hpp"

#include "design/parts.hpp"
#include "design/plant/season_run.hpp"
#include "loopfolio/design/performance_table.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace {

void find_shares(SeasonPlan& plan) {
    bool first = true;
    for (const auto& bin : plan.season.bins) {
        if (!bin.reached || bin.load_ratio <= 0.0 || bin.time <= Duration{}) continue;
        if (first || bin.load_ratio > plan.largest_share) {
            plan.largest_share = bin.load_ratio;
            plan.largest_outdoor = bin.outdoor;
        }
        if (first || bin.load_ratio < plan.smallest_share) {
            plan.smallest_share = bin.load_ratio;
            plan.smallest_outdoor = bin.outdoor;
        }
        first = false;
    }
}

/// Each bin with cycling needs a certain volume of water, and has as many starts as its load causes. Keeps the largest
/// of each.
void find_part_load(const job::HeatSource& source, const Design& d, const SeasonRun& run, std::optional<Volume> content,
                    SeasonPlan& plan) {
    for (std::size_t i = 0; i < run.season.bins.size(); ++i) {
        const auto& bin = run.season.bins[i];
        if (!bin.cycles || bin.time <= Duration{}) continue;
        if (!plan.part_load) plan.part_load.emplace();
        auto& part = *plan.part_load;
        part.least_output = run.least[i];
        part.smallest_load = bin.load;
        if (!source.allowed_swing) continue;
        const auto swing = source.allowed_swing->value;
        if (source.least_run) {
            const auto volume = physics::volume_for_run(run.least[i], bin.load, source.least_run->value, swing,
                                                        d.state);
            if (volume) part.for_run = std::max(part.for_run.value_or(*volume), *volume);
        }
        if (!content) continue;
        const auto cycle = physics::run_cycle(*content, run.least[i], bin.load, swing, d.state);
        if (cycle && (!part.busiest || cycle->starts_per_hour > part.busiest->starts_per_hour)) {
            part.busiest = cycle;
            part.busiest_outdoor = bin.outdoor;
        }
    }
}

/// TRVs may leave only one emitter open. Flow through a one-pipe loop or a mixing set is left out.
std::optional<OpenCircuit> open_circuit(const job::Job& job, const Design& d) {
    const bool plain = std::ranges::none_of(d.emitters, [](const auto& e) { return e.on_loop || e.mixer >= 0; });
    if (!job.heat_source->minimum_flow || !plain) return {};
    OpenCircuit out;
    out.needed = job.heat_source->minimum_flow->value;
    out.own_circuit = separated(job);
    std::vector<int> order;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        if (d.emitters[i].volume_flow > VolumeFlow{}) order.push_back(static_cast<int>(i));
    }
    if (order.empty()) return {};
    const auto flow = [&](int i) { return d.emitters[static_cast<std::size_t>(i)].volume_flow; };
    std::ranges::stable_sort(order, std::ranges::greater{}, flow);
    out.emitter = order.back();
    out.smallest = flow(out.emitter);
    if (out.smallest >= out.needed) return out;
    VolumeFlow sum;
    for (const int i : order) {
        if (sum >= out.needed) break;
        sum += flow(i);
        out.always_open.push_back(i);
    }
    return out;
}

void find_options(const job::Job& job, const Design& design, SeasonPlan& plan) {
    for (const Temperature flow : job.season->compare_flows) {
        const auto run = run_season(job, design, flow);
        if (!run) continue;
        plan.options.push_back({flow, run->season.whole_performance, all_electricity(run->season),
                                run->season.outside_share(), curve_emitters(job, design, flow).changed});
    }
}

bool least_known(const job::HeatSource& source) {
    return std::ranges::all_of(kinds_of(source), [](const EqualUnits& units) {
        return units.least_output->has_value() ||
               std::ranges::all_of(units.points, [](const auto& p) { return p.least.has_value(); });
    });
}

}  // namespace

std::optional<SeasonPlan> plan_season(const job::Job& job, const Design& design, std::optional<Volume> content,
                                      std::optional<SeasonBands> bands, Trace* trace) {
    const auto run = run_season(job, design);
    if (!run) return {};
    SeasonPlan plan;
    plan.season = run->season;
    plan.line = run->line;
    plan.curve = run->curve;
    std::vector<physics::OutdoorBin> hours;
    for (const auto& bin : run->season.bins) hours.push_back({bin.outdoor, bin.time});
    plan.degree_days = physics::degree_days(hours, run->line.base);
    const auto emitters = curve_emitters(job, design);
    plan.held_by_network = emitters.held_by_network;
    plan.taken_as_changed = emitters.changed;
    plan.least_known = least_known(*job.heat_source);
    find_shares(plan);
    find_part_load(*job.heat_source, design, *run, content, plan);
    plan.open_circuit = open_circuit(job, design);
    find_options(job, design, plan);
    plan.bands = std::move(bands);
    if (trace != nullptr) trace_season(*trace, job, design, *run, plan);
    return plan;
}

}  // namespace loopfolio::design
