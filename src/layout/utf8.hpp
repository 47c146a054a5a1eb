// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string_view>

namespace loopfolio::layout {

/// Where the letter that starts at `at` ends: one code point and the marks that combine with it. A byte
/// that is not UTF-8 counts as a letter of its own. `at` must be inside the text.
[[nodiscard]] std::size_t letter_end(std::string_view text, std::size_t at);

/// The code point at `at`, and in `next` where the one after it starts; U+FFFD for a broken sequence.
[[nodiscard]] char32_t code_point(std::string_view text, std::size_t at, std::size_t& next);

}  // namespace loopfolio::layout
