// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/hot_water.hpp"

#include "design/judge.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/design/performance_table.hpp"
#include "loopfolio/reference/thresholds.hpp"
#include "texts/steps_of_plant.hpp"
#include "texts/steps_shared.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace steps = texts::steps_of_plant;
namespace shared = texts::steps_shared;

namespace {

constexpr double days_a_year = 365.0;

void find_capacity(const job::Job& job, const job::HotWater& h, HotWaterPlan& out) {
    if (h.source_capacity) {
        out.capacity = h.source_capacity->value;
        return;
    }
    if (!job.heat_source) return;
    out.capacity = capacity_by_table(*job.heat_source, job.conditions.outdoor.value, h.source_flow.value);
    out.by_table = out.capacity.has_value();
    if (out.by_table) return;
    if (job.heat_source->capacity) out.capacity = job.heat_source->capacity->value;
}

/// Heat that the water carries for each kelvin that it cools by.
HeatLossCoefficient source_side(const Design& d) {
    const MassFlow flow = d.separation ? d.separation->source_flow * d.state.density : d.duty.flow;
    return flow * d.state.specific_heat;
}

void find_transfer(const job::HotWater& h, const Design& d, HotWaterPlan& out) {
    const auto side = source_side(d);
    if (h.coil) out.transfer = physics::coil_transfer(h.coil->value, side);
    else if (h.plate) out.transfer = physics::plate_transfer(h.plate->value, side, side);
}

void find_reheat(const job::HotWater& h, HotWaterPlan& out, Findings& findings) {
    if (!out.capacity || !out.transfer) return;
    out.reheat = physics::reheat({.store = h.store.value,
                                  .from = h.cold.value,
                                  .to = h.stored.value,
                                  .flow = h.source_flow.value,
                                  .capacity = *out.capacity,
                                  .transfer = *out.transfer});
    out.unreachable = !out.reheat;
    out.flow_for_capacity = physics::flow_to_pass(*out.capacity, *out.transfer, h.stored.value);
    if (!out.flow_for_capacity) return;
    const Temperature asked = *out.flow_for_capacity, made = h.source_flow.value;
    // A coil that needs hotter water than a closed system may have, or longer than a night to heat the cylinder, must
    // change.
    const auto& usual = reference::thresholds();
    const bool hopeless = out.unreachable || asked > usual.hottest_water.value ||
                          out.reheat->time > usual.longest_reheat.value;
    const Verdict verdict = hopeless ? Verdict::change : asked <= made ? Verdict::keep : Verdict::keep_noted;
    out.coil = add(findings, judged({Check::coil_flow, Subject::hot_water}, verdict, asked, made));
}

/// Finds the hours that hot water takes, by the mean power that coil and heat source pass, and the output that the
/// rooms then need.
void find_hours(const job::HotWater& h, const Design& d, HotWaterPlan& out) {
    constexpr Duration day = unit::hour(24.0);
    if (h.standing_loss)
        out.standing_loss = physics::standing_loss(h.standing_loss->value, h.stored.value,
                                                   reference::thresholds().round_the_store.value);
    if (!out.reheat) return;
    const Power mean = out.reheat->heat / out.reheat->time;
    out.hours_a_day = physics::time_for_hot_water(out.drawn, out.standing_loss.value_or(Energy{}), mean);
    if (out.hours_a_day && *out.hours_a_day < day) {
        out.load_with_hot_water = d.duty.source_load * (day / (day - *out.hours_a_day));
    }
}

void find_hot_cycle(const job::Job& job, const job::HotWater& h, HotWaterPlan& out) {
    if (!h.hot_cycles_a_year || h.hot_cycles_a_year->value <= 0.0) return;
    // A coil needs some temperature difference, so the heat source can heat the cylinder only to that much below its
    // flow temperature.
    const Temperature reach = std::min(h.hot_cycle.value,
                                       h.source_flow.value - reference::thresholds().left_to_coil.value);
    const auto ratio = job.heat_source
                           ? performance_by_table(*job.heat_source, job.conditions.outdoor.value, h.source_flow.value)
                           : std::nullopt;
    const Temperature by_source = ratio ? std::max(reach, h.stored.value) : h.stored.value;
    if (!h.immersion && by_source < h.hot_cycle.value) {
        out.needs_immersion = true;
        return;
    }
    out.hot_cycle = physics::pasteurise({.store = h.store.value,
                                         .usual = h.stored.value,
                                         .hot = h.hot_cycle.value,
                                         .source_reach = by_source,
                                         // Used only where the heat source does part of the heating.
                                         .source_performance = ratio.value_or(0.0),
                                         .times_a_year = h.hot_cycles_a_year->value});
}

void trace_reheat(Trace& trace, const job::HotWater& h, const Design& d, const HotWaterPlan& p) {
    if (p.capacity) {
        trace.step({steps::store_capacity{},
                    p.by_table ? KeyedText{steps::store_capacity_by_table_formula{}} : KeyedText{shared::as_stated{}},
                    text(*p.capacity, unit::kilowatt, 2), ""});
    }
    if (p.transfer) {
        std::string flow = text(source_side(d), unit::watt_per_kelvin, 0);
        trace.step(
            {steps::exchanger{},
             h.coil ? KeyedText{steps::coil_formula{.flow = flow}} : KeyedText{steps::plate_formula{.flow = flow}},
             text(*p.transfer, unit::watt_per_kelvin, 0), "ntu"});
    }
    if (p.reheat) {
        trace.step({steps::reheat_time{},
                    steps::reheat_time_formula{.cold = text(h.cold.value, unit::celsius, 1),
                                               .stored = text(h.stored.value, unit::celsius, 1)},
                    text(p.reheat->time, unit::minute, 0), "heat-balance"});
    }
    if (p.flow_for_capacity) {
        trace.step({steps::flow_for_capacity{}, steps::flow_for_capacity_formula{},
                    text(*p.flow_for_capacity, unit::celsius, 1), "heat-balance"});
    }
}

void trace_hot_water(Trace& trace, const job::HotWater& h, const Design& d, const HotWaterPlan& p) {
    trace.open(Subject::plant, "hot_water");
    trace.step({steps::heat_drawn{},
                steps::heat_drawn_formula{.persons = fixed(h.persons.value, 1),
                                          .each = text(h.each.value, unit::litre, 0),
                                          .cold = text(h.cold.value, unit::celsius, 1),
                                          .drawn = text(h.drawn.value, unit::celsius, 1)},
                text(p.drawn, unit::kilowatt_hour, 2), "iapws-if97"});
    trace.step({steps::store_needed{}, steps::store_needed_formula{.usable = text(h.usable.value, unit::percent, 0)},
                text(p.store_needed, unit::litre, 0), "heat-balance"});
    trace_reheat(trace, h, d, p);
    if (p.standing_loss) {
        trace.step({steps::standing_loss{}, steps::standing_loss_formula{},
                    text(*p.standing_loss, unit::kilowatt_hour, 2), "en-12897"});
    }
    if (p.hours_a_day) {
        trace.step({steps::hot_water_hours{}, steps::hot_water_hours_formula{}, text(*p.hours_a_day, unit::hour, 2),
                    "heat-balance"});
    }
    if (p.load_with_hot_water) {
        trace.step({steps::load_with_hot_water{},
                    steps::load_with_hot_water_formula{.load = text(d.duty.source_load, unit::kilowatt, 2),
                                                       .hours = fixed(p.hours_a_day->in(unit::hour), 2)},
                    text(*p.load_with_hot_water, unit::kilowatt, 2), "heat-balance"});
    }
}

}  // namespace

std::optional<HotWaterPlan> plan_hot_water(const job::Job& job, const Design& design, Findings& findings,
                                           std::vector<Refusal>& refusals, Trace* trace) {
    if (!job.hot_water) return {};
    const auto& h = *job.hot_water;
    const auto drawn = physics::daily_heat({h.persons.value, h.each.value, h.cold.value, h.drawn.value});
    const auto needed = physics::store_volume(h.persons.value * h.each.value, h.cold.value, h.drawn.value,
                                              h.stored.value, h.usable.value);
    if (!drawn || !needed) {
        refusals.push_back({"hot_water.supply", h.place,
                            fmt::format("water drawn at {} from a main at {} cannot come of a store at {}",
                                        text(h.drawn.value, unit::celsius, 1), text(h.cold.value, unit::celsius, 1),
                                        text(h.stored.value, unit::celsius, 1)),
                            "`cold_c` must lie below `drawn_c`, and `drawn_c` not above `stored_c`"});
        return {};
    }
    HotWaterPlan out;
    out.drawn = *drawn;
    out.store_needed = *needed;
    out.heat_a_year = days_a_year * out.drawn;
    out.store = add(findings,
                    judged({Check::store_volume, Subject::hot_water},
                           h.store.value >= *needed ? Verdict::keep : Verdict::keep_noted, h.store.value, *needed));
    find_capacity(job, h, out);
    find_transfer(h, design, out);
    find_reheat(h, out, findings);
    find_hours(h, design, out);
    out.heat_a_year += days_a_year * out.standing_loss.value_or(Energy{});
    find_hot_cycle(job, h, out);
    if (trace != nullptr) trace_hot_water(*trace, h, design, out);
    return out;
}

namespace {

/// Outdoor temperature up to which every unit's table goes. Warmer hours are calculated at this temperature, which
/// overestimates their electricity.
Temperature warmest_point(const job::HeatSource& source) {
    std::optional<Temperature> out;
    for (const auto& units : kinds_of(source)) {  // points rise with the outdoor temperature
        if (!units.points.empty())
            out = std::min(out.value_or(units.points.back().outdoor), units.points.back().outdoor);
    }
    return out.value_or(Temperature{});
}

}  // namespace

void find_hot_water_year(const job::Job& job, const physics::Season& season, HotWaterPlan& plan, Trace* trace) {
    if (!job.hot_water || !job.heat_source || season.bins.empty()) return;
    const Temperature warmest_known = warmest_point(*job.heat_source);
    const auto inverse_ratio = [&](Temperature outdoor) -> std::optional<double> {
        const auto ratio = performance_by_table(*job.heat_source, std::min(outdoor, warmest_known),
                                                job.hot_water->source_flow.value);
        return ratio ? std::optional{1.0 / *ratio} : std::nullopt;
    };
    constexpr Duration year = days_a_year * unit::hour(24.0);
    Duration covered;
    double sum = 0.0;  // hours over COP, in seconds
    const auto* warmest = &season.bins.front();
    for (const auto& bin : season.bins) {
        if (bin.outdoor > warmest->outdoor) warmest = &bin;
        if (bin.time <= Duration{}) continue;
        const auto one = inverse_ratio(bin.outdoor);
        if (!one) return;
        sum += *one * bin.time.si();
        covered += bin.time;
    }
    const auto mild = inverse_ratio(warmest->outdoor);
    if (!mild) return;
    if (covered < year) sum += *mild * (year - covered).si();
    const double mean = sum / std::max(covered, year).si();
    const Energy cycles = plan.hot_cycle ? plan.hot_cycle->electricity_a_year : Energy{};
    plan.electricity_a_year = mean * plan.heat_a_year + cycles;
    if (trace == nullptr) return;
    trace->step({steps::hot_water_electricity{},
                 steps::hot_water_electricity_formula{
                     .heat = text(plan.heat_a_year, unit::kilowatt_hour, 0),
                     .ratio = fixed(1.0 / mean, 2),
                     .cycles = text(cycles, unit::kilowatt_hour, 0),
                     .flow = text(job.hot_water->source_flow.value, unit::celsius, 1),
                     .mild = text(std::min(warmest->outdoor, warmest_known), unit::celsius, 1)},
                 text(*plan.electricity_a_year, unit::kilowatt_hour, 0), ""});
}

}  // namespace loopfolio::design
