// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "memory_folder.hpp"

#include "support/catch.hpp"
#include "texts/common.hpp"
#include "texts/household.hpp"

#include <algorithm>

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("a template that states nothing is the default one") {
    const auto read_back = read({{"firm/pack.yaml", bare_pack}});
    REQUIRE(read_back.made);
    const auto own = templates::default_template(small_vocabulary());
    CHECK(read_back.diagnostics.empty());
    CHECK(read_back.made->parts.size() == own.parts.size());
    CHECK(read_back.made->cautions.size() == own.cautions.size());
    CHECK(read_back.made->texts(texts::household::found_heading{}) == own.texts(texts::household::found_heading{}));
}

TEST_CASE("a text of a firm takes the place of the default's, with its figures where the firm wants them") {
    const auto t = read({{"firm/pack.yaml", bare_pack},
                         {"firm/wording/common.yaml",
                          "reference_text: \"rev. {revision} of {reference}\"\n"
                          "rooms: {0: not a room, 1: a room, 2: two rooms, other: \"rooms: {count}\"}\n"
                          "heat_source: \"{{heat}} source\"\n"}});
    REQUIRE(t.made);
    const auto& words = t.made->texts;
    CHECK(words(texts::common::reference_text{.reference = "X-1", .revision = "C"}) == "rev. C of X-1");
    CHECK(words(texts::common::rooms{.count = 0}) == "not a room");
    CHECK(words(texts::common::rooms{.count = 1}) == "a room");
    CHECK(words(texts::common::rooms{.count = 2}) == "two rooms");
    CHECK(words(texts::common::rooms{.count = 1200}) == "rooms: 1,200");
    CHECK(words(texts::common::heat_source{}) == "{heat} source");
    CHECK(words(texts::common::element_wall{}) == "wall");  // as it was
}

TEST_CASE("what is put in for a figure is never read for figures or forms") {
    const auto own = templates::default_template(small_vocabulary());
    CHECK(own.texts(texts::common::reference_text{.reference = "{revision}", .revision = "{reference}"}) ==
          "{revision}, revision {reference}");
}

TEST_CASE("templates extend one another") {
    const Files files{{"a/pack.yaml", bare_pack + "extends: ../b\nname: A\n"},
                      {"b/pack.yaml", bare_pack + "name: B\npaper: Letter\ncolours: {accent: \"#123456\"}\n"},
                      {"a/wording/common.yaml", "element_wall: WALL\n"},
                      {"b/wording/common.yaml", "element_wall: wall of b\nelement_roof: roof of b\n"}};
    const auto t = read(files, "a");
    REQUIRE(t.made);
    CHECK(t.made->name == "A");
    CHECK(t.made->paper == Paper::letter);
    CHECK(t.made->palette.accent.blue == Approx(0x56 / 255.0));
    CHECK(t.made->texts(texts::common::element_wall{}) == "WALL");
    CHECK(t.made->texts(texts::common::element_roof{}) == "roof of b");
}

TEST_CASE("names of things can be given other words") {
    const auto t = read({{"firm/pack.yaml", bare_pack}, {"firm/wording/names.yaml", "\"15 mm copper\": 15 mm Cu\n"}});
    REQUIRE(t.made);
    CHECK(t.made->name_for("15 mm copper") == "15 mm Cu");
    CHECK(t.made->name_for("22 mm copper") == "22 mm copper");
}

TEST_CASE("cautions are reworded and added, never lost, and the closing one stays last") {
    const auto t = read({{"firm/pack.yaml", bare_pack},
                         {"firm/cautions.yaml",
                          "cautions:\n"
                          "  - {id: gas, title: Gas first}\n"
                          "  - {id: dog, when: [always], title: Dog, household: A dog., installer: The dog.}\n"}});
    REQUIRE(t.made);
    const auto own = templates::default_template(small_vocabulary());
    const auto& cautions = t.made->cautions;
    REQUIRE(cautions.size() == own.cautions.size() + 1);
    const auto gas = std::ranges::find(cautions, "gas", &templates::CautionRule::id);
    const auto own_gas = std::ranges::find(own.cautions, "gas", &templates::CautionRule::id);
    REQUIRE(gas - cautions.begin() == own_gas - own.cautions.begin());
    CHECK(gas->title == "Gas first");
    CHECK(gas->household == own_gas->household);
    CHECK(cautions.back().id == own.cautions.back().id);
    CHECK(cautions[cautions.size() - 2].id == "dog");
}

TEST_CASE("each fault of a template is told with its place, all in one run") {
    CHECK(said_of({{"firm/pack.yaml",
                    "loopfolio_template: 2\n"
                    "papr: A4\n"
                    "colours: {ink: red, accent: \"#c0d0e0\"}\n"
                    "parts:\n"
                    "  - {part: houshold, blocks: [lead]}\n"
                    "  - part: installer\n"
                    "    blocks: [lead, wrok, lead]\n"},
                   {"firm/wording/common.yaml",
                    "rooms: {0: none}\n"
                    "reference_text: \"{refrence}\"\n"
                    "elment_wall: wall\n"
                    "element_roof: \"{}\"\n"
                    "element_door: {1: door, other: doors}\n"},
                   {"firm/cautions.yaml", "cautions:\n  - {id: new, when: [moonlight], basis: [a-book]}\n"}}) ==
          "firm/pack.yaml:1:21: error: loopfolio_template = 2: must be 1\n"
          "    hint: write 1\n"
          "firm/pack.yaml:2:1: error: papr: is not a key here\n"
          "    hint: did you mean `paper`?\n"
          "firm/pack.yaml:3:16: error: colours.ink = red: must be a colour as \"#rrggbb\"\n"
          "    hint: six hexadecimal digits of sRGB, in quotes\n"
          "firm/pack.yaml:3:29: error: colours.accent = #c0d0e0: has a contrast of 1.19 on glow (#d4e3e6); text needs "
          "4.5 (WCAG 2.2)\n"
          "    hint: make it darker, or the ground lighter\n"
          "firm/pack.yaml:5:12: error: parts[0].part = houshold: must be `summary`, `household`, `installer` or "
          "`assessor`\n"
          "    hint: did you mean `household`?\n"
          "firm/pack.yaml:7:20: error: parts[1].blocks[1] = wrok: is not the name of a block of this part\n"
          "    hint: did you mean `work`?\n"
          "firm/pack.yaml:7:26: error: parts[1].blocks[2] = lead: stands here already\n"
          "    hint: name each once\n"
          "firm/cautions.yaml:2:10: error: cautions[0].id = new: a new caution needs `when`, `title`, `household` and "
          "`installer`\n"
          "    hint: the id of a caution of the default template changes that one\n"
          "firm/cautions.yaml:2:22: error: cautions[0].when[0] = moonlight: is not the name of a condition\n"
          "    hint: the names are `always`, `appliance_unknown`, "
          "`asbestos_possible`, `electrical_work`, `ethylene_glycol`, `fabric_opened`, `flammable_refrigerant`, "
          "`gas_appliance_replaced`, `hot_cycle`, `hot_water_store`, `lpg_appliance_replaced`, `new_heat_source`, "
          "`no_hot_cycle`, `oil_appliance_replaced`, `old_lagging`, `propylene_glycol`, "
          "`solid_fuel_appliance_replaced`, `unvented_store` or `vented_store`\n"
          "firm/cautions.yaml:2:42: error: cautions[0].basis[0] = a-book: is not the name of a source\n"
          "    hint: docs/templates.md says which there are\n"
          "firm/wording/common.yaml:1:8: error: rooms: has no form `other`\n"
          "    hint: add the words for every other count\n"
          "firm/wording/common.yaml:2:17: error: reference_text = {refrence}: there is no such figure for this text\n"
          "    hint: did you mean `{reference}`?\n"
          "firm/wording/common.yaml:3:1: error: elment_wall: there is no such text\n"
          "    hint: did you mean `element_wall`?\n"
          "firm/wording/common.yaml:4:15: error: element_roof = {}: a figure is named as {name}, in lower case\n"
          "    hint: a brace that is meant as such is written twice\n"
          "firm/wording/common.yaml:5:1: error: element_door: this text has no count, so it has one form\n"
          "    hint: write one text\n");
}

TEST_CASE("slips that would lose something are told") {
    CHECK(said_of({{"firm/pack.yaml",
                    "loopfolio_template: 1\ncolours:\n  ink: #102030\n"
                    "parts: [{part: household, blocks: [lead]}, {part: summary, blocks: [lead]}]\n"
                    "blocks: {installer: [work], assessor: [basics]}\n"
                    "firm: {registration: A 12}\n"},
                   {"firm/cautions.yaml", "cautions:\n  - {id: gaz, title: Gas first}\n"},
                   {"firm/wording/housheold.yaml", "lead: words\n"},
                   {"firm/caution.yaml", "cautions: []\n"},
                   {"firm/wording/summary.yml", "lead: words\n"},
                   {"firm/notes.txt", "ours\n"}}) ==
          "firm/pack.yaml:3:3: error: colours.ink: has no value\n"
          "    hint: put it in quotes: a bare # begins a comment\n"
          "firm/pack.yaml:4:8: error: parts: `summary` must be the first part\n"
          "    hint: it says on one page what it comes to\n"
          "firm/pack.yaml:5:21: error: blocks.installer: is no part of this template\n"
          "    hint: name it in `parts`\n"
          "firm/pack.yaml:5:39: error: blocks.assessor: is no part of this template\n"
          "    hint: name it in `parts`\n"
          "firm/pack.yaml:5:40: error: blocks.assessor[0] = basics: is not the name of a block of this part\n"
          "    hint: did you mean `basis`?\n"
          "firm/pack.yaml:6:7: error: firm.name: is missing\n"
          "    hint: add `name` with its text\n"
          "firm/cautions.yaml:2:10: error: cautions[0].id = gaz: a new caution needs `when`, `title`, `household` and "
          "`installer`\n"
          "    hint: did you mean `gas`?\n"
          "firm/caution.yaml: error: is not a file of a template, and would not be read\n"
          "    hint: did you mean `cautions.yaml`?\n"
          "firm/wording/housheold.yaml: error: is not a file of a template, and would not be read\n"
          "    hint: did you mean `wording/household.yaml`?\n"
          "firm/wording/summary.yml: error: is not a file of a template, and would not be read\n"
          "    hint: did you mean `wording/summary.yaml`?\n");
}

TEST_CASE("other blocks for one part leave the others as they are") {
    const auto made =
        read({{"firm/pack.yaml", "loopfolio_template: 1\nblocks: {household: [lead, agreement]}\n"}}).made;
    REQUIRE(made);
    REQUIRE(made->parts.size() == 4);
    CHECK(made->parts[1].blocks == std::vector<std::string>{"lead", "agreement"});
    CHECK(made->parts[2].blocks.size() > 10);
}

TEST_CASE("a template that extends itself, or nothing that is there, is refused") {
    CHECK(said_of({{"a/pack.yaml", bare_pack + "extends: ../b\n"}, {"b/pack.yaml", bare_pack + "extends: ../a\n"}},
                  "a") ==
          "b/pack.yaml:2:10: error: extends = ../a: the template extends itself\n"
          "    hint: a chain of templates ends at `default`\n");
    CHECK(said_of({{"a/pack.yaml", bare_pack + "extends: .\n"}}, "a") ==
          "a/pack.yaml:2:10: error: extends = .: the template extends itself\n"
          "    hint: a chain of templates ends at `default`\n");
    CHECK(said_of({{"a/pack.yaml", bare_pack + "extends: .\npapr: A4\n"}}, "a/") ==
          "a/pack.yaml:2:10: error: extends = .: the template extends itself\n"
          "    hint: a chain of templates ends at `default`\n"
          "a/pack.yaml:3:1: error: papr: is not a key here\n"
          "    hint: did you mean `paper`?\n");
    CHECK(said_of({{"a/pack.yaml", bare_pack + "extends: [b]\n"}}, "a") ==
          "a/pack.yaml:2:10: error: extends: must be `default` or a folder\n"
          "    hint: a folder is seen from this one\n");
    CHECK(said_of({{"a/pack.yaml", bare_pack + "extends: gone\n"}}, "a") ==
          "a/pack.yaml:2:10: error: extends = gone: there is no template in this folder\n"
          "    hint: write `default`, or a folder seen from this one\n");
    CHECK(said_of({}, "a") ==
          "a/pack.yaml: error: there is no such file\n    hint: a template is a folder with a pack.yaml\n");
}

TEST_CASE("what is no YAML is told of each file") {
    CHECK(said_of({{"firm/pack.yaml", bare_pack + "parts: [\n"}, {"firm/wording/common.yaml", ""}}) ==
          "firm/pack.yaml:2:8: error: is not YAML: the { or [ that opens here is never closed\n"
          "    hint: check that every [ and { has its ] or }, and every quotation mark its partner\n"
          "firm/wording/common.yaml:1:1: error: the file is empty\n"
          "    hint: a wording file states texts as `key: words`\n");
}

TEST_CASE("a template is told of its slips in the words that a job is") {
    CHECK(said_of({{"firm/pack.yaml",
                    "loopfolio_template: 1\nname: A\nname: B\nlanguage:\nfonts: [bold]\nlogo: {height_mm: 50}\n"
                    "draft: \"one\\ntwo\"\nfirm: {nmae: Ours}\nmarks: none\nblocks: {installer: []}\n"},
                   {"firm/wording/common.yaml", "element_wall: wall\nelement_wall: WALL\n"},
                   {"firm/wording/names.yaml", "\"15 mm copper\": \"\"\n"}}) ==
          "firm/pack.yaml:3:1: error: name: is written twice, first at line 2, column 1\n"
          "    hint: remove one of the two\n"
          "firm/pack.yaml:4:1: error: language: has no value\n"
          "    hint: write its value or leave the key out\n"
          "firm/pack.yaml:5:8: error: fonts: must be a mapping of keys, and a list stands here\n"
          "    hint: its keys are `regular`, `bold` and `italic`\n"
          "firm/pack.yaml:6:7: error: logo.file: is missing\n"
          "    hint: it names a PNG or JPEG beside pack.yaml\n"
          "firm/pack.yaml:6:7: error: logo.alternative: is missing\n"
          "    hint: it says in words what the picture shows\n"
          "firm/pack.yaml:6:19: error: logo.height_mm = 50: must lie between 4 and 40 mm\n"
          "    hint: check the digits, and that it is in mm\n"
          "firm/pack.yaml:7:8: error: draft = \"one\\ntwo\": must be one line\n"
          "    hint: fold long text with `>-`\n"
          "firm/pack.yaml:8:8: error: firm.nmae: is not a key here\n"
          "    hint: did you mean `name`?\n"
          "firm/pack.yaml:9:8: error: marks = none: must be a list, and a single value stands here\n"
          "    hint: start each item with `- `\n"
          "firm/pack.yaml:10:21: error: blocks.installer: must have between 1 and 100 items, and has 0\n"
          "    hint: add what is missing, each item after a `- `\n"
          "firm/wording/common.yaml:2:1: error: element_wall: is written twice, first at line 1, column 1\n"
          "    hint: remove one of the two\n"
          "firm/wording/names.yaml:1:17: error: 15 mm copper = \"\": must not be empty\n"
          "    hint: write its text or leave the key out\n");
}
