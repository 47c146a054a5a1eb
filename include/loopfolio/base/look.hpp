// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/colour.hpp"

/// The parts of a pack's look that a firm may choose. Sizes in points.
namespace loopfolio {

enum class Paper { a4, letter };

/// The colours of a pack, by use. Verdicts are shown by shape, not by colour.
struct Palette {
    Colour ink{0.11, 0.13, 0.14};       ///< running text
    Colour accent{0.08, 0.30, 0.35};    ///< headings, figures set large, marks
    Colour grey{0.35, 0.39, 0.41};      ///< notes, running heads
    Colour hairline{0.76, 0.79, 0.80};  ///< rules
    Colour tint{0.935, 0.95, 0.955};    ///< behind rows and boxes
    Colour glow{0.83, 0.89, 0.90};      ///< behind the index circuit, inside light bars
};

}  // namespace loopfolio
