// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/utf8.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// UTF-16, big endian, as PDF wants it in names and in ToUnicode maps.
[[nodiscard]] std::string utf16be(std::string_view utf8);

/// True for a mark that combines with the character before it.
[[nodiscard]] bool is_mark(char32_t c);

/// True for a character that leaves no trace on paper: soft hyphen, zero-width space and joiners,
/// variation selectors.
[[nodiscard]] bool is_invisible(char32_t c);

/// True if one character is one glyph, set from left to right whatever its neighbours. False for scripts that are
/// shaped or run from right to left, ideographs, emoji, marks and controls.
[[nodiscard]] bool stands_alone(char32_t c);

/// Where the marks that stand at `at` end; `at` itself where none stands there. An invisible one ends them.
[[nodiscard]] std::size_t end_of_marks(std::string_view utf8, std::size_t at);

/// Calls `use(char32_t)` for each character to print: decoded, without the invisible ones, and a character with marks
/// composed with them (Normalization Form C): one where Unicode has one; marks that are left over follow. Bytes that
/// are not UTF-8 give U+FFFD, which is never printed, one for each byte.
template <class Use>
void for_each_character(std::string_view utf8, Use use) {
    // U+0300, whose first byte is 0xCC, is the first mark. Below it the soft hyphen is the only invisible character.
    constexpr auto first_byte_of_marks = 0xCC;
    for (std::size_t at = 0; at < utf8.size();) {
        const auto c = utf8::character_at(utf8, at);
        const std::size_t start = at;
        at += c.bytes;
        if (at < utf8.size() && static_cast<unsigned char>(utf8[at]) >= first_byte_of_marks) {
            const std::size_t end = end_of_marks(utf8, at);
            if (end != at) {
                for (const char32_t part : utf8::composed(utf8.substr(start, end - start))) {
                    if (!is_invisible(part)) use(part);
                }
                at = end;
                continue;
            }
        }
        if (c.code < 0x80 || !is_invisible(c.code)) use(c.code);  // layout measures by this: ASCII is worth a shortcut
    }
}

}  // namespace loopfolio::pdf
