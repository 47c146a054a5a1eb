// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>
#include <optional>

namespace loopfolio {

/// A root of the continuous function `f` between `low` and `high`, where it changes sign, to `tolerance` in x. Uses the
/// Illinois variant of false position, which keeps the bracket and converges faster than linearly, and halves the
/// bracket where that stalls. Nothing where the ends do not have opposite signs.
template <class F>
[[nodiscard]] std::optional<double> find_root(F&& f, double low, double high, double tolerance) {
    double f_low = f(low), f_high = f(high);
    if (f_low == 0.0) return low;
    if (f_high == 0.0) return high;
    if (!(f_low * f_high < 0.0)) return {};
    int last_side = 0;
    for (int i = 0; i < 200 && std::abs(high - low) > tolerance; ++i) {
        double x = (low * f_high - high * f_low) / (f_high - f_low);
        if (i % 8 == 7 || !(x > std::fmin(low, high) && x < std::fmax(low, high))) x = 0.5 * (low + high);
        const double y = f(x);
        if (y == 0.0 || (i > 0 && std::abs(y) < 1e-300)) return x;
        if (y * f_low < 0.0) {
            high = x;
            f_high = y;
            if (last_side == 1) f_low *= 0.5;
            last_side = 1;
        } else {
            low = x;
            f_low = y;
            if (last_side == -1) f_high *= 0.5;
            last_side = -1;
        }
    }
    return std::abs(f_low) < std::abs(f_high) ? low : high;
}

}  // namespace loopfolio
