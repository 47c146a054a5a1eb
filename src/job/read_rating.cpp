// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/reference/derating.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::job {

namespace {

RatingTemperatures read_temperatures(const Mapping& m) {
    RatingTemperatures out;
    const auto take = [&](std::string_view key, Temperature& to) {
        if (const auto value = plain_at(m, key)) to = Temperature::from_celsius(*value);
    };
    take("flow_c", out.flow);
    take("return_c", out.return_);
    take("room_c", out.air);
    if (out.return_ > out.flow)
        complain(m, "return_c", "must not lie above the flow temperature", "check which figure is which");
    if (out.air >= out.return_)
        complain(m, "room_c", "must lie below the return temperature",
                 "an emitter gives heat only while its water is warmer than the room");
    return out;
}

Fan read_fan(const Mapping& m) {
    Fan out;
    constexpr std::array<std::string_view, 3> temperatures{"flow_c", "return_c", "room_c"};
    const auto there = std::ranges::count_if(temperatures, [&](std::string_view key) { return has(m, key); });
    if (there == 3) out.at = read_temperatures(m);
    for (const auto key : temperatures) {
        if (there > 0) demand(m, key, "the three temperatures of a rating go together");
    }
    bool rising = true;
    for (const auto& item : open_items(m, "speeds", group("speeds"))) {
        const auto speed = plain_at(item, "speed"), output = plain_at(item, "output_w");
        if (!speed || !output) continue;
        if (!out.speeds.empty() && *speed <= out.speeds.back().speed) {
            complain(item, "speed", "must rise from line to line", "list the speeds from the lowest to the highest");
            rising = false;
        }
        out.speeds.push_back({*speed, unit::watt(*output)});
    }
    out.speed = plain_at(m, "speed").value_or(0.0);
    const bool inside = !out.speeds.empty() && out.speed >= out.speeds.front().speed &&
                        out.speed <= out.speeds.back().speed;
    if (has(m, "speed") && rising && !out.speeds.empty() && !inside) {
        complain(m, "speed",
                 "must lie within the stated ones, " + decimal(out.speeds.front().speed) + " to " +
                     decimal(out.speeds.back().speed),
                 "no output is known outside them");
    }
    return out;
}

HeatedFloor read_floor(const Mapping& m, const Emitter& emitter) {
    HeatedFloor out;
    read_keys(m, keys::heated_floor, out);
    one_of(m, {"covering", "covering_m2k_per_w"}, "what lies on the screed");
    if (emitter.loop_pipe.empty()) demand(m, "pipe_outside_mm", "no `loop` says what pipe it is");
    if (has(m, "below_m2k_per_w"))
        demand(m, "below_c", "heat goes down to something", "the room's temperature where a heated room lies below");
    else if (has(m, "below_c")) demand(m, "below_m2k_per_w", "what lies between pipes and that is not given");
    return out;
}

void read_pieces(const Mapping& m, Emitter& emitter) {
    if (has(m, "output_of_section_w")) {
        demand(m, "sections", "how many sections there are is not known");
        emitter.by_piece = RatedByPiece{whole_at(m, "sections").value_or(1),
                                        input_at(m, "output_of_section_w", unit::watt)};
    } else if (has(m, "sections")) {
        demand(m, "output_of_section_w", "what one section gives is not known");
    }
    if (has(m, "output_per_metre_w")) {
        demand(m, "length_mm", "how many metres there are is not known");
        emitter.by_piece = RatedByPiece{0, input_at(m, "output_per_metre_w", unit::watt)};
    }
}

void read_deratings(const Mapping& m, Emitter& emitter) {
    const auto names = reference::derating_names();
    for (const auto& name : texts_at(m, "derating")) {
        const bool twice = std::ranges::any_of(emitter.deratings, [&](const Derating& d) { return d.name == name; });
        if (std::ranges::find(names, name) == names.end()) {
            const auto near = did_you_mean(lower_snake(name), names);
            complain(m, "derating", "`" + name + "` is not the name of a circumstance",
                     near.empty() ? "the names are " + listed(names) : near);
        } else if (twice) {
            complain(m, "derating", "`" + name + "` stands twice", "name each circumstance once");
        } else {
            emitter.deratings.push_back({name, {}});
        }
    }
    if (emitter.floor && !emitter.deratings.empty()) {
        complain(m, "derating", "is not read with `floor`", "say it by the covering");
    }
}

}  // namespace

void read_rating(const Mapping& m, Emitter& emitter) {
    // Reported where the sections are read.
    const bool half_said = has(m, "sections") && !has(m, "output_of_section_w");
    if (!half_said)
        one_of(m, {"output_at_50k_w", "rated_at", "fan", "output_of_section_w", "output_per_metre_w", "floor"},
               "what it gives");
    if (const auto at = open_child(m, "rated_at", group("rated_at"))) {
        emitter.rated_at = RatedAt{read_temperatures(*at), {}};
        read_keys(*at, keys::rated_at, *emitter.rated_at);
    }
    if (const auto fan = open_child(m, "fan", group("fan"))) emitter.fan = read_fan(*fan);
    read_pieces(m, emitter);
    if (const auto floor = open_child(m, "floor", group("floor"))) {
        emitter.floor = read_floor(*floor, emitter);
        if (emitter.kind != "underfloor" && has(m, "kind"))
            complain(m, "floor", "is read only with `kind: underfloor`", "leave it out, or state that `kind`");
        if (has(m, "exponent"))
            complain(m, "exponent", "is not read with `floor`", "a floor's output grows with the excess itself");
    }
    read_deratings(m, emitter);
}

}  // namespace loopfolio::job
