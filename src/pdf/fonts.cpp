// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/fonts.hpp"

#include "pdf/characters.hpp"
#include "pdf/even_figures.hpp"
#include "pdf/font_table.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace loopfolio::pdf {
namespace {

using layout::Face;

hb_glyph_extents_t box_of(const OpenFont& font, char32_t c) {
    hb_codepoint_t glyph = 0;
    hb_glyph_extents_t box{};
    hb_font_get_nominal_glyph(font.font.get(), c, &glyph);
    hb_font_get_glyph_extents(font.font.get(), glyph, &box);
    return box;
}

/// xMin to yMax of the table `head`, which HarfBuzz keeps to itself (OpenType 1.9, "head": at byte 36).
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

OpenFont open_blob(hb_blob_t* blob) {
    OpenFont open;
    open.face.reset(hb_face_create(blob, 0));
    hb_blob_destroy(blob);
    open.font.reset(hb_font_create(open.face.get()));
    hb_face_make_immutable(open.face.get());
    hb_font_make_immutable(open.font.get());
    return open;
}

OpenFont open(FontFile file) {
    const std::string_view bytes = bytes_of(file);
    OpenFont open = open_blob(hb_blob_create(bytes.data(), static_cast<unsigned>(bytes.size()),
                                        HB_MEMORY_MODE_READONLY, nullptr, nullptr));
    if (const std::string even = with_even_figures(open.font.get(), bytes); !even.empty()) {
        open = open_blob(hb_blob_create(even.data(), static_cast<unsigned>(even.size()),
                                   HB_MEMORY_MODE_DUPLICATE, nullptr, nullptr));
    }
    open.units = hb_face_get_upem(open.face.get());
    open.box = bounds(open.face.get());
    const auto capital = box_of(open, U'H'), descender = box_of(open, U'p');
    open.cap_height = capital.y_bearing / static_cast<double>(open.units);
    open.descent = -(descender.y_bearing + descender.height) / static_cast<double>(open.units);
    return open;
}

/// Puts the file's glyphs into the places that are still empty.
void fill(std::vector<Glyph>& glyphs, const OpenFont& font, FontFile file) {
    hb_set_t* characters = hb_set_create();
    hb_face_collect_unicodes(font.face.get(), characters);
    for (hb_codepoint_t c = HB_SET_VALUE_INVALID; hb_set_next(characters, &c) && c < 0x10000;) {
        hb_codepoint_t id = 0;
        if (glyphs[c].id != 0 || !stands_alone(c)) continue;
        if (!hb_font_get_nominal_glyph(font.font.get(), c, &id)) continue;
        const double advance = hb_font_get_glyph_h_advance(font.font.get(), id);
        glyphs[c] = {static_cast<std::uint16_t>(id),
                     static_cast<std::uint16_t>(std::lround(1000.0 * advance / font.units)), file};
    }
    hb_set_destroy(characters);
}

std::vector<Glyph> table(const Fonts::Impl& impl, FontFile main, std::initializer_list<FontFile> fallbacks) {
    std::vector<Glyph> glyphs(0x10000);
    fill(glyphs, impl.file(main), main);
    // The same mark as the hyphen; taking it from another family would change its look within a word.
    constexpr char32_t non_breaking_hyphen = 0x2011;
    if (glyphs[non_breaking_hyphen].id == 0) glyphs[non_breaking_hyphen] = glyphs[U'-'];
    for (const FontFile fallback : fallbacks) fill(glyphs, impl.file(fallback), fallback);
    return glyphs;
}

}  // namespace

Fonts::Fonts() : impl_{std::make_unique<Impl>()} {
    for (std::size_t i = 0; i < font_file_count; ++i) impl_->files[i] = open(static_cast<FontFile>(i));
    impl_->glyphs = {table(*impl_, FontFile::regular, {FontFile::fallback}),
                     table(*impl_, FontFile::bold, {FontFile::fallback_bold, FontFile::fallback}),
                     table(*impl_, FontFile::italic, {FontFile::fallback})};
}

Fonts::~Fonts() = default;

double Fonts::width(std::string_view utf8, Face face, double size) const {
    std::uint64_t sum = 0;
    const std::uint16_t space = impl_->glyph(U' ', face).advance;
    for_each_character(utf8, [&](char32_t c) {
        const Glyph glyph = impl_->glyph(c, face);
        sum += glyph.id != 0 ? glyph.advance : space;
    });
    return static_cast<double>(sum) / 1000.0 * size;
}

// The first font files stand in the order of the faces.
double Fonts::cap_height(Face face) const { return impl_->file(static_cast<FontFile>(face)).cap_height; }

double Fonts::descent(Face face) const { return impl_->file(static_cast<FontFile>(face)).descent; }

std::vector<char32_t> Fonts::unprintable(std::string_view utf8) const {
    std::vector<char32_t> found;
    for_each_character(utf8, [&](char32_t c) {
        // Which face a text will be set in is not known here, so every face must hold the character.
        const bool printable =
            std::all_of(impl_->glyphs.begin(), impl_->glyphs.end(),
                        [c](const std::vector<Glyph>& face) { return c < face.size() && face[c].id != 0; });
        if (!printable && std::find(found.begin(), found.end(), c) == found.end()) found.push_back(c);
    });
    return found;
}

}  // namespace loopfolio::pdf
