// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <hb.h>

#include <array>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// The glyphs of 0 to 9. Figures are set in columns; so if these glyphs differ in width, the font's tabular figures are
/// used instead (OpenType 1.9, feature tnum), if it has any.
[[nodiscard]] std::array<hb_codepoint_t, 10> figures_of(hb_font_t* font);

/// Corrects figures that are still uneven, such as the 6 and the figure space of Lato 2.0 Italic, which are 0.046 em
/// too narrow. Returns the font file `bytes`, on which `font` is open, with the widest advance of `figures` for all of
/// them and for the figure space; empty if they all have it already. The file itself is changed, as PDF/A requires the
/// widths in a document to be those of the font program (ISO 19005-3, 6.2.11.5). Throws std::runtime_error if the file
/// has no advance to change.
[[nodiscard]] std::string with_even_figures(hb_font_t* font, const std::array<hb_codepoint_t, 10>& figures,
                                            std::string_view bytes);

}  // namespace loopfolio::pdf
