// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/plant/season_run.hpp"

#include "loopfolio/design/performance_table.hpp"
#include "loopfolio/physics/grid.hpp"
#include "loopfolio/physics/source.hpp"
#include "loopfolio/reference/climate.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace {

constexpr Duration year = unit::hour(8760.0);
constexpr auto as_good_as = TemperatureDifference::from_si(0.01);  // differences below this are rounding, not heat

std::vector<physics::OutdoorBin> bins_of(const job::Season& season) {
    std::vector<physics::OutdoorBin> out;
    for (const auto& bin : season.bins) out.push_back({bin.outdoor, bin.time});
    if (!out.empty()) return out;
    if (const auto* climate = reference::find_climate(season.climate)) {
        for (const auto& row : climate->rows) out.push_back({row.outdoor, row.time});
    }
    return out;
}

/// The manufacturer's table for equal units, and the minimum output of one: at each point, or the same everywhere.
struct Source {
    physics::SourceTable table;
    std::vector<physics::GridPoint> least;
    Power least_stated;
    int number = 1;
};

std::optional<Source> source_of(const EqualUnits& units) {
    std::vector<physics::SourcePoint> points;
    Source out;
    out.number = units.number;
    if (*units.least_output) out.least_stated = (*units.least_output)->value;
    for (const auto& p : units.points) {
        if (!p.capacity) return {};
        points.push_back({.outdoor = p.outdoor, .flow = p.flow, .capacity = *p.capacity, .performance = p.performance});
        if (p.least) out.least.push_back({p.outdoor.celsius(), p.flow.celsius(), p.least->si()});
    }
    const auto table = physics::source_table(points);
    if (!table) return {};
    out.table = *table;
    if (out.least.size() != points.size()) out.least.clear();
    return out;
}

std::optional<std::vector<Source>> sources_of(const job::HeatSource& source) {
    std::vector<Source> out;
    for (const auto& units : kinds_of(source)) {
        auto one = source_of(units);
        if (!one) return {};
        out.push_back(std::move(*one));
    }
    return out;
}

/// Minimum output of one unit, zero where the job states none. Nothing outside the manufacturer's points.
std::optional<Power> least_of(const Source& source, Temperature outdoor, Temperature flow) {
    if (source.least.empty()) return source.least_stated;
    const auto least = physics::on_grid(source.least, outdoor.celsius(), flow.celsius());
    return least ? std::optional{Power::from_si(*least)} : std::nullopt;
}

struct Weather {
    const job::Job& job;
    const Design& design;
    std::vector<CurveEmitter> emitters;
    Temperature fixed;  ///< without compensation
};

/// Flow temperature that the emitters need at a share of the design load: the emitter that needs the hottest water sets
/// it.
std::optional<Temperature> curve_at(const Weather& w, double share) {
    if (!w.job.season->compensation) return w.fixed;
    std::optional<Temperature> out;
    for (const auto& e : w.emitters) {
        const auto needed = physics::compensated_flow(e.emission, share);
        if (!needed) return {};
        const Temperature at_source = e.at_source(needed->flow);
        out = std::max(out.value_or(at_source), at_source);
    }
    return out;
}

std::optional<CompensationPoint> flows_at(const Weather& w, Temperature outdoor, double share) {
    const auto emitters = curve_at(w, share);
    if (!emitters) return {};
    const auto lift = w.design.separation ? share * w.design.separation->lift : TemperatureDifference{};
    return CompensationPoint{outdoor, *emitters, std::max(*emitters + lift, w.job.season->lowest_flow.value)};
}

/// The largest unit starts first, so cycling begins where the load falls below its minimum output.
std::optional<physics::SourceState> state_at(const job::HeatSource& source, const std::vector<Source>& kinds,
                                             const CompensationPoint& flows, Power load, Power& least) {
    std::vector<physics::SourceOutput> units;
    Power largest;
    for (const auto& kind : kinds) {
        auto one = physics::source_at(kind.table, flows.outdoor, flows.made);
        if (!one) return {};
        one->capacity = left_by_defrost(source, flows.outdoor) * one->capacity;
        if (one->capacity > largest) {
            largest = one->capacity;
            const auto own = least_of(kind, flows.outdoor, flows.made);
            if (!own) return {};
            least = std::min(*own, one->capacity);
        }
        units.insert(units.end(), static_cast<std::size_t>(kind.number), *one);
    }
    const auto all = physics::cascade(units, load);
    if (!all) return {};
    return physics::SourceState{flows.made, all->capacity, least, all->performance};
}

}  // namespace

CurveEmitters curve_emitters(const job::Job& job, const Design& d, std::optional<Temperature> flow) {
    CurveEmitters out;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        const auto& r = d.emitters[i];
        if (r.load <= Power{}) continue;
        const auto room = job.rooms[static_cast<std::size_t>(r.room)].temperature.value;
        const double exponent = job.emitters[i].exponent.value;
        const bool held = r.mixer >= 0 || r.on_loop;
        out.held_by_network = out.held_by_network || held;
        CurveEmitter one{{}, d.flow, held ? d.flow : r.inlet, held ? 1.0 : r.inlet_follows};
        const Temperature most = flow ? one.at_emitter(*flow) : one.inlet;
        const auto drop = held ? d.drop : r.drop;
        const bool too_small = !held && (!r.lowest_flow_temperature || *r.lowest_flow_temperature > most + as_good_as);
        if (too_small) ++out.changed;
        const Temperature at = held || flow || too_small ? most : *r.lowest_flow_temperature;
        one.emission = {at, at - drop, room, exponent};
        out.emitters.push_back(one);
    }
    return out;
}

std::optional<SeasonRun> run_season(const job::Job& job, const Design& design, std::optional<Temperature> flow) {
    if (!job.season || !job.heat_source || design.duty.source_load <= design.duty.heat_up) return {};
    const auto& source = *job.heat_source;
    const auto kinds = sources_of(source);
    if (!kinds) return {};
    const Weather weather{job, design, curve_emitters(job, design, flow).emitters, flow.value_or(design.flow)};
    const auto bins = bins_of(*job.season);
    SeasonRun out;
    // The allowance for warming up is power held in reserve, not heat that the season needs.
    out.line = {.design_load = design.duty.source_load - design.duty.heat_up,
                .design_outdoor = job.conditions.outdoor.value,
                .base = job.season->base.value};
    out.least.resize(bins.size());
    Duration heated;
    for (const auto& bin : bins) heated += bin.outdoor < out.line.base ? bin.time : Duration{};
    physics::SeasonPlant plant;
    plant.degradation = job.season->cycling_factor.value;
    plant.backup.capacity = source.backup ? source.backup->value : Power{};
    Duration counted = year;
    if (!job.season->period.empty()) {
        counted = Duration{};
        for (const auto& bin : bins) counted += bin.time;
    }
    if (job.season->standby)
        plant.standby.push_back({std::max(counted - heated, Duration{}), job.season->standby->value});
    plant.states = [&](Temperature outdoor, Power load) -> std::optional<physics::SourceState> {
        const auto flows = flows_at(weather, outdoor, load / out.line.design_load);
        if (!flows) return {};
        out.curve.push_back(*flows);
        const auto at = std::ranges::find(bins, outdoor, &physics::OutdoorBin::outdoor) - bins.begin();
        return state_at(source, *kinds, *flows, load, out.least[static_cast<std::size_t>(at)]);
    };
    const auto season = physics::season(bins, out.line, plant);
    if (!season) return {};
    out.season = *season;
    return out;
}

}  // namespace loopfolio::design
