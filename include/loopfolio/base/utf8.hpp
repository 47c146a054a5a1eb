// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// UTF-8 text as characters, letters and composed characters: the only decoder of the program. utf8proc does the work.
namespace loopfolio::utf8 {

/// U+FFFD, which stands for a byte that is no part of a character.
inline constexpr char32_t replacement = U'\uFFFD';

/// A code point and how many bytes it takes. Where the text is not well-formed (the Unicode Standard, table 3-7: stray,
/// missing and overlong bytes, surrogates, past U+10FFFF) it is `replacement`, one byte long and not `whole`.
struct Character {
    char32_t code = replacement;
    std::size_t bytes = 1;
    bool whole = false;
};

namespace detail {
[[nodiscard]] Character longer_character_at(std::string_view text, std::size_t at);
}

/// The character that starts at `at`, which is inside the text.
[[nodiscard]] inline Character character_at(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    if (first < 0x80) return {first, 1, true};  // nearly all text is ASCII, and is not worth a call
    return detail::longer_character_at(text, at);
}

/// Characters, not bytes; each byte that is no part of one counts as one.
[[nodiscard]] std::size_t length(std::string_view text);

/// Where what a reader takes for one letter ends: the extended grapheme cluster (Unicode Standard Annex 29) that starts
/// at `at`, which is inside the text. A byte that is no part of a character is a letter of its own.
[[nodiscard]] std::size_t letter_end(std::string_view text, std::size_t at);

/// True for letters of any script, and for the marks that stand on them (general categories L and M).
[[nodiscard]] bool is_letter_or_mark(char32_t c);

/// The text in Normalization Form C (Unicode Standard Annex 15), `replacement` where it is not well-formed.
[[nodiscard]] std::u32string composed(std::string_view text);

}  // namespace loopfolio::utf8
