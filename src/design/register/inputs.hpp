// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/register/depth_inputs.hpp"
#include "design/register/input_kind.hpp"
#include "design/register/plant_inputs.hpp"
#include "design/register/season_inputs.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/job.hpp"

#include <fmt/format.h>

#include <string>

namespace loopfolio::design {

template <class J, class F>
void visit_conditions(J& job, F&& visit) {
    auto& c = job.conditions;
    visit(InputKind<CelsiusUnit>{"design outdoor temperature", unit::celsius, 1}, "", c.outdoor);
    visit(InputKind<CelsiusUnit>{"flow temperature", unit::celsius, 1}, "", c.flow);
    visit(InputKind<Unit<TemperatureDifference>>{"temperature drop", unit::kelvin, 1}, "", c.drop);
    visit(InputKind<Unit<Velocity>>{"preferred velocity", unit::metre_per_second, 2}, "", c.velocity_preferred);
    visit(InputKind<Unit<Velocity>>{"velocity limit", unit::metre_per_second, 2}, "", c.velocity_limit);
    visit(InputKind<Unit<PressureGradient>>{"preferred pressure gradient", unit::pascal_per_metre, 0}, "",
          c.gradient_preferred);
    visit(InputKind<CelsiusUnit>{"outdoor temperature on the milder day", unit::celsius, 1}, "", c.mild_day);
    visit_allowances(c, visit);
    visit(InputKind<NumberUnit>{"glycol concentration", unit::percent, 1}, "", job.fluid.concentration);
}

template <class Fabric, class F>
void visit_fabric(Fabric& f, const std::string& room, F&& visit) {
    using U = InputKind<Unit<UValue>>;
    visit(U{"U-value, wall", unit::watt_per_square_metre_kelvin, 2}, room, f.wall_u_value);
    visit(U{"U-value, roof", unit::watt_per_square_metre_kelvin, 2}, room, f.roof_u_value);
    visit(U{"U-value, glazing", unit::watt_per_square_metre_kelvin, 2}, room, f.glazing_u_value);
    visit(InputKind<Unit<ThermalResistance>>{"floor insulation", unit::square_metre_kelvin_per_watt, 2}, room,
          f.floor_insulation);
    visit_ground(f.ground, room, visit);
    visit(U{"thermal bridge allowance", unit::watt_per_square_metre_kelvin, 2}, room, f.thermal_bridge);
}

template <class Room, class F>
void visit_elements(Room& room, F&& visit) {
    using U = InputKind<Unit<UValue>>;
    for (auto& e : room.elements) {
        const std::string subject = e.name.empty() ? room.name : room.name + ", " + e.name;
        visit(InputKind<Unit<Area>>{"area of element", unit::square_metre, 2}, subject, e.area);
        visit(U{"U-value of element", unit::watt_per_square_metre_kelvin, 2}, subject, e.u_value);
        visit(InputKind<NumberUnit>{"share of the design difference beyond element", unit::number, 2}, subject, e.factor);
        visit_build_up(e, subject, visit);
        if (e.beyond_temperature) {
            visit(InputKind<CelsiusUnit>{"temperature beyond element", unit::celsius, 1}, subject, *e.beyond_temperature);
        }
    }
    visit(U{"thermal bridge allowance, elements", unit::watt_per_square_metre_kelvin, 2}, room.name,
          room.element_thermal_bridge);
}

template <class J, class F>
void visit_rooms(J& job, F&& visit) {
    for (auto& room : job.rooms) {
        if (!room.heated) continue;
        visit(InputKind<Unit<Area>>{"floor area", unit::square_metre, 1}, room.name, room.floor_area);
        visit(InputKind<Unit<Length>>{"ceiling height", unit::metre, 2}, room.name, room.ceiling_height);
        visit(InputKind<CelsiusUnit>{"room temperature", unit::celsius, 1}, room.name, room.temperature);
        visit(InputKind<Unit<AirChangeRate>>{"air changes per hour", unit::per_hour, 2}, room.name, room.air_changes);
        visit_ventilation(room, visit);
        if (room.fabric && !room.heat_loss_rate) visit_fabric(*room.fabric, room.name, visit);
        if (room.heat_loss_rate) {
            visit(InputKind<Unit<HeatFlux>>{"heat loss rate", unit::watt_per_square_metre, 1}, room.name,
                  *room.heat_loss_rate);
        }
        if (!room.elements.empty()) visit_elements(room, visit);
        if (room.heat_loss) visit(InputKind<Unit<Power>>{"heat loss, other survey", unit::watt, 0}, room.name, *room.heat_loss);
    }
}

template <class S, class F>
void visit_separation(S& s, F&& visit) {
    using Flow = InputKind<Unit<VolumeFlow>>;
    if (s.source_flow) visit(Flow{"flow on the source's side", unit::litre_per_minute, 1}, "", *s.source_flow);
    if (s.volume) visit(InputKind<Unit<Volume>>{"content of buffer or volumiser", unit::litre, 0}, "", *s.volume);
    if (s.plate_ua) visit(InputKind<Unit<HeatLossCoefficient>>{"UA of plate exchanger", unit::watt_per_kelvin, 0}, "", *s.plate_ua);
    if (s.pressure_drop) visit(InputKind<Unit<Pressure>>{"pressure drop of plate or volumiser", unit::kilopascal, 1}, "", *s.pressure_drop);
    if (s.pressure_drop_flow) visit(Flow{"flow of that drop", unit::litre_per_minute, 1}, "", *s.pressure_drop_flow);
}

template <class J, class F>
void visit_plant(J& job, F&& visit) {
    for (auto& e : job.emitters) {
        visit(InputKind<Unit<Power>>{"emitter output at 50 K", unit::watt, 0}, e.id, e.output_at_50k);
        visit(InputKind<NumberUnit>{"emitter exponent", unit::number, 2}, e.id, e.exponent);
        visit_rating(e, visit);
        visit(InputKind<Unit<Length>>{"emitter length", unit::millimetre, 0}, e.id, e.length);
        visit(InputKind<Unit<Length>>{"emitter height", unit::millimetre, 0}, e.id, e.height);
        visit(InputKind<Unit<Length>>{"pipe in the floor", unit::metre, 1}, e.id, e.loop_length);
        if (e.drop) visit(InputKind<Unit<TemperatureDifference>>{"temperature drop of emitter", unit::kelvin, 1}, e.id, *e.drop);
        if (e.valves_kv) visit(InputKind<NumberUnit>{"Kv of valves, m³/h", unit::number, 2}, e.id, *e.valves_kv);
    }
    for (auto& s : job.sections) {
        visit(InputKind<Unit<Length>>{"section length", unit::metre, 1}, s.id, s.length);
        visit(InputKind<Unit<Length>>{"bore", unit::millimetre, 1}, s.id, s.bore);
        visit(InputKind<Unit<Length>>{"bore at inserts", unit::millimetre, 1}, s.id, s.insert_bore);
        visit(InputKind<Unit<Length>>{"roughness", unit::millimetre, 4}, s.id, s.roughness);
        if (s.heat_loss) {
            visit(InputKind<Unit<Conductivity>>{"heat loss of pipe", unit::watt_per_metre_kelvin, 3}, s.id, *s.heat_loss);
            visit(InputKind<CelsiusUnit>{"surroundings of pipe", unit::celsius, 1}, s.id, s.surroundings);
        }
    }
    for (auto& m : job.mixers) {
        visit(InputKind<CelsiusUnit>{"flow temperature of mixing set", unit::celsius, 1}, m.id, m.flow);
        visit(InputKind<Unit<TemperatureDifference>>{"temperature drop beyond mixing set", unit::kelvin, 1}, m.id, m.drop);
    }
    if (job.separation) visit_separation(*job.separation, visit);
    if (!job.heat_source) return;
    auto& h = *job.heat_source;
    if (h.capacity) visit(InputKind<Unit<Power>>{"heat source capacity", unit::kilowatt, 2}, "", *h.capacity);
    if (h.minimum_flow) {
        visit(InputKind<Unit<VolumeFlow>>{"heat source minimum flow", unit::litre_per_minute, 1}, "", *h.minimum_flow);
    }
    if (h.maximum_drop) {
        visit(InputKind<Unit<TemperatureDifference>>{"heat source maximum drop", unit::kelvin, 1}, "", *h.maximum_drop);
    }
    if (h.pressure_drop) {
        visit(InputKind<Unit<Pressure>>{"heat source pressure drop", unit::kilopascal, 1}, "", *h.pressure_drop);
    }
    if (h.pressure_drop_flow) {
        visit(InputKind<Unit<VolumeFlow>>{"flow of that pressure drop", unit::litre_per_minute, 1}, "",
              *h.pressure_drop_flow);
    }
}

/// Calls `visit(kind, subject, input)` for every input of a job that a design uses, in a fixed order. Inputs
/// that the job does not have are absent, not skipped, so that the order does not depend on their basis.
template <class J, class F>
void visit_inputs(J& job, F&& visit) {
    visit_conditions(job, visit);
    visit_rooms(job, visit);
    visit_plant(job, visit);
    if (job.system_water) visit_system_water(*job.system_water, visit);
    if (job.hot_water) visit_hot_water(*job.hot_water, visit);
    if (job.sound) visit_sound(*job.sound, visit);
    if (job.heat_source) visit_running(*job.heat_source, visit);
    if (job.season) visit_season(*job.season, visit);
}

}  // namespace loopfolio::design
