// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/register/input_kind.hpp"
#include "loopfolio/base/unit.hpp"

namespace loopfolio::design {


template <class W, class F>
void visit_system_water(W& w, F&& visit) {
    using P = InputKind<Unit<Pressure>>;
    using V = InputKind<Unit<Volume>>;
    using T = InputKind<CelsiusUnit>;
    visit(InputKind<Unit<Length>>{"height over the expansion vessel", unit::metre, 1}, "", w.height);
    visit(P{"safety valve setting", unit::bar, 1}, "", w.safety_valve);
    if (w.vessel) visit(V{"content of expansion vessel", unit::litre, 0}, "", *w.vessel);
    if (w.precharge) visit(P{"precharge of expansion vessel", unit::bar, 2}, "", *w.precharge);
    if (w.cold_fill) visit(P{"cold fill pressure", unit::bar, 2}, "", *w.cold_fill);
    visit(T{"temperature of the fill", unit::celsius, 1}, "", w.fill_temperature);
    visit(T{"highest temperature of the system", unit::celsius, 1}, "", w.highest_temperature);
    if (w.source_content) visit(V{"content of heat source", unit::litre, 1}, "", *w.source_content);
    if (w.other_content) visit(V{"content not surveyed elsewhere", unit::litre, 1}, "", *w.other_content);
    visit(InputKind<NumberUnit>{"content of emitters for their rating", unit::litre_per_kilowatt, 1}, "", w.content_of_rating);
    if (w.inhibitor_dose) visit(InputKind<NumberUnit>{"inhibitor dose", unit::percent, 2}, "", *w.inhibitor_dose);
    if (w.frost) visit(T{"frost that the water has to stand", unit::celsius, 1}, "", *w.frost);
    if (w.defrost_heat) {
        visit(InputKind<Unit<Energy>>{"heat of one defrost", unit::kilowatt_hour, 2}, "", *w.defrost_heat);
        visit(InputKind<Unit<TemperatureDifference>>{"fall of the water in a defrost", unit::kelvin, 1}, "", w.defrost_fall);
    }
    if (w.least_volume) visit(V{"least volume that the source needs", unit::litre, 0}, "", *w.least_volume);
    if (w.always_open) visit(V{"volume that no valve shuts off", unit::litre, 0}, "", *w.always_open);
}

template <class H, class F>
void visit_hot_water(H& h, F&& visit) {
    using T = InputKind<CelsiusUnit>;
    using N = InputKind<NumberUnit>;
    using U = InputKind<Unit<HeatLossCoefficient>>;
    visit(N{"persons that draw hot water", unit::number, 1}, "", h.persons);
    visit(InputKind<Unit<Volume>>{"hot water for each person a day", unit::litre, 0}, "", h.each);
    visit(T{"hot water as drawn", unit::celsius, 1}, "", h.drawn);
    visit(T{"cold water main", unit::celsius, 1}, "", h.cold);
    visit(InputKind<Unit<Volume>>{"content of hot-water store", unit::litre, 0}, "", h.store);
    visit(T{"hot water as stored", unit::celsius, 1}, "", h.stored);
    visit(N{"share of the store drawn hot", unit::percent, 0}, "", h.usable);
    if (h.coil) visit(U{"UA of the store's coil", unit::watt_per_kelvin, 0}, "", *h.coil);
    if (h.plate) visit(U{"UA of the store's plate exchanger", unit::watt_per_kelvin, 0}, "", *h.plate);
    visit(T{"flow temperature for hot water", unit::celsius, 1}, "", h.source_flow);
    if (h.source_capacity) visit(InputKind<Unit<Power>>{"heat source capacity for hot water", unit::kilowatt, 2}, "", *h.source_capacity);
    if (h.standing_loss) visit(InputKind<Unit<Energy>>{"standing loss of the store a day", unit::kilowatt_hour, 2}, "", *h.standing_loss);
    if (h.immersion) visit(InputKind<Unit<Power>>{"immersion heater", unit::kilowatt, 1}, "", *h.immersion);
    if (h.hot_cycles_a_year) {
        visit(N{"hot cycles of the store a year", unit::number, 0}, "", *h.hot_cycles_a_year);
        visit(T{"hot cycle's temperature", unit::celsius, 1}, "", h.hot_cycle);
    }
}

template <class S, class F>
void visit_sound(S& s, F&& visit) {
    using D = InputKind<NumberUnit>;
    visit(D{"sound power level of the outdoor unit", unit::decibel, 0}, "", s.power_level);
    visit(InputKind<Unit<Length>>{"distance to the neighbour's window", unit::metre, 1}, "", s.distance);
    if (s.barrier) visit(D{"sound that a barrier takes off", unit::decibel, 0}, "", *s.barrier);
    if (s.background) visit(D{"sound without the unit", unit::decibel, 0}, "", *s.background);
    if (s.limit) visit(D{"sound limit of the local rule", unit::decibel, 0}, "", *s.limit);
}

}  // namespace loopfolio::design
