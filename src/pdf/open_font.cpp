// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/even_figures.hpp"
#include "pdf/font_table.hpp"

#include <hb-ot.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace loopfolio::pdf {
namespace {

hb_glyph_extents_t box_of(const OpenFont& font, char32_t c) {
    hb_codepoint_t glyph = 0;
    hb_glyph_extents_t box{};
    hb_font_get_nominal_glyph(font.font.get(), c, &glyph);
    hb_font_get_glyph_extents(font.font.get(), glyph, &box);
    return box;
}

/// xMin to yMax of the table `head`, to which HarfBuzz gives no access (OpenType 1.9, "head": at byte 36).
std::array<double, 4> bounds(hb_face_t* face) {
    hb_blob_t* head = hb_face_reference_table(face, HB_TAG('h', 'e', 'a', 'd'));
    unsigned length = 0;
    const char* bytes = hb_blob_get_data(head, &length);
    std::array<double, 4> edges{};
    for (std::size_t i = 0; i < edges.size() && 38 + 2 * i <= length; ++i) {
        const auto high = static_cast<unsigned char>(bytes[36 + 2 * i]);
        const auto low = static_cast<unsigned char>(bytes[37 + 2 * i]);
        edges[i] = static_cast<std::int16_t>(high << 8 | low) / static_cast<double>(hb_face_get_upem(face));
    }
    hb_blob_destroy(head);
    return edges;
}

/// The name of a font as PDF allows it: only letters, figures and hyphens.
std::string postscript_name(hb_face_t* face) {
    constexpr hb_ot_name_id_t postscript = 6;  // OpenType 1.9, "name"
    char name[64]{};
    unsigned room = sizeof name;
    hb_ot_name_get_utf8(face, postscript, HB_LANGUAGE_INVALID, &room, name);
    std::string out;
    std::copy_if(std::begin(name), std::begin(name) + room, std::back_inserter(out), [](char c) {
        return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    });
    return out.empty() ? "Unnamed" : out;
}

OpenFont open_blob(std::string_view bytes, hb_memory_mode_t mode) {
    OpenFont open;
    hb_blob_t* blob = hb_blob_create(bytes.data(), static_cast<unsigned>(bytes.size()), mode, nullptr, nullptr);
    open.face.reset(hb_face_create(blob, 0));
    hb_blob_destroy(blob);
    open.font.reset(hb_font_create(open.face.get()));
    hb_face_make_immutable(open.face.get());
    hb_font_make_immutable(open.font.get());
    return open;
}

}  // namespace

OpenFont open_font(std::string_view bytes, bool lasting) {
    OpenFont open = open_blob(bytes, lasting ? HB_MEMORY_MODE_READONLY : HB_MEMORY_MODE_DUPLICATE);
    const auto figures = figures_of(open.font.get());
    if (const std::string even = with_even_figures(open.font.get(), figures, bytes); !even.empty()) {
        open = open_blob(even, HB_MEMORY_MODE_DUPLICATE);
    }
    open.figures = figures;
    open.units = hb_face_get_upem(open.face.get());
    open.box = bounds(open.face.get());
    const auto capital = box_of(open, U'H'), descender = box_of(open, U'p');
    open.cap_height = capital.y_bearing / static_cast<double>(open.units);
    open.descent = -(descender.y_bearing + descender.height) / static_cast<double>(open.units);
    open.name = postscript_name(open.face.get());
    open.italic_angle = static_cast<int>(std::lround(hb_style_get_value(open.font.get(), HB_STYLE_TAG_SLANT_ANGLE)));
    return open;
}

}  // namespace loopfolio::pdf
