// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/house.hpp"

#include "design/parts.hpp"
#include "design/register/inputs.hpp"
#include "design/resolve/derive.hpp"
#include "design/resolve/fill.hpp"
#include "design/resolve/fill_keys.hpp"
#include "loopfolio/job/keys/conditions.hpp"
#include "loopfolio/reference/reference.hpp"

namespace loopfolio::design {

namespace {

void fill_conditions(job::Conditions& c) {
    fill_keys(job::keys::conditions, c);
    // The outdoor temperature half way between the design day and a day that needs no heat.
    const Temperature no_heat_above = reference::defaults().no_heat_above.value;
    if (!c.mild_day.given() && c.outdoor.value < no_heat_above) {
        const Temperature half_way = c.outdoor.value + 0.5 * (no_heat_above - c.outdoor.value);
        c.mild_day = Input<Temperature>::filled(half_way, "common-practice");
    }
}

void fill_fabric(job::Fabric& f) {
    fill(f.wall_u_value, reference::wall_u_value(f.wall, f.era));
    fill(f.glazing_u_value, reference::glazing_u_value(f.glazing));
    if (f.roof != reference::RoofKind::none) fill(f.roof_u_value, reference::roof_u_value(f.roof, f.era));
    if (f.floor != reference::FloorKind::none) fill(f.floor_insulation, reference::floor_insulation(f.era));
    fill(f.thermal_bridge, reference::thermal_bridge_allowance(f.era));
}

void fill_room(job::Room& room) {
    const auto& use = reference::defaults_for(room.use);
    fill(room.temperature, Temperature::from_celsius(use.temperature_c), use.temperature_source);
    if (room.fabric) fill_fabric(*room.fabric);
    if (room.elements.empty()) return;
    fill(room.element_thermal_bridge, reference::limits().thermal_bridge);
    for (auto& element : room.elements) {
        // The full temperature difference, without an assumption.
        const bool to_outside = element.beyond == job::Beyond::outside;
        if (to_outside || element.beyond == job::Beyond::room || element.beyond_temperature) continue;
        const auto& usual = reference::defaults();
        const bool unheated = element.beyond == job::Beyond::unheated;
        fill(element.factor, unheated ? usual.factor_of_unheated : usual.factor_of_ground);
    }
}

void fill_emitter(job::Emitter& emitter, const std::vector<job::Section>& sections) {
    if (!emitter.floor) {  // the exponent of a floor follows from its standard
        const auto* kind = reference::find_emitter_kind(emitter.kind);
        fill(emitter.exponent,
             reference::Cited<double>{kind->exponent, kind->exponent_low, kind->exponent_high, kind->exponent_source});
    }
    if (emitter.return_at.empty()) emitter.return_at = emitter.at;
    if (emitter.connection.empty()) emitter.connection = emitter.loop_pipe;
    if (!emitter.connection.empty()) return;
    // Valves are taken to have the size of the pipe that reaches them, and at least that of the smallest that
    // radiators are made for: a thinner pipe ends in an adapter.
    for (const auto& section : sections) {
        if (section.from == emitter.at || section.to == emitter.at) emitter.connection = section.pipe;
    }
    const auto* pipe = reference::find_pipe(emitter.connection);
    const auto* smallest = reference::find_pipe("copper_15");
    if (pipe != nullptr && pipe->bore < smallest->bore) emitter.connection = smallest->name;
}

}  // namespace

void fill_section(job::Section& section, const job::Conditions& conditions) {
    if (!section.velocity_preferred.given()) section.velocity_preferred = conditions.velocity_preferred;
    if (!section.velocity_limit.given()) section.velocity_limit = conditions.velocity_limit;
    const auto* pipe = reference::find_pipe(section.pipe);
    fill(section.bore, pipe->bore, pipe->source);
    fill(section.roughness, pipe->roughness, pipe->roughness_source);
    if (pipe->insert_bore.si() > 0.0) fill(section.insert_bore, pipe->insert_bore, "common-practice");
    const auto& guide = reference::velocity_guide(*pipe);
    fill(section.velocity_preferred, guide.preferred);
    fill(section.velocity_limit, guide.limit);
}

House resolve(job::Job job) {
    fill_parts(job);
    derive_fabric(job);  // an input that can be derived needs no default
    fill_conditions(job.conditions);
    for (auto& room : job.rooms) fill_room(room);
    for (auto& section : job.sections) fill_section(section, job.conditions);
    for (auto& emitter : job.emitters) fill_emitter(emitter, job.sections);
    derive_emitters(job);  // this uses exponents that may have been filled in
    for (auto& mixer : job.mixers) {
        if (!mixer.drop.given()) mixer.drop = job.conditions.drop;
    }
    if (job.heat_source && job.heat_source->return_at.empty()) job.heat_source->return_at = job.heat_source->at;
    fill_hot_water(job);
    fill_system_water(job);
    fill_season(job);
    House house{job, std::move(job)};
    // An input that follows from others does not count as an input itself, so it is left out.
    visit_inputs(house.inputs, [](const auto&, const auto&, auto& input) {
        if (input.basis == Basis::derived) input = {};
    });
    return house;
}

void derive(House& house) {
    house.values = house.inputs;
    derive_fabric(house.values);
    derive_emitters(house.values);
}

}  // namespace loopfolio::design
