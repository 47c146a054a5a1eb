// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/text_flow.hpp"

#include "layout/utf8.hpp"
#include "layout_support.hpp"

#include "support/catch.hpp"

using namespace loopfolio;
using namespace loopfolio::layout;
using namespace loopfolio::tests;

namespace {

// With this style a character is 5 points wide, 5.5 in bold.
constexpr TextStyle ten{10.0, 14.0, Face::regular, {}};

std::string joined(const std::vector<Line>& lines) {
    std::string out;
    for (const Line& line : lines) {
        if (!out.empty()) out += '|';
        for (const Run& run : line.runs) out += run.face == Face::bold ? "[" + run.text + "]" : run.text;
    }
    return out;
}

}  // namespace

TEST_CASE("where lines break") {
    struct Row { const char* text; double characters; const char* lines; };
    const Row rows[] = {
        {"", 10, ""},
        {"   ", 10, ""},
        {"heat", 4, "heat"},
        {"heat pump", 9, "heat pump"},
        {"heat pump", 8, "heat|pump"},
        {"heat  \t pump ", 9, "heat pump"},
        {"heat\npump", 20, "heat|pump"},
        {"heat\n\npump", 20, "heat|pump"},
        {"11.4\u00a0kW now", 8, "11.4\u00a0kW|now"},
        {"at 3\u202f170\u00a0W", 8, "at|3\u202f170\u00a0W"},
        {"low-temperature", 12, "low-|temperature"},
        {"flow/return", 8, "flow/|return"},
        {"flow-\u0301return", 8, "flow-\u0301ret|urn"},  // no break that a mark would follow
        {"of 3\u202f170\u202fW now", 9, "of|3\u202f170\u202fW|now"},
        {"at 11.4\u00a0kW\u00a0now", 11, "at|11.4\u00a0kW\u00a0now"},
        {"12 W/m2 of floor", 5, "12|W/m2|of|floor"},  // a unit stays whole
        {"2026-05-14", 6, "2026-0|5-14"},  // digits: only between letters, as a last resort
        {"\u22123.2 to 4", 6, "\u22123.2|to 4"},
        {"radiators", 4, "radi|ator|s"},
        {"a radiators", 4, "a|radi|ator|s"},
        {"Überhöhe", 3, "Übe|rhö|he"},
        {"e\u0301e\u0301e\u0301", 2, "e\u0301e\u0301|e\u0301"},  // a letter keeps its accent
        {"ab", 0.5, "a|b"},  // one letter a line at least
        {"keep **this bold** please", 40, "keep [this bold ]please"},
        {"**a** b", 40, "[a ]b"},
        {"**bold** word", 5, "[bold]|word"},
        {"un**bold**ed", 40, "un[bold]ed"},
        {"**open", 40, "[open]"},
        {"****", 40, ""},
    };
    const FixedWidth measurer;
    for (const Row& row : rows) {
        INFO(row.text << " in " << row.characters);
        CHECK(joined(break_lines(row.text, ten, 5.0 * row.characters, measurer)) == row.lines);
    }
}

TEST_CASE("lines are as wide as the measurer says, and run on from each other") {
    const FixedWidth measurer;
    const auto lines = break_lines("keep **this** please", ten, 200.0, measurer);
    REQUIRE(lines.size() == 1);
    REQUIRE(lines[0].runs.size() == 3);
    CHECK(lines[0].runs[1].x == Approx(25.0));
    CHECK(lines[0].runs[1].width == Approx(5 * 5.5));
    CHECK(lines[0].runs[2].x == Approx(52.5));
    CHECK(lines[0].width == Approx(82.5));
}

TEST_CASE("the least and the natural width of text") {
    struct Row { const char* text; double least, natural; };
    const Row rows[] = {
        {"", 0, 0},
        {"heat", 20, 20},
        {"heat pumps", 25, 50},
        {"heat\npumps", 25, 25},
        {"low-temperature", 55, 75},
        {"**bold** it", 22, 37.5},
        {"11.4\u00a0kW", 35, 35},
    };
    const FixedWidth measurer;
    for (const Row& row : rows) {
        INFO(row.text);
        const Extent found = extent(row.text, ten, measurer);
        CHECK(found.least == Approx(row.least));
        CHECK(found.natural == Approx(row.natural));
        CHECK(break_lines(row.text, ten, found.natural, measurer).size() <=
              (row.text == std::string{"heat\npumps"} ? 2 : 1));
    }
}

TEST_CASE("labels are cut with an ellipsis") {
    struct Row { const char* text; double characters; std::size_t most; const char* lines; };
    const Row rows[] = {
        {"Bedroom 1", 9, 1, "Bedroom 1"},
        {"Bedroom 1", 8, 1, "Bedroom\u2026"},
        {"Bedroom 1", 8, 2, "Bedroom|1"},
        {"radiators", 4, 2, "radi|ato\u2026"},
        {"radiators", 1, 1, "\u2026"},
        {"radiators", 9, 0, ""},
        {"e\u0301e\u0301e\u0301", 2, 1, "e\u0301\u2026"},
    };
    const FixedWidth measurer;
    for (const Row& row : rows) {
        INFO(row.text << " in " << row.characters);
        CHECK(joined(break_label(row.text, ten, 5.0 * row.characters, row.most, measurer)) == row.lines);
    }
}

TEST_CASE("headings are broken evenly, and a last line is no single short word") {
    const FixedWidth measurer;
    CHECK(joined(break_lines("moving to a heat pump", ten, 90.0, measurer)) == "moving to a heat|pump");
    CHECK(joined(break_evenly("moving to a heat pump", ten, 90.0, true, measurer)) ==
          "moving to a|heat pump");
    CHECK(joined(break_lines("one two three four of", ten, 94.0, measurer)) == "one two three four|of");
    CHECK(joined(break_evenly("one two three four of", ten, 94.0, false, measurer)) ==
          "one two three|four of");
    // No word is broken for the sake of even lines.
    CHECK(joined(break_evenly("Ground d", ten, 31.0, false, measurer)) == "Ground|d");
    CHECK(joined(break_evenly("Ground d", ten, 31.0, true, measurer)) == "Ground|d");
}

TEST_CASE("letters of any script are kept whole") {
    struct Row { const char* text; std::size_t end; };
    const Row rows[] = {
        {"ab", 1},         {"éb", 2},       {"e\u0301b", 3}, {"\u20ac", 3},
        {"\U0001F321", 4}, {"\xff\xff", 1}, {"\xe2\x82", 1}, {"a\u200db", 5},
    };
    for (const Row& row : rows) CHECK(letter_end(row.text, 0) == row.end);
}
