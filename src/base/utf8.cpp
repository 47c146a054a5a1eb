// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/utf8.hpp"

#include <utf8proc.h>

#include <stdexcept>
#include <vector>

namespace loopfolio::utf8 {

namespace {

const utf8proc_uint8_t* bytes_of(std::string_view text) {
    return reinterpret_cast<const utf8proc_uint8_t*>(text.data());
}

utf8proc_ssize_t size_of(std::string_view text) { return static_cast<utf8proc_ssize_t>(text.size()); }

/// The same text with U+FFFD in place of each byte that is no part of a character.
std::string well_formed(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const Character c = character_at(text, at);
        if (c.whole) out += text.substr(at, c.bytes);
        else out += "\uFFFD";
        at += c.bytes;
    }
    return out;
}

constexpr auto form_c = static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE);

/// Taken apart with its marks in order; nothing where the text is not well-formed.
std::vector<utf8proc_int32_t> decomposed(std::string_view text) {
    std::vector<utf8proc_int32_t> out(text.size());
    const auto decompose = [&] {
        return utf8proc_decompose(bytes_of(text), size_of(text), out.data(), static_cast<utf8proc_ssize_t>(out.size()),
                                  form_c);
    };
    utf8proc_ssize_t length = decompose();
    if (length > static_cast<utf8proc_ssize_t>(out.size())) {
        out.resize(static_cast<std::size_t>(length));
        length = decompose();
    }
    if (length < 0 && length != UTF8PROC_ERROR_INVALIDUTF8) throw std::runtime_error{utf8proc_errmsg(length)};
    out.resize(length < 0 ? 0 : static_cast<std::size_t>(length));
    return out;
}

}  // namespace

Character detail::longer_character_at(std::string_view text, std::size_t at) {
    utf8proc_int32_t code = 0;
    const std::string_view rest = text.substr(at);
    const auto bytes = utf8proc_iterate(bytes_of(rest), size_of(rest), &code);
    if (bytes <= 0) return {};
    return {static_cast<char32_t>(code), static_cast<std::size_t>(bytes), true};
}

std::size_t length(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) at += character_at(text, at).bytes;
    return count;
}

std::size_t letter_end(std::string_view text, std::size_t at) {
    Character last = character_at(text, at);
    std::size_t end = at + last.bytes;
    utf8proc_int32_t state = 0;
    while (end < text.size()) {
        const Character next = character_at(text, end);
        if (!last.whole || !next.whole) break;
        if (utf8proc_grapheme_break_stateful(static_cast<utf8proc_int32_t>(last.code),
                                             static_cast<utf8proc_int32_t>(next.code), &state)) {
            break;
        }
        last = next;
        end += next.bytes;
    }
    return end;
}

bool is_letter_or_mark(char32_t c) {
    switch (utf8proc_category(static_cast<utf8proc_int32_t>(c))) {
        case UTF8PROC_CATEGORY_LU:
        case UTF8PROC_CATEGORY_LL:
        case UTF8PROC_CATEGORY_LT:
        case UTF8PROC_CATEGORY_LM:
        case UTF8PROC_CATEGORY_LO:
        case UTF8PROC_CATEGORY_MN:
        case UTF8PROC_CATEGORY_MC:
        case UTF8PROC_CATEGORY_ME: return true;
        default: return false;
    }
}

std::u32string composed(std::string_view text) {
    auto codes = decomposed(text);
    if (codes.empty() && !text.empty()) codes = decomposed(well_formed(text));
    const auto length = utf8proc_normalize_utf32(codes.data(), static_cast<utf8proc_ssize_t>(codes.size()), form_c);
    if (length < 0) throw std::runtime_error{utf8proc_errmsg(length)};
    return {codes.begin(), codes.begin() + length};
}

}  // namespace loopfolio::utf8
