// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::study {

/// What the heat source can make at the temperature that it must make, and what the house needs, against the weather.
struct SourceLine {
    struct Point {
        Temperature outdoor;
        Power capacity;    ///< by the maker's table, straight between its points
        Power load;        ///< heat leaving the house: a straight line to none at the rooms' mean temperature
    };
    std::vector<Point> points;      ///< at least two, rising outdoor temperature: the table's; inside it the design day's and that of no load
    Temperature made;               ///< water that the source makes, at which the capacity is taken
    /// The bivalent temperature, as EN 14825 names it: capacity and load are equal there. None where one is above the other all along the table.
    std::optional<Point> balance;
};

/// Nothing where the maker's table states no capacity, or the temperature lies outside it.
[[nodiscard]] std::optional<SourceLine> source_line(const job::Job& job, const design::Design& design);

}  // namespace loopfolio::study
