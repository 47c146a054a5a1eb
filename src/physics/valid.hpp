// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <cmath>

/// What a relation asks of its inputs, whatever their dimension.
namespace loopfolio::physics {

inline double plain(double value) { return value; }
inline double plain(Temperature t) { return t.kelvin(); }
template <int Kg, int M, int S, int K>
double plain(Quantity<Kg, M, S, K> q) {
    return q.si();
}

template <class... Q>
bool all_finite(Q... values) {
    return (std::isfinite(plain(values)) && ...);
}

template <class... Q>
bool all_above_zero(Q... values) {
    return ((std::isfinite(plain(values)) && plain(values) > 0.0) && ...);
}

template <class... Q>
bool none_below_zero(Q... values) {
    return ((std::isfinite(plain(values)) && plain(values) >= 0.0) && ...);
}

/// Of the power law of emitters.
inline bool exponent_in_range(double n) {
    constexpr double lowest = 1.0, highest = 1.6;
    return n >= lowest && n <= highest;
}

}  // namespace loopfolio::physics
