// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

namespace loopfolio {

/// Red, green and blue of sRGB, each 0 to 1.
struct Colour {
    double red = 0.0, green = 0.0, blue = 0.0;
    bool operator==(const Colour&) const = default;
};

/// Contrast of two colours, 1 to 21: the ratio of their relative luminances as WCAG 2.2 defines them.
[[nodiscard]] double contrast(const Colour& a, const Colour& b);

}  // namespace loopfolio
