// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <hb.h>

#include <cstdint>
#include <string>
#include <vector>

namespace loopfolio::pdf {

/// A font file cut down to some glyphs, with the tables that a PDF reader needs and no others.
struct Subset {
    std::string bytes;
    std::vector<std::uint16_t> ids;  ///< the new number of each glyph asked for, in the same order
};

/// Throws std::runtime_error where the font cannot be cut down.
[[nodiscard]] Subset subset(hb_face_t* face, const std::vector<std::uint16_t>& glyphs);

}  // namespace loopfolio::pdf
