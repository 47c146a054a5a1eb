// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/characters.hpp"

#include "support/catch.hpp"

using namespace loopfolio::pdf;

namespace {

std::u32string characters(std::string_view utf8) {
    std::u32string out;
    for_each_character(utf8, [&out](char32_t c) { out += c; });
    return out;
}

}  // namespace

TEST_CASE("UTF-8 is read as the Unicode Standard has it") {
    struct Row {
        std::string_view utf8;
        std::u32string characters;
    };
    // The well-formed and ill-formed sequences of the Unicode Standard 15, tables 3-7 and 3-8.
    const Row rows[]{{"M", U"M"},
                     {"\xD0\xB0", U"\u0430"},
                     {"\xE4\xBA\x8C", U"\u4E8C"},
                     {"\xF0\x90\x8C\x82", U"\U00010302"},
                     {"\xC0\xAF", U"\uFFFD\uFFFD"},
                     {"\xED\xA0\x80", U"\uFFFD\uFFFD\uFFFD"},
                     {"\xF4\x91\x92\x93", U"\uFFFD\uFFFD\uFFFD\uFFFD"},
                     {"\xE1\x80", U"\uFFFD\uFFFD"},
                     {"a\xFFz", U"a\uFFFDz"}};
    for (const Row& row : rows) {
        CAPTURE(row.utf8);
        CHECK(characters(row.utf8) == row.characters);
    }
}

TEST_CASE("marks are composed with their letter") {
    struct Row {
        std::string_view utf8;
        std::u32string composed;
    };
    // Normalization Form C of each, from unicodedata of Python 3.11, which is generated from the Unicode database. The
    // first row and the last but one are also in the database's NormalizationTest.txt.
    const Row rows[]{{"\u1E0A\u0323", U"\u1E0C\u0307"},
                     {"e\u0301", U"\u00E9"},
                     {"w\u0302", U"\u0175"},
                     {"u\u0308\u0304", U"\u01D6"},
                     {"e\u0302\u0323", U"\u1EC7"},
                     {"a\u0323\u0302", U"\u1EAD"},
                     {"q\u0307", U"q\u0307"},
                     {"a\u0301\u0301", U"\u00E1\u0301"},
                     {"o\u031B\u0303", U"\u1EE1"},
                     {"a\u0315\u0300\u05AE\u0300b", U"\u00E0\u05AE\u0300\u0315b"},
                     {"\u03B9\u0308\u0301", U"\u0390"}};
    for (const Row& row : rows) {
        CAPTURE(row.utf8);
        CHECK(characters(row.utf8) == row.composed);
    }
}

TEST_CASE("what leaves no trace on paper is left out") {
    CHECK(characters("heat\u00ADing") == U"heating");
    CHECK(characters("a\u200Bb\u200Cc\u200Dd\u2060e\uFEFFf") == U"abcdef");
    CHECK(characters("\u2713\uFE0E") == U"\u2713");
}

TEST_CASE("hostile text comes to characters that are printed or refused, and to nothing else") {
    CHECK(characters("e\xFF\u0301") == U"e\uFFFD\u0301");  // no mark jumps over a broken byte
    CHECK(characters("\xCC") == U"\uFFFD");
    CHECK(characters("e\xCC") == U"e\uFFFD");
    CHECK(characters("e\u200D\u0301") == U"e\u0301");  // a joiner between letter and mark keeps them apart, unseen
    std::string tower{"e"};
    for (int i = 0; i < 1000; ++i) tower += "\u0301";
    CHECK(characters(tower).size() == 1000);  // the first is composed with the letter
    // From right to left, shaped, without spaces: kept as they are, for `unprintable` to refuse.
    CHECK(characters("\u05E9\u05C1 \u0628 \u4F4E") == U"\u05E9\u05C1 \u0628 \u4F4E");
    for (const char32_t c : {U'\u05E9', U'\u0628', U'\u4F4E', U'\uAC01', U'\U0001F476', U'\uFFFD', U'\u202E'}) {
        CHECK_FALSE(stands_alone(c));
    }
}

TEST_CASE("UTF-16 for names in the file") {
    // The Unicode Standard 15, table 3-5.
    CHECK(utf16be("\u0430") == std::string("\x04\x30", 2));
    CHECK(utf16be("\u4E8C") == std::string("\x4E\x8C", 2));
    CHECK(utf16be("\U00010302") == std::string("\xD8\x00\xDF\x02", 4));
}
