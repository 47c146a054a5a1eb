// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/even_figures.hpp"

#include "pdf/sfnt.hpp"

#include <algorithm>
#include <memory>
#include <stdexcept>
#include <vector>

namespace loopfolio::pdf {
namespace {

using Figures = std::array<hb_codepoint_t, 10>;

hb_codepoint_t glyph_of(hb_font_t* font, char32_t c) {
    hb_codepoint_t glyph = 0;
    hb_font_get_nominal_glyph(font, c, &glyph);
    return glyph;
}

bool are_even(hb_font_t* font, const Figures& figures) {
    const hb_position_t first = hb_font_get_glyph_h_advance(font, figures.front());
    return std::all_of(figures.begin(), figures.end(),
                       [&](hb_codepoint_t glyph) { return hb_font_get_glyph_h_advance(font, glyph) == first; });
}

struct Destroy {
    void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};

/// The figures as the font sets them in tables; `plain` if it does not use one glyph for each figure.
Figures for_tables(hb_font_t* font, const Figures& plain) {
    const std::unique_ptr<hb_buffer_t, Destroy> buffer{hb_buffer_create()};
    hb_buffer_add_utf8(buffer.get(), "0123456789", -1, 0, -1);
    hb_buffer_guess_segment_properties(buffer.get());
    const hb_feature_t tabular{HB_TAG('t', 'n', 'u', 'm'), 1, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END};
    hb_shape(font, buffer.get(), &tabular, 1);
    unsigned count = 0;
    const hb_glyph_info_t* glyphs = hb_buffer_get_glyph_infos(buffer.get(), &count);
    if (count != plain.size()) return plain;
    Figures found{};
    std::transform(glyphs, glyphs + count, found.begin(), [](const hb_glyph_info_t& glyph) { return glyph.codepoint; });
    return are_even(font, found) ? found : plain;
}

}  // namespace

Figures figures_of(hb_font_t* font) {
    Figures figures{};
    for (std::size_t i = 0; i < figures.size(); ++i) figures[i] = glyph_of(font, U'0' + static_cast<char32_t>(i));
    return are_even(font, figures) ? figures : for_tables(font, figures);
}

std::string with_even_figures(hb_font_t* font, const Figures& figures, std::string_view bytes) {
    std::vector<hb_codepoint_t> glyphs{figures.begin(), figures.end()};
    hb_position_t advance = 0;
    for (const hb_codepoint_t glyph : glyphs) advance = std::max(advance, hb_font_get_glyph_h_advance(font, glyph));
    if (const hb_codepoint_t space = glyph_of(font, U'\u2007'); space != 0) glyphs.push_back(space);
    std::erase_if(glyphs, [&](hb_codepoint_t glyph) { return hb_font_get_glyph_h_advance(font, glyph) == advance; });
    if (glyphs.empty()) return {};
    const std::string_view metrics = table_of(bytes, "hmtx");  // an advance and a bearing a glyph
    const std::size_t count = big_endian(table_of(bytes, "hhea"), 34, 2);
    const auto start = static_cast<std::size_t>(metrics.data() - bytes.data());
    std::string even{bytes};
    for (const hb_codepoint_t glyph : glyphs) {
        const std::size_t at = 4 * std::size_t{glyph};
        if (glyph >= count || at + 2 > metrics.size()) {
            throw std::runtime_error{"its figures have no advance of their own"};
        }
        even[start + at] = static_cast<char>(advance >> 8);
        even[start + at + 1] = static_cast<char>(advance & 0xFF);
    }
    return even;
}

}  // namespace loopfolio::pdf
