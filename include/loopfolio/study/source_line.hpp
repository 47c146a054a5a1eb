// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::study {

/// The heat source's capacity at the temperature that it must supply, and the house's load, over the outdoor
/// temperature.
struct SourceLine {
    struct Point {
        Temperature outdoor;
        Power capacity;  ///< from the manufacturer's table, linear between its points
        Power load;      ///< heat that leaves the house: a straight line, zero at the mean temperature of the rooms
    };
    /// At least two, rising outdoor temperature: those of the table and, within it, the design day and the day without
    /// load.
    std::vector<Point> points;
    /// Temperature of the water that the heat source supplies, for which the capacity holds.
    Temperature made;
    /// The bivalent temperature, the term of EN 14825: capacity and load are equal there. None where one of them is
    /// larger along the whole table.
    std::optional<Point> balance;
};

/// Nothing where the manufacturer's table states no capacity, or the temperature lies outside it.
[[nodiscard]] std::optional<SourceLine> source_line(const job::Job& job, const design::Design& design);

}  // namespace loopfolio::study
