// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

TEST_CASE("keys that are unknown, doubled, missing or in another unit are named") {
    tests::check_refusals({
        {"floor_area_m2: 18.4", "floor_aera_m2: 18.4",
         "14:5: error: rooms[0].floor_aera_m2: is not a key of the job file here (room living)\n"
         "    hint: did you mean `floor_area_m2`?\n"},
        {"floor_area_m2: 18.4", "floor_area_ft2: 200",
         "14:5: error: rooms[0].floor_area_ft2: is not a key of the job file here (room living)\n"
         "    hint: write `floor_area_m2`, in m²\n"},
        {"floor_area_m2: 18.4", "floor_area: 18.4",
         "14:5: error: rooms[0].floor_area: is not a key of the job file here (room living)\n"
         "    hint: write `floor_area_m2`, in m²\n"},
        {"    floor_area_m2: 18.4\n", "",
         "11:5: error: rooms[0].floor_area_m2: is missing (room living)\n"
         "    hint: add `floor_area_m2` with a number from 0.5 to 1000 m²: Between the inside faces of the walls. "
         "Below "
         "1 m² or above 150 m² it gives a warning\n"},
        {"floor_area_m2: 18.4", "floor_area_m2: 18.4\n    floor_area_m2: 19",
         "15:5: error: rooms[0].floor_area_m2: is written twice, first at line 14, column 5 (room "
         "living)\n"
         "    hint: remove one of the two\n"},
        {"firm: {name: Fernhollow Heating}", "flow_temperature_c: 4",
         "3:1: error: flow_temperature_c: is not a key of the job file here\n"
         "    hint: `flow_temperature_c` is a key of conditions\n"},
        {"length_m: 3}", "length_mm: 3000}",
         "32:51: error: pipework.sections[1].length_mm: is not a key of the job file here (section "
         "S2)\n"
         "    hint: write `length_m`, in m\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: Fernhollow Heating}\ncolour: red",
         "4:1: error: colour: is not a key of the job file here\n"
         "    hint: docs/job-file.md lists the keys of the file\n"},
        {"firm: {name: Fernhollow Heating}", "firm: Fernhollow Heating",
         "3:7: error: firm = Fernhollow Heating: must be a mapping of keys, and a single value stands "
         "here\n"
         "    hint: its keys are `name`, `address`, `telephone`, `email` and `registration`\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: ~}",
         "3:8: error: firm.name: has no value\n"
         "    hint: write its value\n"},
        {"rooms:\n", "rooms: []\nroomz:\n",
         "10:8: error: rooms: must have between 1 and 500 items, and has 0\n"
         "    hint: add what is missing, each item after a `- `\n"
         "11:1: error: roomz: is not a key of the job file here\n"
         "    hint: did you mean `rooms`?\n"},
        {"designer: {name: Ada Bramwell}", "designer: {name: Ada Bramwell, qualification: some}",
         "4:32: error: designer.qualification: is not a key of the job file here\n"
         "    hint: the keys here are `name` and `role`\n"},
    });
}

TEST_CASE("texts, ids, names, dates and flags") {
    tests::check_refusals({
        {"firm: {name: Fernhollow Heating}", "firm: {name: \"\"}",
         "3:14: error: firm.name = \"\": must not be empty\n"
         "    hint: write its text\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: \"a\\u202eb\"}",
         "3:14: error: firm.name = \"a<U+202E>b\": holds the invisible character U+202E\n"
         "    hint: remove it\n"},
        {"firm: {name: Fernhollow Heating}", "firm:\n  name: |\n    a\n    b",
         "4:9: error: firm.name = \"a\\nb\\n\": must be one line\n"
         "    hint: fold long text with `>-`\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: " + std::string(121, 'x') + "}",
         "3:14: error: firm.name = xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx…: must have at most 120 "
         "characters, and has 121\n"
         "    hint: shorten it\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: [a]}",
         "3:14: error: firm.name: must be text\n"
         "    hint: write one line of words, in quotes where it holds a colon or brackets\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: f, address: [a, ~, [b]]}",
         "3:30: error: firm.address[1]: has no value\n"
         "    hint: write its text or remove it\n"
         "3:33: error: firm.address[2]: must be text\n"
         "    hint: write one line of words, in quotes where it holds a colon or brackets\n"},
        {"address: [19 Quarry Rise]", "address: []",
         "6:21: error: property.address: must have between 1 and 10 lines, and has 0\n"
         "    hint: write its text or leave the key out\n"},
        {"reference: MILL-014", "reference: ../etc",
         "2:18: error: job.reference = ../etc: must have 1 to 60 letters a to z, digits, `.`, `_` and "
         "`-`, and start with a letter or a digit\n"
         "    hint: choose a short one, such as `R-1`\n"},
        {"reference: MILL-014", "reference: MILL 014",
         "2:18: error: job.reference = MILL 014: must have 1 to 60 letters a to z, digits, `.`, `_` "
         "and `-`, and start with a letter or a digit\n"
         "    hint: write `MILL-014`\n"},
        {"reference: MILL-014", "reference: .hidden",
         "2:18: error: job.reference = .hidden: must have 1 to 60 letters a to z, digits, `.`, `_` "
         "and `-`, and start with a letter or a digit\n"
         "    hint: choose a short one, such as `R-1`\n"},
        {"2026-10-14", "2026-02-30",
         "2:54: error: job.design_date = 2026-02-30: is not a day of the calendar\n"
         "    hint: check the month and the day: year-month-day\n"},
        {"2026-10-14", "14/10/2026",
         "2:54: error: job.design_date = 14/10/2026: must be a date written year-month-day\n"
         "    hint: write it like 2026-10-14\n"},
        {"2026-10-14", "1926-10-14",
         "2:54: error: job.design_date = 1926-10-14: must lie between 2000-01-01 and 2100-12-31\n"
         "    hint: check the year\n"},
        {"heated: false", "heated: no",
         "20:13: error: rooms[1].heated = no: must be true or false (room hall)\n"
         "    hint: write false\n"},
        {"heated: false", "heated: \"true\"",
         "17:5: error: rooms[1]: there is no way to find its heat loss (room hall)\n"
         "    hint: add `fabric`, `elements`, `heat_loss_rate_w_per_m2` or `heat_loss_w`, or write "
         "`heated: false`\n"
         "17:5: warning: rooms[1]: the room is heated and has no emitter (room hall)\n"
         "    hint: write `heated: false` if none is meant to heat it\n"
         "20:13: error: rooms[1].heated = \"true\": must be true or false (room hall)\n"
         "    hint: write true, without quotes\n"},
        {"use: living", "use: lounge",
         "13:10: error: rooms[0].use = lounge: must be `living`, `dining`, `kitchen`, `bedroom`, "
         "`bedroom_with_ensuite`, `bathroom`, `toilet`, `hall`, `landing`, `study`, `utility` or "
         "`store` (room living)\n"
         "    hint: write one of them as it is here\n"},
        {"copper_28", "cooper_28",
         "31:44: error: pipework.sections[0].pipe = cooper_28: is not the name of a pipe (section S1)\n"
         "    hint: did you mean `copper_28`?\n"},
        {"kind: panel_22", "kind: Panel 22",
         "27:11: error: emitters[0].kind = Panel 22: must be `panel_10`, `panel_11`, `panel_20`, "
         "`panel_21`, `panel_22`, `panel_33`, `column`, `towel_rail`, `convector`, `skirting`, `fan_radiator`, "
         "`fan_convector` or `underfloor` (emitter r1)\n"
         "    hint: did you mean `panel_22`?\n"},
        {"loopfolio: 2", "loopfolio: 2\nplain_values: guessed",
         "2:15: error: plain_values = guessed: must be `measured`, `document` or `assumed`\n"
         "    hint: write one of them as it is here\n"},
    });
}
