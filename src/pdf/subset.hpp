// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <hb.h>

#include <cstdint>
#include <string>
#include <vector>

namespace loopfolio::pdf {

/// A font file reduced to some glyphs, with only those tables that a PDF reader needs.
struct Subset {
    std::string bytes;
    std::vector<std::uint16_t> ids;  ///< the new number of each glyph asked for, in the same order
};

/// Throws std::runtime_error if the font cannot be reduced.
[[nodiscard]] Subset subset(hb_face_t* face, const std::vector<std::uint16_t>& glyphs);

}  // namespace loopfolio::pdf
