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
// GCC needs no guide for an aggregate; older versions of Clang do.
template <class U>
InputKind(std::string_view, U, int) -> InputKind<U>;

}  // namespace loopfolio::design
