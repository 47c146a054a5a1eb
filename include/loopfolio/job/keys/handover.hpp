// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/handover.hpp"
#include "loopfolio/job/keys/makers.hpp"

/// The keys of what was agreed before the design, and of what is handed over after the work.
namespace loopfolio::job {

namespace keys {

inline constexpr auto brief = table(
    line("agreed_with", always, &Brief::agreed_with).means("Who agreed to it: name and capacity."),
    makers::words("agreed_on", Form::date, optional).left_out("not stated").means("The day: year-month-day."),
    maybe_text("occupancy", &Brief::occupancy)
        .left_out("not stated")
        .means("How many live there, and when they are at home."),
    maybe_text("hot_water_habits", &Brief::hot_water_habits)
        .left_out("not stated")
        .means("Baths and showers, and at what times."),
    maybe_text("margin", &Brief::margin)
        .left_out("not stated")
        .means("Why the design has the margin that it has: heating up after a set-back, or none."),
    lines("decisions", optional, 20, &Brief::decisions)
        .left_out("none")
        .means("What was decided, each with who answers for it."));

inline constexpr auto controls = table(
    maybe_text("set_back", &Controls::set_back)
        .left_out("not stated")
        .means("By how much and when the rooms may cool, or `none`."),
    maybe_text("room_influence", &Controls::room_influence)
        .left_out("not stated")
        .means("How far the room's temperature moves the flow temperature, or `none`."),
    maybe_text("room_sensor", &Controls::room_sensor).left_out("not stated").means("Where it hangs."),
    maybe_text("zones", &Controls::zones)
        .left_out("not stated")
        .means("What can be switched by itself, or `one zone`."),
    maybe_text("hot_water_times", &Controls::hot_water_times)
        .left_out("not stated")
        .means("When the cylinder is heated."),
    maybe_text("hot_cycle", &Controls::hot_cycle)
        .left_out("not stated")
        .means("The cycle against bacteria: day, time, and how long the temperature is held."),
    maybe_text("frost", &Controls::frost).left_out("not stated").means("What the controls do against frost."),
    lines("left_open", optional, 1000, &Controls::left_open)
        .left_out("none")
        .means("Ids of the emitters whose valves stay open."),
    lines("thermostatic", optional, 1000, &Controls::thermostatic)
        .left_out("none")
        .means("Ids of the emitters with thermostatic valves."));

inline constexpr auto water_treatment = table(
    maybe_text("cleaning", &WaterTreatment::cleaning)
        .left_out("not stated")
        .means("How the old pipes and emitters are cleaned."),
    maybe_text("filter", &WaterTreatment::filter).left_out("not stated").means("The filter, and where it sits."),
    maybe_text("inhibitor", &WaterTreatment::inhibitor).left_out("not stated").means("Its kind and dose."),
    maybe_text("biocide", &WaterTreatment::biocide)
        .left_out("not stated")
        .means("Its kind and dose, or why there is none."),
    makers::words("cleaned_on", Form::date, optional).left_out("a blank").means("The day: year-month-day."),
    makers::words("next_test", Form::date, optional)
        .left_out("a blank")
        .means("When the water is tested next: year-month-day."));

inline constexpr auto refrigerant = table(
    line("name", always, &Refrigerant::name).means("Its designation: `R290`."),
    maybe_line("charge", &Refrigerant::charge).left_out("not stated").means("As on the label: `1.3 kg`."),
    maybe_line("safety_class", &Refrigerant::safety_class).left_out("not stated").means("Its class: `A3`."),
    maybe_text("clear_zone", &Refrigerant::clear_zone)
        .left_out("not stated")
        .means("What the manufacturer asks to keep clear round the unit."));

inline constexpr auto residual_risk = table(
    line("risk", always, &ResidualRisk::risk).means("What can hurt."),
    line("where", always, &ResidualRisk::where).means("Where in the house."),
    line("controlled_by", always, &ResidualRisk::controlled_by).means("Who controls it."),
    maybe_text("how", &ResidualRisk::how).left_out("nothing").means("How it is controlled."));

inline constexpr auto duty_holders = table(
    maybe_line("client", &DutyHolders::client).left_out("the household").means("For whom the work is done."),
    maybe_line("principal_designer", &DutyHolders::principal_designer)
        .left_out("not stated")
        .means("Needed in Great Britain where there is more than one contractor."),
    maybe_line("principal_contractor", &DutyHolders::principal_contractor)
        .left_out("not stated")
        .means("Needed in Great Britain where there is more than one contractor."),
    maybe_line("contractor", &DutyHolders::contractor).left_out("the firm").means("Who does the heating work."),
    maybe_line("electrician", &DutyHolders::electrician).left_out("not stated").means("Who does the electrical work."));

}  // namespace keys

}  // namespace loopfolio::job
