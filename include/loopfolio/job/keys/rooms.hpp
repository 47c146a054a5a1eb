// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"

/// The keys of a room, of its fabric and of its ventilation.
namespace loopfolio::job {

namespace keys {

inline constexpr auto room = table(
    id("id", always, &Room::id).means("Its name elsewhere in the file; unlike every other room's."),
    line("name", always, &Room::name).means("Its name on the page. A name that another room has gives a warning."),
    maybe_line("storey", &Room::storey).left_out("nothing").means("`ground floor`."),
    maybe_line("group", &Room::group)
        .left_out("nothing")
        .means("Any name that several rooms share, such as `extension`: `defaults` may state things once for them."),
    choice("use", always)
        .means("One of the [uses of a room](#uses-of-a-room); temperature and air changes follow from it."),
    flag("heated", &Room::heated)
        .left_out("`true`")
        .means("`false`: its heat loss is not reckoned and no emitter may stand in it."),
    number("floor_area_m2", always, 0.5, 1000, unit::square_metre, &Room::floor_area)
        .in_register("floor area", 1)
        .means("Between the inside faces of the walls. Below 1 m² or above 150 m² it gives a warning."),
    number("ceiling_height_m", always, 1.5, 8, unit::metre, &Room::ceiling_height)
        .in_register("ceiling height", 2)
        .means("Floor to ceiling; a mean under a slope."),
    number("temperature_c", optional, 5, 30, unit::celsius, &Room::temperature)
        .in_register("room temperature", 1)
        .left_out("from `use`")
        .means("Design room temperature. Below the return temperature."),
    number("air_changes_per_hour", optional, 0, 20, unit::per_hour, &Room::air_changes)
        .in_register("air changes per hour", 2)
        .left_out("by the [air of rooms](methods.md#ventilation)")
        .means("Outside air, as room volumes an hour. Stated, it goes before every other way."),
    resolved("house_air_changes", unit::per_hour, &Room::house_air)
        .not_in_register("it follows from the house's permeability and the room's minimum"),
    number("minimum_air_changes_per_hour", optional, 0, 10, unit::per_hour, &Room::minimum_air)
        .in_register("minimum air changes", 2)
        .left_out("from `use`")
        .means(
            "The least by EN 12831-1, for a room with windows; only where the room states no `air_changes_per_hour`."),
    choice("flue", optional, "flue", &Room::flue, reference::flue_names)
        .left_out("`none`")
        .means("What takes air out of the room: `open_fireplace`, `open_flue`, `closed_stove`, `solid_fuel_boiler` or "
               "`blocked_chimney`, which is one with a vent."),
    number("flue_air_m3_per_h", depends, 0, 500, unit::cubic_metre_per_hour, &Room::flue_air)
        .in_register("air taken by fires and flues", 0)
        .left_out("from `flue`")
        .means("How much it takes; only with `flue`."),
    mapping("mechanical_ventilation", depends)
        .left_out("none")
        .means("Fans that bring air in, instead of `air_changes_per_hour`."),
    number("heat_up_w_per_m2", depends, 0, 100, unit::watt_per_square_metre, &Room::heat_up)
        .in_register("heat-up allowance", 0)
        .left_out("the conditions'")
        .means("Heat-up allowance of this room."),
    mapping("fabric", depends).means("By-area method: the rate is worked out from the fabric."));

inline constexpr auto room_by_rate = table(
    number("heat_loss_rate_w_per_m2", depends, 1, 300, unit::watt_per_square_metre, &Room::heat_loss_rate)
        .in_register("heat loss rate", 1)
        .means("By-area method: the firm's own rate for each square metre of floor."));

inline constexpr auto room_by_elements = table(
    list("elements", depends, 1, 100).means("Element-by-element method."),
    number("thermal_bridge_w_per_m2k", depends, 0, 1, unit::watt_per_square_metre_kelvin, &Room::element_thermal_bridge)
        .in_record("element_thermal_bridge")
        .in_register("thermal bridge allowance, elements", 2)
        .left_out("reference")
        .means("Added to the U-value of each element to outside; only with `elements`."));

inline constexpr auto room_by_survey = table(number("heat_loss_w", depends, 0, 50'000, unit::watt, &Room::heat_loss)
                                                 .in_register("heat loss, other survey", 0)
                                                 .means("From another survey; taken as it stands."));

inline constexpr auto fabric = table(
    choice("era", always, "era", &Fabric::era, reference::era_names).means("One of the [eras](#eras-of-building)."),
    whole("outside_walls", always, 0, 4, &Fabric::outside_walls).means("How many sides of the room are outside walls."),
    choice("wall", depends, "wall", &Fabric::wall, reference::wall_names)
        .means("Needed with outside walls: `solid_brick`, `cavity`, `filled_cavity`, `timber_frame`, `system_built` "
               "or `insulated_solid`."),
    choice("glazing", depends, "glazing", &Fabric::glazing, reference::glazing_names)
        .means("Needed with outside walls: `single`, `secondary`, `double_before_2002`, `double_from_2002` or "
               "`triple`."),
    choice("roof", always, "roof", &Fabric::roof, reference::roof_names)
        .means("`none` (a heated room above), `pitched` or `flat`."),
    choice("floor", always, "floor", &Fabric::floor, reference::floor_names)
        .means(
            "`none` (a heated room below), `ground` (a slab), `suspended` (over a ventilated void) or `exposed` (over "
            "outside air)."),
    number("wall_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin, &Fabric::wall_u_value)
        .in_register("U-value, wall", 2)
        .left_out("from `era` and `wall`")
        .means("U-value of the outside walls."),
    number("glazing_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin, &Fabric::glazing_u_value)
        .in_register("U-value, glazing", 2, 1)
        .left_out("from `glazing`")
        .means("U-value of windows and glazed doors."),
    number("roof_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin, &Fabric::roof_u_value)
        .in_register("U-value, roof", 2)
        .left_out("from `era` and `roof`")
        .means("U-value of the roof."),
    number("floor_insulation_m2k_per_w", optional, 0, 10, unit::square_metre_kelvin_per_watt, &Fabric::floor_insulation)
        .in_register("floor insulation", 2, 1)
        .left_out("from `era`")
        .means("Thermal resistance of the insulation in the floor; 0 for none."),
    choice("ground", depends)
        .left_out("clay, as an assumption")
        .means("Only with `floor: ground` or `suspended`: `clay` (or silt), `sand` (or gravel) or `rock`."),
    mapping("void", depends)
        .left_out("all of it assumed")
        .means("Only with `floor: suspended`: the void below and the deck over it."),
    number("thermal_bridge_w_per_m2k", optional, 0, 1, unit::watt_per_square_metre_kelvin, &Fabric::thermal_bridge)
        .in_register("thermal bridge allowance", 2, 2)
        .left_out("from `era`")
        .means("Added to each U-value to outside."));

inline constexpr auto ground = table(
    resolved("ground", unit::watt_per_metre_kelvin, &Ground::conductivity).in_register("conductivity of ground", 1));

inline constexpr auto floor_void = table(
    number("height_m", optional, 0, 1.5, unit::metre, &FloorVoid::height)
        .in_register("height of floor over ground", 2)
        .left_out("reference")
        .advises("a floor below the ground outside, or high above it, is none of a ventilated void: give its U-value")
        .means("Upper surface of the floor above the ground outside."),
    number("openings_mm2_per_m", optional, 0, 100'000, unit::square_millimetre_per_metre, &FloorVoid::openings)
        .in_register("openings under floor", 0)
        .left_out("reference")
        .means("Free area of the air bricks for each metre of exposed edge; 0 where there are none or all are blocked. "
               "Above 20,000 draws a warning."),
    number("wind_m_per_s", optional, 0, 15, unit::metre_per_second, &FloorVoid::wind)
        .in_register("wind at the house", 1)
        .left_out("reference")
        .means("Mean wind speed at 10 m."),
    number("wind_shielding", optional, 0, 0.2, unit::number, &FloorVoid::shielding)
        .in_register("share of wind at openings under floor", 2)
        .left_out("reference")
        .means("Share of that wind at the openings: 0.02 sheltered (town centre), 0.05 average, 0.10 exposed (open "
               "country)."),
    number("wall_u_value_w_per_m2k", optional, 0.05, 8, unit::watt_per_square_metre_kelvin, &FloorVoid::walls)
        .in_register("U-value, walls under floor", 2)
        .left_out("reference")
        .means("U-value of the walls of the void above ground."),
    number("wall_thickness_mm", optional, 50, 1500, unit::millimetre, &FloorVoid::wall_thickness)
        .in_register("thickness of walls under floor", 0)
        .left_out("reference")
        .means("Thickness of the outside walls at the ground."),
    number("deck_m2k_per_w", optional, 0, 5, unit::square_metre_kelvin_per_watt, &FloorVoid::deck)
        .in_register("resistance of suspended deck", 2)
        .left_out("reference")
        .means("Boards and joists, or beams and blocks, without surfaces and without the insulation, which has its own "
               "key; where the deck's U-value U is known, 1/U - 0.34 less that insulation."),
    number("base_insulation_m2k_per_w", optional, 0, 10, unit::square_metre_kelvin_per_watt, &FloorVoid::base)
        .in_register("insulation on the ground under floor", 2)
        .left_out("none, as an assumption")
        .means("Thermal resistance of the insulation on the base of the void."));

inline constexpr auto mechanical_ventilation = table(
    number("supply_per_hour", always, 0, 20, unit::per_hour, &MechanicalVentilation::supply)
        .in_register("air changes by fans", 2)
        .means("Outdoor air through the fans; 0 with extract alone."),
    number("recovery_percent", always, 0, 100, unit::percent, &MechanicalVentilation::recovery)
        .in_register("heat recovered from extract air", 0)
        .means("Heat taken back from extract air, as in use; 0 without."),
    number("infiltration_per_hour", depends, 0, 20, unit::per_hour, &MechanicalVentilation::infiltration)
        .in_register("air changes by leaks", 2)
        .left_out("by the standard; with a replaced table from the house's leakage")
        .means("Air straight from outdoors: leaks, and what extract alone draws in."),
    number("extract_per_hour", optional, 0, 20, unit::per_hour, &MechanicalVentilation::extract)
        .in_register("air changes taken out by fans", 2)
        .left_out("as much as they bring in")
        .means(
            "Air that the fans take out of the room. More out than in, over the house, draws air in from outdoors."));

}  // namespace keys

}  // namespace loopfolio::job
