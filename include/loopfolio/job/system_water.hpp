// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>

namespace loopfolio::job {

/// What keeps the water of the system at its pressure, and what is put into it. Pressures are over the atmosphere.
struct SystemWater {
    Input<Length> height;                            ///< of the highest water over the expansion vessel
    Input<Pressure> safety_valve;                    ///< setting
    std::optional<Input<Volume>> vessel;             ///< nominal content of the one that is there or chosen
    std::optional<Input<Pressure>> precharge;        ///< of that vessel; else what the height needs
    std::optional<Input<Pressure>> cold_fill;        ///< else what the vessel's reserve needs
    Input<Temperature> fill_temperature;             ///< filled unless stated
    Input<Temperature> highest_temperature;          ///< that the water can come to; filled from the flow temperature
    std::optional<Input<Volume>> source_content;     ///< of the heat source
    std::optional<Input<Volume>> other_content;      ///< coils, pipes that are not surveyed
    Input<double> content_of_rating;                 ///< L for each kW at 50 K, for emitters that state no content
    std::optional<Input<double>> inhibitor_dose;     ///< share of the content
    std::optional<Input<Temperature>> frost;         ///< that the water has to stand
    bool antifreeze_valves = false;                  ///< they let the water out instead of glycol
    std::optional<Input<Energy>> defrost_heat;       ///< that one defrost takes from the water
    Input<TemperatureDifference> defrost_fall;       ///< that the water may cool meanwhile
    std::optional<Input<Volume>> least_volume;       ///< that the maker of the heat source asks for
    std::optional<Input<Volume>> always_open;        ///< in the circuits that no valve closes; else all of it is taken
    Place place;
};

}  // namespace loopfolio::job
