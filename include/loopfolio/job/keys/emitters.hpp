// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/pipes.hpp"

/// The keys of an emitter, and of the ways to state its output.
namespace loopfolio::job {

namespace keys {

inline constexpr auto emitter = table(
    id("id", always, &Emitter::id).means("Unlike every other emitter's."),
    maybe_line("name", &Emitter::name).left_out("nothing").means("`under the bay`."),
    id("room", always, &Emitter::room).means("The id of its room, which must be heated."),
    id("at", always, &Emitter::at).means("The junction that its flow comes from. Two emitters may share one."),
    id("return_at", optional, &Emitter::return_at)
        .by_hand()
        .left_out("`at`")
        .means("The junction that its return goes to, where that is another: the second tee on a one-pipe loop, or "
               "a return that runs apart."),
    line("model", optional, &Emitter::model)
        .left_out("nothing")
        .means("A size of the catalogue: it gives kind, output, exponent, length, height and content where they are "
               "left out here."),
    choice("kind", always, "kind of emitter", &Emitter::kind, reference::emitter_kind_names)
        .means("One of the [kinds of emitter](#kinds-of-emitter); with `model` it may come from there."),
    number("temperature_drop_k", optional, 1, 30, unit::kelvin, &Emitter::drop)
        .in_record("drop")
        .in_register("temperature drop of emitter", 1, 1)
        .left_out("the conditions'")
        .means("Across this emitter at design."),
    number("valves_kv_m3_per_h", optional, 0.01, 20, kv_unit, &Emitter::valves_kv)
        .in_register("Kv of valves, m³/h", 2, 1)
        .with_unit_in_name()
        .left_out("open")
        .means("Kv of its valves together as they were found, in series; beside `fittings`, not instead of them."),
    mapping("loop", optional).left_out("none").means("The pipe inside it: a loop in a floor."),
    number("output_at_50k_w", depends, 20, 20'000, unit::watt, &Emitter::output_at_50k)
        .in_register("emitter output at 50 K", 0)
        .means("Heat output at a mean water temperature 50 K above the room. This, `rated_at`, `fan`, `floor`, or the "
               "output of a section or of a metre is needed."),
    mapping("rated_at", depends).means("An output at other temperatures."),
    mapping("fan", depends).means("Outputs of a fan-assisted emitter, speed by speed."),
    mapping("floor", depends).means("With `kind: underfloor`: what the floor is made of; output by EN 1264."));

inline constexpr auto by_piece = table(
    whole("sections", depends, 1, 100, &RatedByPiece::sections)
        .by_hand()
        .means("Of a column radiator, with `output_of_section_w`."),
    number("output_of_section_w", depends, 5, 1000, unit::watt, &RatedByPiece::output)
        .by_hand()
        .in_record("output")
        .in_register("output of one section at 50 K", 0)
        .listed_where([](const RatedByPiece& p) { return p.sections > 0; })
        .means("Output of one section at 50 K, with `sections`."),
    number("output_per_metre_w", depends, 20, 6000, unit::watt, &RatedByPiece::output)
        .by_hand()
        .in_record("")
        .in_register("output of one metre at 50 K", 0)
        .listed_where([](const RatedByPiece& p) { return p.sections == 0; })
        .means("Output of one metre at 50 K, with `length_mm`: heated skirting."));

inline constexpr auto emitter_more = table(
    lines("derating", optional, 8)
        .left_out("nothing")
        .means("Names of [what lowers its output](#what-lowers-an-output), such as `[shelf, curtain]`; they "
               "multiply."),
    number("exponent", optional, 1.0, 1.6, unit::number, &Emitter::exponent)
        .in_register("emitter exponent", 2)
        .left_out("from `kind`")
        .means("How the output falls with temperature."),
    number("length_mm", optional, 100, 20'000, unit::millimetre, &Emitter::length)
        .in_register("emitter length", 0, 1)
        .left_out("nothing")
        .means("For a cross-check of the output: the pack flags one far from typical for the size. A length over twice "
               "the side of a square of the room's floor area gives a warning, except for skirting."),
    number("water_content_l", optional, 0.1, 200, unit::litre, &Emitter::content)
        .in_register("water in emitter", 1, 2)
        .left_out("from its rating")
        .means("Water that it holds; used for the content of the system."),
    number("height_mm", optional, 50, 3'000, unit::millimetre, &Emitter::height)
        .in_register("emitter height", 0, 1)
        .left_out("nothing")
        .means("The same."),
    choice("connection", optional, "pipe", &Emitter::connection, reference::pipe_names)
        .left_out("from its section, but not below `copper_15`")
        .means("The [pipe](#pipes) that its valves are sized for. A thinner pipe is taken to end in an adapter."),
    list("fittings", optional, 0, 50).left_out("none").means("Its valves, on flow and return together."),
    choice("state", optional, "state", &Emitter::existing, state_names)
        .in_record("existing")
        .left_out("`existing`")
        .means("`existing` or `new`."),
    resolved("rating", unit::watt, &Emitter::rating).in_register("emitter output at 50 K", 0));

inline constexpr auto derating = table(
    resolved("factor", unit::number, &Derating::factor).in_register("share of output left", 2));

inline constexpr auto loop = table(choice("pipe", always, "pipe", &Emitter::loop_pipe, reference::pipe_names)
                                       .in_record("loop_pipe")
                                       .means("One of the [pipes](#pipes)."),
                                   number("length_m", depends, 1, 300, unit::metre, &Emitter::loop_length)
                                       .in_record("loop_length")
                                       .in_register("pipe in the floor", 1)
                                       .left_out("by `floor`")
                                       .means("Of the loop with its leads, there and back."));

inline constexpr auto rated_at = table(plain("flow_c", always, 25, 90, unit::celsius).means("Water in."),
                                       plain("return_c", always, 20, 85, unit::celsius).means("Water out."),
                                       plain("room_c", always, 5, 30, unit::celsius).means("Air."),
                                       number("output_w", always, 20, 20'000, unit::watt, &RatedAt::output)
                                           .in_register("emitter output at other temperatures", 0)
                                           .means("Output at those."));

inline constexpr auto fan = table(
    list("speeds", always, 1, 20).means("From slow to fast."),
    plain("speed", always, 0, 5000)
        .means("The one chosen, on the maker's scale; within the stated ones, between two by a straight line."),
    plain("flow_c", optional, 25, 90, unit::celsius)
        .left_out("75")
        .means("Water in, at which the outputs are stated. The three go together."),
    plain("return_c", optional, 20, 85, unit::celsius).left_out("65").means("Water out."),
    plain("room_c", optional, 5, 30, unit::celsius).left_out("20").means("Air."));

inline constexpr auto fan_speed = table(
    plain("speed", always, 0, 5000).means("On the maker's scale: a step, a share, turns a minute."),
    plain("output_w", always, 20, 20'000, unit::watt).means("Output at it."));

inline constexpr auto heated_floor = table(
    number("area_m2", always, 0.5, 200, unit::square_metre, &HeatedFloor::area)
        .in_register("heated floor area", 1)
        .means("Heated by this loop."),
    number("pitch_mm", always, 50, 375, unit::millimetre, &HeatedFloor::pitch)
        .in_register("pitch of floor pipes", 0)
        .means("From pipe to pipe."),
    choice("covering", depends, "covering", &HeatedFloor::covering, floor_covering_names)
        .means("One of the [floor coverings](#floor-coverings); this or its resistance."),
    number("covering_m2k_per_w", depends, 0, 0.15, unit::square_metre_kelvin_per_watt,
           &HeatedFloor::covering_resistance)
        .in_register("resistance of floor covering", 3)
        .left_out("from `covering`")
        .advises("the standard's tables end at 0.15: a thicker cover is no heated floor")
        .means("Its resistance; 1 tog is 0.1."),
    number("screed_mm", always, 10, 65, unit::millimetre, &HeatedFloor::screed_cover)
        .in_register("screed over floor pipes", 0)
        .means("Above the top of the pipe."),
    number("screed_w_per_mk", optional, 0.3, 3, unit::watt_per_metre_kelvin, &HeatedFloor::screed)
        .in_register("conductivity of screed", 2)
        .left_out("reference")
        .means("Conductivity of the screed."),
    number("pipe_outside_mm", depends, 8, 30, unit::millimetre, &HeatedFloor::pipe_outside)
        .in_register("outside diameter of floor pipe", 0)
        .left_out("from `loop`")
        .means("Outside diameter of the pipe."),
    choice("zone", optional, "zone of a floor", &HeatedFloor::zone, floor_zone_names)
        .left_out("`occupied`")
        .means("One of the [zones](#zones-of-a-heated-floor): how warm the floor may be."),
    number("leads_m", optional, 0, 100, unit::metre, &HeatedFloor::leads)
        .in_register("way to the manifold and back", 1)
        .left_out("none")
        .means("To the manifold and back, for the loop's length."),
    number("below_m2k_per_w", optional, 0.05, 20, unit::square_metre_kelvin_per_watt, &HeatedFloor::below)
        .in_register("resistance below floor pipes", 2)
        .left_out("not counted")
        .means("Resistance from the pipes to what lies below, its surface included."),
    number("below_c", depends, -40, 40, unit::celsius, &HeatedFloor::below_temperature)
        .in_register("temperature below heated floor", 1)
        .means("Needed with it: the temperature there on the design day."));

}  // namespace keys

}  // namespace loopfolio::job
