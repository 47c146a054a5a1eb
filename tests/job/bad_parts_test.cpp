// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

TEST_CASE("rooms, their fabric and their elements") {
    tests::check_refusals({
        {"    heat_loss_w: 1180\n", "",
         "11:5: error: rooms[0]: there is no way to find its heat loss (room living)\n"
         "    hint: add `fabric`, `elements`, `heat_loss_rate_w_per_m2` or `heat_loss_w`, or write "
         "`heated: false`\n"},
        {"  - id: hall", "  - id: living",
         "17:9: error: rooms[1].id = living: is used twice, first at line 11, column 9 (room living)\n"
         "    hint: give each its own id\n"},
        {"room: living", "room: livng",
         "25:11: error: emitters[0].room = livng: is not the id of a room (emitter r1)\n"
         "    hint: did you mean `living`?\n"},
        {"room: living", "room: hall",
         "11:5: warning: rooms[0]: the room is heated and has no emitter (room living)\n"
         "    hint: write `heated: false` if none is meant to heat it\n"
         "25:11: error: emitters[0].room = hall: is a room with `heated: false` (emitter r1)\n"
         "    hint: leave the emitter out, or write `heated: true`\n"},
        {"heat_loss_w: 1180", "fabric: {era: from_2012, outside_walls: 0}",
         "16:13: error: rooms[0].fabric.roof: is missing (room living)\n"
         "    hint: add `roof` with its name: `none` (a heated room above), `pitched` or `flat`\n"
         "16:13: error: rooms[0].fabric.floor: is missing (room living)\n"
         "    hint: add `floor` with its name: `none` (a heated room below), `ground` (a slab), `suspended` (over a "
         "ventilated void) or `exposed` (over outside air)\n"},
        {"heat_loss_w: 1180", "fabric: {era: 1930s, wall: brick, outside_walls: 2, roof: none, floor: none}",
         "16:13: error: rooms[0].fabric.glazing: is missing: the room has outside walls (room living)\n"
         "    hint: add `glazing` with its name: Needed with outside walls: `single`, `secondary`, "
         "`double_before_2002`, `double_from_2002` or `triple`\n"
         "16:19: error: rooms[0].fabric.era = 1930s: must be `before_1900`, `from_1900_to_1929`, "
         "`from_1930_to_1949`, `from_1950_to_1966`, `from_1967_to_1975`, `from_1976_to_1982`, "
         "`from_1983_to_1990`, `from_1991_to_1995`, `from_1996_to_2002`, `from_2003_to_2006`, "
         "`from_2007_to_2011` or `from_2012` (room living)\n"
         "    hint: write one of them as it is here\n"
         "16:32: error: rooms[0].fabric.wall = brick: must be `solid_brick`, `cavity`, "
         "`filled_cavity`, `timber_frame`, `system_built` or `insulated_solid` (room living)\n"
         "    hint: write one of them as it is here\n"},
        {"heat_loss_w: 1180",
         "fabric: {era: from_2012, outside_walls: 0, roof: none, floor: none}\n    thermal_bridge_w_per_m2k: 0.1",
         "17:31: error: rooms[0].thermal_bridge_w_per_m2k = 0.1: is read only with `elements` (room "
         "living)\n"
         "    hint: move it under `fabric`\n"},
        {"heat_loss_w: 1180", "elements: [{kind: wall, area_m2: 3, u_value_w_per_m2k: 2, beyond: room}]",
         "16:16: error: rooms[0].elements[0].room: is missing: the element is towards another room "
         "(room living)\n"
         "    hint: add `room` with an id, such as `R-1`: Needed with `beyond: room` and only read with it: the id of "
         "that other room\n"},
        {"heat_loss_w: 1180", "elements: [{kind: wall, area_m2: 3, u_value_w_per_m2k: 2, beyond: room, room: living}]",
         "16:83: error: rooms[0].elements[0].room = living: is the room itself (room living)\n"
         "    hint: name the room on the other side\n"},
        {"heat_loss_w: 1180",
         "elements: [{kind: wall, area_m2: 3, u_value_w_per_m2k: 2, room: hall, factor: 0.5, "
         "beyond_temperature_c: 9}]",
         "16:69: error: rooms[0].elements[0].room = hall: is read only with `beyond: room` (room "
         "living)\n"
         "    hint: leave it out, or state that `beyond`\n"
         "16:83: error: rooms[0].elements[0].factor = 0.5: is read only with `beyond: unheated` or "
         "`beyond: ground` (room living)\n"
         "    hint: leave it out, or state what lies beyond\n"
         "16:110: error: rooms[0].elements[0].beyond_temperature_c = 9: is read only with `beyond: "
         "unheated` (room living)\n"
         "    hint: leave it out, or state that `beyond`\n"},
        {"heat_loss_w: 1180",
         "elements: [{kind: wall, area_m2: 3, u_value_w_per_m2k: 2, beyond: unheated, factor: 0.5, "
         "beyond_temperature_c: 9}]",
         "16:89: error: rooms[0].elements[0].factor = 0.5: says the same as `beyond_temperature_c` "
         "(room living)\n"
         "    hint: keep one of the two\n"},
    });
}

TEST_CASE("conditions and fluid are held against each other") {
    tests::check_refusals({
        {"flow_temperature_c: 50\nrooms:\n  - id",
         "flow_temperature_c: 28\n  temperature_drop_k: 8.3\nrooms:\n  - temperature_c: 21\n    id",
         "12:20: error: rooms[0].temperature_c = 21: must be below the return temperature, 19.7 °C "
         "(room living)\n"
         "    hint: an emitter gives heat only while its water is warmer than the room\n"},
        {"flow_temperature_c: 50\nrooms:\n  - id", "flow_temperature_c: 28\nrooms:\n  - temperature_c: 28\n    id",
         "11:20: error: rooms[0].temperature_c = 28: must be below the flow temperature, 28 °C (room "
         "living)\n"
         "    hint: an emitter gives heat only while its water is warmer than the room\n"},
        {"flow_temperature_c: 50",
         "flow_temperature_c: 50\n  velocity_preferred_m_per_s: 2\n  velocity_limit_m_per_s: 1",
         "10:31: error: conditions.velocity_preferred_m_per_s = 2: must not be above "
         "`velocity_limit_m_per_s`, 1 m/s\n"
         "    hint: lower it, or raise the limit\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: Fernhollow Heating}\nfluid: {kind: propylene_glycol}",
         "4:8: error: fluid.concentration_percent: is missing: glycol flows by how much of it there "
         "is\n"
         "    hint: add `concentration_percent` with a number from 0 to 60 %: Share of glycol; needed with a glycol, "
         "left out or 0 with water. From 1 % up: 25, not 0.25\n"
         "4:8: error: fluid.concentration_basis: is missing: a share by volume is not the same share "
         "by mass\n"
         "    hint: write `mass` or `volume`, as the container says\n"},
        {"firm: {name: Fernhollow Heating}",
         "firm: {name: Fernhollow Heating}\nfluid: {kind: propylene_glycol, concentration_percent: "
         "0.25, concentration_basis: volume}",
         "4:56: error: fluid.concentration_percent = 0.25: is less than one percent\n"
         "    hint: write percent: 25, not 0.25\n"},
        {"firm: {name: Fernhollow Heating}",
         "firm: {name: Fernhollow Heating}\nfluid: {kind: propylene_glycol, concentration_percent: "
         "65, concentration_basis: mass}",
         "4:56: error: fluid.concentration_percent = 65: must lie between 0 and 60%\n"
         "    hint: check the digits, and that it is in %\n"},
        {"firm: {name: Fernhollow Heating}",
         "firm: {name: Fernhollow Heating}\nfluid: {kind: water, concentration_percent: 25}",
         "4:45: error: fluid.concentration_percent = 25: must be left out or 0 for water\n"
         "    hint: name the glycol under `kind`\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 70",
         "9:23: warning: conditions.flow_temperature_c = 70: is high for a low-temperature heat "
         "source\n"
         "    hint: check that the heat source gives it, and that the emitters need it\n"},
    });
}

TEST_CASE("cautions that a job rules out") {
    const std::string from = "rooms:\n";
    const auto entry = [](const std::string& caution) {
        return "cautions_ruled_out: [{caution: " + caution +
               ", said_by: S. Marsh, date: 2026-09-02, ground: report 1184}]\nrooms:\n";
    };
    CHECK(tests::said(tests::with(tests::sample_job, from, entry("asbestos"))).empty());
    const auto misspelt = tests::said(tests::with(tests::sample_job, from, entry("asbesto")));
    CHECK(misspelt.find("cautions_ruled_out[0].caution = asbesto: is not the name of a caution\n") !=
          std::string::npos);
    CHECK(misspelt.find("hint: did you mean `asbestos`?") != std::string::npos);
    const auto standing = tests::said(tests::with(tests::sample_job, from, entry("carbon_monoxide")));
    CHECK(standing.find("cautions_ruled_out[0].caution = carbon_monoxide: cannot be ruled out\n"
                        "    hint: every pack prints this caution\n") != std::string::npos);
    const auto nobody = tests::said(
        tests::with(tests::sample_job, from, "cautions_ruled_out: [{caution: gas, ground: none}]\nrooms:\n"));
    CHECK(nobody.find("cautions_ruled_out[0].said_by: is missing") != std::string::npos);
    CHECK(nobody.find("cautions_ruled_out[0].date: is missing") != std::string::npos);
}
