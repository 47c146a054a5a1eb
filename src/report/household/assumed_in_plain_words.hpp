// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string>
#include <string_view>

namespace loopfolio::report {

/// The household's name for an input: `How well the walls hold heat` for `U-value, wall`.
[[nodiscard]] std::string plain_input(const templates::Texts& words, std::string_view what);

/// How much was assumed, and the few assumptions that could make the most difference.
[[nodiscard]] Blocks assumed_in_plain_words(const Context& context);

}  // namespace loopfolio::report
