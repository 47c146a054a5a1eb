// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/scale.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::layout {

namespace {

/// The smallest of 1, 2 and 5 times a power of ten that is at least `rough`.
double round_step(double rough) {
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power >= rough * (1.0 - 1e-9)) return factor * power;
    }
    return 10.0 * power;
}

}  // namespace

Scale scale_for(double low, double high, double most_ticks) {
    if (!(high - low > 0.0)) high = low + 1.0;
    Scale scale;
    scale.step = round_step((high - low) / most_ticks);
    scale.low = std::floor(low / scale.step + 1e-9) * scale.step;
    scale.high = std::ceil(high / scale.step - 1e-9) * scale.step;
    scale.decimals = std::clamp(static_cast<int>(-std::floor(std::log10(scale.step) + 1e-9)), 0, 9);
    return scale;
}

std::vector<double> ticks_of(const Scale& scale) {
    std::vector<double> ticks;
    const auto last = std::lround((scale.high - scale.low) / scale.step);
    for (long k = 0; k <= last; ++k) {
        const double value = scale.low + static_cast<double>(k) * scale.step;
        ticks.push_back(std::abs(value) < 1e-6 * scale.step ? 0.0 : value);
    }
    return ticks;
}

bool drawable(double value) { return std::isfinite(value) && std::abs(value) < 1e15; }

}  // namespace loopfolio::layout
