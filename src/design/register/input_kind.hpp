// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace loopfolio::design {

/// How the register names and prints one kind of input.
template <class U>
struct InputKind {
    std::string_view what;
    U unit;
    int decimals;
};

}  // namespace loopfolio::design
