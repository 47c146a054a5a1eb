// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>

namespace loopfolio::job {

/// The parts that keep the system's water under pressure, and what is added to the water. Pressures are gauge.
struct SystemWater {
    Input<Length> height;                      ///< height of the highest water above the expansion vessel
    Input<Pressure> safety_valve;              ///< pressure setting
    std::optional<Input<Volume>> vessel;       ///< nominal volume of the present or chosen vessel
    std::optional<Input<Pressure>> precharge;  ///< of that vessel; absent: the pressure that the height needs
    std::optional<Input<Pressure>> cold_fill;  ///< absent: the pressure that the vessel's reserve needs
    Input<Temperature> fill_temperature;       ///< filled unless stated
    /// Highest that the water can reach; filled from the flow temperature.
    Input<Temperature> highest_temperature;
    std::optional<Input<Volume>> source_content;  ///< water content of the heat source
    std::optional<Input<Volume>> other_content;   ///< water content of coils and of pipes that are not surveyed
    /// L for each kW of ΔT50 rating, for emitters that state no water content.
    Input<double> content_of_rating;
    std::optional<Input<double>> inhibitor_dose;  ///< share of the system volume
    std::optional<Input<Temperature>> frost;      ///< that the water must withstand
    bool antifreeze_valves = false;               ///< valves that drain the water in frost, used instead of glycol
    std::optional<Input<Energy>> defrost_heat;    ///< heat that one defrost takes from the water
    Input<TemperatureDifference> defrost_fall;    ///< temperature fall of the water that is allowed during a defrost
    /// Minimum volume that the manufacturer of the heat source requires.
    std::optional<Input<Volume>> least_volume;
    /// Volume of the circuits that no valve shuts off; absent: the whole system is assumed open.
    std::optional<Input<Volume>> always_open;
    Place place;
};

}  // namespace loopfolio::job
