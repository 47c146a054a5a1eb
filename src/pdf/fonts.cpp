// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/fonts.hpp"

#include "pdf/characters.hpp"
#include "pdf/font_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <stdexcept>

namespace loopfolio::pdf {
namespace {

using layout::Face;

constexpr double widest = 30.0;  // em; a wider one is a fault of the file

/// Adds the file's glyphs for the characters that have none yet.
void fill(std::vector<Glyph>& glyphs, const OpenFont& font, FontFile file) {
    hb_set_t* characters = hb_set_create();
    hb_face_collect_unicodes(font.face.get(), characters);
    for (hb_codepoint_t c = HB_SET_VALUE_INVALID; hb_set_next(characters, &c) && c < 0x10000;) {
        hb_codepoint_t id = 0;
        if (glyphs[c].id != 0 || !stands_alone(c)) continue;
        if (!hb_font_get_nominal_glyph(font.font.get(), c, &id)) continue;
        if (c >= U'0' && c <= U'9') id = font.figures[c - U'0'];
        const double advance = hb_font_get_glyph_h_advance(font.font.get(), id);
        if (!(advance >= 0.0 && advance <= widest * font.units)) continue;
        glyphs[c] = {static_cast<std::uint16_t>(id),
                     static_cast<std::uint16_t>(std::lround(1000.0 * advance / font.units)), file};
    }
    hb_set_destroy(characters);
}

std::vector<Glyph> table(const Fonts::Impl& impl, FontFile main, std::initializer_list<FontFile> fallbacks) {
    std::vector<Glyph> glyphs(0x10000);
    fill(glyphs, impl.file(main), main);
    // It looks like the hyphen. Taken from another family it would change the look within a word.
    constexpr char32_t non_breaking_hyphen = 0x2011;
    if (glyphs[non_breaking_hyphen].id == 0) glyphs[non_breaking_hyphen] = glyphs[U'-'];
    for (const FontFile fallback : fallbacks) fill(glyphs, impl.file(fallback), fallback);
    return glyphs;
}

void check(std::string_view bytes, std::size_t face) {
    constexpr std::array<const char*, 3> names{"regular", "bold", "italic"};
    if (const std::string fault = fault_of_font(bytes); !fault.empty()) {
        throw std::runtime_error{fmt::format("the font for {} {}", names[face], fault)};
    }
}

}  // namespace

Fonts::Fonts() : Fonts{FontBytes{}} {}

Fonts::Fonts(const FontBytes& files) : impl_{std::make_unique<Impl>()} {
    const std::array<std::string_view, 3> given{files.regular, files.bold, files.italic};
    for (std::size_t i = 0; i < font_file_count; ++i) {
        const bool replaced = i < given.size() && !given[i].empty();
        if (replaced) check(given[i], i);
        impl_->files[i] = open_font(replaced ? given[i] : bytes_of(static_cast<FontFile>(i)), !replaced);
    }
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

// The first font files are in the order of the faces.
double Fonts::cap_height(Face face) const { return impl_->file(static_cast<FontFile>(face)).cap_height; }

double Fonts::descent(Face face) const { return impl_->file(static_cast<FontFile>(face)).descent; }

std::vector<char32_t> Fonts::unprintable(std::string_view utf8) const {
    std::vector<char32_t> found;
    for_each_character(utf8, [&](char32_t c) {
        // The face in which a text will be set is not known here, so every face must have the character.
        const bool printable = std::all_of(
            impl_->glyphs.begin(), impl_->glyphs.end(),
            [c](const std::vector<Glyph>& face) { return c < face.size() && face[c].id != 0; });
        if (!printable && std::find(found.begin(), found.end(), c) == found.end()) found.push_back(c);
    });
    return found;
}

}  // namespace loopfolio::pdf
