// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/layout/page.hpp"

#include <optional>
#include <string_view>

namespace loopfolio::layout {

/// How wide text is. Layout owns the question; whoever holds the fonts answers it.
class TextMeasurer {
public:
    virtual ~TextMeasurer() = default;
    /// Sum of advances in points at this size. Characters that no font holds count as the space.
    [[nodiscard]] virtual double width(std::string_view utf8, Face face, double size) const = 0;
    /// Height of a capital and depth of a descender at size 1.
    [[nodiscard]] virtual double cap_height(Face face) const = 0;
    [[nodiscard]] virtual double descent(Face face) const = 0;
};

}  // namespace loopfolio::layout
