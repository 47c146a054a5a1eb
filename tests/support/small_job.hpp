// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include "support/inputs.hpp"

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>

namespace loopfolio::tests {

/// A room with a given heat loss, so that what follows from it can be checked by hand.
inline job::Room stated_room(std::string id, double watts, double celsius = 21.0) {
    job::Room room;
    room.id = room.name = std::move(id);
    room.use = reference::RoomUse::living;
    room.floor_area = measured(unit::square_metre(20.0));
    room.ceiling_height = measured(unit::metre(2.4));
    room.temperature = measured(unit::celsius(celsius));
    room.heat_loss = measured(unit::watt(watts));
    return room;
}

inline job::Emitter panel(std::string id, std::string room, std::string at, double rated_watts, double exponent = 1.3) {
    job::Emitter e;
    e.id = std::move(id);
    e.room = std::move(room);
    e.at = std::move(at);
    e.kind = "panel_22";
    e.output_at_50k = measured(unit::watt(rated_watts));
    e.exponent = measured(exponent);
    return e;
}

inline job::Section section(std::string id, std::string from, std::string to, std::string pipe, double metres) {
    job::Section s;
    s.id = std::move(id);
    s.from = std::move(from);
    s.to = std::move(to);
    s.pipe = std::move(pipe);
    s.length = measured(unit::metre(metres));
    return s;
}

/// A job with conditions and a heat source, but no rooms, emitters or sections.
inline job::Job bare_job(double flow_celsius = 50.0, double drop_kelvin = 5.0) {
    job::Job job;
    job.identity = {"TEST-1", "A", date::year{2026} / 10 / 14, ""};
    job.conditions.outdoor = measured(unit::celsius(-3.0));
    job.conditions.flow = measured(unit::celsius(flow_celsius));
    job.conditions.drop = measured(unit::kelvin(drop_kelvin));
    job.heat_source.emplace();
    job.heat_source->name = "heat source";
    job.heat_source->at = "HS";
    return job;
}

/// A job with one room, one emitter, and one section of this pipe from the heat source.
inline job::Job one_section_job(std::string pipe, double watts, double drop_kelvin = 5.0) {
    auto job = bare_job(50.0, drop_kelvin);
    job.rooms.push_back(stated_room("room", watts));
    job.emitters.push_back(panel("E", "room", "A", 4.0 * watts));
    job.sections.push_back(section("S", "HS", "A", std::move(pipe), 10.0));
    return job;
}

inline design::Design designed(job::Job job, design::Trace* trace = nullptr) {
    auto result = design::design(design::resolve(std::move(job)), trace);
    if (auto* d = std::get_if<design::Design>(&result)) return std::move(*d);
    throw std::runtime_error{"refused: " + std::get<1>(result).front().rule};
}

}  // namespace loopfolio::tests
