// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/characters.hpp"

#include <hb.h>

#include <algorithm>
#include <array>

namespace loopfolio::pdf {
namespace {

/// Drawn in colour wherever they are known, and so not for a printed pack (Emoji_Presentation below
/// U+10000; Unicode Character Database, emoji-data.txt, version 14). Pairs are first and last.
struct Range {
    char32_t first, last;
};
constexpr std::array emoji{
    Range{0x231A, 0x231B}, Range{0x23E9, 0x23EC}, Range{0x23F0, 0x23F0}, Range{0x23F3, 0x23F3},
    Range{0x25FD, 0x25FE}, Range{0x2614, 0x2615}, Range{0x2648, 0x2653}, Range{0x267F, 0x267F},
    Range{0x2693, 0x2693}, Range{0x26A1, 0x26A1}, Range{0x26AA, 0x26AB}, Range{0x26BD, 0x26BE},
    Range{0x26C4, 0x26C5}, Range{0x26CE, 0x26CE}, Range{0x26D4, 0x26D4}, Range{0x26EA, 0x26EA},
    Range{0x26F2, 0x26F3}, Range{0x26F5, 0x26F5}, Range{0x26FA, 0x26FA}, Range{0x26FD, 0x26FD},
    Range{0x2705, 0x2705}, Range{0x270A, 0x270B}, Range{0x2728, 0x2728}, Range{0x274C, 0x274C},
    Range{0x274E, 0x274E}, Range{0x2753, 0x2755}, Range{0x2757, 0x2757}, Range{0x2795, 0x2797},
    Range{0x27B0, 0x27B0}, Range{0x27BF, 0x27BF}, Range{0x2B1B, 0x2B1C}, Range{0x2B50, 0x2B50},
    Range{0x2B55, 0x2B55}};

/// Punctuation and digits that Unicode counts as common to scripts but that only make sense in text from
/// right to left: blocks Hebrew to Arabic Extended-A, and the presentation forms.
constexpr std::array right_to_left{Range{0x0590, 0x08FF}, Range{0xFB1D, 0xFDFF}, Range{0xFE70, 0xFEFE}};

template <std::size_t N>
bool within(char32_t c, const std::array<Range, N>& ranges) {
    return std::any_of(ranges.begin(), ranges.end(),
                       [c](Range r) { return r.first <= c && c <= r.last; });
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

unsigned combining_class(char32_t c) { return hb_unicode_combining_class(unicode(), c); }

/// Splits `base` into its last base character and, at the front of `marks`, the marks that it carried.
void take_apart(char32_t& base, std::u32string& marks) {
    hb_codepoint_t first = 0, second = 0;
    while (hb_unicode_decompose(unicode(), base, &first, &second) && second != 0) {
        marks.insert(marks.begin(), second);
        base = first;
    }
}

/// How many bytes the sequence has that `lead` starts; 0 for a byte that starts none.
std::size_t length_of(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead < 0xE0) return 2;
    if (lead >= 0xE0 && lead < 0xF0) return 3;
    if (lead >= 0xF0 && lead < 0xF5) return 4;
    return 0;
}

bool is_valid(char32_t c, std::size_t length) {
    constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    return c >= least[length] && c <= 0x10FFFF && !(c >= 0xD800 && c <= 0xDFFF);
}

}  // namespace

char32_t decode(std::string_view utf8, std::size_t& at) {
    const auto lead = static_cast<unsigned char>(utf8[at]);
    if (lead < 0x80) {
        ++at;
        return lead;
    }
    const std::size_t length = length_of(lead);
    if (length == 0 || at + length > utf8.size()) {
        ++at;
        return bad_character;
    }
    char32_t c = lead & (0xFFu >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        const auto byte = static_cast<unsigned char>(utf8[at + i]);
        if ((byte & 0xC0) != 0x80) {
            ++at;
            return bad_character;
        }
        c = (c << 6) | (byte & 0x3Fu);
    }
    at += is_valid(c, length) ? length : 1;
    return is_valid(c, length) ? c : bad_character;
}

std::string utf16be(std::string_view utf8) {
    std::string out;
    const auto put = [&out](char32_t unit) {
        out += static_cast<char>(unit >> 8);
        out += static_cast<char>(unit & 0xFF);
    };
    for (std::size_t at = 0; at < utf8.size();) {
        const char32_t c = decode(utf8, at);
        if (c < 0x10000) {
            put(c);
        } else {
            put(0xD800 + ((c - 0x10000) >> 10));
            put(0xDC00 + ((c - 0x10000) & 0x3FF));
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
    return c == 0x00AD || (c >= 0x200B && c <= 0x200E) || c == 0x2060 || c == 0xFEFF ||
           (c >= 0xFE00 && c <= 0xFE0F);
}

bool stands_alone(char32_t c) {
    return c < 0x10000 && c != bad_character && has_ink_or_width(c) && has_plain_script(c) &&
           !within(c, right_to_left) && !within(c, emoji);
}

std::u32string compose(char32_t base, std::string_view utf8, std::size_t& at) {
    std::u32string marks;
    take_apart(base, marks);
    while (at < utf8.size()) {
        std::size_t next = at;
        const char32_t c = decode(utf8, next);
        if (!is_mark(c) || is_invisible(c)) break;
        marks += c;
        at = next;
    }
    std::stable_sort(marks.begin(), marks.end(),
                     [](char32_t a, char32_t b) { return combining_class(a) < combining_class(b); });
    std::u32string out{base};
    for (const char32_t mark : marks) {
        // A mark that stayed behind keeps the next one of its class from reaching the base.
        const bool blocked = out.size() > 1 && combining_class(out.back()) == combining_class(mark);
        hb_codepoint_t joined = 0;
        if (!blocked && hb_unicode_compose(unicode(), out[0], mark, &joined)) out[0] = joined;
        else out += mark;
    }
    return out;
}

}  // namespace loopfolio::pdf
