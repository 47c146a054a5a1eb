// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/job.hpp"
#include "support/inputs.hpp"
#include "support/studied.hpp"

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>
#include <vector>

/// An invented house, small enough to read, with one of everything that a pack can report: rooms, emitters, sections
/// and plant include something kept, something noted and something to change.
namespace loopfolio::tests {

inline job::Room sample_room(std::string id, std::string name, reference::RoomUse use, double area) {
    job::Room room;
    room.id = std::move(id);
    room.name = std::move(name);
    room.storey = "ground floor";
    room.use = use;
    room.floor_area = measured(area * unit::square_metre);
    room.ceiling_height = measured(2.4 * unit::metre);
    job::Fabric fabric;
    fabric.era = reference::Era::from_1930;
    fabric.wall = reference::WallKind::cavity;
    fabric.glazing = reference::GlazingKind::double_from_2002;
    fabric.floor = reference::FloorKind::ground;
    fabric.outside_walls = 2;
    room.fabric = fabric;
    return room;
}

inline job::Emitter sample_emitter(std::string id, std::string room, std::string at, double watts) {
    job::Emitter emitter;
    emitter.id = std::move(id);
    emitter.room = std::move(room);
    emitter.at = std::move(at);
    emitter.kind = "panel_22";
    emitter.output_at_50k = measured(watts * unit::watt);
    return emitter;
}

inline job::Section sample_section(std::string id, std::string from, std::string to, std::string pipe, double metres) {
    job::Section section;
    section.id = std::move(id);
    section.from = std::move(from);
    section.to = std::move(to);
    section.pipe = std::move(pipe);
    section.length = measured(metres * unit::metre);
    section.fittings.push_back({"elbow", 2, 0.0, {}});
    return section;
}

inline void add_parties(job::Job& job) {
    using namespace date;
    job.identity = {"EX-104", "A", 2026_y / 10 / 14, ""};
    job.firm = {"Example Heating", {"1 Example Yard", "Exampleton"}, "01632 960 001", "office@example.com", ""};
    job.designer = {"A. Sample", "heating designer"};
    job.household = {"The Example household", {"01632 960 002"}};
    job.property = {{"4 Example Road", "Exampleton"}, "semi-detached house, built about 1936"};
    job.survey_notes = {"The house is warm enough today with the old boiler."};
}

inline void add_plant(job::Job& job) {
    job::HeatSource source;
    source.name = "air-source heat pump";
    source.at = "plant";
    source.capacity = measured(7.0 * unit::kilowatt);
    source.minimum_flow = measured(12.0 * unit::litre_per_minute);
    source.flammable_refrigerant = true;
    source.replaces_gas_appliance = true;
    job.heat_source = source;
    job::Circulator circulator;
    circulator.name = "circulator in the plant cupboard";
    circulator.curve = {{0.0 * unit::litre_per_minute, 60.0 * unit::kilopascal},
                        {20.0 * unit::litre_per_minute, 40.0 * unit::kilopascal},
                        {40.0 * unit::litre_per_minute, 10.0 * unit::kilopascal}};
    circulator.source = "maker's sheet";
    job.circulator = circulator;
}

inline job::Job sample_job() {
    using reference::RoomUse;
    job::Job job;
    add_parties(job);
    job.conditions.outdoor = measured(Temperature::from_celsius(-3.0));
    job.conditions.flow = measured(Temperature::from_celsius(45.0));
    job.rooms = {sample_room("living", "Living room", RoomUse::living, 22.0),
                 sample_room("kitchen", "Kitchen", RoomUse::kitchen, 12.0),
                 sample_room("hall", "Hall", RoomUse::hall, 8.0),
                 sample_room("bed", "Front bedroom", RoomUse::bedroom, 14.0),
                 sample_room("study", "Study", RoomUse::study, 7.0),
                 sample_room("store", "Store", RoomUse::store, 4.0)};
    job.rooms[0].air_changes = assumed(1.5 * unit::per_hour, 1.0 * unit::per_hour, 2.0 * unit::per_hour);
    job.rooms[3].storey = job.rooms[4].storey = "first floor";
    job.rooms[5].heated = false;
    job::Element wall;
    wall.name = "front wall";
    wall.kind = job::ElementKind::wall;
    wall.area = measured(14.0 * unit::square_metre);
    wall.u_value = measured(1.5 * unit::watt_per_square_metre_kelvin);
    job.rooms[3].elements.push_back(wall);
    job.emitters = {sample_emitter("R1", "living", "a", 2400.0), sample_emitter("R2", "kitchen", "b", 5000.0),
                    sample_emitter("R3", "hall", "c", 2064.0), sample_emitter("R4", "bed", "d", 4600.0)};
    job.sections = {sample_section("S1", "plant", "a", "copper_15", 6.0),
                    sample_section("S2", "a", "b", "copper_22", 5.0), sample_section("S3", "b", "c", "copper_15", 4.0),
                    sample_section("S4", "c", "d", "copper_15", 7.0)};
    job.sections[0].where = "under the hall floor";
    add_plant(job);
    return job;
}

}  // namespace loopfolio::tests
