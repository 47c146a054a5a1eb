// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

namespace loopfolio::layout {

/// Round ticks over a range of values.
struct Scale {
    double low = 0.0, high = 1.0, step = 1.0;
    int decimals = 0;  ///< decimals that its ticks need
};

/// Ticks at 1, 2 or 5 times a power of ten, from at or below `low` to at or above `high`, and at most about
/// `most_ticks` of them. A range of no width is widened.
[[nodiscard]] Scale scale_for(double low, double high, double most_ticks);

/// The values of the ticks. A tick at zero is exactly zero.
[[nodiscard]] std::vector<double> ticks_of(const Scale& scale);

/// Whether a chart can show a value.
[[nodiscard]] bool drawable(double value);

}  // namespace loopfolio::layout
