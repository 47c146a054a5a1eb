// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/heat_source.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"

/// The keys of the heat source and of its manufacturer's table.
namespace loopfolio::job {

namespace keys {

inline constexpr auto heat_source = table(
    line("name", always, &HeatSource::name)
        .means("In general words: `air-source heat pump`; with `model` it may come from there."),
    line("model", optional, &HeatSource::model)
        .left_out("nothing")
        .means("A heat source of the catalogue: whatever is left out here is taken from it."),
    id("at", always, &HeatSource::at).means("The junction where it joins the pipework."),
    id("return_at", optional, &HeatSource::return_at)
        .by_hand()
        .left_out("`at`")
        .means("Where its return leaves the pipework, where that is another junction."),
    lines("could_join_at", optional, 20, &HeatSource::could_join_at)
        .left_out("none")
        .means("Junctions to compare with `at`: the pack shows which sections would have to change for each."),
    number("maximum_drop_k", optional, 1, 40, unit::kelvin, &HeatSource::maximum_drop)
        .in_register("heat source maximum drop", 1, 1)
        .left_out("not checked")
        .means("The largest temperature drop that it allows."),
    mapping("performance", optional).left_out("none").means("The maker's table; what lies outside it is not used."),
    number("capacity_kw", optional, 0.5, 100, unit::kilowatt, &HeatSource::capacity)
        .in_register("heat source capacity", 2)
        .left_out("by the table")
        .means("Heat output at the design outdoor and flow temperatures. Without it the maker's table is asked, "
               "less what defrosting takes; without a table it is not checked. More than 10 % from the table is "
               "told. The table's own figure for 7 °C outdoors, at which outputs are rated (EN 14511), gives a warning "
               "where no colder point has it."),
    number("minimum_flow_l_per_min", optional, 0.1, 300, unit::litre_per_minute, &HeatSource::minimum_flow)
        .by_hand()
        .in_register("heat source minimum flow", 1)
        .left_out("not checked")
        .means("The least flow that it runs with."),
    number("minimum_flow_l_per_s", optional, 0.001, 5, unit::litre_per_second)
        .left_out("not checked")
        .means("The same in other units; give one of the two."),
    number("pressure_drop_kpa", depends, 0, 200, unit::kilopascal, &HeatSource::pressure_drop)
        .in_register("heat source pressure drop", 1, 2)
        .left_out("not checked")
        .means("Inside the heat source, at the flow below."),
    number("pressure_drop_flow_l_per_min", depends, 0.1, 300, unit::litre_per_minute, &HeatSource::pressure_drop_flow)
        .by_hand()
        .in_register("flow of that pressure drop", 1, 2)
        .means("Needed with `pressure_drop_kpa`."),
    number("pressure_drop_flow_l_per_s", depends, 0.001, 5, unit::litre_per_second)
        .means("The same in other units; give one of the two."));

inline constexpr auto running = table(
    number("minimum_output_kw", optional, 0.1, 100, unit::kilowatt, &HeatSource::least_output)
        .in_record("least_output")
        .in_register("least output of heat source", 2)
        .left_out("not known")
        .means("What one unit can be turned down to; below it the source starts and stops. In the table instead: "
               "`least_kw`. Not above the largest capacity of the table, nor, without a table, above `capacity_kw`."),
    number("defrost_derating_percent", optional, 0, 60, unit::percent, &HeatSource::defrost_derating)
        .in_register("capacity that defrosting takes", 0, 1)
        .left_out("none")
        .means("Share of the capacity that defrosting takes, where the maker's table leaves it out; performance "
               "stays as in the table."),
    number("defrost_from_c", depends, -25, 15, unit::celsius, &HeatSource::defrost_from)
        .in_register("defrosting from", 1, 1)
        .means("Outdoor; needed with `defrost_derating_percent`."),
    number("defrost_to_c", depends, -25, 15, unit::celsius, &HeatSource::defrost_to)
        .in_register("defrosting to", 1, 1)
        .means("The same, above `defrost_from_c`."),
    whole("number", optional, 1, 8, &HeatSource::number)
        .left_out("1")
        .means("Of equal units on one load. The table, `minimum_output_kw` and `least_kw` are of one; all else here "
               "is of them together."),
    list("further_units", optional, 0, 4).left_out("none").means("Units of other kinds on the same load."),
    number("backup_kw", optional, 0, 50, unit::kilowatt, &HeatSource::backup)
        .in_register("backup heater", 2, 1)
        .left_out("none")
        .means("Electric heater that makes what the source cannot."),
    number("minimum_run_min", optional, 1, 120, unit::minute, &HeatSource::least_run)
        .in_record("least_run")
        .in_register("shortest run of heat source", 0, 1)
        .left_out("nothing")
        .means("Shortest run between start and stop; the season says how much water that takes."),
    number("allowed_swing_k", depends, 1, 20, unit::kelvin, &HeatSource::allowed_swing)
        .in_register("swing of the water between start and stop", 1, 1)
        .means("How far the water may swing between start and stop; needed with `minimum_run_min`."));

inline constexpr auto heat_source_cautions = table(
    flag("flammable_refrigerant", &HeatSource::flammable_refrigerant).left_out("`false`").means("Chooses a caution."),
    flag("replaces_gas_appliance", &HeatSource::replaces_gas_appliance)
        .left_out("`false`")
        .means("Chooses a caution; the same as `replaces: gas`."),
    choice("replaces", optional, "appliance", &HeatSource::replaces, replaced_names)
        .left_out("`not_known`")
        .means("The heat source before: `gas`, `lpg`, `oil`, `solid_fuel`, `electric`, `nothing` or `not_known`. It "
               "chooses cautions; while it is not known, those for every fuel are printed."));

inline constexpr auto further_units = table(
    line("name", always, &FurtherUnits::name).means("In general words; with `model` it may come from there."),
    line("model", optional, &FurtherUnits::model)
        .left_out("nothing")
        .means("A heat source of the catalogue: name, performance and least output are taken from it. Units of the "
               "heat source's own model are its `number` instead."),
    mapping("performance", always).means("The maker's table of one unit; with `model` it may come from there."),
    number("minimum_output_kw", optional, 0.1, 100, unit::kilowatt, &FurtherUnits::least_output)
        .in_record("least_output")
        .in_register("least output of a further unit", 2)
        .left_out("not known")
        .means("What one unit can be turned down to."),
    whole("number", optional, 1, 8, &FurtherUnits::number).left_out("1").means("Of equal units of this kind."),
    number("power_level_db", depends, 30, 90, unit::decibel, &FurtherUnits::power_level)
        .in_register("sound power level of a further unit", 0)
        .means("Sound power level of one unit of this kind, dB(A): needed with `sound`."));

inline constexpr auto performance = table(
    maybe_text("source").left_out("nothing").means("The document."),
    list("points", always, 1, 400)
        .means("Every outdoor temperature with every flow temperature: a table with a hole is refused."));

inline constexpr auto performance_point = table(
    plain("outdoor_c", always, -30, 30, unit::celsius).means("Outdoor temperature."),
    plain("flow_c", always, 20, 85, unit::celsius).means("Flow temperature."),
    plain("capacity_kw", optional, 0.1, 200, unit::kilowatt)
        .left_out("nothing")
        .means("Heat output there; `season` needs it at every point. More in the cold than in mild weather is "
               "warned of, and so is one capacity for outdoor temperatures 10 K apart and more."),
    plain("least_kw", optional, 0.1, 200, unit::kilowatt)
        .left_out("nothing")
        .means("What it can be turned down to there; at every point or at none."),
    plain("ratio", always, 1, 10)
        .means("Heat over electricity there; it may not rise with the flow temperature. More "
               "in colder air gives a warning, unless the warmer point lies "
               "where defrosting does, or without that between -5 and 5 °C."));

}  // namespace keys

}  // namespace loopfolio::job
