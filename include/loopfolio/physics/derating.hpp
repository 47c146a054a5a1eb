// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <span>

/// What a cover, a finish or a way of connection leaves of an emitter's rated output.
namespace loopfolio::physics {

/// A share of the rated output with its range: 0 < low <= factor <= high <= 1.5.
struct Derating {
    double factor = 1.0;
    double low = 1.0;
    double high = 1.0;
};

/// Several at once: factors, lows and highs multiplied, as if none knew of the others. Common practice, no
/// source: a shelf inside a casing counts twice this way. None leave the rating as it is. Nothing for one
/// out of range.
[[nodiscard]] std::optional<Derating> all_of(std::span<const Derating> deratings);

}  // namespace loopfolio::physics
