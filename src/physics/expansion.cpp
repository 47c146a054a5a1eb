// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/expansion.hpp"

#include "physics/valid.hpp"

#include <algorithm>

namespace loopfolio::physics {

namespace {

constexpr Pressure least_recommended = unit::bar(0.7);
constexpr Volume small_vessel = unit::litre(15.0);
constexpr double small_reserve_share = 0.2;  // of the vessel
constexpr double reserve_share = 0.005;      // of the system
constexpr Volume least_reserve = unit::litre(3.0);

bool usable(const VesselDemand& d) { return all_above_zero(d.system, d.expansion) && none_below_zero(d.precharge); }

Volume large_reserve(Volume system) { return std::max(reserve_share * system, least_reserve); }

Volume reserve_of(Volume vessel, Volume system) {
    return vessel <= small_vessel ? small_reserve_share * vessel : large_reserve(system);
}

}  // namespace

std::optional<double> expansion_share(const Fluid& fluid, Temperature fill, Temperature highest) {
    const auto cold = state_of(fluid, fill);
    const auto hot = state_of(fluid, highest);
    if (!cold || !hot || !(fill < highest)) return std::nullopt;
    return cold->density / hot->density - 1.0;
}

std::optional<double> table_expansion_share(Temperature highest) {
    const double t = highest.celsius();
    constexpr double rounding = 1e-9;
    if (!(t >= 30.0 - rounding && t <= 110.0 + rounding)) return std::nullopt;
    return (0.31 + 3.9e-4 * t * t) / 100.0;
}

std::optional<Pressure> highest_in_use(Pressure safety_valve) {
    constexpr Pressure under = unit::bar(0.5);
    if (!all_above_zero(safety_valve - under)) return std::nullopt;
    return safety_valve <= unit::bar(5.0) ? safety_valve - under : 0.9 * safety_valve;
}

std::optional<Pressure> least_precharge(Pressure static_head, Pressure steam) {
    if (!none_below_zero(static_head, steam)) return std::nullopt;
    return std::max(static_head + steam, least_recommended);
}

std::optional<VesselSize> vessel_size(const VesselDemand& demand) {
    const auto highest = highest_in_use(demand.safety_valve);
    if (!usable(demand) || !highest || !(demand.precharge < *highest)) return std::nullopt;
    VesselSize out;
    out.highest = *highest;
    out.expansion = demand.expansion * demand.system;
    const double ratio = (*highest + atmosphere) / (*highest - demand.precharge);
    // A small vessel's reserve is a share of itself: V = (Ve + 0.2 V) ratio, as long as that comes
    // to a small one.
    const double left = 1.0 - small_reserve_share * ratio;
    if (left > 0.0 && ratio / left * out.expansion <= small_vessel) {
        out.least = ratio / left * out.expansion;
        out.reserve = small_reserve_share * out.least;
    } else {
        out.reserve = large_reserve(demand.system);
        out.least = ratio * (out.expansion + out.reserve);
    }
    return out;
}

std::optional<Volume> smallest_size(std::span<const Volume> sizes, Volume least) {
    const auto found = std::ranges::find_if(sizes, [&](Volume size) { return size >= least; });
    if (found == sizes.end()) return std::nullopt;
    return *found;
}

std::optional<VesselPressures> vessel_pressures(const VesselDemand& demand, Volume vessel,
                                                std::optional<Pressure> fill) {
    const auto highest = highest_in_use(demand.safety_valve);
    if (!usable(demand) || !highest || !all_above_zero(vessel)) return std::nullopt;
    const auto precharged = demand.precharge + atmosphere;
    const auto water_at = [&](Pressure p) { return vessel * (1.0 - precharged / (p + atmosphere)); };
    const auto pressure_with = [&](Volume water) { return precharged * (vessel / (vessel - water)) - atmosphere; };
    const Volume expansion = demand.expansion * demand.system;
    VesselPressures out;
    out.allowed = *highest;
    out.reserve = fill ? water_at(*fill) : reserve_of(vessel, demand.system);
    if (!none_below_zero(out.reserve) || !(out.reserve + expansion < vessel)) return std::nullopt;
    out.fill = fill.value_or(pressure_with(out.reserve));
    if (!(out.fill < *highest)) return std::nullopt;
    out.final = pressure_with(out.reserve + expansion);
    // The gas at the highest pressure in use, and then as much larger as the water shrinks.
    out.highest_fill = precharged * vessel / (vessel - water_at(*highest) + expansion) - atmosphere;
    out.valve_margin = demand.safety_valve - out.final;
    return out;
}

std::optional<Volume> bs7074_vessel(Volume system, double expansion, Pressure fill, Pressure final) {
    if (!all_above_zero(system, expansion, final)) return std::nullopt;
    if (!none_below_zero(fill) || !(fill < final)) return std::nullopt;
    return expansion * system / (1.0 - (fill + atmosphere) / (final + atmosphere));
}

}  // namespace loopfolio::physics
