// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/reference/materials.hpp"

/// The keys of an element of a room's outside, and of its materials.
namespace loopfolio::job {

namespace keys {

inline constexpr auto element = table(
    choice("kind", always, "element", &Element::kind, element_kind_names)
        .means("`wall`, `window`, `door`, `roof`, `floor`, `ceiling` or `party_wall`."),
    maybe_line("name", &Element::name).left_out("nothing").means("`north wall`."),
    number("area_m2", always, 0.01, 500, unit::square_metre, &Element::area)
        .in_register("area of element", 2)
        .means("Net of the openings in it."),
    number("u_value_w_per_m2k", depends, 0.05, 8, unit::watt_per_square_metre_kelvin, &Element::u_value)
        .by_hand()
        .in_register("U-value of element", 2)
        .means("From face to face, surface resistances included. This, `layers` or `perimeter_m` is needed."),
    list("layers", depends, 1, 20)
        .means("What it is made of, from the room outwards, without surfaces; not of a window nor towards the "
               "ground."));

inline constexpr auto slab = table(
    number("perimeter_m", depends, 0.1, 200, unit::metre, &GroundSlab::perimeter)
        .in_register("exposed edge of floor", 1)
        .means("Only of a floor with `beyond: ground`: its edge to outside. A square above 50 times the area, "
               "longer than round a strip ten times as long as wide, draws a warning."),
    number("insulation_m2k_per_w", depends, 0, 10, unit::square_metre_kelvin_per_watt, &GroundSlab::insulation)
        .in_register("floor insulation", 2)
        .means("Needed with `perimeter_m` and only read with it: resistance of the insulation in the slab or in the "
               "suspended deck, 0 for none."),
    choice("ground", depends)
        .left_out("clay, as an assumption")
        .means("Only with `perimeter_m`: what the slab lies on, `clay` (or silt), `sand` (or gravel) or `rock`."),
    mapping("void", depends)
        .left_out("none: a slab")
        .means("Only with `perimeter_m`: the floor is suspended over a ventilated void, which has these keys; "
               "`{height_m: 0.3}` will do."));

inline constexpr auto element_beyond = table(
    choice("beyond", optional, "side", &Element::beyond, beyond_names)
        .by_hand()
        .left_out("`outside`")
        .means("What is on the other side: `outside`, `unheated`, `ground` or `room`."),
    id("room", depends, &Element::beyond_room)
        .in_record("beyond_room")
        .means("Needed with `beyond: room` and only read with it: the id of that other room."),
    number("beyond_temperature_c", depends, -40, 40, unit::celsius, &Element::beyond_temperature)
        .in_register("temperature beyond element", 1, 1)
        .means("Only with `beyond: unheated`: the temperature there on the design day."),
    number("factor", depends, 0, 1, unit::number, &Element::factor)
        .in_register("share of the design difference beyond element", 2)
        .left_out("reference")
        .means("Only with `beyond: unheated` or `ground`, and not beside `beyond_temperature_c`: the share of the "
               "difference between room and outdoors that the element sees."),
    mapping("space", depends)
        .means("Only with `beyond: unheated`, instead of `factor` or `beyond_temperature_c`: what that space takes "
               "and loses."));

inline constexpr auto layer = table(
    choice("material", depends, "material", &Layer::material, reference::material_names)
        .means("One of the [materials](#materials)."),
    number("thickness_mm", depends, 0.1, 2000, unit::millimetre, &Layer::thickness)
        .by_hand()
        .in_register("thickness of layer", 0)
        .listed_where([](const Layer& l) { return !l.air; })
        .advises("a layer of no thickness is no layer: leave it out")
        .means("Needed of a solid."),
    number("conductivity_w_per_mk", depends, 0.005, 500, unit::watt_per_metre_kelvin, &Layer::conductivity)
        .in_register("conductivity of layer", 3, 1)
        .left_out("from `material`")
        .advises("nothing that lets no heat through is built")
        .means("The maker's figure goes before the table's."),
    number("air_mm", depends, 1, 300, unit::millimetre, &Layer::thickness)
        .by_hand()
        .in_record("")
        .in_register("thickness of air layer", 0)
        .listed_where([](const Layer& l) { return l.air; })
        .means("Thickness of a layer of still air without foil."),
    number("resistance_m2k_per_w", depends, 0.001, 20, unit::square_metre_kelvin_per_watt, &Layer::resistance)
        .in_register("resistance of layer", 3, 1)
        .means("Of a membrane, a foiled air layer, a product."),
    mapping("bridge", depends)
        .left_out("none")
        .means("A second material in a share of the layer; not with a resistance."),
    whole("air_gap_level", depends, 0, 2, &Layer::air_gap_level)
        .left_out("0")
        .means("Of ISO 6946, not of an air layer: 1 where gaps in the insulation reach from its warm side to its "
               "cold one, 2 where air can also move round it. On a layer of more than 0.1 W/(m·K), which is no "
               "insulation, it draws a warning."),
    mapping("fasteners", depends)
        .left_out("none")
        .means("Metal through a solid layer of insulation. Not counted: ties across an empty cavity. A warning as "
               "for `air_gap_level`."));

inline constexpr auto bridge = table(
    choice("material", depends, "material", &LayerBridge::material, reference::material_names)
        .means("This or a conductivity is needed."),
    number("conductivity_w_per_mk", depends, 0.005, 500, unit::watt_per_metre_kelvin, &LayerBridge::conductivity)
        .in_register("conductivity of bridge", 3, 1)
        .left_out("from `material`")
        .means("Of the bridge."),
    number("share_percent", always, 0, 100, unit::percent, &LayerBridge::share)
        .in_register("share of bridge in layer", 1)
        .means("Of the layer's area, below 100: 10 for studs of 50 mm every 500 mm. More than 40 draws a warning."));

inline constexpr auto fasteners = table(
    choice("material", depends, "material", &Fasteners::material, reference::material_names)
        .means("This or a conductivity is needed."),
    number("conductivity_w_per_mk", depends, 1, 500, unit::watt_per_metre_kelvin, &Fasteners::conductivity)
        .in_register("conductivity of fasteners", 1)
        .left_out("from `material`")
        .advises("below 1 the standard counts none: leave them out")
        .means("Of the fastener."),
    number("section_mm2", always, 0.1, 500, unit::square_millimetre, &Fasteners::section)
        .in_register("section of a fastener", 1)
        .means("Across one: 12.6 for 4 mm, 19.6 for 5 mm, 28.3 for 6 mm."),
    number("number_per_m2", always, 0.05, 100, unit::per_square_metre, &Fasteners::per_square_metre)
        .in_register("fasteners on a square metre", 1)
        .means("On a square metre. Metal of more than 1% of the area draws a warning."),
    number("depth_mm", optional, 1, 2000, unit::millimetre, &Fasteners::depth)
        .in_register("depth of fasteners", 0)
        .left_out("right through")
        .means("How far they reach into the layer; no further than it is thick."));

inline constexpr auto space = table(
    number("to_rooms_w_per_k", always, 0, 2000, unit::watt_per_kelvin, &UnheatedSpace::to_rooms)
        .in_register("heat from rooms into unheated space", 1)
        .means("Between all rooms beside it and the space: walls and air."),
    number("to_outside_w_per_k", always, 0, 5000, unit::watt_per_kelvin, &UnheatedSpace::to_outside)
        .in_register("heat from unheated space to outside", 1)
        .means("Between the space and outdoors."));

}  // namespace keys

}  // namespace loopfolio::job
