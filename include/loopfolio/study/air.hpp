// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/house.hpp"

#include <optional>
#include <string_view>
#include <vector>

/// The air of every room by the standard in force and by the table that it replaced, side by side.
namespace loopfolio::study {

/// Air changes and the heat that they take on the design day.
struct AirLoss {
    AirChangeRate rate;
    Power loss;
};

/// One heated room. Absent: that way gives it no air, as its loss is stated without one.
struct RoomAirLine {
    std::optional<AirLoss> standard;  ///< by EN 12831-1:2017, whatever the job states
    std::optional<AirLoss> replaced;  ///< by the replaced table
    std::optional<AirLoss> stated;    ///< as the job states them
    std::optional<AirLoss> counted;   ///< in this design
};

/// Of one way, over the house. The sum over the rooms sizes their emitters.
struct HouseAirLine {
    Power rooms;                       ///< sum over the rooms
    Power at_once;                     ///< what of it counts for the heat source
    std::optional<Power> source_load;  ///< what the heat source must make; absent where the house cannot be designed so
};

struct AirComparison {
    std::vector<RoomAirLine> rooms;  ///< by room
    HouseAirLine standard, replaced, counted;
    std::string_view replaced_source;  ///< key of the replaced table
    bool any = false;                  ///< some room has its air from one of the ways
    bool stated_any = false;           ///< some room states its own
};

[[nodiscard]] AirComparison compare_air(const design::House& house, const design::Design& design);

}  // namespace loopfolio::study
