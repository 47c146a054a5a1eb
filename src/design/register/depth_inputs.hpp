// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "design/register/input_kind.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/reference/materials.hpp"

#include <string>

/// The inputs of what an element is made of, of allowances, and of how an emitter is rated.
namespace loopfolio::design {

template <class C, class F>
void visit_allowances(C& c, F&& visit) {
    visit(InputKind<CelsiusUnit>{"design outdoor temperature at the station", unit::celsius, 1}, "",
          c.station_outdoor);
    visit(InputKind<Unit<Length>>{"height of the house over the station", unit::metre, 0}, "",
          c.height_above_station);
    visit(InputKind<Unit<Quantity<0, -1, 0, 1>>>{"cooling with height", unit::kelvin_per_100_metres, 1}, "",
          c.lapse);
    visit(InputKind<Unit<AirChangeRate>>{"air changes under test at 50 Pa", unit::per_hour, 1}, "",
          c.leakage_at_50_pa);
    visit(InputKind<NumberUnit>{"divisor of the leakage under test", unit::number, 0}, "", c.leakage_divisor);
    visit(InputKind<NumberUnit>{"margin for heating now and then", unit::percent, 0}, "", c.intermittent_margin);
}

template <class Room, class F>
void visit_ventilation(Room& room, F&& visit) {
    using Rate = InputKind<Unit<AirChangeRate>>;
    visit(InputKind<Unit<HeatFlux>>{"heat-up allowance", unit::watt_per_square_metre, 0}, room.name, room.heat_up);
    if (!room.ventilation) return;
    auto& v = *room.ventilation;
    visit(Rate{"air changes by fans", unit::per_hour, 2}, room.name, v.supply);
    visit(InputKind<NumberUnit>{"heat recovered from extract air", unit::percent, 0}, room.name, v.recovery);
    visit(Rate{"air changes by leaks", unit::per_hour, 2}, room.name, v.infiltration);
}

/// What a reader calls a material that the job names.
inline std::string material_label(const std::string& name) {
    const auto* material = reference::find_material(name);
    return std::string{material != nullptr ? material->label : std::string_view{name}};
}

/// A material's figure stands in one line for every element that has it; a thickness belongs to its element.
template <class L, class F>
void visit_layer(L& layer, const std::string& element, F&& visit) {
    const std::string subject = layer.material.empty() ? element : element + ", " + material_label(layer.material);
    visit(InputKind<Unit<Length>>{layer.air ? "thickness of air layer" : "thickness of layer", unit::millimetre,
                                  0},
          subject, layer.thickness);
    visit(InputKind<Unit<Conductivity>>{"conductivity of layer", unit::watt_per_metre_kelvin, 3}, subject,
          layer.conductivity);
    if (layer.resistance) {
        visit(InputKind<Unit<ThermalResistance>>{"resistance of layer", unit::square_metre_kelvin_per_watt, 3},
              element, *layer.resistance);
    }
    if (layer.bridge) {
        auto& b = *layer.bridge;
        const std::string through = b.material.empty() ? element : element + ", " + material_label(b.material);
        visit(InputKind<NumberUnit>{"share of bridge in layer", unit::percent, 1}, through, b.share);
        visit(InputKind<Unit<Conductivity>>{"conductivity of bridge", unit::watt_per_metre_kelvin, 3}, through,
              b.conductivity);
    }
    if (!layer.fasteners) return;
    auto& f = *layer.fasteners;
    visit(InputKind<Unit<Conductivity>>{"conductivity of fasteners", unit::watt_per_metre_kelvin, 1}, element,
          f.conductivity);
    visit(InputKind<Unit<Area>>{"section of a fastener", unit::square_millimetre, 1}, element, f.section);
    visit(InputKind<NumberUnit>{"fasteners on a square metre", unit::per_square_metre, 1}, element,
          f.per_square_metre);
    if (f.depth) visit(InputKind<Unit<Length>>{"depth of fasteners", unit::millimetre, 0}, element, *f.depth);
}

template <class G, class F>
void visit_ground(G& ground, const std::string& subject, F&& visit) {
    visit(InputKind<Unit<Conductivity>>{"conductivity of ground", unit::watt_per_metre_kelvin, 1}, subject,
          ground.conductivity);
}

template <class E, class F>
void visit_build_up(E& element, const std::string& subject, F&& visit) {
    for (auto& layer : element.layers) visit_layer(layer, subject, visit);
    if (element.slab) {
        visit(InputKind<Unit<Length>>{"exposed edge of floor", unit::metre, 1}, subject, element.slab->perimeter);
        visit(InputKind<Unit<ThermalResistance>>{"floor insulation", unit::square_metre_kelvin_per_watt, 2},
              subject, element.slab->insulation);
        visit_ground(element.slab->ground, subject, visit);
    }
    if (!element.space) return;
    using Coefficient = InputKind<Unit<HeatLossCoefficient>>;
    visit(Coefficient{"heat from rooms into unheated space", unit::watt_per_kelvin, 1}, subject,
          element.space->to_rooms);
    visit(Coefficient{"heat from unheated space to outside", unit::watt_per_kelvin, 1}, subject,
          element.space->to_outside);
}

template <class L, class F>
void visit_heated_floor(L& f, const std::string& id, F&& visit) {
    using Resistance = InputKind<Unit<ThermalResistance>>;
    visit(InputKind<Unit<Area>>{"heated floor area", unit::square_metre, 1}, id, f.area);
    visit(InputKind<Unit<Length>>{"pitch of floor pipes", unit::millimetre, 0}, id, f.pitch);
    visit(Resistance{"resistance of floor covering", unit::square_metre_kelvin_per_watt, 3}, id,
          f.covering_resistance);
    visit(InputKind<Unit<Length>>{"screed over floor pipes", unit::millimetre, 0}, id, f.screed_cover);
    visit(InputKind<Unit<Conductivity>>{"conductivity of screed", unit::watt_per_metre_kelvin, 2}, id, f.screed);
    visit(InputKind<Unit<Length>>{"outside diameter of floor pipe", unit::millimetre, 0}, id, f.pipe_outside);
    visit(InputKind<Unit<Length>>{"way to the manifold and back", unit::metre, 1}, id, f.leads);
    if (f.below)
        visit(Resistance{"resistance below floor pipes", unit::square_metre_kelvin_per_watt, 2}, id, *f.below);
    visit(InputKind<CelsiusUnit>{"temperature below heated floor", unit::celsius, 1}, id, f.below_temperature);
}

template <class E, class F>
void visit_rating(E& e, F&& visit) {
    using Watts = InputKind<Unit<Power>>;
    visit(Watts{"emitter output at 50 K", unit::watt, 0}, e.id, e.rating);
    if (e.rated_at) visit(Watts{"emitter output at other temperatures", unit::watt, 0}, e.id, e.rated_at->output);
    if (e.by_piece) {
        visit(Watts{e.by_piece->sections > 0 ? "output of one section at 50 K" : "output of one metre at 50 K",
                    unit::watt, 0},
              e.id, e.by_piece->output);
    }
    for (auto& d : e.deratings)
        visit(InputKind<NumberUnit>{"share of output left", unit::number, 2}, e.id, d.factor);
    if (e.floor) visit_heated_floor(*e.floor, e.id, visit);
}

}  // namespace loopfolio::design
