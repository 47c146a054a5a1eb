// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/file_text.hpp"

#include "loopfolio/base/utf8.hpp"
#include "support/catch.hpp"

#include <string>

using namespace loopfolio;
using namespace loopfolio::yaml;

TEST_CASE("lengths and cuts count characters") {
    CHECK(utf8::length("") == 0);
    CHECK(utf8::length("größer") == 6);
    CHECK(utf8::length("a\xff\xfe"
                       "b") == 4);  // each byte that is no character counts as one
    CHECK(shortened("größer", 6) == "größer");
    CHECK(shortened("größer", 5) == "größe\u2026");
    CHECK(shortened("größer", 0) == "\u2026");
    CHECK(shortened("", 0).empty());
    CHECK(shortened("a\xff\xfe"
                    "b",
                    2) == "a\xff\u2026");
}

TEST_CASE("what cannot be seen is written by its number") {
    CHECK(printable("größer", 40) == "größer");
    CHECK(printable("a\u202e"
                    "b",
                    40) == "a<U+202E>b");
    CHECK(printable("a\xff"
                    "b",
                    40) == "a<U+00FF>b");
    CHECK(printable("a\u202e"
                    "bcd",
                    3) == "a<U+202E>b\u2026");
    CHECK(printable("a\nb", 40) == "a\nb");  // diagnostics escape these themselves
    CHECK(printable("\u0080", 40) == "<U+0080>");
    for (const char32_t seen :
         {U' ', U'~', U'\u00a0', U'\u2027', U'\u202f', U'\u2065', U'\u206a', U'\ufefe', U'\uff00'}) {
        CAPTURE(static_cast<unsigned>(seen));
        CHECK_FALSE(is_invisible(seen));
    }
    for (const char32_t hidden : {U'\x01', U'\x1f', U'\x7f', U'\x80', U'\x9f', U'\u2028', U'\u2029', U'\u202a',
                                  U'\u202c', U'\u202e', U'\u2066', U'\u2068', U'\u2069', U'\ufeff'}) {
        CAPTURE(static_cast<unsigned>(hidden));
        CHECK(is_invisible(hidden));
    }
    CHECK(code_point_name(0x1) == "U+0001");
    CHECK(code_point_name(0x202e) == "U+202E");
    CHECK(code_point_name(0x1f525) == "U+1F525");
    CHECK(code_point_name(0xabcdef) == "U+ABCDEF");
}

TEST_CASE("an index of lines turns bytes into places that count characters") {
    const LineIndex lines{"ab\ngröß\n\nz"};
    CHECK(lines.place(0, 0) == Place{1, 1});
    CHECK(lines.place(0, 2) == Place{1, 3});
    CHECK(lines.place(1, 0) == Place{2, 1});
    CHECK(lines.place(1, 4) == Place{2, 4});  // ö takes two bytes
    CHECK(lines.place(3, 1) == Place{4, 2});
    CHECK(lines.place(9, 0) == Place{4, 1});  // past the end is the last line
    CHECK(lines.from(0, 1) == "b\ngröß\n\nz");
    CHECK(lines.from(3, 0) == "z");
    CHECK(lines.from(3, 1).empty());
    CHECK(lines.from(4, 0).empty());
    CHECK(lines.from(0, 99).empty());
    CHECK(LineIndex{""}.place(0, 0) == Place{1, 1});
}

TEST_CASE("the first fault of a text is found with its place") {
    const auto fault = [](std::string_view text, std::size_t longest = 10) {
        const auto f = find_text_fault(text, longest);
        return f ? std::to_string(f->place.line) + ":" + std::to_string(f->place.column) + " " + f->rule + "; " +
                       f->hint.text()
                 : std::string{};
    };
    CHECK(fault("").empty());
    CHECK(fault("a\tb\r\nc ~\n").empty());
    CHECK(fault("ab\nö\xff\n") == "2:2 is not UTF-8 text; save the file as UTF-8");
    CHECK(fault(std::string_view{"a\0b", 3}) ==
          "1:2 is not UTF-8 text; save the file as UTF-8");  // UTF-16, most likely
    CHECK(fault(std::string_view{"abc\0", 4}) == "1:4 is not UTF-8 text; save the file as UTF-8");
    CHECK(fault(std::string_view{"abcd\0", 5}) == "1:5 holds the control character U+0000; remove it");
    CHECK(fault("a\n\x1b") == "2:1 holds the control character U+001B; remove it");
    CHECK(fault("a\x1f") == "1:2 holds the control character U+001F; remove it");
    CHECK(fault("a\x7f") == "1:2 holds the control character U+007F; remove it");
    CHECK(fault("0123456789\n0123456789\n").empty());
    CHECK(fault("0123456789\n0123456789a\n") == "2:1 has a line of more than 10 bytes; break the line");
    CHECK(fault("öööööö\n") == "1:1 has a line of more than 10 bytes; break the line");
}
