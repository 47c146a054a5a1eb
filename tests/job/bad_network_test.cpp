// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

TEST_CASE("pipework of any layout needs a way there and a way back") {
    tests::check_refusals({
        {"length_m: 3}", "length_m: 3, closed: true}",
         "26:9: error: emitters[0].at = J2: can be reached only through a closed section (emitter r1)\n"
         "    hint: closed: `S2`\n"},
        {"pipe: copper_15, length_m: 3}", "pipe: copper_15, length_m: 3, carries: flow}",
         "26:9: error: emitters[0].at = J2: has no return route: no return pipe leads from here back to the heat "
         "source (emitter r1)\n"
         "    hint: look at `carries` of the sections on the way\n"},
        {"pipe: copper_15, length_m: 3}", "pipe: copper_15, length_m: 3, carries: return}",
         "26:9: error: emitters[0].at = J2: has no flow route: no flow pipe leads here from the heat source (emitter "
         "r1)\n"
         "    hint: look at `carries` of the sections on the way\n"},
        {"pipe: copper_15, length_m: 3}",
         "pipe: copper_15, length_m: 3, carries: flow}\n    - {id: S3, from: J1, to: J2, pipe: copper_15, length_m: 3, "
         "carries: return}",
         ""},
        {"length_m: 4.5}\n    - {id: S2, from: J1, to: J2, pipe: copper_15, length_m: 3}",
         "length_m: 4.5, carries: loop}\n    - {id: S2, from: J1, to: J2, pipe: copper_15, length_m: 3, carries: "
         "loop}\n    - {id: S3, from: J2, to: SOURCE, pipe: copper_15, length_m: 3, carries: loop}",
         "26:9: error: emitters[0].at = J2: is on a one-pipe loop, and the emitter's return is not named (emitter r1)\n"
         "    hint: on a loop it joins again at a second tee: give `return_at`\n"},
        {"length_m: 3}", "length_m: 3, carries: twice}",
         "32:73: error: pipework.sections[1].carries = twice: must be `both`, `flow`, `return` or `loop` (section "
         "S2)\n"
         "    hint: write one of them as it is here\n"},
        {"length_m: 3}", "length_m: 3, heat_loss_w_per_mk: 0.3}",
         "32:7: error: pipework.sections[1].surroundings_c: is missing: a pipe loses heat to something (section S2)\n"
         "    hint: add `surroundings_c` with a number from -10 to 40 °C: Needed with `heat_loss_w_per_mk` and only "
         "read with it\n"},
        {"at: J2", "at: J2\n    return_at: J8",
         "27:16: error: emitters[0].return_at = J8: is not a junction: no section starts or ends there (emitter r1)\n"
         "    hint: the junctions are `SOURCE`, `J1` and `J2`\n"},
        {"at: J2", "at: J2\n    loop: {pipe: copper_15}",
         "27:11: error: emitters[0].loop.length_m: is missing: without `floor` nothing tells how long it is (emitter "
         "r1)\n"
         "    hint: add `length_m` with a number from 1 to 300 m: Of the loop with its leads, there and back\n"},
        {"at: SOURCE", "at: SOURCE\n  could_join_at: [J1, SOURCE, J7]",
         "36:18: error: heat_source.could_join_at: names `SOURCE`, where it joins already\n"
         "    hint: name other junctions, or leave the key out\n"
         "36:18: error: heat_source.could_join_at: `J7` is not a junction: no section starts or ends there\n"
         "    hint: the junctions are `SOURCE`, `J1` and `J2`\n"},
    });
}

TEST_CASE("what moves and separates the water is held to what it can be") {
    tests::check_refusals({
        {"at: SOURCE",
         "at: SOURCE\n  performance: {points: [{outdoor_c: 2, flow_c: 35, ratio: 3}, {outdoor_c: 7, flow_c: 45, ratio: "
         "3}]}",
         "36:25: error: heat_source.performance.points: have a hole: none at 2 °C outdoors and 45 °C flow\n"
         "    hint: give every outdoor temperature with every flow temperature\n"},
        {"at: SOURCE",
         "at: SOURCE\n  performance: {points: [{outdoor_c: 2, flow_c: 35, ratio: 3}, {outdoor_c: 2, flow_c: 45, ratio: "
         "3.2}]}",
         "36:98: error: heat_source.performance.points[1].ratio = 3.2: rises with the flow temperature at one outdoor "
         "temperature\n"
         "    hint: a heat pump makes heat less easily at a higher flow temperature\n"},
        {"at: SOURCE",
         "at: SOURCE\n  performance: {points: [{outdoor_c: 2, flow_c: 35, ratio: 3}, {outdoor_c: 2, flow_c: 35, ratio: "
         "3}]}",
         "36:87: error: heat_source.performance.points[1].flow_c = 35: stands twice at this outdoor temperature\n"
         "    hint: keep one of the two points\n"},
        {"at: SOURCE\n", "at: SOURCE\ncirculator: {name: p, mode: constant_pressure}\n",
         "36:13: error: circulator.set_head_kpa: is missing: a controlled circulator holds a head\n"
         "    hint: add `set_head_kpa` with a number from 0.5 to 200 kPa: Needed with a controlled mode: the head that "
         "it holds, as far as its curve lets it\n"},
        {"at: SOURCE\n", "at: SOURCE\ncirculator: {name: p, mode: proportional_pressure, set_head_kpa: 20}\n",
         "36:13: error: circulator.set_flow_l_per_min: is missing: with proportional pressure the head is reached at a "
         "flow\n"
         "    hint: add `set_flow_l_per_min` with a number from 0.1 to 300 L/min: Needed with proportional pressure: "
         "the flow at which the set head is reached; at no flow it is half of it\n"},
        {"at: SOURCE\n", "at: SOURCE\ncirculator: {name: p, set_head_kpa: 20, set_flow_l_per_min: 4}\n",
         "36:37: error: circulator.set_head_kpa = 20: is read only with a controlled `mode`\n"
         "    hint: leave it out, or state the `mode` that the pump is set to\n"
         "36:61: error: circulator.set_flow_l_per_min = 4: is read only with `mode: proportional_pressure`\n"
         "    hint: leave it out, or state that `mode`\n"},
        {"at: SOURCE\n", "at: SOURCE\ncirculator: {name: p, quadratic: {shutoff_kpa: 40}}\n",
         "36:34: error: circulator.quadratic: must fall with the flow\n"
         "    hint: give `square_kpa_min2_per_l2`\n"},
        {"at: SOURCE\n",
         "at: SOURCE\ncirculator: {name: p, quadratic: {shutoff_kpa: 40, square_kpa_min2_per_l2: -0.1}}\n",
         "36:76: error: circulator.quadratic.square_kpa_min2_per_l2 = -0.1: must lie between 0 and 100 kPa·min²/L²\n"
         "    hint: below 0 the head would rise with the flow\n"},
        {"at: SOURCE\n",
         "at: SOURCE\nfurther_circulators: [{name: p, in: S9, towards: J1}, {name: q, in: S1, towards: J2, pipe: flow, "
         "mode: constant_pressure, set_head_kpa: 5}]\n",
         "36:23: error: further_circulators[0].curve: is missing: what this circulator adds must be known\n"
         "    hint: add `curve` with a list, each item after a `- `: Points from no flow to most flow: each flow above "
         "and each head below the one before\n"
         "36:37: error: further_circulators[0].in = S9: is not the id of a section\n"
         "    hint: did you mean `S1` or `S2`?\n"
         "36:82: error: further_circulators[1].towards = J2: is not an end of section `S1`\n"
         "    hint: write `SOURCE` or `J1`\n"},
        {"at: SOURCE\n",
         "at: SOURCE\nfurther_circulators: [{name: p, in: S1, towards: J1, pipe: flow, mode: constant_pressure, "
         "set_head_kpa: 5}, {name: q, in: S1, towards: SOURCE, pipe: flow, mode: constant_pressure, set_head_kpa: "
         "5}]\n",
         "36:136: error: further_circulators[1].towards = SOURCE: pushes against another circulator in the same pipe\n"
         "    hint: turn one of them round\n"},
        {"at: SOURCE\n", "at: SOURCE\nmixers: [{id: M, from: J1, to: J1, flow_temperature_c: 55}]\n",
         "36:32: error: mixers[0].to = J1: is the junction that the mixing set draws from (mixing set M)\n"
         "    hint: name the junction that it feeds\n"
         "36:56: error: mixers[0].flow_temperature_c = 55: must be below the flow temperature that it mixes down from "
         "(mixing set M)\n"
         "    hint: lower it, or leave the mixing set out\n"},
        {"at: SOURCE\n", "at: SOURCE\nseparation: {kind: plate}\n",
         "36:13: error: separation.plate_ua_w_per_k: is missing: a plate is described by its UA\n"
         "    hint: heat over the log mean difference, by its maker\n"},
        {"at: SOURCE\n", "at: SOURCE\nseparation: {kind: header, plate_ua_w_per_k: 900, pressure_drop_kpa: 3}\n",
         "36:13: error: separation.pressure_drop_flow_l_per_min: is missing: a pressure drop belongs to a flow\n"
         "    hint: add `pressure_drop_flow_l_per_min` with a number from 0.1 to 300 L/min: Needed with "
         "`pressure_drop_kpa`\n"
         "36:46: error: separation.plate_ua_w_per_k = 900: is read only with `kind: plate`\n"
         "    hint: leave it out\n"
         "36:70: error: separation.pressure_drop_kpa = 3: is read only with `kind: plate` or `volumiser`\n"
         "    hint: a header has next to none\n"},
        {"at: SOURCE\n", "at: SOURCE\nseparation: {kind: volumiser, source_flow_l_per_min: 9}\n",
         "36:13: error: separation.volume_l: is missing: a buffer or volumiser is there for its content\n"
         "    hint: add `volume_l` with a number from 0.5 to 5000 L: Needed with a buffer or volumiser: its content\n"
         "36:54: error: separation.source_flow_l_per_min = 9: is not read with `kind: volumiser`\n"
         "    hint: a volumiser stands in series: both sides are one\n"},
        {"flow_temperature_c: 50", "flow_temperature_c: 50\n  mild_day_temperature_c: -4",
         "10:27: error: conditions.mild_day_temperature_c = -4: must be above the design outdoor temperature, -3.2 "
         "°C\n"
         "    hint: choose an ordinary winter day, or leave it out\n"},
    });
}
