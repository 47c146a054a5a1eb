// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/plant/season_run.hpp"

#include "loopfolio/base/number_text.hpp"
#include "texts/steps_of_season.hpp"
#include "texts/steps_shared.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace steps = texts::steps_of_season;
namespace shared = texts::steps_shared;

namespace {

std::string celsius(Temperature t) { return text(t, unit::celsius, 1); }
std::string kilowatts(Power p) { return text(p, unit::kilowatt, 2); }
/// Text of a number to subtract from another: in brackets if it is negative.
std::string taken(double value) { return value < 0.0 ? "(" + fixed(value, 1) + ")" : fixed(value, 1); }
std::string energy(Energy e) { return text(e, unit::kilowatt_hour, 0); }

/// The bin with the largest heat demand serves as the example for all.
std::optional<std::size_t> example_bin(const physics::Season& season) {
    std::optional<std::size_t> out;
    for (std::size_t i = 0; i < season.bins.size(); ++i) {
        if (season.bins[i].reached && (!out || season.bins[i].demand > season.bins[*out].demand)) out = i;
    }
    return out;
}

void trace_flow(Trace& trace, const job::Job& job, const Design& d, const SeasonRun& run,
                const physics::SeasonBin& bin) {
    const auto point = std::ranges::find(run.curve, bin.outdoor, &CompensationPoint::outdoor);
    const bool follows = job.season->compensation;
    KeyedText emitters = steps::season_flow_same_formula{};
    if (follows) emitters = steps::season_flow_formula{.share = fixed(bin.load / run.line.design_load, 3)};
    trace.step({steps::season_flow{}, std::move(emitters), celsius(point->emitters), follows ? "en-442" : ""});
    const std::string lowest = celsius(job.season->lowest_flow.value);
    KeyedText source = steps::season_source_flow_formula{.lowest = lowest};
    if (d.separation) {
        source = steps::season_source_flow_lifted_formula{.lift = text(d.separation->lift, unit::kelvin, 1),
                                                          .lowest = lowest};
    }
    trace.step({steps::season_source_flow{}, std::move(source), celsius(point->made), ""});
}

void trace_bin(Trace& trace, const job::Job& job, const SeasonRun& run, std::size_t i) {
    const auto& bin = run.season.bins[i];
    const auto& source = *job.heat_source;
    int number = source.number;
    for (const auto& units : source.further) number += units.number;
    KeyedText capacity = steps::by_maker_formula{};
    if (number > 1) capacity = steps::by_maker_of_units_formula{.units = fixed(number, 0)};
    trace.step({steps::season_capacity{}, std::move(capacity), kilowatts(bin.load / bin.load_ratio),
                source.performance_source});
    const double by_table = bin.cycles ? bin.performance / *physics::cycling_factor(bin.load / run.least[i],
                                                                                    job.season->cycling_factor.value)
                                       : bin.performance;
    trace.step({steps::season_performance{}, steps::by_maker_formula{}, fixed(by_table, 3), source.performance_source});
    if (bin.cycles) {
        const double run_share = bin.load / run.least[i];
        trace.step({steps::cycling_cost{},
                    steps::cycling_cost_formula{.load = kilowatts(bin.load),
                                                .least = kilowatts(run.least[i]),
                                                .ratio = fixed(run_share, 3),
                                                .factor = fixed(job.season->cycling_factor.value, 2)},
                    fixed(bin.performance, 3), "en-14825"});
    }
    trace.step({steps::bin_heat{}, steps::bin_heat_formula{.time = text(bin.time, unit::hour, 0)},
                energy(bin.source_heat), ""});
    trace.step({steps::bin_electricity{}, steps::bin_electricity_formula{}, energy(bin.source_electricity), ""});
}

void trace_sums(Trace& trace, const SeasonPlan& plan) {
    const auto& s = plan.season;
    trace.step({steps::degree_days{.base = celsius(plan.line.base)}, steps::degree_days_formula{},
                fixed(plan.degree_days, 0) + " K·d", ""});
    trace.step({steps::season_heat{}, steps::season_heat_formula{.time = text(s.full_load_time, unit::hour, 0)},
                energy(s.demand), "en-14825"});
    if (s.outside_demand > Energy{})
        trace.step({steps::heat_outside_table{}, shared::sum_sign{}, energy(s.outside_demand), ""});
    trace.step({steps::source_heat{}, steps::source_heat_formula{},
                energy(s.source_heat) + ", " + energy(s.source_electricity), ""});
    if (s.backup_heat > Energy{})
        trace.step({steps::backup_heat{}, steps::backup_heat_formula{}, energy(s.backup_heat), ""});
    if (s.unmet > Energy{}) trace.step({steps::unmet_heat{}, shared::sum_sign{}, energy(s.unmet), ""});
    if (s.standby_electricity > Energy{})
        trace.step(
            {steps::standby_electricity{}, steps::standby_electricity_formula{}, energy(s.standby_electricity), ""});
    if (s.whole_performance) {
        trace.step({steps::seasonal_performance{},
                    steps::seasonal_performance_formula{.heat = energy(s.source_heat + s.backup_heat),
                                                        .electricity = energy(all_electricity(s))},
                    fixed(*s.whole_performance, 2), "en-14825"});
        if (plan.bands) {
            const auto& band = plan.bands->performance;
            trace.step({steps::performance_band{},
                        steps::performance_band_formula{.ranges = fixed(static_cast<double>(plan.bands->ranges), 0)},
                        shared::range{.low = fixed(band.low, 2), .high = fixed(band.high, 2)}, ""});
        }
    }
}

void trace_part_load(Trace& trace, const job::Job& job, const PartLoad& part) {
    if (part.for_run) {
        trace.step({steps::run_water{},
                    steps::run_water_formula{.least = kilowatts(part.least_output),
                                             .load = kilowatts(part.smallest_load),
                                             .time = text(job.heat_source->least_run->value, unit::minute, 0),
                                             .swing = text(job.heat_source->allowed_swing->value, unit::kelvin, 1)},
                    text(*part.for_run, unit::litre, 0), "heat-balance"});
    }
    if (part.busiest) {
        trace.step({steps::most_starts{}, steps::most_starts_formula{}, fixed(part.busiest->starts_per_hour, 1),
                    "heat-balance"});
    }
}

}  // namespace

void trace_season(Trace& trace, const job::Job& job, const Design& d, const SeasonRun& run, const SeasonPlan& plan) {
    trace.open(Subject::plant, "season");
    if (const auto i = example_bin(run.season)) {
        const auto& bin = run.season.bins[*i];
        trace.step({steps::season_load{.outdoor = celsius(bin.outdoor)},
                    steps::season_load_formula{.load = kilowatts(run.line.design_load),
                                               .base = fixed(run.line.base.celsius(), 1),
                                               .outdoor = taken(bin.outdoor.celsius()),
                                               .design_outdoor = taken(run.line.design_outdoor.celsius())},
                    kilowatts(bin.load), "en-14825"});
        trace_flow(trace, job, d, run, bin);
        if (bin.load_ratio > 0.0) trace_bin(trace, job, run, *i);
    }
    trace_sums(trace, plan);
    if (plan.part_load) trace_part_load(trace, job, *plan.part_load);
}

}  // namespace loopfolio::design
