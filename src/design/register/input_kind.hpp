// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

namespace loopfolio::design {

/// How a register names and prints one kind of input.
template <class U>
struct InputKind {
    const char* what;
    const U& unit;
    int decimals;
};

}  // namespace loopfolio::design
