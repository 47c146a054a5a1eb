// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/fonts.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <string>
#include <vector>

using loopfolio::layout::Face;
using loopfolio::pdf::Fonts;
using loopfolio::tests::Certainty;
using loopfolio::tests::Verification;

namespace {

const Fonts& fonts() {
    static const Fonts made;
    return made;
}

double em_width(std::string_view utf8, Face face = Face::regular) { return fonts().width(utf8, face, 1.0); }

}  // namespace

TEST_CASE("widths are the advances that the font files state") {
    // Read with fontTools 4.68 from the tables hmtx and head of the Debian packages fonts-lato 2.0 and
    // fonts-dejavu-core 2.37, as advance / em. The tolerance of half a thousandth is for rounding.
    struct Row {
        std::string_view text;
        Face face;
        double advance, em;
    };
    const Row rows[]{{" ", Face::regular, 512, 2000},       {" ", Face::bold, 486, 2000},
                     {" ", Face::italic, 468, 2000},        {"\u0175", Face::regular, 1571, 2000},
                     {"\u0175", Face::bold, 1605, 2000},    {"\u0175", Face::italic, 1445, 2000},
                     {"\u0394", Face::regular, 1356, 2000}, {"\u2009", Face::regular, 250, 2000},
                     {"\u202F", Face::regular, 500, 2000},  {"\u00BD", Face::bold, 1471, 2000},
                     {"\u2713", Face::regular, 1716, 2048}};
    Verification v{{"advances of the pack's fonts",
                    "hmtx and head of fonts-lato 2.0 and fonts-dejavu-core 2.37 by fontTools", Certainty::read, "em"}};
    for (const Row& row : rows) {
        CAPTURE(row.text);
        v.check(row.advance / row.em, em_width(row.text, row.face), 0.00051);
    }
}

TEST_CASE("width adds up and grows with the size") {
    const std::string_view text = "Llŷr, 45 °C \u2192 \u2713";
    double sum = 0.0;
    for (const std::string_view part : {"Llŷr, ", "45 °C ", "\u2192 \u2713"}) sum += em_width(part);
    CHECK(em_width(text) == Approx(sum).epsilon(1e-12));
    CHECK(fonts().width(text, Face::regular, 9.5) == Approx(9.5 * sum).epsilon(1e-12));
    CHECK(em_width("") == 0.0);
}

TEST_CASE("figures stand in columns in every face") {
    for (const Face face : {Face::regular, Face::bold, Face::italic}) {
        for (const char* digit : {"1", "2", "3", "4", "5", "6", "7", "8", "9"}) {
            CHECK(em_width(digit, face) == em_width("0", face));
        }
        CHECK(em_width("\u2007", face) == em_width("0", face));
    }
}

TEST_CASE("what looks the same is as wide") {
    CHECK(em_width("e\u0301") == em_width("\u00E9"));
    CHECK(em_width("sub\u00ADfloor") == em_width("subfloor"));
    CHECK(em_width("\u00A0") == em_width(" "));
    CHECK(em_width("\u2011") == em_width("-"));
    CHECK(em_width("\U0001F600") == em_width(" "));  // the header's promise for what cannot be printed
}

TEST_CASE("heights and depths are the family's") {
    // Top of H (also sCapHeight in OS/2) and bottom of p, in units of 1/2000 em.
    Verification v{
        {"heights and depths of the pack's fonts", "glyf of fonts-lato 2.0 by fontTools", Certainty::read, "em"}};
    v.check(1433.0 / 2000.0, fonts().cap_height(Face::regular), 0.001);
    v.check(1446.0 / 2000.0, fonts().cap_height(Face::bold), 0.001);
    v.check(343.0 / 2000.0, fonts().descent(Face::regular), 0.001);
    v.check(343.0 / 2000.0, fonts().descent(Face::italic), 0.001);
}

TEST_CASE("what can be printed") {
    const std::string_view texts[]{"The quick brown fox (45 °C) costs £3 or 4 €.",
                                   "Llŷr Ŵyn ŵ ŷ Ŷ ẁ ẃ ẅ",
                                   "Wąchała Łódź żółć ĄĘŚŹ",
                                   "Αθήνα, Ελένη Παπαδοπούλου ΐ ΰ",
                                   "Příliš žluťoučký kůň",
                                   "ș ț Ș Ț",
                                   "Жуков",
                                   "≤ ≥ ≈ Δ ζ ² ³ · × − ½ → ← ± √ Σ ∆ ≠ ✓ ✗ ● ▲ ■ ◆",
                                   "\u00A0\u2009\u202F\u2007\u2011\u2013\u2014\u2026",
                                   "“quoted” ‘so’ „tak” «ainsi»",
                                   "e\u0301 w\u0302 s\u0326 \u03B1\u0301",
                                   "off\u00ADhand\u200B"};
    for (const std::string_view text : texts) {
        CAPTURE(text);
        CHECK(fonts().unprintable(text).empty());
    }
}

TEST_CASE("what cannot be printed is named once, in order") {
    struct Row {
        std::string_view text;
        std::u32string unprintable;
    };
    // Scripts that would be wrong if every character were one glyph, set from left to right.
    const Row rows[]{{"Arabic \u0633\u0644\u0627\u0645\u060C", U"\u0633\u0644\u0627\u0645\u060C"},
                     {"Hebrew \u05E9\u05DC\u05D5\u05DD", U"\u05E9\u05DC\u05D5\u05DD"},
                     {"Devanagari \u0928\u092E", U"\u0928\u092E"},
                     {"Thai \u0E01\u0E33", U"\u0E01\u0E33"},
                     {"CJK \u6E29\u6C34\u6E29", U"\u6E29\u6C34"},
                     {"Kana \u30D2\u3042", U"\u30D2\u3042"},
                     {"Hangul \uD55C", U"\uD55C"},
                     {"emoji \U0001F600\u26A1\u2705", U"\U0001F600\u26A1\u2705"},
                     {"tab\tline\n\u0085\u2028", U"\t\n\u0085\u2028"},
                     {"turned \u202Eround\u200F", U"\u202E\u200F"},
                     {"mark q\u0307 x\u0302", U"\u0307\u0302"},
                     {"private \uE000\uF8FF", U"\uE000\uF8FF"},
                     {"unassigned \u0378\uFFFF", U"\u0378\uFFFF"},
                     {"not UTF-8 \xC3(", U"\uFFFD"}};
    for (const Row& row : rows) {
        CAPTURE(row.text);
        const std::vector<char32_t> found = fonts().unprintable(row.text);
        CHECK(std::u32string(found.begin(), found.end()) == row.unprintable);
    }
}
