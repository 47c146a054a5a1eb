// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/utf8.hpp"

#include "support/catch.hpp"

#include <array>
#include <vector>

using namespace loopfolio;

namespace {

std::u32string characters(std::string_view text) {
    std::u32string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto c = utf8::character_at(text, at);
        CHECK(c.whole == (c.bytes > 1 || static_cast<unsigned char>(text[at]) < 0x80));
        out += c.code;
        at += c.bytes;
    }
    return out;
}

/// The letters of a text, with a bar between them.
std::string letters(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = utf8::letter_end(text, at);
        if (at > 0) out += '|';
        out += text.substr(at, end - at);
        at = end;
    }
    return out;
}

/// A row of the Unicode Standard 15.0, table 3-7, "Well-Formed UTF-8 Byte Sequences": what the first byte may be, and
/// the second; every later one is 80..BF.
struct WellFormed {
    unsigned first_low, first_high, second_low, second_high;
    std::size_t bytes;
};
constexpr WellFormed table_3_7[]{{0x00, 0x7F, 0x00, 0xFF, 1}, {0xC2, 0xDF, 0x80, 0xBF, 2}, {0xE0, 0xE0, 0xA0, 0xBF, 3},
                                 {0xE1, 0xEC, 0x80, 0xBF, 3}, {0xED, 0xED, 0x80, 0x9F, 3}, {0xEE, 0xEF, 0x80, 0xBF, 3},
                                 {0xF0, 0xF0, 0x90, 0xBF, 4}, {0xF1, 0xF3, 0x80, 0xBF, 4}, {0xF4, 0xF4, 0x80, 0x8F, 4}};

/// How long the well-formed sequence is that `bytes` starts with, by the table; 0 where there is none.
std::size_t well_formed_length(const std::array<unsigned, 4>& bytes) {
    for (const auto& row : table_3_7) {
        if (bytes[0] < row.first_low || bytes[0] > row.first_high) continue;
        for (std::size_t i = 1; i < row.bytes; ++i) {
            const unsigned low = i == 1 ? row.second_low : 0x80, high = i == 1 ? row.second_high : 0xBF;
            if (bytes[i] < low || bytes[i] > high) return 0;
        }
        return row.bytes;
    }
    return 0;
}

}  // namespace

TEST_CASE("UTF-8 is well-formed where the Unicode Standard's table 3-7 has it so, and nowhere else") {
    // Every first byte, followed by the bytes at which a row of the table begins or ends, and their neighbours.
    constexpr unsigned edges[]{0x00, 0x41, 0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0, 0xBF, 0xC0, 0xC2, 0xFF};
    std::vector<std::string> wrong;
    for (unsigned a = 0; a < 0x100; ++a) {
        for (const unsigned b : edges) {
            for (const unsigned c : edges) {
                for (const unsigned d : edges) {
                    std::string text;
                    for (const unsigned byte : {a, b, c, d}) text += static_cast<char>(byte);
                    const auto found = utf8::character_at(text, 0);
                    const std::size_t expected = well_formed_length({a, b, c, d});
                    const bool right = expected == 0
                                           ? !found.whole && found.bytes == 1 && found.code == utf8::replacement
                                           : found.whole && found.bytes == expected;
                    if (!right) wrong.push_back(text);
                }
            }
        }
    }
    CHECK(wrong.empty());
}

TEST_CASE("code points are those that the bytes stand for") {
    // The Unicode Standard 15.0, table 3-4 and the ends of the rows of table 3-7.
    CHECK(characters("M\u0430\u4E8C\U00010302") == U"M\u0430\u4E8C\U00010302");
    CHECK(characters("\x7F\u0080\u07FF\u0800\uD7FF\uE000\uFFFF") == U"\x7F\u0080\u07FF\u0800\uD7FF\uE000\uFFFF");
    CHECK(characters("\U00010000\U0010FFFF") == U"\U00010000\U0010FFFF");
    CHECK(characters(std::string_view{"a\0b", 3}) == std::u32string{U"a\0b", 3});
}

TEST_CASE("each byte that is no part of a character counts as one, and what follows is read again") {
    struct Row {
        std::string_view text;
        std::u32string characters;
    };
    // The sequences are those of the Unicode Standard 15.0, tables 3-8 to 3-11. The Standard leaves it open how many
    // U+FFFD stand for them; one a byte is what HarfBuzz gives too, and what lets a place in a file be counted from
    // either end.
    const Row rows[]{
        {"\xC0\xAF\xE0\x80\xBF\xF0\x81\x82\x41", U"\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFDA"},  // overlong
        {"\xED\xA0\x80\xED\xBF\xBF\xED\xAF\x41", U"\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFDA"},  // surrogates
        {"\xF4\x91\x92\x93\xFF\x41\x80\xBF\x42",
         U"\uFFFD\uFFFD\uFFFD\uFFFD\uFFFDA\uFFFD\uFFFDB"},  // past U+10FFFF, stray
        {"\xE1\x80\xE2\xF0\x91\x92\xF1\xBF\x41", U"\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFDA"},  // truncated
        {"\xE2\x82", U"\uFFFD\uFFFD"},  // at the very end
        {"\xF0\x9F\x8C", U"\uFFFD\uFFFD\uFFFD"},
        {"\xC3", U"\uFFFD"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.text);
        CHECK(characters(row.text) == row.characters);
        CHECK(utf8::length(row.text) == row.characters.size());
    }
    CHECK(utf8::length("") == 0);
    CHECK(utf8::length("Ŵyn 12 m²") == 9);
}

TEST_CASE("letters are the grapheme clusters of Unicode Standard Annex 29") {
    // The first six are rows of the Unicode Character Database's GraphemeBreakTest.txt, with bars for its divisions;
    // the others follow from the Annex's rule that stands beside them.
    CHECK(letters("a\u0308b") == "a\u0308|b");                                     // GB9: marks extend
    CHECK(letters("a\u0903b") == "a\u0903|b");                                     // GB9a: spacing marks too
    CHECK(letters("a\u0600b") == "a|\u0600b");                                     // GB9b: a sign that is put before
    CHECK(letters("a\u200D\U0001F6D1") == "a\u200D|\U0001F6D1");                   // GB11 needs a picture on both sides
    CHECK(letters("\U0001F6D1\u200D\U0001F6D1") == "\U0001F6D1\u200D\U0001F6D1");  // GB11
    CHECK(letters("\U0001F476\U0001F3FF\U0001F476") == "\U0001F476\U0001F3FF|\U0001F476");
    CHECK(letters("a\U0001F1E6\U0001F1E7\U0001F1E8b") ==
          "a|\U0001F1E6\U0001F1E7|\U0001F1E8|b");                     // GB12: flags in pairs
    CHECK(letters("\u1100\u1160\u11A8a") == "\u1100\u1160\u11A8|a");  // GB6, GB7: syllables of Hangul
    CHECK(letters("\r\na") == "\r\n|a");                              // GB3
    // Marks without end, from right to left, without spaces: nothing is cut inside a letter, nothing is lost.
    std::string tower{"e"};
    for (int i = 0; i < 2000; ++i) tower += "\u0301";
    CHECK(utf8::letter_end(tower + "x", 0) == tower.size());
    CHECK(letters("\u05E9\u05C1\u05DC") == "\u05E9\u05C1|\u05DC");  // Hebrew shin with its dot, lamed
    CHECK(letters("\u4F4E\u6E29\u3002") == "\u4F4E|\u6E29|\u3002");
}

TEST_CASE("a broken byte is a letter of its own, and takes no mark") {
    CHECK(letters("\xFF\xFF") == "\xFF|\xFF");
    CHECK(letters("\xE2\x82") == "\xE2|\x82");
    CHECK(letters("\xFF\u0301x") == "\xFF|\u0301|x");
    CHECK(letters("e\xCC") == "e|\xCC");  // half a mark
}

TEST_CASE("Normalization Form C") {
    struct Row {
        std::string_view text;
        std::u32string composed;
    };
    // By Python 3.11's unicodedata, which is made from the Unicode Character Database 14.0; the last two hold bytes
    // that are not UTF-8, which the Standard does not normalise.
    const Row rows[]{{"\u1E0A\u0323", U"\u1E0C\u0307"},
                     {"\u1E0C\u0307", U"\u1E0C\u0307"},
                     {"a\u0315\u0300\u05AE\u0300b", U"\u00E0\u05AE\u0300\u0315b"},
                     {"\u212B", U"\u00C5"},
                     {"\u0958", U"\u0915\u093C"},
                     {"e\u0301", U"\u00E9"},
                     {"q\u0307", U"q\u0307"},
                     {"\u03B9\u0308\u0301", U"\u0390"},
                     {"\u1100\u1161\u11A8", U"\uAC01"},
                     {"", U""},
                     {"heat", U"heat"},
                     {"e\xFF\u0301", U"e\uFFFD\u0301"},
                     {"\xED\xA0\x80", U"\uFFFD\uFFFD\uFFFD"}};
    for (const Row& row : rows) {
        CAPTURE(row.text);
        CHECK(utf8::composed(row.text) == row.composed);
    }
    std::string marks{"e"};
    for (int i = 0; i < 2000; ++i) marks += "\u0323\u0301";  // below and above by turns: put in order, all below first
    const auto ordered = utf8::composed(marks);
    REQUIRE(ordered.size() == 4000);
    CHECK(ordered.substr(0, 2) == U"\u1EB9\u0323");
    CHECK(ordered.substr(1999, 2) == U"\u0323\u0301");
}

TEST_CASE("what is a letter") {
    for (const char32_t c : {U'a', U'Z', U'é', U'Ŵ', U'λ', U'Ж', U'\u0301', U'\u05D0', U'\u4E8C'})
        CHECK(utf8::is_letter_or_mark(c));
    for (const char32_t c : {U'1', U' ', U'-', U'/', U'×', U'÷', U'°', U'²', U'\u200D', utf8::replacement}) {
        CHECK_FALSE(utf8::is_letter_or_mark(c));
    }
}
