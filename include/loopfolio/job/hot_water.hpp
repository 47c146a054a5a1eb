// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>

namespace loopfolio::job {

/// A store of hot water and what is drawn from it.
struct HotWater {
    Input<double> persons;                           ///< above 0
    Input<Volume> each;                              ///< drawn a day by each, mixed at `drawn`; filled
    Input<Temperature> drawn;                        ///< filled
    Input<Temperature> cold;                         ///< of the main; filled
    Input<Volume> store;                             ///< content
    Input<Temperature> stored;                       ///< filled
    Input<double> usable;                            ///< share of the store that can be drawn hot; filled
    std::optional<Input<HeatLossCoefficient>> coil;  ///< UA of the coil
    std::optional<Input<HeatLossCoefficient>> plate; ///< or of a plate exchanger beside the store
    Input<Temperature> source_flow;                  ///< that the heat source makes while it heats the store
    std::optional<Input<Power>> source_capacity;     ///< while it does; else from the maker's points, else its capacity
    std::optional<Input<Energy>> standing_loss;      ///< a day, as tested at 45 K over the room
    std::optional<Input<Power>> immersion;
    std::optional<Input<double>> hot_cycles_a_year;  ///< of warming the store against germs
    Input<Temperature> hot_cycle;                    ///< that it is then warmed to; filled
    Place place;
};

}  // namespace loopfolio::job
