// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

TEST_CASE("what is not YAML, or is YAML that a job file does not use, is refused at its place") {
    tests::check_refusals({
        {"firm: {name: Fernhollow Heating}", "firm: {name: Fernhollow Heating",
         "3:7: error: is not YAML: the { or [ that opens here is never closed\n"
         "    hint: check that every [ and { has its ] or }, and every quotation mark its partner\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: \"Fernhollow Heating}",
         "3:14: error: is not YAML: a quoted text is never closed\n"
         "    hint: check that every quotation mark has its partner\n"},
        {"firm: {name: Fernhollow Heating}", "firm: 'x",
         "3:7: error: is not YAML: a quoted text is never closed\n"
         "    hint: check that every quotation mark has its partner\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: f}}",
         "3:16: error: is not YAML: a ] or } closes nothing\n"
         "    hint: check that every [ and { has its ] or }, and every quotation mark its partner\n"},
        {"firm: {name: Fernhollow Heating}", "firm: Fernhollow: Heating",
         "3:17: error: is not YAML: a colon cannot stand here\n"
         "    hint: check the indentation; text that holds a colon goes in quotes\n"},
        {"firm: {name: Fernhollow Heating}", "firm: @x",
         "3:7: error: is not YAML: a value starts with a character that YAML keeps for itself\n"
         "    hint: put the text in quotes\n"},
        {"firm: {name: Fernhollow Heating}", "firm: &x {name: f}",
         "3:7: error: anchors and aliases are not used in job files\n"
         "    hint: write the value out where it is wanted; text that starts with & or * goes in "
         "quotes\n"},
        {"firm: {name: Fernhollow Heating}", "firm: *x",
         "3:7: error: anchors and aliases are not used in job files\n"
         "    hint: write the value out where it is wanted; text that starts with & or * goes in "
         "quotes\n"},
        {"firm: {name: Fernhollow Heating}", "firm: !!str x",
         "3:7: error: tags are not used in job files\n"
         "    hint: text that starts with ! goes in quotes\n"},
        {"firm: {name: Fernhollow Heating}", "firm:\n\tname: x",
         "4:6: error: is not YAML: a line is indented with a tab\n"
         "    hint: indent with spaces\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: \"a\\qb\"}",
         "3:18: error: is not YAML: a text in double quotes holds an unknown \\ escape\n"
         "    hint: use single quotes where \\ means itself\n"},
        {"firm: {name: Fernhollow Heating}", "? [a]\n: x",
         "3:3: error: a key is a plain name\n"
         "    hint: text that starts with [ or { goes in quotes\n"},
        {"firm: {name: Fernhollow Heating}", "firm: {name: Fernhollow Heating}\n---\nx: 1",
         "4:1: error: a job file is one document, and a second one starts here\n"
         "    hint: remove `---`, or check the indentation: this line belongs to nothing above it\n"},
        {"firm: {name: Fernhollow Heating}", "  firm: {name: Fernhollow Heating}",
         "3:3: error: is not YAML: a line does not fit the mapping that it stands in\n"
         "    hint: check the indentation and the colon of this line and of the line above\n"},
        {"firm: {name: Fernhollow Heating}", "- firm: {name: Fernhollow Heating}",
         "3:1: error: is not YAML: a line does not fit the mapping that it stands in\n"
         "    hint: check the indentation and the colon of this line and of the line above\n"},
    });
}
