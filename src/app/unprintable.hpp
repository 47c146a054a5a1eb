// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/pdf/fonts.hpp"

#include <fmt/format.h>

#include <string>
#include <string_view>

namespace loopfolio::app {

/// The characters of a text that the pack cannot print, in words. Empty if all can be printed.
inline std::string unprintable_in(std::string_view text, const pdf::Fonts& fonts) {
    std::string names;
    for (const char32_t c : fonts.unprintable(text)) {
        names += fmt::format("{}U+{:04X}", names.empty() ? "" : ", ", static_cast<std::uint32_t>(c));
    }
    return names;
}

}  // namespace loopfolio::app
