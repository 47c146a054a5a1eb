// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/pdf/fonts.hpp"
#include "pdf/embedded.hpp"

#include <hb.h>

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {

/// The glyph of a character, in the file that prints it. `id` 0 is the glyph for a missing character.
struct Glyph {
    std::uint16_t id = 0;
    /// In thousandths of the em, rounded. That is the unit of widths in a PDF, and some readers drop the fraction. As
    /// it is rounded here, once, layout and every reader use the same width.
    std::uint16_t advance = 0;
    FontFile file = FontFile::regular;
};

struct HbDestroy {
    void operator()(hb_face_t* face) const { hb_face_destroy(face); }
    void operator()(hb_font_t* font) const { hb_font_destroy(font); }
};

/// One font file, opened. Lengths are fractions of the em.
struct OpenFont {
    std::unique_ptr<hb_face_t, HbDestroy> face;
    std::unique_ptr<hb_font_t, HbDestroy> font;
    unsigned units = 0;  ///< in an em
    double cap_height = 0.0, descent = 0.0;
    std::array<hb_codepoint_t, 10> figures{};  ///< glyphs of 0 to 9, all of the same width
    std::string name;                          ///< its PostScript name
    int italic_angle = 0;                      ///< degrees, negative where it leans to the right
    std::array<double, 4> box{};               ///< left, bottom, right and top of the box of all glyphs
};

/// Opens a font file. If `lasting`, the bytes must outlive the font; otherwise they are copied. Throws
/// std::runtime_error if its figures cannot be made even.
[[nodiscard]] OpenFont open_font(std::string_view bytes, bool lasting);

/// The data that is read once for a batch: for each face, the glyph of every character up to U+FFFF, so that measuring
/// takes one look-up and one addition a character.
struct Fonts::Impl {
    std::array<OpenFont, font_file_count> files;
    std::array<std::vector<Glyph>, 3> glyphs;

    [[nodiscard]] const OpenFont& file(FontFile f) const { return files[static_cast<std::size_t>(f)]; }

    [[nodiscard]] Glyph glyph(char32_t c, layout::Face face) const {
        return c < 0x10000 ? glyphs[static_cast<std::size_t>(face)][c] : Glyph{};
    }
};

}  // namespace loopfolio::pdf
