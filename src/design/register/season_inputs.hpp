// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/register/input_kind.hpp"
#include "loopfolio/base/unit.hpp"

namespace loopfolio::design {

inline constexpr NumberUnit money_per_kilowatt_hour{1.0, "per kWh", "_per_kwh"};
inline constexpr NumberUnit kilogram_per_kilowatt_hour{1.0, "kg/kWh", "_kg_per_kwh"};

/// How the source runs at part load, in the cold and with help.
template <class H, class F>
void visit_running(H& h, F&& visit) {
    using P = InputKind<Unit<Power>>;
    using T = InputKind<CelsiusUnit>;
    if (h.least_output) visit(P{"least output of heat source", unit::kilowatt, 2}, "", *h.least_output);
    for (auto& units : h.further) {
        if (units.least_output) visit(P{"least output of a further unit", unit::kilowatt, 2}, units.name, *units.least_output);
        if (units.power_level) visit(InputKind<NumberUnit>{"sound power level of a further unit", unit::decibel, 0}, units.name, *units.power_level);
    }
    if (h.defrost_derating) {
        visit(InputKind<NumberUnit>{"capacity that defrosting takes", unit::percent, 0}, "", *h.defrost_derating);
        visit(T{"defrosting from", unit::celsius, 1}, "", h.defrost_from);
        visit(T{"defrosting to", unit::celsius, 1}, "", h.defrost_to);
    }
    if (h.backup) visit(P{"backup heater", unit::kilowatt, 2}, "", *h.backup);
    if (h.least_run) visit(InputKind<Unit<Duration>>{"shortest run of heat source", unit::minute, 0}, "", *h.least_run);
    if (h.allowed_swing) {
        visit(InputKind<Unit<TemperatureDifference>>{"swing of the water between start and stop", unit::kelvin, 1}, "", *h.allowed_swing);
    }
}

template <class S, class F>
void visit_season(S& s, F&& visit) {
    using T = InputKind<CelsiusUnit>;
    using N = InputKind<NumberUnit>;
    visit(T{"outdoor temperature without heating", unit::celsius, 1}, "", s.base);
    visit(T{"lowest flow temperature of heat source", unit::celsius, 1}, "", s.lowest_flow);
    visit(N{"cycling factor", unit::number, 2}, "", s.cycling_factor);
    if (s.standby) visit(InputKind<Unit<Power>>{"electricity while nothing is heated", unit::watt, 0}, "", *s.standby);
    if (s.price) visit(N{"price of electricity", money_per_kilowatt_hour, 4}, "", *s.price);
    if (s.carbon) visit(N{"carbon dioxide of electricity", kilogram_per_kilowatt_hour, 3}, "", *s.carbon);
}

}  // namespace loopfolio::design
