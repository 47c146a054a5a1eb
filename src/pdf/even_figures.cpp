// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/even_figures.hpp"

#include <stdexcept>
#include <vector>

namespace loopfolio::pdf {
namespace {

hb_codepoint_t glyph_of(hb_font_t* font, char32_t c) {
    hb_codepoint_t glyph = 0;
    hb_font_get_nominal_glyph(font, c, &glyph);
    return glyph;
}

/// The glyphs whose advance is not that of 0.
std::vector<hb_codepoint_t> uneven(hb_font_t* font, hb_position_t advance) {
    std::vector<hb_codepoint_t> found;
    for (const char32_t c : std::u32string_view{U"123456789\u2007"}) {
        const hb_codepoint_t glyph = glyph_of(font, c);
        if (glyph != 0 && hb_font_get_glyph_h_advance(font, glyph) != advance) found.push_back(glyph);
    }
    return found;
}

std::size_t number(std::string_view bytes, std::size_t at, std::size_t length) {
    std::size_t value = 0;
    for (const char byte : bytes.substr(at, length)) value = value << 8 | static_cast<unsigned char>(byte);
    return value;
}

/// Where a table begins (OpenType 1.9, "Table directory": records of 16 bytes from byte 12, the place in the
/// file at byte 8 of each).
std::size_t table(std::string_view bytes, std::string_view tag) {
    constexpr std::size_t first = 12, record = 16;
    for (std::size_t i = 0; i < number(bytes, 4, 2); ++i) {
        const std::size_t at = first + record * i;
        if (bytes.substr(at, 4) == tag) return number(bytes, at + 8, 4);
    }
    throw std::runtime_error{"a font lacks a table"};
}

}  // namespace

std::string with_even_figures(hb_font_t* font, std::string_view bytes) {
    const hb_position_t advance = hb_font_get_glyph_h_advance(font, glyph_of(font, U'0'));
    const auto glyphs = uneven(font, advance);
    if (glyphs.empty()) return {};
    std::string even{bytes};
    const std::size_t metrics = table(bytes, "hmtx");           // an advance and a bearing a glyph
    const std::size_t count = number(bytes, table(bytes, "hhea") + 34, 2);
    for (const hb_codepoint_t glyph : glyphs) {
        if (glyph >= count) throw std::runtime_error{"a font has figures without an advance of their own"};
        even.at(metrics + 4 * glyph) = static_cast<char>(advance >> 8);
        even.at(metrics + 4 * glyph + 1) = static_cast<char>(advance & 0xFF);
    }
    return even;
}

}  // namespace loopfolio::pdf
