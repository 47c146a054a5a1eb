// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace loopfolio::app {

/// The version of the program, which CMakeLists.txt defines.
[[nodiscard]] std::string_view version();

}  // namespace loopfolio::app
