// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/design_allowance.hpp"

#include "physics/valid.hpp"

namespace loopfolio::physics {

namespace {

constexpr Length greatest_height = Length::from_si(1000.0);

}  // namespace

std::optional<Power> heat_up_power(Area floor, HeatFlux allowance) {
    if (!all_above_zero(floor) || !none_below_zero(allowance)) return std::nullopt;
    return floor * allowance;
}

std::optional<Power> with_margin(Power load, double margin) {
    if (!none_below_zero(load, margin) || margin > 1.0) return std::nullopt;
    return (1.0 + margin) * load;
}

std::optional<Temperature> outdoor_at_height(Temperature station, Length above_station, Lapse lapse) {
    if (!all_above_zero(station) || !none_below_zero(above_station, lapse)) return std::nullopt;
    if (above_station > greatest_height) return std::nullopt;
    return station - lapse * above_station;
}

}  // namespace loopfolio::physics
