// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string>
#include <string_view>

namespace loopfolio::report {

/// What the household hears of an input: `How well the walls hold heat` for `U-value, wall`.
[[nodiscard]] std::string plain_input(const templates::Texts& words, std::string_view what);

/// How much was assumed, and the few things that could make the most difference.
[[nodiscard]] Blocks assumed_in_plain_words(const Context& context);

}   // namespace loopfolio::report
