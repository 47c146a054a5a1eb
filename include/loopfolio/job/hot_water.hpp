// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>

namespace loopfolio::job {

/// A hot water cylinder and the hot water drawn from it.
struct HotWater {
    Input<double> persons;                           ///< above 0
    Input<Volume> each;                              ///< volume that each draws in a day, mixed at `drawn`; filled
    Input<Temperature> drawn;                        ///< filled
    Input<Temperature> cold;                         ///< temperature of the cold main; filled
    Input<Volume> store;                             ///< volume of the cylinder
    Input<Temperature> stored;                       ///< filled
    Input<double> usable;                            ///< share of the cylinder that can be drawn hot; filled
    std::optional<Input<HeatLossCoefficient>> coil;  ///< UA of the coil
    /// UA of a plate heat exchanger outside the cylinder, instead of a coil.
    std::optional<Input<HeatLossCoefficient>> plate;
    /// Flow temperature of the heat source while it heats the cylinder.
    Input<Temperature> source_flow;
    /// While it heats the cylinder; else from the manufacturer's points, else its capacity.
    std::optional<Input<Power>> source_capacity;
    std::optional<Input<Energy>> standing_loss;  ///< in a day, as tested at 45 K above the room
    std::optional<Input<Power>> immersion;
    std::optional<Input<double>> hot_cycles_a_year;  ///< times a year that the cylinder is heated to prevent legionella
    Input<Temperature> hot_cycle;                    ///< temperature of these cycles; filled
    Place place;
};

}  // namespace loopfolio::job
