// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/hot_water.hpp"

#include "loopfolio/physics/exchanger.hpp"
#include "loopfolio/physics/fluid.hpp"
#include "physics/valid.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::physics {

namespace {

constexpr Temperature coldest = unit::celsius(0.01);
constexpr Temperature hottest = unit::celsius(95.0);

bool rises_in_range(Temperature from, Temperature to) { return from >= coldest && from < to && to <= hottest; }

/// rho cp V at the mean temperature, J/K.
auto heat_capacity(Volume volume, Temperature from, Temperature to) {
    const auto mean = water(from + 0.5 * (to - from));
    return mean->density * mean->specific_heat * volume;
}

}  // namespace

std::optional<Energy> heat_to_warm(Volume volume, Temperature cold, Temperature hot) {
    if (!all_above_zero(volume) || !rises_in_range(cold, hot)) return std::nullopt;
    return water(hot)->density * volume * (*water_enthalpy(hot) - *water_enthalpy(cold));
}

std::optional<Energy> daily_heat(const DailyUse& use) {
    if (!all_above_zero(use.persons, use.each)) return std::nullopt;
    return heat_to_warm(use.persons * use.each, use.cold, use.drawn);
}

std::optional<Volume> store_volume(Volume mixed, Temperature cold, Temperature drawn, Temperature stored,
                                   double usable_share) {
    if (!all_above_zero(mixed, usable_share) || usable_share > 1.0) return std::nullopt;
    if (!rises_in_range(cold, drawn) || !(drawn <= stored) || !(stored <= hottest)) return std::nullopt;
    return mixed * ((drawn - cold) / (stored - cold)) / usable_share;
}

std::optional<HeatLossCoefficient> coil_transfer(HeatLossCoefficient ua, HeatLossCoefficient source_flow) {
    if (!all_above_zero(ua, source_flow)) return std::nullopt;
    return counterflow_effectiveness(ua / source_flow, 0.0) * source_flow;
}

std::optional<HeatLossCoefficient> plate_transfer(HeatLossCoefficient ua, HeatLossCoefficient source_flow,
                                                  HeatLossCoefficient store_flow) {
    if (!all_above_zero(ua, source_flow, store_flow)) return std::nullopt;
    const auto [least, most] = std::minmax(source_flow, store_flow);
    return counterflow_effectiveness(ua / least, least / most) * least;
}

std::optional<Reheat> reheat(const ReheatDemand& d) {
    if (!all_above_zero(d.store, d.flow, d.capacity, d.transfer)) return std::nullopt;
    if (!rises_in_range(d.from, d.to) || !(d.to < d.flow)) return std::nullopt;
    const auto capacity = heat_capacity(d.store, d.from, d.to);
    Reheat out;
    out.heat = capacity * (d.to - d.from);
    out.turns = std::clamp(d.flow - d.capacity / d.transfer, d.from, d.to);
    out.by_capacity = capacity * (out.turns - d.from) / d.capacity;
    out.by_transfer = capacity / d.transfer * std::log((d.flow - out.turns) / (d.flow - d.to));
    out.time = out.by_capacity + out.by_transfer;
    out.least = std::min(d.capacity, d.transfer * (d.flow - d.to));
    return out;
}

std::optional<Temperature> flow_to_pass(Power power, HeatLossCoefficient transfer, Temperature stored) {
    if (!all_above_zero(power, transfer, stored)) return std::nullopt;
    return stored + power / transfer;
}

std::optional<Energy> standing_loss(Energy test_loss_a_day, Temperature stored, Temperature room,
                                    TemperatureDifference test_excess) {
    if (!none_below_zero(test_loss_a_day, stored - room)) return std::nullopt;
    if (!all_above_zero(test_excess, stored, room)) return std::nullopt;
    return test_loss_a_day * ((stored - room) / test_excess);
}

std::optional<PasteurisationUse> pasteurise(const Pasteurisation& p) {
    if (!all_above_zero(p.store, p.times_a_year) || !rises_in_range(p.usual, p.hot)) return std::nullopt;
    if (!all_finite(p.source_reach)) return std::nullopt;
    const Temperature handed_over = std::clamp(p.source_reach, p.usual, p.hot);
    const auto capacity = heat_capacity(p.store, p.usual, p.hot);
    PasteurisationUse out;
    out.by_source = capacity * (handed_over - p.usual);
    out.by_immersion = capacity * (p.hot - handed_over);
    Energy each = out.by_immersion;
    if (out.by_source.si() > 0.0) {
        if (!all_above_zero(p.source_performance)) return std::nullopt;
        each += out.by_source / p.source_performance;
    }
    out.electricity_a_year = p.times_a_year * each;
    return out;
}

std::optional<Duration> time_for_hot_water(Energy daily_heat, Energy standing_loss, Power capacity) {
    if (!none_below_zero(daily_heat, standing_loss) || !all_above_zero(capacity)) return std::nullopt;
    return (daily_heat + standing_loss) / capacity;
}

}  // namespace loopfolio::physics
