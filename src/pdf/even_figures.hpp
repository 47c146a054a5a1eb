// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <hb.h>

#include <string>
#include <string_view>

namespace loopfolio::pdf {

/// Figures stand in columns. In Lato 2.0 Italic the 6 and the figure space are 0.046 em too narrow.
/// Gives the font file `bytes`, which `font` is open on, with the advance of 0 for 1 to 9 and for the figure
/// space; empty where they have it already. It is changed in the file itself, as PDF/A wants the widths in a
/// document to be those of the font program (ISO 19005-3, 6.2.11.5).
[[nodiscard]] std::string with_even_figures(hb_font_t* font, std::string_view bytes);

}  // namespace loopfolio::pdf
