// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"

/// The keys of the design conditions, and of the fluid in the pipes.
namespace loopfolio::job {

namespace keys {

inline constexpr auto conditions = table(
    number("outdoor_temperature_c", always, -40, 15, unit::celsius, &Conditions::outdoor)
        .in_record("outdoor")
        .in_register("design outdoor temperature", 1)
        .means("Design outdoor temperature of the place. Below -15 or above 3 °C it gives a warning."),
    number("flow_temperature_c", always, 25, 80, unit::celsius, &Conditions::flow)
        .in_record("flow")
        .in_register("flow temperature", 1)
        .means("Water temperature out of the heat source on the design day. Above 65 °C it is questioned."),
    number("temperature_drop_k", optional, 1, 30, unit::kelvin, &Conditions::drop)
        .in_record("drop")
        .in_register("temperature drop", 1)
        .otherwise(&reference::Limits::temperature_drop)
        .left_out("reference")
        .advises("the flow that carries the heat grows as the drop shrinks: with no drop it has no end")
        .means("Flow less return at the heat source. Never 0: the flow that carries the heat would have no end."),
    number("velocity_preferred_m_per_s", optional, 0.1, 5, unit::metre_per_second, &Conditions::velocity_preferred)
        .not_in_register("each section has a line of its own")
        .left_out("[by pipe](methods.md#velocity)")
        .means("For every section that states none: a faster pipe is kept with a note. Not above "
               "`velocity_limit_m_per_s`."),
    number("velocity_limit_m_per_s", optional, 0.1, 5, unit::metre_per_second, &Conditions::velocity_limit)
        .not_in_register("each section has a line of its own")
        .left_out("[by pipe](methods.md#velocity)")
        .means("For every section that states none: a faster pipe has to change."),
    number("gradient_preferred_pa_per_m", optional, 20, 5000, unit::pascal_per_metre, &Conditions::gradient_preferred)
        .in_register("preferred pressure gradient", 0)
        .otherwise(&reference::Limits::gradient_preferred)
        .left_out("reference")
        .means("Pressure drop for each metre of pipe, past which a pipe is kept with a note."),
    number("mild_day_temperature_c", optional, -20, 18, unit::celsius, &Conditions::mild_day)
        .in_record("mild_day")
        .in_register("outdoor temperature on the milder day", 1)
        .left_out("half way to 15.5 °C")
        .means("Outdoors on the milder day that the pack shows as well: above the design outdoor temperature and "
               "below every heated room."),
    resolved("station_outdoor", unit::celsius, &Conditions::station_outdoor)
        .in_register("design outdoor temperature at the station", 1),
    number("height_above_station_m", optional, 0, 1000, unit::metre, &Conditions::height_above_station)
        .in_register("height of the house over the station", 0)
        .left_out("nothing")
        .advises("a house below the station keeps the station's temperature")
        .means("How much higher the house lies than the station that `outdoor_temperature_c` holds for: it is then "
               "colder at the house."),
    number("lapse_k_per_100m", depends, 0, 2, unit::kelvin_per_100_metres, &Conditions::lapse)
        .in_register("cooling with height", 1)
        .left_out("reference")
        .means("How much colder for each 100 m; only with the height."),
    choice("air_changes_by", optional, "method", &Conditions::air_by, reference::air_by_names)
        .left_out("`en_12831_2017`")
        .means(
            "What gives the air changes of rooms that state none: the standard in force, `en_12831_2017`, or a table "
            "that it replaced, `bs_5449_1990` or `guide_categories`, which the pack then says."),
    choice("guide_category", depends, "category", &Conditions::guide_category, reference::guide_category_names)
        .means("Needed with `air_changes_by: guide_categories`: `a` older houses, `b` built about 2000, `c` built or "
               "fully treated after 2006."),
    number("air_permeability_at_50_pa_m3_per_h_m2", optional, 0, 50, unit::cubic_metre_per_hour_square_metre,
           &Conditions::air_permeability)
        .in_register("air permeability at 50 Pa", 1)
        .left_out("12, with a range by age")
        .means("Air that a test at 50 Pa drives through each square metre of the envelope; say in its note when it was "
               "tested. Counts for rooms that state no air changes."),
    number("volume_flow_factor", optional, 0.005, 0.3, unit::number, &Conditions::volume_flow_factor)
        .in_register("leakage in use over that at 50 Pa", 3)
        .left_out("0.05")
        .means("f_qv of EN 12831-1: by shelter, height and exposed sides."),
    whole("exposed_sides", optional, 1, 4, &Conditions::exposed_sides)
        .left_out("2")
        .means("Sides of the house that the wind reaches. Counts where fans or flues take air out."),
    number("leakage_at_50_pa_per_hour", optional, 0.1, 30, unit::per_hour, &Conditions::leakage_at_50_pa)
        .in_register("air changes under test at 50 Pa", 1)
        .left_out("not tested")
        .means("Air changes of the house under test at 50 Pa, instead of the permeability: converted by the rooms' "
               "volume and outside area."),
    number("leakage_divisor", depends, 5, 50, unit::number, &Conditions::leakage_divisor)
        .in_register("divisor of the leakage under test", 0)
        .left_out("reference")
        .means("What turns them into air changes in use; only with the test and a replaced table."),
    mapping("heat_up", depends)
        .left_out("none")
        .means("To warm up again after a night's set-back, by the standard's table for heavy dwellings."),
    number("heat_up_w_per_m2", depends, 0, 100, unit::watt_per_square_metre, &Conditions::heat_up)
        .by_hand()
        .not_in_register("each room has a line of its own")
        .left_out("none")
        .means("The same as the firm states it, for each square metre of floor; one of the two."),
    number("intermittent_margin_percent", depends, 0, 100, unit::percent, &Conditions::intermittent_margin)
        .in_register("margin for heating now and then", 0)
        .left_out("none")
        .means("Share of each room's heat loss on top instead, for a house that is heated now and then; not beside "
               "a heat-up allowance."));

inline constexpr auto heat_up = table(whole("fall_k", always, 1, 3).means("Kelvin that rooms fall by while set back."),
                                      whole("hours", always, 1, 4).means("Hours to warm up again."));

inline constexpr auto fluid = table(
    choice("kind", always, "fluid", &FluidChoice::kind, fluid_names)
        .by_hand()
        .means("`water`, `propylene_glycol` or `ethylene_glycol`."),
    number("concentration_percent", depends, 0, 60, unit::percent, &FluidChoice::concentration)
        .in_register("glycol concentration", 1)
        .left_out("0")
        .means("Share of glycol; needed with a glycol, left out or 0 with water. From 1 % up: 25, not 0.25."),
    choice("concentration_basis", depends, "basis", &FluidChoice::basis, concentration_basis_names)
        .means("`mass` or `volume`; needed with a glycol."));

}  // namespace keys

}  // namespace loopfolio::job
