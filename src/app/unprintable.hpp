// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/pdf/fonts.hpp"

#include <fmt/format.h>

#include <string>
#include <string_view>

namespace loopfolio::app {

/// Which characters of a text the pack could not show, in words; empty where all can be shown.
inline std::string unprintable_in(std::string_view text, const pdf::Fonts& fonts) {
    std::string names;
    for (const char32_t c : fonts.unprintable(text)) {
        names += fmt::format("{}U+{:04X}", names.empty() ? "" : ", ", static_cast<std::uint32_t>(c));
    }
    return names;
}

}  // namespace loopfolio::app
