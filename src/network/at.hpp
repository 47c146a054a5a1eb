// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

namespace loopfolio::network {

/// Converts an index to the type that containers use.
template <class Int>
constexpr std::size_t at(Int index) {
    return static_cast<std::size_t>(index);
}

}  // namespace loopfolio::network
