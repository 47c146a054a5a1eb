// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/fill.hpp"
#include "design/resolve/fill_keys.hpp"

#include "loopfolio/reference/allowances.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/materials.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "loopfolio/reference/underfloor.hpp"

namespace loopfolio::design {

namespace {

void fill_material(Input<Conductivity>& conductivity, const std::string& material) {
    if (const auto* known = reference::find_material(material)) fill(conductivity, known->conductivity);
}

/// Clay where the job does not say, with a range that extends to sand or gravel. Rock is left out, because anyone who
/// digs there notices it.
void fill_ground(job::Ground& ground) {
    const auto names = reference::ground_names();
    const bool stated = !ground.kind.empty();
    auto cited = reference::find_ground(stated ? std::string_view{ground.kind} : names.front())->conductivity;
    if (!stated) cited.high = reference::find_ground("sand")->conductivity.high;
    fill(ground.conductivity, cited);
}

void fill_void(job::FloorVoid& under) {
    const auto& usual = reference::floor_void();
    fill(under.height, usual.height);
    fill(under.openings, usual.openings);
    fill(under.wind, usual.wind);
    fill(under.shielding, usual.shielding);
    fill(under.walls, usual.walls);
    fill(under.wall_thickness, usual.wall_thickness);
    fill(under.deck, usual.deck);
    fill(under.base, usual.base);
}

void fill_floor_below(job::Fabric& fabric) {
    if (fabric.floor == reference::FloorKind::suspended) {
        if (!fabric.under) fabric.under.emplace();
        fill_void(*fabric.under);
        fill_ground(fabric.ground);
    } else if (fabric.floor == reference::FloorKind::ground) {
        fill_ground(fabric.ground);
    }
}

void fill_layers(job::Element& element) {
    for (auto& layer : element.layers) {
        fill_material(layer.conductivity, layer.material);
        if (layer.bridge) fill_material(layer.bridge->conductivity, layer.bridge->material);
        if (layer.fasteners) fill_material(layer.fasteners->conductivity, layer.fasteners->material);
    }
    if (element.slab) fill_ground(element.slab->ground);
    if (element.slab && element.slab->under) fill_void(*element.slab->under);
}

void fill_floor(job::HeatedFloor& floor, const std::string& pipe) {
    if (const auto* known = reference::find_floor_covering(floor.covering))
        fill(floor.covering_resistance, known->resistance);
    // The tables of the standard end at this value, even if a carpet may exceed it.
    constexpr auto thickest = ThermalResistance::from_si(0.15);
    auto& high = floor.covering_resistance.high;
    if (high && *high > thickest) high = thickest;
    fill_material(floor.screed, "screed_heated");
    const auto* known = reference::find_pipe(pipe);
    if (!floor.pipe_outside.given() && known != nullptr) {
        floor.pipe_outside = Input<Length>::filled(known->outside_diameter, std::string{known->source});
    }
    if (floor.zone.empty()) floor.zone = reference::floor_surface_limits().front().name;
}

void fill_emitter_parts(job::Emitter& e) {
    for (auto& d : e.deratings) {
        const auto* row = reference::find_derating(d.name);
        fill(d.factor, reference::Cited<double>{row->factor, row->low, row->high, row->source});
    }
    if (e.floor) fill_floor(*e.floor, e.loop_pipe);
}

}  // namespace

void fill_parts(job::Job& job) {
    auto& c = job.conditions;
    const auto& allowances = reference::allowances();
    if (c.height_above_station.given()) fill(c.lapse, allowances.lapse);
    for (auto& room : job.rooms) {
        if (!room.heat_up.given()) room.heat_up = c.heat_up;
        if (room.fabric) fill_floor_below(*room.fabric);
        for (auto& element : room.elements) fill_layers(element);
    }
    fill_air(job);
    for (auto& emitter : job.emitters) fill_emitter_parts(emitter);
}

}  // namespace loopfolio::design
