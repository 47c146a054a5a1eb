// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/thresholds.hpp"

#include "loopfolio/base/unit.hpp"

namespace loopfolio::reference {

namespace {

template <class U>
constexpr auto cited(const U& unit, double value, double low, double high, std::string_view source) {
    return Cited<decltype(unit(value))>{unit(value), unit(low), unit(high), source};
}

constexpr Thresholds table = {
    .least_excess = cited(unit::kelvin, 10.0, 10.0, 15.0, "en-442"),
    .least_rating_ratio = cited(unit::number, 0.6, 0.5, 0.7, "common-practice"),
    .greatest_rating_ratio = cited(unit::number, 1.6, 1.4, 1.8, "common-practice"),
    .methods_apart = cited(unit::percent, 25.0, 20.0, 30.0, "common-practice"),
    .bare_loft = cited(unit::watt_per_square_metre_kelvin, 1.0, 0.7, 1.5, "common-practice"),
    .least_loss_rate = cited(unit::watt_per_square_metre, 15.0, 10.0, 20.0, "common-practice"),
    .greatest_loss_rate = cited(unit::watt_per_square_metre, 250.0, 200.0, 300.0, "common-practice"),
    .least_perimeter_ratio_per_m = cited(unit::number, 0.05, 0.05, 0.05, "iso-13370"),
    .capacities_alike = cited(unit::percent, 10.0, 5.0, 15.0, "common-practice"),
    .worth_replacing = cited(unit::percent, 10.0, 5.0, 20.0, "common-practice"),
    .most_of_head = cited(unit::percent, 50.0, 33.0, 67.0, "common-practice"),
    .rating_step = cited(unit::watt, 10.0, 1.0, 50.0, "common-practice"),
    .widest_drop = cited(unit::kelvin, 30.0, 20.0, 30.0, "common-practice"),
    .hottest_water = cited(unit::celsius, 95.0, 85.0, 95.0, "common-practice"),
    .longest_reheat = cited(unit::hour, 8.0, 6.0, 10.0, "common-practice"),
    .left_to_coil = cited(unit::kelvin, 5.0, 3.0, 8.0, "common-practice"),
    .round_the_store = cited(unit::celsius, 20.0, 15.0, 25.0, "common-practice"),
    .coldest_design = cited(unit::celsius, -15.0, -20.0, -10.0, "common-practice"),
    .mildest_design = cited(unit::celsius, 3.0, 2.0, 5.0, "common-practice"),
    .smallest_room = cited(unit::square_metre, 1.0, 0.8, 1.5, "common-practice"),
    .largest_room = cited(unit::square_metre, 150.0, 100.0, 200.0, "common-practice"),
    .longest_emitter = cited(unit::number, 2.0, 1.5, 3.0, "common-practice"),
    .longest_pipework = cited(unit::metre, 500.0, 300.0, 1000.0, "common-practice"),
    .frost_from = cited(unit::celsius, -5.0, -7.0, -3.0, "common-practice"),
    .frost_to = cited(unit::celsius, 5.0, 4.0, 7.0, "common-practice"),
    .shortest_season = cited(unit::hour, 2000.0, 1500.0, 3000.0, "common-practice"),
};

}  // namespace

const Thresholds& thresholds() { return table; }

}  // namespace loopfolio::reference
