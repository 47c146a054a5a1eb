// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/text_flow.hpp"

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
    struct Row {
        const char* text;
        double characters;
        const char* lines;
    };
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
        {"2026-05-14", 6, "2026-0|5-14"},             // digits: only between letters, as a last resort
        {"\u22123.2 to 4", 6, "\u22123.2|to 4"},
        {"radiators", 4, "radi|ator|s"},
        {"a radiators", 4, "a|radi|ator|s"},
        {"Überhöhe", 3, "Übe|rhö|he"},
        {"e\u0301e\u0301e\u0301", 2, "e\u0301e\u0301|e\u0301"},  // a letter keeps its accent
        {"ab", 0.5, "a|b"},                                      // one letter a line at least
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
    struct Row {
        const char* text;
        double least, natural;
    };
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
    struct Row {
        const char* text;
        double characters;
        std::size_t most;
        const char* lines;
    };
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
    CHECK(joined(break_evenly("moving to a heat pump", ten, 90.0, true, measurer)) == "moving to a|heat pump");
    CHECK(joined(break_lines("one two three four of", ten, 94.0, measurer)) == "one two three four|of");
    CHECK(joined(break_evenly("one two three four of", ten, 94.0, false, measurer)) == "one two three|four of");
    // No word is broken for the sake of even lines.
    CHECK(joined(break_evenly("Ground d", ten, 31.0, false, measurer)) == "Ground|d");
    CHECK(joined(break_evenly("Ground d", ten, 31.0, true, measurer)) == "Ground|d");
}

TEST_CASE("hostile words are broken between letters, and nothing of them is lost") {
    const FixedWidth measurer;
    const std::string cluster =
        "\U0001F476\U0001F3FF\u0308\u200D\U0001F476\U0001F3FF";  // one letter: GraphemeBreakTest.txt, GB11
    std::string tower{"e"};
    for (int i = 0; i < 200; ++i) tower += "\u0301";
    std::string endless;
    for (int i = 0; i < 5000; ++i) endless += "heizungswasser";
    const std::string texts[] = {
        cluster + cluster + cluster,
        tower + tower,
        endless,
        "\u4F4E\u6E29\u5EA6\u4F9B\u6696\u7CFB\u7EDF\u3002\u4F4E\u6E29\u5EA6\u4F9B\u6696",  // no spaces between words
        "\u05E9\u05C1\u05DC\u05D5\u05DD \u05E2\u05D5\u05DC\u05DD",  // from right to left, with a mark
        "a\u200Db\u200Dc\u200Dd",
        "flow-\xFF\xC0\xAF/\xED\xA0\x80return\xE2\x82",
        std::string{"a\0b", 3},
    };
    for (const std::string& text : texts) {
        for (const double characters : {0.5, 3.0, 7.0}) {
            INFO(text << " in " << characters);
            std::string kept;
            for (const Line& line : break_lines(text, ten, 5.0 * characters, measurer)) {
                REQUIRE_FALSE(line.runs.empty());
                for (const Run& run : line.runs) kept += run.text;
            }
            std::string spaceless = text;
            std::erase(spaceless, ' ');
            std::erase(kept, ' ');
            CHECK(kept == spaceless);
        }
    }
    CHECK(joined(break_lines(cluster + cluster, ten, 1.0, measurer)) == cluster + "|" + cluster);
    CHECK(joined(break_lines(tower + tower, ten, 5.0, measurer)) == tower + "|" + tower);
    CHECK(joined(break_lines("\u4F4E\u6E29\u5EA6", ten, 10.0, measurer)) == "\u4F4E\u6E29|\u5EA6");
}

TEST_CASE("no line is broken where Unicode Standard Annex 14 forbids it") {
    // Revision 50 (Unicode 15.0), the rules beside the rows, in places where a word fits its line. The Annex also
    // allows breaks that are not made here, inside units and formulas (W/|K): docs/libraries.md says why.
    const FixedWidth measurer;
    struct Row {
        const char* text;
        double characters;
        const char* lines;
    };
    const Row rows[] = {
        {"heat\u2060pump now", 10, "heat\u2060pump|now"},      // LB11: word joiner
        {"11\u00a0kW now", 6, "11\u00a0kW|now"},               // LB12: no-break space
        {"flow\u2011return now", 12, "flow\u2011return|now"},  // LB12: no-break hyphen
        {"hot (warm) now", 6, "hot|(warm)|now"},               // LB13, LB14: brackets stay with what they hold
        {"why? now", 4, "why?|now"},                           // LB13
        {"3,170 now", 5, "3,170|now"},                         // LB25: numbers stay whole
        {"-3.2 now", 4, "-3.2|now"},                           // LB25
        {"\u00a3100 now", 5, "\u00a3100|now"},                 // LB25
        {"20% now", 3, "20%|now"},                             // LB25
        {"e.g. now", 4, "e.g.|now"},                           // LB29
        {"dots\u2026 now", 5, "dots\u2026|now"},               // LB22
        {"low-temperature", 12, "low-|temperature"},           // LB21: after a hyphen and not before it
    };
    for (const Row& row : rows) {
        INFO(row.text << " in " << row.characters);
        CHECK(joined(break_lines(row.text, ten, 5.0 * row.characters, measurer)) == row.lines);
    }
}
