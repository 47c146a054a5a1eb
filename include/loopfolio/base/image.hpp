// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

namespace loopfolio {

/// A picture in sRGB without transparency: transparent parts have been blended with white.
struct Image {
    int width = 0, height = 0;      ///< pixels
    std::vector<std::uint8_t> rgb;  ///< three bytes a pixel, row by row from the top left
};

}  // namespace loopfolio
