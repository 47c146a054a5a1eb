// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/reference/pipes.hpp"

/// The keys of the pipes, of their fittings, and of the pumps and mixing sets in them.
namespace loopfolio::job {

/// Units of a curve's coefficients: the fall of the head with the flow, and with the square of the flow.
inline constexpr NumberUnit fall_with_flow{1.0, "kPa·min/L", "_kpa_min_per_l"};
inline constexpr NumberUnit fall_with_square{1.0, "kPa·min²/L²", "_kpa_min2_per_l2"};

namespace keys {

inline constexpr auto pipework = table(
    list("sections", always, 1, 5000).means("The pipes from junction to junction, in any order and direction."));

inline constexpr auto section = table(
    id("id", always, &Section::id).means("Unlike every other section's."),
    id("from", always, &Section::from).means("A junction: any name of the same alphabet as an id."),
    id("to", always, &Section::to).means("The junction at the other end."),
    choice("pipe", always, "pipe", &Section::pipe, reference::pipe_names).means("One of the [pipes](#pipes)."),
    number("length_m", always, 0.01, 500, unit::metre, &Section::length)
        .in_register("section length", 1)
        .means("One way; the return is taken to be as long. More than 500 m of all sections gives a warning."),
    choice("carries", optional, "use of a section", &Section::carries, carries_names)
        .left_out("`both`")
        .means("`both`, `flow`, `return`, or `loop` for the single pipe of a one-pipe loop, which runs from `from` "
               "to `to`."),
    list("fittings", optional, 0, 50).left_out("none").means("On one pipe; the return is taken to have the same."),
    choice("state", optional, "state", &Section::existing, state_names)
        .in_record("existing")
        .left_out("`existing`")
        .means("`existing` or `new`."),
    maybe_line("where", &Section::where).left_out("nothing").means("`under the hall floor`."),
    flag("outside_heated_space", &Section::outside_heated_space)
        .left_out("`false`")
        .means("Whether it runs where nobody heats: outdoors, in a ventilated void, a garage or a loft."),
    maybe_line("insulation", &Section::insulation)
        .left_out("not stated")
        .means("Of the pipe, as found or as it is to be: `25 mm mineral wool`, or `none`."),
    number("heat_loss_w_per_mk", optional, 0, 5, unit::watt_per_metre_kelvin, &Section::heat_loss)
        .in_register("heat loss of pipe", 3, 1)
        .left_out("not counted")
        .means("Heat that each pipe loses, for each metre and kelvin over what surrounds it."),
    number("surroundings_c", depends, -10, 40, unit::celsius, &Section::surroundings)
        .in_register("surroundings of pipe", 1, 1)
        .means("Needed with `heat_loss_w_per_mk` and only read with it."),
    flag("closed", &Section::closed).left_out("`false`").means("Whether an isolating valve in it was found shut."),
    number("bore_mm", optional, 3, 200, unit::millimetre, &Section::bore)
        .in_register("bore", 1)
        .left_out("from `pipe`")
        .means("Inside diameter, where it was measured."),
    number("insert_bore_mm", optional, 2, 200, unit::millimetre, &Section::insert_bore)
        .in_register("bore at inserts", 1)
        .left_out("from `pipe`")
        .means("Narrowest bore inside an insert fitting; not above `bore_mm`."),
    number("roughness_mm", optional, 0, 5, unit::millimetre, &Section::roughness)
        .in_register("roughness", 4)
        .left_out("from `pipe`")
        .means("Absolute roughness of the inside."),
    number("velocity_preferred_m_per_s", optional, 0.1, 5, unit::metre_per_second, &Section::velocity_preferred)
        .in_register("preferred velocity", 2)
        .left_out("the conditions', else [by pipe](methods.md#velocity)")
        .means("A faster flow is kept with a note. Not above `velocity_limit_m_per_s`."),
    number("velocity_limit_m_per_s", optional, 0.1, 5, unit::metre_per_second, &Section::velocity_limit)
        .in_register("velocity limit", 2)
        .left_out("the conditions', else [by pipe](methods.md#velocity)")
        .means("With a faster flow the pipe has to change."));

inline constexpr auto fitting = table(
    choice("kind", always).means("One of the [fittings](#fittings-by-name), or `other`."),
    whole("count", always, 0, 1000).means("How many."),
    plain("zeta", depends, 0, 1000).means("Needed with `other` and only read with it: the loss factor on v²/2."));

inline constexpr auto mixer = table(id("id", always, &Mixer::id).means("Unlike every other mixing set's."),
                                    id("from", always, &Mixer::from).means("The junction that it draws from."),
                                    id("to", always, &Mixer::to).means("The junction that it feeds."),
                                    number("flow_temperature_c", always, 20, 60, unit::celsius, &Mixer::flow)
                                        .in_record("flow")
                                        .in_register("flow temperature of mixing set", 1)
                                        .means("That it makes: below the conditions' flow temperature."),
                                    number("temperature_drop_k", optional, 1, 30, unit::kelvin, &Mixer::drop)
                                        .in_record("drop")
                                        .in_register("temperature drop beyond mixing set", 1)
                                        .left_out("the conditions'")
                                        .means("Across the emitters beyond it."),
                                    mapping("circulator", optional)
                                        .left_out("a pump that gives what is needed")
                                        .means("Its pump, as under `circulator`."));

inline constexpr auto separation = table(
    choice("kind", always, "separation", &Separation::kind, separation_kind_names)
        .by_hand()
        .means("`header`, `close_tees`, `buffer_two` or `buffer_four` (connections), `plate` or `volumiser`."),
    number("source_flow_l_per_min", depends, 0.5, 300, unit::litre_per_minute, &Separation::source_flow)
        .by_hand()
        .in_register("flow on the source's side", 1)
        .left_out("the emitters' flow, and at least the source's minimum")
        .means("Flow on the source's side; not with a volumiser, which stands in series."),
    number("source_flow_l_per_s", depends, 0.005, 5, unit::litre_per_second)
        .left_out("the same")
        .means("The same in other units; give one of the two."),
    mapping("source_circulator", depends)
        .left_out("a pump that gives what is needed")
        .means("The pump on the source's side, as under `circulator`."),
    number("volume_l", depends, 0.5, 5000, unit::litre, &Separation::volume)
        .in_register("content of buffer or volumiser", 0)
        .means("Needed with a buffer or volumiser: its content."),
    number("plate_ua_w_per_k", depends, 10, 50'000, unit::watt_per_kelvin, &Separation::plate_ua)
        .in_register("UA of plate exchanger", 0)
        .means("Needed with a plate and only read with it: heat over the log mean difference."),
    number("pressure_drop_kpa", depends, 0, 200, unit::kilopascal, &Separation::pressure_drop)
        .in_register("pressure drop of plate or volumiser", 1)
        .left_out("none")
        .means("Of each side of a plate, or of a volumiser, at the flow below."),
    number("pressure_drop_flow_l_per_min", depends, 0.1, 300, unit::litre_per_minute, &Separation::pressure_drop_flow)
        .by_hand()
        .in_register("flow of that drop", 1)
        .means("Needed with `pressure_drop_kpa`."),
    number("pressure_drop_flow_l_per_s", depends, 0.001, 5, unit::litre_per_second)
        .means("The same in other units; give one of the two."));

inline constexpr auto circulator = table(
    line("name", always, &Circulator::name).means("In general words."),
    choice("mode", optional, "mode", &Circulator::mode, pump_mode_names)
        .left_out("`constant_speed`")
        .means("`constant_speed`, `constant_pressure` or `proportional_pressure`."),
    choice("basis", optional, "basis", &Circulator::basis, basis_names)
        .left_out("`document`")
        .means("What the curve stands on."),
    maybe_text("source", &Circulator::source).left_out("nothing").means("The document."),
    list("curve", optional, 2, 100)
        .left_out("nothing")
        .means("Points from no flow to most flow: each flow above and each head below the one before."),
    mapping("quadratic", depends).means("Instead of `curve`: a head that falls with the square of the flow."),
    plain("set_head_kpa", depends, 0.5, 200, unit::kilopascal)
        .means("Needed with a controlled mode: the head that it holds, as far as its curve lets it."),
    plain("set_flow_l_per_min", depends, 0.1, 300, unit::litre_per_minute)
        .means("Needed with proportional pressure: the flow at which the set head is reached; at no flow it is half "
               "of it."),
    plain("set_flow_l_per_s", depends, 0.001, 5, unit::litre_per_second)
        .means("The same in other units; give one of the two."));

inline constexpr auto further_circulator = table(
    id("in", always, &FurtherCirculator::in).means("The section that it stands in."),
    id("towards", always, &FurtherCirculator::towards)
        .means("The end of that section that it pushes towards, in its own pipe."),
    choice("pipe", depends).means("`flow` or `return`; needed where the section carries both, and only read there."));

inline constexpr auto quadratic = table(
    plain("shutoff_kpa", always, 0.5, 200, unit::kilopascal).means("Head at no flow."),
    plain("linear_kpa_min_per_l", optional, 0, 100, fall_with_flow)
        .left_out("0")
        .means("How much it falls for each litre a minute."),
    plain("square_kpa_min2_per_l2", optional, 0, 100, fall_with_square)
        .left_out("0")
        .advises("below 0 the head would rise with the flow")
        .means("How much it falls with the square of that. One of the two must be above 0."));

inline constexpr auto curve = table(
    plain("flow_l_per_min", depends, 0, 300, unit::litre_per_minute).means("One of the two flows is needed."),
    plain("flow_l_per_s", depends, 0, 5, unit::litre_per_second).means("The same in other units."),
    plain("head_kpa", always, 0, 200, unit::kilopascal).means("Pressure difference across the pump at that flow."));

}  // namespace keys

}  // namespace loopfolio::job
