// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

TEST_CASE("pipework joins the heat source to every emitter") {
    tests::check_refusals({
        {"at: J2", "at: J9",
         "26:9: error: emitters[0].at = J9: is not a junction: no section starts or ends there "
         "(emitter r1)\n"
         "    hint: the junctions are `SOURCE`, `J1` and `J2`\n"},
        {"at: SOURCE", "at: SORCE",
         "35:7: error: heat_source.at = SORCE: is not a junction: no section starts or ends there\n"
         "    hint: did you mean `SOURCE`?\n"},
        {"to: J2", "to: J1",
         "26:9: error: emitters[0].at = J2: is not a junction: no section starts or ends there "
         "(emitter r1)\n"
         "    hint: the junctions are `SOURCE` and `J1`\n"
         "32:30: error: pipework.sections[1].to = J1: is the junction that the section starts from "
         "(section S2)\n"
         "    hint: name the junction at its other end\n"},
        {"from: J1, to: J2", "from: j1, to: J2",
         "32:7: error: pipework.sections[1]: section `S2` is not joined to the heat source at "
         "`SOURCE` (section S2)\n"
         "    hint: `j1`: did you mean `J1`?\n"},
        {"length_m: 3}", "length_m: 3}\n    - {id: S3, from: J2, to: SOURCE, pipe: copper_15, length_m: 3}",
         ""},  // a ring is as good as any other layout
        {"length_m: 3}",
         "length_m: 3}\n    - {id: S3, from: A, to: B, pipe: copper_15, length_m: 3}\n    - {id: S4, "
         "from: C, to: B, pipe: copper_15, length_m: 3}\n    - {id: S5, from: D, to: E, pipe: "
         "copper_15, length_m: 3}",
         "33:7: error: pipework.sections[2]: sections `S3` and `S4` are not joined to the heat source "
         "at `SOURCE` (section S3)\n"
         "    hint: look for a section that is not listed, or a junction that has two names\n"
         "35:7: error: pipework.sections[4]: section `S5` is not joined to the heat source at "
         "`SOURCE` (section S5)\n"
         "    hint: look for a section that is not listed, or a junction that has two names\n"},
        {"length_m: 3}", "length_m: 3}\n    - {id: S3, from: J1, to: J3, pipe: copper_15, length_m: 3}",
         "33:30: warning: pipework.sections[2].to = J3: is a dead end: no emitter hangs there, so no "
         "water flows to it (section S3)\n"
         "    hint: leave the section out, or check the names of its junctions\n"},
        {"id: S2", "id: S1",
         "32:12: error: pipework.sections[1].id = S1: is used twice, first at line 31, column 12 "
         "(section S1)\n"
         "    hint: give each its own id\n"},
        {"length_m: 3}", "length_m: 3, bore_mm: 13, insert_bore_mm: 14}",
         "32:93: error: pipework.sections[1].insert_bore_mm = 14: must not be above `bore_mm`, 13 mm "
         "(section S2)\n"
         "    hint: the insert narrows the pipe: check which figure is which\n"},
        {"output_at_50k_w: 1950",
         "output_at_50k_w: 1950\n    fittings: [{kind: other, count: 1}, {kind: elbow, count: 1, "
         "zeta: 2}, {kind: elbw, count: -1}]",
         "29:16: error: emitters[0].fittings[0].zeta: is missing: a fitting of another kind needs its "
         "loss factor on v²/2 (emitter r1)\n"
         "    hint: take it from its maker's sheet\n"
         "29:71: error: emitters[0].fittings[1].zeta = 2: is read only with `kind: other` (emitter "
         "r1)\n"
         "    hint: the factor of `elbow` comes from the reference table\n"
         "29:82: error: emitters[0].fittings[2].kind = elbw: is not the name of a fitting (emitter "
         "r1)\n"
         "    hint: did you mean `elbow`?\n"
         "29:95: error: emitters[0].fittings[2].count = -1: must lie between 0 and 1000 (emitter r1)\n"
         "    hint: check the digits and where the decimal point is\n"},
    });
}

TEST_CASE("heat source, circulator and hot water") {
    tests::check_refusals({
        {"at: SOURCE\n", "at: SOURCE\n  pressure_drop_kpa: 8\n",
         "34:3: error: heat_source.pressure_drop_flow_l_per_min: is missing: a pressure drop belongs "
         "to a flow\n"
         "    hint: add `pressure_drop_flow_l_per_min` with a number from 0.1 to 300 L/min: Needed with "
         "`pressure_drop_kpa`\n"},
        {"at: SOURCE\n", "at: SOURCE\n  pressure_drop_flow_l_per_s: 0.2\n",
         "34:3: error: heat_source.pressure_drop_kpa: is missing: its flow is given\n"
         "    hint: add `pressure_drop_kpa` with a number from 0 to 200 kPa: Inside the heat source, at the flow "
         "below\n"},
        {"at: SOURCE\n", "at: SOURCE\n  minimum_flow_l_per_s: 0.2\n  minimum_flow_l_per_min: 12\n",
         "36:25: error: heat_source.minimum_flow_l_per_s = 0.2: says the same as "
         "`minimum_flow_l_per_min`\n"
         "    hint: keep one of the two\n"},
        {"at: SOURCE\n", "at: SOURCE\n  capacity_kw: 6000\n",
         "36:16: error: heat_source.capacity_kw = 6000: must lie between 0.5 and 100 kW\n"
         "    hint: if that is in watts, write 6\n"},
        {"firm: {name: Fernhollow Heating}",
         "firm: {name: Fernhollow Heating}\ncirculator: {name: c, curve: [{flow_l_per_min: 0, "
         "head_kpa: 60}, {flow_l_per_min: 0, head_kpa: 60}]}",
         "4:83: error: circulator.curve[1].flow_l_per_min = 0: must be above the flow of the point "
         "before\n"
         "    hint: list the points from no flow to most flow\n"
         "4:96: error: circulator.curve[1].head_kpa = 60: must be below the head of the point before\n"
         "    hint: list the points from no flow to most flow; the head falls on the way\n"},
        {"firm: {name: Fernhollow Heating}",
         "firm: {name: Fernhollow Heating}\ncirculator: {name: c, curve: [{flow_l_per_min: 0, "
         "head_kpa: 60}]}",
         "4:30: error: circulator.curve: must have between 2 and 100 items, and has 1\n"
         "    hint: add what is missing, each item after a `- `\n"},
        {"firm: {name: Fernhollow Heating}",
         "firm: {name: Fernhollow Heating}\ncirculator: {name: c, curve: [{head_kpa: 60}, "
         "{flow_l_per_s: 0.1, head_kpa: 40}]}",
         "4:31: error: circulator.curve[0].flow_l_per_min: is missing: a head belongs to a flow\n"
         "    hint: add `flow_l_per_min` with a number from 0 to 300 L/min: One of the two flows is needed\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: Fernhollow Heating}\nhot_water: {unvented: true}",
         "4:23: error: hot_water.unvented = true: needs `store: true`\n"
         "    hint: an unvented cylinder is a hot-water store\n"},
    });
}
