// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/plant/season_run.hpp"

#include "loopfolio/base/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace {

std::string celsius(Temperature t) { return text(t, unit::celsius, 1); }
std::string kilowatts(Power p) { return text(p, unit::kilowatt, 2); }
/// A number to be taken away from another.
std::string taken(double value) { return value < 0.0 ? "(" + fixed(value, 1) + ")" : fixed(value, 1); }
std::string energy(Energy e) { return text(e, unit::kilowatt_hour, 0); }

/// The bin that asks for most heat stands for all.
std::optional<std::size_t> example_bin(const physics::Season& season) {
    std::optional<std::size_t> out;
    for (std::size_t i = 0; i < season.bins.size(); ++i) {
        if (season.bins[i].reached && (!out || season.bins[i].demand > season.bins[*out].demand)) out = i;
    }
    return out;
}

void trace_flow(Trace& trace, const job::Job& job, const Design& d, const SeasonRun& run, const physics::SeasonBin& bin) {
    const auto point = std::ranges::find(run.curve, bin.outdoor, &CompensationPoint::outdoor);
    const bool follows = job.season->compensation;
    trace.step({"flow temperature of the emitters there",
                follows ? fmt::format("excess × share^(1/n), drop × share, share = {}; the emitter that needs the hottest water",
                                      fixed(bin.load / run.line.design_load, 3))
                        : std::string{"the same in any weather"},
                celsius(point->emitters), follows ? "en-442" : ""});
    trace.step({"that the source makes",
                d.separation ? fmt::format("with its share of the lift of {}, and not below {}", text(d.separation->lift, unit::kelvin, 1),
                                           celsius(job.season->lowest_flow.value))
                             : "not below " + celsius(job.season->lowest_flow.value),
                celsius(point->made), ""});
}

void trace_bin(Trace& trace, const job::Job& job, const SeasonRun& run, std::size_t i) {
    const auto& bin = run.season.bins[i];
    const auto& source = *job.heat_source;
    int number = source.number;
    for (const auto& units : source.further) number += units.number;
    trace.step({"capacity there", number > 1 ? fmt::format("bilinear between the maker's points, {} units", number)
                                          : std::string{"bilinear between the maker's points"},
                kilowatts(bin.load / bin.load_ratio), source.performance_source});
    const double by_table = bin.cycles ? bin.performance / *physics::cycling_factor(bin.load / run.least[i], job.season->cycling_factor.value)
                                       : bin.performance;
    trace.step({"heat over electricity there", "bilinear between the maker's points", fixed(by_table, 3), source.performance_source});
    if (bin.cycles) {
        const double run_share = bin.load / run.least[i];
        trace.step({"with what cycling costs",
                    fmt::format("× R/(Cc·R + 1 − Cc), R = load/least output = {}/{} = {}, Cc = {}", kilowatts(bin.load),
                    kilowatts(run.least[i]), fixed(run_share, 3), fixed(job.season->cycling_factor.value, 2)),
                    fixed(bin.performance, 3), "en-14825"});
    }
    trace.step({"heat of this bin", fmt::format("load or capacity, the smaller, × {}", text(bin.time, unit::hour, 0)), energy(bin.source_heat), ""});
    trace.step({"electricity of this bin", "heat / performance", energy(bin.source_electricity), ""});
}

void trace_sums(Trace& trace, const SeasonPlan& plan) {
    const auto& s = plan.season;
    trace.step({"degree days below " + celsius(plan.line.base), "Σ (θ base − θ) × hours / 24, over the hours colder than that",
                fixed(plan.degree_days, 0) + " K·d", ""});
    trace.step({"heat of the season", fmt::format("Σ load × hours; as much as {} at the design load", text(s.full_load_time, unit::hour, 0)),
                energy(s.demand), "en-14825"});
    if (s.outside_demand > Energy{}) trace.step({"of that outside the maker's table, left out", "Σ", energy(s.outside_demand), ""});
    trace.step({"heat of the source, and its electricity", "Σ over the bins", energy(s.source_heat) + ", " + energy(s.source_electricity), ""});
    if (s.backup_heat > Energy{})
        trace.step({"heat of the backup", "what the source cannot make, as far as it goes", energy(s.backup_heat), ""});
    if (s.unmet > Energy{}) trace.step({"heat that neither makes", "Σ", energy(s.unmet), ""});
    if (s.standby_electricity > Energy{})
        trace.step({"electricity while nothing is heated", "power × hours", energy(s.standby_electricity), ""});
    if (s.whole_performance) {
        trace.step({"seasonal performance",
                    fmt::format("heat / electricity = {} / {}", energy(s.source_heat + s.backup_heat), energy(all_electricity(s))),
                    fixed(*s.whole_performance, 2), "en-14825"});
        if (plan.bands) {
            trace.step({"its band", fmt::format("root of the sum of squares over {} ranges, down and up", plan.bands->ranges),
                        fixed(plan.bands->performance.low, 2) + " to " + fixed(plan.bands->performance.high, 2), ""});
        }
    }
}

void trace_part_load(Trace& trace, const job::Job& job, const PartLoad& part) {
    if (part.for_run) {
        trace.step({"water for the stated run",
                    fmt::format("(least output − load)·t/(ρ·c·Δθ) = ({} − {}) × {} / …, Δθ = {}", kilowatts(part.least_output),
                    kilowatts(part.smallest_load), text(job.heat_source->least_run->value, unit::minute, 0),
                    text(job.heat_source->allowed_swing->value, unit::kelvin, 1)), text(*part.for_run, unit::litre, 0), "heat-balance"});
    }
    if (part.busiest) {
        trace.step({"most starts an hour", "1/(t run + t rest), with the content of the system",
                    fixed(part.busiest->starts_per_hour, 1), "heat-balance"});
    }
}

}  // namespace

void trace_season(Trace& trace, const job::Job& job, const Design& d, const SeasonRun& run, const SeasonPlan& plan) {
    trace.open(Subject::plant, "season");
    if (const auto i = example_bin(run.season)) {
        const auto& bin = run.season.bins[*i];
        trace.step({"load at " + celsius(bin.outdoor), fmt::format("Φ·(θ base − θ)/(θ base − θ design) = {} × ({} − {})/({} − {})",
                    kilowatts(run.line.design_load), fixed(run.line.base.celsius(), 1), taken(bin.outdoor.celsius()),
                    fixed(run.line.base.celsius(), 1), taken(run.line.design_outdoor.celsius())), kilowatts(bin.load), "en-14825"});
        trace_flow(trace, job, d, run, bin);
        if (bin.load_ratio > 0.0) trace_bin(trace, job, run, *i);
    }
    trace_sums(trace, plan);
    if (plan.part_load) trace_part_load(trace, job, *plan.part_load);
}

}  // namespace loopfolio::design
