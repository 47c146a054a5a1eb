// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/limits.hpp"

#include "loopfolio/base/unit.hpp"

namespace loopfolio::reference {

namespace {

template <class U>
constexpr auto cited(const U& unit, double value, double low, double high, std::string_view source) {
    return Cited<decltype(unit(value))>{unit(value), unit(low), unit(high), source};
}

constexpr auto& u_value = unit::watt_per_square_metre_kelvin;

constexpr Limits table = {
    .velocity_preferred = cited(unit::metre_per_second, 0.9, 0.75, 1.0, "velocity-preferred"),
    .velocity_limit = cited(unit::metre_per_second, 1.5, 1.0, 2.0, "velocity-limit"),
    .gradient_preferred = cited(unit::pascal_per_metre, 300.0, 200.0, 360.0, "cibse-guide-b-1986"),
    .temperature_drop = cited(unit::kelvin, 5.0, 5.0, 8.0, "common-practice"),
    .shortfall_noted = cited(unit::percent, 5.0, 0.0, 10.0, "common-practice"),
    .pump_margin = cited(unit::percent, 10.0, 10.0, 15.0, "common-practice"),
    .source_margin = cited(unit::percent, 5.0, 0.0, 10.0, "common-practice"),
    .thermal_bridge = cited(u_value, 0.10, 0.02, 0.15, "en-12831-1"),
    .exposed_floor_uninsulated = cited(u_value, 1.2, 1.0, 1.8, "rdsap-2012-s12"),
    .air_heat_capacity_wh_per_m3k = 0.34,
    .air_heat_capacity_source = "en-12831-1",
};

}  // namespace

const Limits& limits() { return table; }

}  // namespace loopfolio::reference
