// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace loopfolio::app {

/// The version of the program, from the build's one statement of it.
[[nodiscard]] std::string_view version();

}  // namespace loopfolio::app
