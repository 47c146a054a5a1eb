// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

namespace {

/// Refusals of elements that replace the sample's stated heat loss.
void check_elements(std::vector<tests::Refusal> rows) {
    for (auto& row : rows) {
        row.from = "heat_loss_w: 1180";
        row.to = "elements: [" + row.to + "]";
    }
    tests::check_refusals(rows);
}

/// The same for the ways to state the output of the sample's emitter.
void check_ratings(std::vector<tests::Refusal> rows) {
    for (auto& row : rows) row.from = "kind: panel_22\n    output_at_50k_w: 1950";
    tests::check_refusals(rows);
}

}  // namespace

TEST_CASE("layers that no wall is made of") {
    check_elements({
        {"", "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 0}]}",
         "16:88: error: rooms[0].elements[0].layers[0].thickness_mm = 0: must lie between 0.1 and 2000 mm (room "
         "living)\n"
         "    hint: a layer of no thickness is no layer: leave it out\n"},
        {"", "{kind: wall, area_m2: 8, layers: [{conductivity_w_per_mk: 0, thickness_mm: 100}]}",
         "16:74: error: rooms[0].elements[0].layers[0].conductivity_w_per_mk = 0: must lie between 0.005 and 500 "
         "W/(m·K) (room living)\n"
         "    hint: nothing that lets no heat through is built\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 102, bridge: "
         "{material: mortar, share_percent: 101}}]}",
         "16:135: error: rooms[0].elements[0].layers[0].bridge.share_percent = 101: must lie between 0 and 100% "
         "(room living)\n"
         "    hint: check the digits, and that it is in %\n"},
        {"", "{kind: wall, area_m2: 8, layers: [{material: brick_outr, thickness_mm: 102}]}",
         "16:61: error: rooms[0].elements[0].layers[0].material = brick_outr: is not the name of a material "
         "(room living)\n"
         "    hint: did you mean `brick_outer`?\n"},
        {"",
         "{kind: wall, area_m2: 8, u_value_w_per_m2k: 0.5, layers: [{material: brick_outer, "
         "thickness_mm: 102}]}",
         "16:73: error: rooms[0].elements[0].layers: stands beside `u_value_w_per_m2k`: each says what the "
         "element lets through (room living)\n"
         "    hint: keep one of them\n"},
        {"", "{kind: wall, area_m2: 8}",
         "16:16: error: rooms[0].elements[0]: what the element lets through is missing (room living)\n"
         "    hint: add `u_value_w_per_m2k`, `layers` or `perimeter_m`\n"},
        {"", "{kind: wall, area_m2: 8, u_value: 0.5}",
         "16:41: error: rooms[0].elements[0].u_value: is not a key of the job file here (room living)\n"
         "    hint: write `u_value_w_per_m2k`, in W/(m²·K)\n"},
        {"", "{kind: wall, area_m2: 8, layers: [{material: brick_outer}]}",
         "16:50: error: rooms[0].elements[0].layers[0].thickness_mm: is missing: a solid layer resists by its "
         "thickness (room living)\n"
         "    hint: add `thickness_mm` with a number from 0.1 to 2000 mm: Needed of a solid\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: pir, thickness_mm: 50, resistance_m2k_per_w: "
         "2}]}",
         "16:106: error: rooms[0].elements[0].layers[0].resistance_m2k_per_w = 2: stands beside what makes it a "
         "solid layer (room living)\n"
         "    hint: keep one of the two\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{resistance_m2k_per_w: 2, bridge: {material: timber, "
         "share_percent: 10}}]}",
         "16:84: error: rooms[0].elements[0].layers[0].bridge: needs a layer with a thickness (room living)\n"
         "    hint: give the layer's material or conductivity\n"},
        {"", "{kind: window, area_m2: 2, layers: [{material: glass, thickness_mm: 4}]}",
         "16:51: error: rooms[0].elements[0].layers: do not describe a window (room living)\n"
         "    hint: state the U-value of frame and glass together\n"},
        {"", "{kind: wall, area_m2: 8, layers: []}",
         "16:49: error: rooms[0].elements[0].layers: must have between 1 and 20 items, and has 0 (room living)\n"
         "    hint: add what is missing, each item after a `- `\n"},
    });
}

TEST_CASE("bridges, gaps and fasteners that cannot be, or are odd") {
    check_elements({
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 102, bridge: "
         "{material: mortar, share_percent: 100}}]}",
         "16:135: error: rooms[0].elements[0].layers[0].bridge.share_percent = 100: leaves nothing of the layer (room "
         "living)\n"
         "    hint: describe what fills it as the layer\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 102, bridge: "
         "{material: mortar, share_percent: 41}}]}",
         "16:135: warning: rooms[0].elements[0].layers[0].bridge.share_percent = 41: is odd: studs, joists and mortar "
         "seldom take more than 40% of a layer (room living)\n"
         "    hint: check that it is the share of the second material\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 102, bridge: "
         "{material: mortar, share_percent: 40}}]}",
         ""},
        {"", "{kind: wall, area_m2: 8, layers: [{material: eps, thickness_mm: 50, air_gap_level: 3}]}",
         "16:99: error: rooms[0].elements[0].layers[0].air_gap_level = 3: must lie between 0 and 2 (room living)\n"
         "    hint: check the digits and where the decimal point is\n"},
        {"", "{kind: wall, area_m2: 8, layers: [{air_mm: 50, air_gap_level: 1}]}",
         "16:78: error: rooms[0].elements[0].layers[0].air_gap_level = 1: is not read of an air layer (room living)\n"
         "    hint: state it of the layer that insulates\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{air_mm: 50, fasteners: {material: steel, section_mm2: 12.5, "
         "number_per_m2: 2.5}}]}",
         "16:74: error: rooms[0].elements[0].layers[0].fasteners: need a solid layer that they go through (room "
         "living)\n"
         "    hint: ties across an empty cavity are not counted: leave them out\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: eps, thickness_mm: 50, fasteners: {material: timber, "
         "section_mm2: 12.5, number_per_m2: 2.5}}]}",
         "16:106: error: rooms[0].elements[0].layers[0].fasteners.material = timber: lets less than 1 W/(m·K) through: "
         "the standard counts no such fasteners (room living)\n"
         "    hint: leave `fasteners` out\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: eps, thickness_mm: 50, fasteners: {material: steel, "
         "section_mm2: 12.5, number_per_m2: 2.5, depth_mm: 50.5}}]}",
         "16:162: error: rooms[0].elements[0].layers[0].fasteners.depth_mm = 50.5: must not be above the layer's own "
         "`thickness_mm`, 50 (room living)\n"
         "    hint: count only what lies in this layer\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: eps, thickness_mm: 50, fasteners: {material: steel, "
         "section_mm2: 12.5, number_per_m2: 2.5, depth_mm: 50}}]}",
         ""},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: eps, thickness_mm: 50, fasteners: {material: steel, "
         "section_mm2: 500, number_per_m2: 24}}]}",
         "16:126: warning: rooms[0].elements[0].layers[0].fasteners.section_mm2 = 500: makes 1.2% of the area metal, "
         "with "
         "`number_per_m2`: ties and screws seldom take more than 1% (room living)\n"
         "    hint: state the section of one, and how many there are on one square metre\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{material: eps, thickness_mm: 50, fasteners: {material: steel, "
         "section_mm2: 500, number_per_m2: 20}}]}",
         ""},
        {"", "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 102, air_gap_level: 1}]}",
         "16:108: warning: rooms[0].elements[0].layers[0].air_gap_level = 1: corrects insulation, and this layer lets "
         "0.77 "
         "W/(m·K) through (room living)\n"
         "    hint: state it of the layer that insulates\n"},
        {"", "{kind: wall, area_m2: 8, layers: [{material: brick_outer, thickness_mm: 102, air_gap_level: 0}]}", ""},
        {"",
         "{kind: wall, area_m2: 8, layers: [{conductivity_w_per_mk: 0.11, thickness_mm: 50, fasteners: {material: "
         "steel, "
         "section_mm2: 12.5, number_per_m2: 2.5}}]}",
         "16:109: warning: rooms[0].elements[0].layers[0].fasteners: corrects insulation, and this layer lets 0.11 "
         "W/(m·K) "
         "through (room living)\n"
         "    hint: state it of the layer that insulates\n"},
        {"",
         "{kind: wall, area_m2: 8, layers: [{conductivity_w_per_mk: 0.1, thickness_mm: 50, fasteners: {material: "
         "steel, "
         "section_mm2: 12.5, number_per_m2: 2.5}}]}",
         ""},
        {"", "{kind: wall, area_m2: 8, layers: [{resistance_m2k_per_w: 2, air_gap_level: 1}]}", ""},
        {"", "{kind: floor, area_m2: 8, beyond: ground, u_value_w_per_m2k: 0.5, ground: clay}",
         "16:90: error: rooms[0].elements[0].ground = clay: is read only with `perimeter_m` (room living)\n"
         "    hint: leave it out, or give the slab's edge\n"},
        {"", "{kind: floor, area_m2: 8, beyond: ground, perimeter_m: 9, insulation_m2k_per_w: 0, ground: peat}",
         "16:107: error: rooms[0].elements[0].ground = peat: must be `clay`, `sand` or `rock` (room living)\n"
         "    hint: write one of them as it is here\n"},
    });
}

TEST_CASE("slabs and unheated spaces that are not whole") {
    check_elements({
        {"", "{kind: floor, area_m2: 18, beyond: ground, perimeter_m: 0, insulation_m2k_per_w: 0}",
         "16:72: error: rooms[0].elements[0].perimeter_m = 0: must lie between 0.1 and 200 m (room living)\n"
         "    hint: check the digits, and that it is in m\n"},
        {"", "{kind: floor, area_m2: 18, beyond: ground, perimeter_m: 9}",
         "16:16: error: rooms[0].elements[0].insulation_m2k_per_w: is missing: the slab's insulation counts "
         "(room living)\n"
         "    hint: write 0 where there is none\n"},
        {"", "{kind: floor, area_m2: 14, beyond: ground, perimeter_m: 150, insulation_m2k_per_w: 0}",
         "16:72: warning: rooms[0].elements[0].perimeter_m = 150: is long for 14 m²: a strip of that area, ten times "
         "as long "
         "as wide, has 26 m round it (room living)\n"
         "    hint: give the edge of this floor alone that lies to outside\n"},
        {"", "{kind: floor, area_m2: 10, beyond: ground, perimeter_m: 22, insulation_m2k_per_w: 0}", ""},
        {"", "{kind: wall, area_m2: 18, perimeter_m: 9, insulation_m2k_per_w: 0}",
         "16:55: error: rooms[0].elements[0].perimeter_m = 9: is read only with `kind: floor` and `beyond: "
         "ground` (room living)\n"
         "    hint: leave it out, or state `kind` and `beyond` so\n"},
        {"",
         "{kind: wall, area_m2: 8, u_value_w_per_m2k: 1, beyond: unheated, factor: 0.5, space: "
         "{to_rooms_w_per_k: 9, to_outside_w_per_k: 30}}",
         "16:89: error: rooms[0].elements[0].factor = 0.5: says the same as `space` (room living)\n"
         "    hint: keep one of the two\n"},
        {"",
         "{kind: wall, area_m2: 8, u_value_w_per_m2k: 1, beyond: unheated, space: "
         "{to_rooms_w_per_k: 0, to_outside_w_per_k: 0}}",
         "16:88: error: rooms[0].elements[0].space: must lose heat or take it: one of the two above 0 (room "
         "living)\n"
         "    hint: state the rate to the rooms, the rate to outside, or both\n"},
        {"",
         "{kind: wall, area_m2: 8, u_value_w_per_m2k: 1, space: {to_rooms_w_per_k: 9, "
         "to_outside_w_per_k: 30}}",
         "16:70: error: rooms[0].elements[0].space: is read only with `beyond: unheated` (room living)\n"
         "    hint: leave it out, or state that `beyond`\n"},
    });
}

TEST_CASE("allowances and air that contradict themselves") {
    tests::check_refusals({
        {"flow_temperature_c: 50",
         "flow_temperature_c: 50\n  heat_up_w_per_m2: 11\n  "
         "intermittent_margin_percent: 15",
         "11:32: error: conditions.intermittent_margin_percent = 15: would allow for warming up twice, beside "
         "the heat-up allowance\n"
         "    hint: keep one of the two\n"},
        {"flow_temperature_c: 50",
         "flow_temperature_c: 50\n  heat_up: {fall_k: 2, hours: 2}\n  "
         "heat_up_w_per_m2: 11",
         "11:21: error: conditions.heat_up_w_per_m2 = 11: says the same as `heat_up`\n"
         "    hint: keep one of the two\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  heat_up: {fall_k: 4, hours: 2}",
         "10:21: error: conditions.heat_up.fall_k = 4: must lie between 1 and 3\n"
         "    hint: check the digits and where the decimal point is\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  height_above_station_m: -20",
         "10:27: error: conditions.height_above_station_m = -20: must lie between 0 and 1000 m\n"
         "    hint: a house below the station keeps the station's temperature\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  lapse_k_per_100m: 0.6",
         "8:3: error: conditions.height_above_station_m: is missing: what the lapse counts on is not given\n"
         "    hint: add `height_above_station_m` with a number from 0 to 1000 m: How much higher the house lies than "
         "the station that `outdoor_temperature_c` holds for: it is then colder at the house\n"},
        {"heat_loss_w: 1180",
         "heat_loss_w: 1180\n    air_changes_per_hour: 1\n    "
         "mechanical_ventilation: {supply_per_hour: 0.5, recovery_percent: 70, infiltration_per_hour: "
         "0.1}",
         "17:27: error: rooms[0].air_changes_per_hour = 1: stands beside `mechanical_ventilation`, which gives "
         "it (room living)\n"
         "    hint: keep one of the two\n"},
    });
}

TEST_CASE("air by the standard and by the tables that it replaced") {
    tests::check_refusals({
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  leakage_divisor: 20\n  leakage_at_50_pa_per_hour: 8",
         "10:20: error: conditions.leakage_divisor = 20: is read only with a table in `air_changes_by` that EN "
         "12831-1:2017 replaced\n"
         "    hint: leave it out: the standard converts the test by volume and envelope\n"},
        {"flow_temperature_c: 50",
         "flow_temperature_c: 50\n  air_permeability_at_50_pa_m3_per_h_m2: 7\n  leakage_at_50_pa_per_hour: 8",
         "11:30: error: conditions.leakage_at_50_pa_per_hour = 8: says the same as "
         "`air_permeability_at_50_pa_m3_per_h_m2`\n"
         "    hint: keep the one that the test's certificate states\n"},
        {"flow_temperature_c: 50",
         "flow_temperature_c: 50\n  air_changes_by: bs_5449_1990\n  air_permeability_at_50_pa_m3_per_h_m2: 7",
         "11:42: error: conditions.air_permeability_at_50_pa_m3_per_h_m2 = 7: is read only with `air_changes_by: "
         "en_12831_2017`\n"
         "    hint: leave it out, or leave out `air_changes_by`\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  guide_category: b",
         "10:19: error: conditions.guide_category = b: is read only with `air_changes_by: guide_categories`\n"
         "    hint: leave it out, or state that `air_changes_by`\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  air_permeability_at_50_pa_m3_per_h_m2: 51",
         "10:42: error: conditions.air_permeability_at_50_pa_m3_per_h_m2 = 51: must lie between 0 and 50 m³/(h·m²)\n"
         "    hint: check the digits, and that it is in m³/(h·m²)\n"},
        {"heat_loss_w: 1180", "heat_loss_w: 1180\n    flue_air_m3_per_h: 20",
         "17:24: error: rooms[0].flue_air_m3_per_h = 20: is read only with a `flue` (room living)\n"
         "    hint: leave it out, or state the `flue`\n"},
        {"heat_loss_w: 1180", "heat_loss_w: 1180\n    air_changes_per_hour: 1\n    minimum_air_changes_per_hour: 0.5",
         "18:35: error: rooms[0].minimum_air_changes_per_hour = 0.5: counts only where the standard gives the room's "
         "air changes (room living)\n"
         "    hint: leave it out, or leave out `air_changes_per_hour` and `air_changes_by`\n"},
        {"flow_temperature_c: 50\nrooms:\n  - id: living\n    name: Living room\n",
         "flow_temperature_c: 50\n  air_changes_by: bs_5449_1990\nrooms:\n  - id: living\n    name: Living room\n"
         "    flue: open_flue\n    mechanical_ventilation: {supply_per_hour: 0.5, recovery_percent: 70}\n",
         "14:11: error: rooms[0].flue = open_flue: is read only with `air_changes_by: en_12831_2017` (room living)\n"
         "    hint: the replaced tables count it in the room's air changes: state those, or leave it out\n"
         "15:29: error: rooms[0].mechanical_ventilation: says nothing of leaks (room living)\n"
         "    hint: add `infiltration_per_hour` here or `leakage_at_50_pa_per_hour` under `conditions`\n"},
        {"heat_loss_w: 1180", "heat_loss_w: 1180\n    temperature_c: 19",
         "17:20: warning: rooms[0].temperature_c = 19: lies under the 21 °C of a room of this use (room living)\n"
         "    hint: keep it where the household has agreed to it, and say so in its source\n"},
        // A test that counts for nothing is asked about.
        {"flow_temperature_c: 50\nrooms:\n  - id: living\n    name: Living room\n",
         "flow_temperature_c: 50\n  leakage_at_50_pa_per_hour: 8\nrooms:\n  - id: living\n    name: Living room\n"
         "    air_changes_per_hour: 1\n",
         "10:30: warning: conditions.leakage_at_50_pa_per_hour = 8: counts for nothing: every heated room states its "
         "own air changes\n"
         "    hint: leave out `air_changes_per_hour` where the test is to count\n"},
    });
}

TEST_CASE("ratings that say nothing, or two things") {
    check_ratings({
        {"", "kind: panel_22",
         "24:5: error: emitters[0]: what it gives is missing (emitter r1)\n"
         "    hint: add `output_at_50k_w`, `rated_at`, `fan`, `output_of_section_w`, `output_per_metre_w` or "
         "`floor`\n"},
        {"",
         "kind: panel_22\n    output_at_50k_w: 1950\n    rated_at: {flow_c: 55, return_c: 45, "
         "room_c: 20, output_w: 900}",
         "29:15: error: emitters[0].rated_at: stands beside `output_at_50k_w`: each says what it gives (emitter "
         "r1)\n"
         "    hint: keep one of them\n"},
        {"", "kind: panel_22\n    rated_at: {flow_c: 45, return_c: 55, room_c: 20, output_w: 900}",
         "28:38: error: emitters[0].rated_at.return_c = 55: must not lie above the flow temperature (emitter "
         "r1)\n"
         "    hint: check which figure is which\n"},
        {"", "kind: panel_22\n    output_at_50k_w: 1950\n    derating: [shelv, curtain, curtain]",
         "29:15: error: emitters[0].derating: `shelv` is not the name of a circumstance (emitter r1)\n"
         "    hint: did you mean `shelf`?\n"
         "29:15: error: emitters[0].derating: `curtain` stands twice (emitter r1)\n"
         "    hint: name each circumstance once\n"},
        {"", "kind: column\n    sections: 12",
         "24:5: error: emitters[0].output_of_section_w: is missing: what one section gives is not known (emitter "
         "r1)\n"
         "    hint: add `output_of_section_w` with a number from 5 to 1000 W: Output of one section at 50 K, with "
         "`sections`\n"},
        {"", "kind: convector\n    output_per_metre_w: 180",
         "24:5: error: emitters[0].length_mm: is missing: how many metres there are is not known (emitter r1)\n"
         "    hint: add `length_mm` with a number from 100 to 20000 mm: For a cross-check of the output: the pack "
         "flags one far from typical for the size\n"},
        {"",
         "kind: fan_convector\n    fan: {speeds: [{speed: 1, output_w: 900}, {speed: 3, output_w: "
         "1700}], speed: 4}",
         "28:83: error: emitters[0].fan.speed = 4: must lie within the stated ones, 1 to 3 (emitter r1)\n"
         "    hint: no output is known outside them\n"},
        {"",
         "kind: fan_convector\n    fan: {speeds: [{speed: 3, output_w: 900}, {speed: 1, output_w: "
         "1700}], speed: 2, flow_c: 45}",
         "28:10: error: emitters[0].fan.return_c: is missing: the three temperatures of a rating go together "
         "(emitter r1)\n"
         "    hint: add `return_c` with a number from 20 to 85 °C: Water out\n"
         "28:10: error: emitters[0].fan.room_c: is missing: the three temperatures of a rating go together "
         "(emitter r1)\n"
         "    hint: add `room_c` with a number from 5 to 30 °C: Air\n"
         "28:55: error: emitters[0].fan.speeds[1].speed = 1: must rise from line to line (emitter r1)\n"
         "    hint: list the speeds from the lowest to the highest\n"},
    });
}

TEST_CASE("heated floors outside the standard") {
    const std::string start = "kind: underfloor\n    loop: {pipe: multilayer_16}\n    floor: {area_m2: 18, ";
    check_ratings({
        {"", start + "pitch_mm: 400, covering: stone, screed_mm: 45}",
         "29:36: error: emitters[0].floor.pitch_mm = 400: must lie between 50 and 375 mm (emitter r1)\n"
         "    hint: check the digits, and that it is in mm\n"},
        {"", start + "pitch_mm: 150, covering: stones, screed_mm: 45}",
         "29:51: error: emitters[0].floor.covering = stones: must be `none`, `ceramic_tile`, `stone`, `vinyl`, "
         "`laminate`, `engineered_wood`, `solid_wood`, `carpet` or `carpet_and_underlay` (emitter r1)\n"
         "    hint: did you mean `stone`?\n"},
        {"", start + "pitch_mm: 150, covering_m2k_per_w: 0.2, screed_mm: 45}",
         "29:61: error: emitters[0].floor.covering_m2k_per_w = 0.2: must lie between 0 and 0.15 m²·K/W (emitter "
         "r1)\n"
         "    hint: the standard's tables end at 0.15: a thicker cover is no heated floor\n"},
        {"", start + "pitch_mm: 150, covering: stone, screed_mm: 45, below_m2k_per_w: 1.4}",
         "29:12: error: emitters[0].floor.below_c: is missing: heat goes down to something (emitter r1)\n"
         "    hint: the room's temperature where a heated room lies below\n"},
        {"", "kind: underfloor\n    floor: {area_m2: 18, pitch_mm: 150, covering: stone, screed_mm: 45}",
         "28:12: error: emitters[0].floor.pipe_outside_mm: is missing: no `loop` says what pipe it is (emitter "
         "r1)\n"
         "    hint: add `pipe_outside_mm` with a number from 8 to 30 mm: Outside diameter of the pipe\n"},
        {"",
         "kind: panel_22\n    floor: {area_m2: 18, pitch_mm: 150, covering: stone, screed_mm: 45, "
         "pipe_outside_mm: 16}",
         "28:12: error: emitters[0].floor: is read only with `kind: underfloor` (emitter r1)\n"
         "    hint: leave it out, or state that `kind`\n"},
    });
}
