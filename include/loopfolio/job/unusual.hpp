// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"

#include <optional>
#include <span>
#include <vector>

/// Values that a job may state, and that are more often a slip than the truth. None of them is refused. The reader asks
/// about each with its place, and the pack lists each with the figures that are less certain.
namespace loopfolio::job {

enum class Unusual {
    outdoor,             ///< design outdoor temperature that the British Isles do not have; figure: °C
    room_area,           ///< smaller or larger than rooms of houses are; figure: m2
    emitter_length,      ///< longer than the longest wall that its room is likely to have; figure: metres
    rising_performance,  ///< COP rises as it gets colder; figure: the colder outdoor temperature, °C
    nominal_capacity,    ///< a nominal output instead of one at its temperatures; figure: W
    room_name,           ///< the name of another room as well; figure: 0
    pipework,            ///< more pipe than a house has; figure: metres of all sections, one way
};

/// `index` counts rooms or emitters. For the heat source it is 0, and from 1 on one of its further units.
struct UnusualValue {
    Unusual kind{};
    int index = 0;
    double figure = 0.0;
};

/// All of them, in the order of the job. A value that the job does not give is not asked about.
[[nodiscard]] std::vector<UnusualValue> unusual_values(const Job& job);

/// Two points of a manufacturer's table at the same flow temperature.
struct RisingPerformance {
    PerformancePoint colder, warmer;
};
/// The first two neighbours of which the colder has the higher COP. Frost on the outdoor coil lowers the COP of the
/// warmer one, so it is not counted where that one lies where frost forms: in the job's own range for defrosting, else
/// in the usual one. `sorted` is by outdoor temperature.
[[nodiscard]] std::optional<RisingPerformance> rising_performance(std::span<const PerformancePoint> sorted,
                                                                  const HeatSource& source);

}  // namespace loopfolio::job
