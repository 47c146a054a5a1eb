// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/derive.hpp"

#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/design_allowance.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/physics/ventilation.hpp"

namespace loopfolio::design {

namespace {

constexpr std::string_view layers_source = "iso-6946", slab_source = "iso-13370";

void derive_outdoor(job::Conditions& c) {
    if (!c.height_above_station.given()) return;
    if (!c.station_outdoor.given()) c.station_outdoor = c.outdoor;
    const auto outdoor = physics::outdoor_at_height(c.station_outdoor.value, c.height_above_station.value,
                                                    c.lapse.value);
    if (!outdoor) return;
    c.outdoor.value = *outdoor;
    c.outdoor.basis = Basis::derived;
    c.outdoor.low = c.outdoor.high = {};
}

/// Corrections for gaps and fasteners in an element's layers. Nothing where a part of them is out of range.
std::optional<physics::Corrections> corrections_of(const job::Element& e, const physics::Construction& c) {
    physics::Corrections out;
    const ThermalResistance whole = physics::unbridged_total(c);
    for (std::size_t i = 0; i < e.layers.size(); ++i) {
        const auto& layer = e.layers[i];
        const auto gaps = physics::gap_correction(layer.air_gap_level, c.layers[i].resistance, whole);
        if (!gaps) return {};
        out.gaps += *gaps;
        if (!layer.fasteners) continue;
        const auto& f = *layer.fasteners;
        const auto fasteners = physics::fastener_correction(
            {f.conductivity.value, f.section.value, f.per_square_metre.value, layer.thickness.value,
             f.depth ? f.depth->value : layer.thickness.value},
            c.layers[i].resistance, whole);
        if (!fasteners) return {};
        out.fasteners += *fasteners;
    }
    return out;
}

void derive_element(job::Element& e) {
    if (const auto by_layers = transmittance_of(e)) {
        e.u_value = Input<UValue>::derived(by_layers->u_value, std::string{layers_source});
    } else if (e.slab && e.slab->under) {
        const auto u = suspended_of(e.area.value, e.slab->perimeter.value, e.slab->insulation.value, *e.slab->under,
                                    e.slab->ground);
        if (u) e.u_value = Input<UValue>::derived(u->floor, std::string{slab_source});
    } else if (e.slab) {
        const auto u = physics::ground_floor_u_value(e.area.value, e.slab->perimeter.value, e.slab->insulation.value,
                                                     ground_of(e.slab->ground));
        if (u) e.u_value = Input<UValue>::derived(*u, std::string{slab_source});
    }
    if (!e.space) return;
    const auto factor = physics::unheated_factor({e.space->to_rooms.value, e.space->to_outside.value});
    if (factor) e.factor = Input<double>::derived(*factor, "iso-13789");
}

/// The second material of a layer, through the thickness of the first.
std::optional<physics::Bridge> bridge_of(const job::Layer& layer) {
    const auto across = physics::resistance_of(layer.thickness.value, layer.bridge->conductivity.value);
    if (!across) return {};
    return physics::Bridge{*across, layer.bridge->share.value};
}

}  // namespace

physics::GroundFloor ground_of(const job::Ground& ground) {
    physics::GroundFloor out;
    if (ground.conductivity.given()) out.ground = ground.conductivity.value;
    return out;
}

std::optional<physics::SuspendedUValue> suspended_of(Area area, Length exposed_edge, ThermalResistance insulation,
                                                     const job::FloorVoid& under, const job::Ground& ground) {
    auto below = ground_of(ground);
    below.wall_thickness = under.wall_thickness.value;
    return physics::suspended_floor_u_value(area, exposed_edge,
                                            {.deck = under.deck.value + insulation,
                                             .height = under.height.value,
                                             .openings = under.openings.value,
                                             .wind = under.wind.value,
                                             .shielding = under.shielding.value,
                                             .walls = under.walls.value,
                                             .base = under.base.value},
                                            below);
}

reference::HeatFlow heat_flow(job::ElementKind kind) {
    switch (kind) {
        case job::ElementKind::roof:
        case job::ElementKind::ceiling: return reference::HeatFlow::upward;
        case job::ElementKind::floor: return reference::HeatFlow::downward;
        case job::ElementKind::wall:
        case job::ElementKind::window:
        case job::ElementKind::door:
        case job::ElementKind::party_wall: break;
    }
    return reference::HeatFlow::horizontal;
}

std::optional<ThermalResistance> resistance_of(const job::Layer& layer, reference::HeatFlow flow) {
    if (layer.resistance) return layer.resistance->value;
    if (!layer.air) return physics::resistance_of(layer.thickness.value, layer.conductivity.value);
    const auto air = reference::air_layer(layer.thickness.value, flow);
    if (!air) return {};
    return air->resistance;
}

std::optional<physics::Transmittance> transmittance_of(const job::Element& element) {
    if (element.layers.empty()) return {};
    const auto flow = heat_flow(element.kind);
    const auto surfaces = reference::surface_resistances(flow, element.beyond == job::Beyond::outside);
    physics::Construction c{surfaces.inside, {}, surfaces.beyond, {}};
    for (const auto& layer : element.layers) {
        const auto resistance = resistance_of(layer, flow);
        if (!resistance) return {};
        physics::Layer made{*resistance, {}};
        if (layer.bridge) {
            made.bridge = bridge_of(layer);
            if (!made.bridge) return {};
        }
        c.layers.push_back(made);
    }
    const auto corrections = corrections_of(element, c);
    if (!corrections) return {};
    c.corrections = *corrections;
    return physics::transmittance(c);
}

void derive_fabric(job::Job& job) {
    derive_outdoor(job.conditions);
    derive_air(job);
    for (auto& room : job.rooms) {
        for (auto& element : room.elements) derive_element(element);
    }
}

}  // namespace loopfolio::design
