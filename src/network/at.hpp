// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

namespace loopfolio::network {

/// An index as containers want it.
template <class Int>
constexpr std::size_t at(Int index) {
    return static_cast<std::size_t>(index);
}

}  // namespace loopfolio::network
