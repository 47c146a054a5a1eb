// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

TEST_CASE("a number that is not one says so and how to write it") {
    tests::check_refusals({
        {"floor_area_m2: 18.4", "floor_area_m2: \"18.4\"",
         "14:20: error: rooms[0].floor_area_m2 = \"18.4\": must be a number (room living)\n"
         "    hint: a number is written without quotes: 18.4\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 'big'",
         "14:20: error: rooms[0].floor_area_m2 = \"big\": must be a number (room living)\n"
         "    hint: write it in digits, with a decimal point and without its unit: 18.4\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 18,4",
         "14:20: error: rooms[0].floor_area_m2 = 18,4: must be a number (room living)\n"
         "    hint: write a decimal point: 18.4\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 1,950",
         "14:20: error: rooms[0].floor_area_m2 = 1,950: must be a number (room living)\n"
         "    hint: write 1950 or 1.950: a number has no comma\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 18.4 m2",
         "14:20: error: rooms[0].floor_area_m2 = 18.4 m2: must be a number (room living)\n"
         "    hint: the unit is in the key: write 18.4\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 18.4m²",
         "14:20: error: rooms[0].floor_area_m2 = 18.4m²: must be a number (room living)\n"
         "    hint: the unit is in the key: write 18.4\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: .nan",
         "14:20: error: rooms[0].floor_area_m2 = .nan: must be a finite number (room living)\n"
         "    hint: leave out what is not known\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: -.inf",
         "14:20: error: rooms[0].floor_area_m2 = -.inf: must be a finite number (room living)\n"
         "    hint: leave out what is not known\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 1e400",
         "14:20: error: rooms[0].floor_area_m2 = 1e400: is past what a number can hold (room living)\n"
         "    hint: check the digits and the exponent\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 0x12",
         "14:20: error: rooms[0].floor_area_m2 = 0x12: must be a number (room living)\n"
         "    hint: write it in decimal\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 0o22",
         "14:20: error: rooms[0].floor_area_m2 = 0o22: must be a number (room living)\n"
         "    hint: write it in decimal\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 018",
         "14:20: error: rooms[0].floor_area_m2 = 018: must be a number without leading zeros (room "
         "living)\n"
         "    hint: other systems read those as octal\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 1_8",
         "14:20: error: rooms[0].floor_area_m2 = 1_8: must be a number (room living)\n"
         "    hint: write it without underscores: 18\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: −18",
         "14:20: error: rooms[0].floor_area_m2 = −18: must be a number (room living)\n"
         "    hint: write the minus as a hyphen: -18\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: [18.4]",
         "14:20: error: rooms[0].floor_area_m2: must be a number, and a list stands here (room "
         "living)\n"
         "    hint: write one value, without brackets\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: yes",
         "14:20: error: rooms[0].floor_area_m2 = yes: must be a number (room living)\n"
         "    hint: write it in digits, with a decimal point and without its unit: 18.4\n"},
        {"floor_area_m2: 18.4", "floor_area_m2:",
         "14:5: error: rooms[0].floor_area_m2: has no value (room living)\n"
         "    hint: write its value\n"},
    });
}

TEST_CASE("a number out of its range names the range, its unit and the likely slip") {
    tests::check_refusals({
        {"floor_area_m2: 18.4", "floor_area_m2: 0",
         "14:20: error: rooms[0].floor_area_m2 = 0: must lie between 0.5 and 1000 m² (room living)\n"
         "    hint: check the digits, and that it is in m²\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: -18.4",
         "14:20: error: rooms[0].floor_area_m2 = -18.4: must lie between 0.5 and 1000 m² (room "
         "living)\n"
         "    hint: check the digits, and that it is in m²\n"},
        {"ceiling_height_m: 2.4", "ceiling_height_m: 2400",
         "15:23: error: rooms[0].ceiling_height_m = 2400: must lie between 1.5 and 8 m (room living)\n"
         "    hint: if that is in millimetres, write 2.4\n"},
        {"output_at_50k_w: 1950", "output_at_50k_w: 1.95",
         "28:22: error: emitters[0].output_at_50k_w = 1.95: must lie between 20 and 20000 W (emitter "
         "r1)\n"
         "    hint: if that is in kilowatts, write 1950\n"},
        {"length_m: 4.5}", "length_m: 4.5, bore_mm: 0.026}",
         "31:79: error: pipework.sections[0].bore_mm = 0.026: must lie between 3 and 200 mm (section "
         "S1)\n"
         "    hint: if that is in metres, write 26\n"},
        {"output_at_50k_w: 1950", "output_at_50k_w: 1950\n    exponent: 2",
         "29:15: error: emitters[0].exponent = 2: must lie between 1 and 1.6 (emitter r1)\n"
         "    hint: check the digits and where the decimal point is\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  temperature_drop_k: 0",
         "10:23: error: conditions.temperature_drop_k = 0: must lie between 1 and 30 K\n"
         "    hint: the flow that carries the heat grows as the drop shrinks: with no drop it has no "
         "end\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 95",
         "9:23: error: conditions.flow_temperature_c = 95: must lie between 25 and 80 °C\n"
         "    hint: check the digits, and that it is in °C\n"},
        {"outdoor_temperature_c: -3.2", "outdoor_temperature_c: 20",
         "8:26: error: conditions.outdoor_temperature_c = 20: must lie between -40 and 15 °C\n"
         "    hint: check the digits, and that it is in °C\n"},
        {"loopfolio: 2", "loopfolio: 1",
         "1:12: error: loopfolio = 1: must be 2\n"
         "    hint: docs/job-file.md says what changed: in version 2 a room that states no air changes takes them by "
         "EN 12831-1:2017\n"},
        {"heat_loss_w: 1180",
         "fabric: {era: from_2012, wall: cavity, glazing: triple, outside_walls: 2.5, roof: none, floor: none}",
         "16:76: error: rooms[0].fabric.outside_walls = 2.5: must be a whole number (room living)\n"
         "    hint: write it without a decimal point\n"},
    });
}

TEST_CASE("a value with its basis is held to the same rules") {
    tests::check_refusals({
        {"floor_area_m2: 18.4", "floor_area_m2: {value: 18, low: 19, high: 17, basis: measurd}",
         "14:37: error: rooms[0].floor_area_m2.low = 19: must not be above the value, 18 (room "
         "living)\n"
         "    hint: the value lies within its own range: check the three figures\n"
         "14:47: error: rooms[0].floor_area_m2.high = 17: must not be below the value, 18 (room "
         "living)\n"
         "    hint: the value lies within its own range: check the three figures\n"
         "14:58: error: rooms[0].floor_area_m2.basis = measurd: must be `measured`, `document` or "
         "`assumed` (room living)\n"
         "    hint: did you mean `measured`?\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: {low: 17, sorce: x}",
         "14:20: error: rooms[0].floor_area_m2.value: is missing (room living)\n"
         "    hint: add `value` with a number: In the unit of the key and within its range\n"
         "14:30: error: rooms[0].floor_area_m2.sorce: is not a key of the job file here (room living)\n"
         "    hint: did you mean `source`?\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: {value: 18, source: one, two}",
         "14:45: error: rooms[0].floor_area_m2.two: is not a key of the job file here (room living)\n"
         "    hint: text that holds a comma goes in quotes\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: {value: 18,4}",
         "14:31: error: rooms[0].floor_area_m2.4: is not a key of the job file here (room living)\n"
         "    hint: a number has a decimal point and no comma\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: {value: {value: 18}}",
         "14:28: error: rooms[0].floor_area_m2.value: must be a plain number (room living)\n"
         "    hint: write the value alone: it takes no basis and no range\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: {value: 18, high: 2000}",
         "14:38: error: rooms[0].floor_area_m2.high = 2000: must lie between 0.5 and 1000 m² (room "
         "living)\n"
         "    hint: check the digits, and that it is in m²\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: {value: 18, basis: default}",
         "14:39: error: rooms[0].floor_area_m2.basis = default: must be `measured`, `document` or "
         "`assumed` (room living)\n"
         "    hint: write one of them as it is here\n"},
    });
}
