// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/characters.hpp"

#include <hb.h>

#include <algorithm>
#include <array>

namespace loopfolio::pdf {
namespace {

/// Characters that are drawn in colour wherever a font has them, and so do not suit a printed pack (Emoji_Presentation
/// below U+10000; Unicode Character Database, emoji-data.txt, version 14). Each pair is first and last.
struct Range {
    char32_t first, last;
};
constexpr std::array emoji{
    Range{0x231A, 0x231B}, Range{0x23E9, 0x23EC}, Range{0x23F0, 0x23F0}, Range{0x23F3, 0x23F3}, Range{0x25FD, 0x25FE},
    Range{0x2614, 0x2615}, Range{0x2648, 0x2653}, Range{0x267F, 0x267F}, Range{0x2693, 0x2693}, Range{0x26A1, 0x26A1},
    Range{0x26AA, 0x26AB}, Range{0x26BD, 0x26BE}, Range{0x26C4, 0x26C5}, Range{0x26CE, 0x26CE}, Range{0x26D4, 0x26D4},
    Range{0x26EA, 0x26EA}, Range{0x26F2, 0x26F3}, Range{0x26F5, 0x26F5}, Range{0x26FA, 0x26FA}, Range{0x26FD, 0x26FD},
    Range{0x2705, 0x2705}, Range{0x270A, 0x270B}, Range{0x2728, 0x2728}, Range{0x274C, 0x274C}, Range{0x274E, 0x274E},
    Range{0x2753, 0x2755}, Range{0x2757, 0x2757}, Range{0x2795, 0x2797}, Range{0x27B0, 0x27B0}, Range{0x27BF, 0x27BF},
    Range{0x2B1B, 0x2B1C}, Range{0x2B50, 0x2B50}, Range{0x2B55, 0x2B55}};

/// Punctuation and digits that Unicode counts as common to scripts but that only make sense in text from
/// right to left: blocks Hebrew to Arabic Extended-A, and the presentation forms.
constexpr std::array right_to_left{Range{0x0590, 0x08FF}, Range{0xFB1D, 0xFDFF}, Range{0xFE70, 0xFEFE}};

template <std::size_t N>
bool within(char32_t c, const std::array<Range, N>& ranges) {
    return std::any_of(ranges.begin(), ranges.end(), [c](Range r) { return r.first <= c && c <= r.last; });
}

hb_unicode_funcs_t* unicode() { return hb_unicode_funcs_get_default(); }

bool has_plain_script(char32_t c) {
    switch (hb_unicode_script(unicode(), c)) {
        case HB_SCRIPT_COMMON:
        case HB_SCRIPT_LATIN:
        case HB_SCRIPT_GREEK:
        case HB_SCRIPT_CYRILLIC:
        case HB_SCRIPT_ARMENIAN:
        case HB_SCRIPT_GEORGIAN: return true;
        default: return false;
    }
}

bool has_ink_or_width(char32_t c) {
    switch (hb_unicode_general_category(unicode(), c)) {
        case HB_UNICODE_GENERAL_CATEGORY_CONTROL:
        case HB_UNICODE_GENERAL_CATEGORY_FORMAT:
        case HB_UNICODE_GENERAL_CATEGORY_LINE_SEPARATOR:
        case HB_UNICODE_GENERAL_CATEGORY_PARAGRAPH_SEPARATOR:
        case HB_UNICODE_GENERAL_CATEGORY_PRIVATE_USE:
        case HB_UNICODE_GENERAL_CATEGORY_SURROGATE:
        case HB_UNICODE_GENERAL_CATEGORY_UNASSIGNED: return false;
        default: return !is_mark(c);
    }
}

}  // namespace

std::string utf16be(std::string_view utf8) {
    std::string out;
    const auto put = [&out](char32_t unit) {
        out += static_cast<char>(unit >> 8);
        out += static_cast<char>(unit & 0xFF);
    };
    for (std::size_t at = 0; at < utf8.size();) {
        const auto c = utf8::character_at(utf8, at);
        at += c.bytes;
        if (c.code < 0x10000) {
            put(c.code);
        } else {
            put(0xD800 + ((c.code - 0x10000) >> 10));
            put(0xDC00 + ((c.code - 0x10000) & 0x3FF));
        }
    }
    return out;
}

bool is_mark(char32_t c) {
    if (c < 0x300) return false;
    switch (hb_unicode_general_category(unicode(), c)) {
        case HB_UNICODE_GENERAL_CATEGORY_NON_SPACING_MARK:
        case HB_UNICODE_GENERAL_CATEGORY_SPACING_MARK:
        case HB_UNICODE_GENERAL_CATEGORY_ENCLOSING_MARK: return true;
        default: return false;
    }
}

bool is_invisible(char32_t c) {
    return c == 0x00AD || (c >= 0x200B && c <= 0x200E) || c == 0x2060 || c == 0xFEFF || (c >= 0xFE00 && c <= 0xFE0F);
}

bool stands_alone(char32_t c) {
    return c < 0x10000 && c != utf8::replacement && has_ink_or_width(c) && has_plain_script(c) &&
           !within(c, right_to_left) && !within(c, emoji);
}

std::size_t end_of_marks(std::string_view utf8, std::size_t at) {
    while (at < utf8.size()) {
        const auto c = utf8::character_at(utf8, at);
        if (!is_mark(c.code) || is_invisible(c.code)) break;
        at += c.bytes;
    }
    return at;
}

}  // namespace loopfolio::pdf
