// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"

namespace loopfolio::tests {

template <class Q>
Input<Q> measured(Q value) {
    return Input<Q>{value, Basis::measured, {}, {}, {}, {}};
}

template <class Q>
Input<Q> assumed(Q value, Q low, Q high) {
    return Input<Q>{value, Basis::assumed, low, high, "judged on site", {}};
}

}  // namespace loopfolio::tests
