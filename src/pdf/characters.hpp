// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// Stands for bytes that are not UTF-8; never printed.
inline constexpr char32_t bad_character = U'\uFFFD';

/// The character of `utf8` at `at`, which moves past it. Overlong forms, surrogates and stray bytes
/// give `bad_character`, one for each byte.
[[nodiscard]] char32_t decode(std::string_view utf8, std::size_t& at);

/// UTF-16, big endian, as PDF wants it in names and in ToUnicode maps.
[[nodiscard]] std::string utf16be(std::string_view utf8);

/// True for a mark that combines with the character before it.
[[nodiscard]] bool is_mark(char32_t c);

/// True for a character that leaves no trace on paper: soft hyphen, zero-width space and joiners,
/// variation selectors.
[[nodiscard]] bool is_invisible(char32_t c);

/// True where one character is one glyph, set from left to right whatever stands beside it. False for
/// scripts that are shaped or run from right to left, ideographs, emoji, marks and controls.
[[nodiscard]] bool stands_alone(char32_t c);

/// `base` with the marks that follow it at `at`, which moves past them, in Normalization Form C (Unicode
/// Standard, 3.11): one character where Unicode has it; marks that are left over follow.
[[nodiscard]] std::u32string compose(char32_t base, std::string_view utf8, std::size_t& at);

/// Calls `use(char32_t)` for each character to print: decoded, composed, without the invisible ones.
template <class Use>
void for_each_character(std::string_view utf8, Use use) {
    // No mark and no invisible character but the soft hyphen is below U+0300, whose first byte is 0xCC.
    constexpr auto first_byte_of_marks = 0xCC;
    for (std::size_t at = 0; at < utf8.size();) {
        const bool ascii = static_cast<unsigned char>(utf8[at]) < 0x80;
        const char32_t c = ascii ? static_cast<char32_t>(utf8[at++]) : decode(utf8, at);
        if (at < utf8.size() && static_cast<unsigned char>(utf8[at]) >= first_byte_of_marks) {
            for (const char32_t part : compose(c, utf8, at)) {
                if (!is_invisible(part)) use(part);
            }
        } else if (ascii || !is_invisible(c)) {
            use(c);
        }
    }
}

}  // namespace loopfolio::pdf
