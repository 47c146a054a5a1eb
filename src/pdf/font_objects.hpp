// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "pdf/font_table.hpp"
#include "pdf/haru.hpp"

#include <array>
#include <cstdint>
#include <memory>
#include <vector>

namespace loopfolio::pdf {

/// One font file in one document. It assigns codes to characters as they appear and, at the end, writes the font with
/// only those characters.
class DocumentFont {
public:
    DocumentFont(const HaruDocument& document, const Fonts::Impl& fonts, FontFile file);

    /// The two-byte code of a character, which is created if it has none yet. None of its bytes has to be escaped in a
    /// literal string.
    [[nodiscard]] std::uint16_t code(char32_t c, Glyph glyph) {
        const Page& page = pages_[c >> 8];
        const std::uint16_t code = page ? (*page)[c & 0xFF] : 0;
        return code != 0 ? code : new_code(c, glyph);
    }

    /// The dictionary for a page's resources.
    [[nodiscard]] HPDF_Dict dictionary() const { return dictionary_; }

    /// Fills in the dictionary. Call it once, after the last character.
    void finish();

private:
    struct Used {
        char32_t character = 0;  ///< 0 if the code is not used
        Glyph glyph;
    };
    using Page = std::unique_ptr<std::array<std::uint16_t, 256>>;

    [[nodiscard]] std::uint16_t new_code(char32_t c, Glyph glyph);
    [[nodiscard]] std::string to_unicode() const;
    [[nodiscard]] HPDF_Array widths() const;
    [[nodiscard]] HPDF_Dict descriptor(const std::string& name, const std::string& font_file) const;

    const HaruDocument& document_;
    const OpenFont& font_;
    FontFile file_;
    HPDF_Dict dictionary_;
    std::array<Page, 256> pages_;  ///< the codes of 256 characters each; 0 for none
    std::vector<Used> used_;       ///< by code, from 1
};

}  // namespace loopfolio::pdf
