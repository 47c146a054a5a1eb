// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/look.hpp"
#include "loopfolio/layout/page.hpp"

/// Every size, colour and distance of the house style in one place, in points.
namespace loopfolio::layout {

/// How a piece of text is set.
struct TextStyle {
    double size = 9.8;
    double leading = 14.0;  ///< from baseline to baseline
    Face face = Face::regular;
    Colour colour;
};

namespace style {

inline constexpr double millimetre = 72.0 / 25.4;

// One deep accent and greys. All text colours have a contrast of at least 5 on white and on the tint, and the accent
// prints as a dark grey.
inline constexpr Palette palette;  // replaced by a firm's own colours on the finished pages
inline constexpr Colour ink = palette.ink;
inline constexpr Colour accent = palette.accent;
inline constexpr Colour grey = palette.grey;
inline constexpr Colour hairline = palette.hairline;
inline constexpr Colour tint = palette.tint;
inline constexpr Colour glow = palette.glow;
inline constexpr Colour white{1.0, 1.0, 1.0};

/// A page. The side margins are 22 mm; outside the frame are only the running head and the footer.
struct Sheet {
    double width = 595.276, height = 841.890;
    Box frame{62.4, 82.0, 595.276 - 62.4, 841.890 - 76.0};
    double first_top = 52.0;  ///< of the first page, which has no running head
    double header_baseline = 52.0;
    double footer_baseline = 841.890 - 45.0;
};
inline constexpr Sheet a4;
inline constexpr Sheet letter{612.0, 792.0, {62.4, 82.0, 612.0 - 62.4, 792.0 - 76.0}, 52.0, 52.0, 792.0 - 45.0};

inline constexpr double measure = 410.0;  // running text is set narrower than tables

// The type scale.
inline constexpr TextStyle body{9.8, 14.0, Face::regular, ink};
inline constexpr TextStyle lead{12.0, 17.5, Face::regular, ink};
inline constexpr TextStyle caution{9.4, 13.2, Face::regular, ink};
inline constexpr TextStyle small{8.5, 12.0, Face::regular, grey};
inline constexpr TextStyle running{8.0, 11.0, Face::regular, grey};
inline constexpr TextStyle title{30.0, 36.0, Face::bold, accent};
inline constexpr TextStyle subtitle{15.0, 21.0, Face::regular, ink};
inline constexpr TextStyle part_title{22.0, 28.0, Face::bold, accent};
inline constexpr TextStyle part_subtitle{12.0, 17.0, Face::regular, grey};
inline constexpr TextStyle chapter{15.0, 20.0, Face::bold, accent};
inline constexpr TextStyle section{12.0, 16.0, Face::bold, ink};
inline constexpr TextStyle small_head{10.0, 14.0, Face::bold, ink};
inline constexpr TextStyle caption{9.0, 13.0, Face::bold, ink};
inline constexpr TextStyle table{9.0, 12.4, Face::regular, ink};
inline constexpr TextStyle compact{8.0, 10.8, Face::regular, ink};
inline constexpr TextStyle figure{26.0, 31.0, Face::bold, accent};
inline constexpr TextStyle figure_unit{14.0, 31.0, Face::bold, accent};

// Distances between blocks.
inline constexpr double before_block = 8.0;
inline constexpr double before_display = 14.0;  ///< tables, charts, boxes
inline constexpr double before_heading[] = {26.0, 18.0, 12.0};
inline constexpr double after_heading[] = {7.0, 4.0, 2.0};

/// The same style in another face or colour.
[[nodiscard]] constexpr TextStyle in_face(TextStyle text, Face face) {
    text.face = face;
    return text;
}
[[nodiscard]] constexpr TextStyle in_colour(TextStyle text, Colour colour) {
    text.colour = colour;
    return text;
}
[[nodiscard]] constexpr TextStyle in_size(TextStyle text, double size) {
    text.leading *= size / text.size;
    text.size = size;
    return text;
}

}  // namespace style
}  // namespace loopfolio::layout
