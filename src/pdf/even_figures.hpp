// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <hb.h>

#include <array>
#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// Figures stand in columns. The glyphs of 0 to 9: where these are not as wide as each other, those that
/// the font keeps for tables (OpenType 1.9, feature tnum), if it has any.
[[nodiscard]] std::array<hb_codepoint_t, 10> figures_of(hb_font_t* font);

/// For what is uneven still, as the 6 and the figure space of Lato 2.0 Italic, which are 0.046 em too
/// narrow: gives the font file `bytes`, which `font` is open on, with the widest advance of `figures` for
/// all of them and for the figure space; empty where they have it already. It is changed in the file
/// itself, as PDF/A wants the widths in a document to be those of the font program (ISO 19005-3, 6.2.11.5).
/// Throws std::runtime_error where the file has no advance to change.
[[nodiscard]] std::string with_even_figures(hb_font_t* font, const std::array<hb_codepoint_t, 10>& figures,
                                            std::string_view bytes);

}  // namespace loopfolio::pdf
