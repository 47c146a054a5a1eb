// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string_view>

namespace loopfolio::reference {

/// The value assumed where a job states nothing, with the key of its source, and its range where one is known.
template <class Q>
struct Default {
    Q value;
    std::string_view source;
    std::optional<Q> low = {};
    std::optional<Q> high = {};
};

/// Defaults of single keys of a job that are in no table of their own.
struct Defaults {
    Default<Temperature> no_heat_above;     ///< outdoor: the milder day lies half way from the design day to it
    Default<double> factor_of_unheated;     ///< share of the difference to outdoors that an unheated space keeps
    Default<double> factor_of_ground;       ///< a ground floor's U-value holds for the outdoor temperature already
    Default<Temperature> fill_temperature;  ///< of the system's water when it is filled
    Default<double> content_of_rating;      ///< litres of an emitter for each kilowatt at 50 K
    Default<TemperatureDifference> defrost_fall;  ///< that the water may cool in a defrost
    Default<Volume> hot_water_each;               ///< drawn by each person a day
    Default<Temperature> hot_water_drawn;
    Default<Temperature> cold_water;  ///< of the main
    Default<Temperature> hot_water_stored;
    Default<double> store_usable;      ///< share of a store that leaves it hot
    Default<Temperature> hot_cycle;    ///< that a store is warmed to against germs
    Default<Temperature> season_base;  ///< outdoor, at and above which nothing is heated
    Default<double> cycling_factor;    ///< Cc of EN 14825
};
[[nodiscard]] const Defaults& defaults();

}  // namespace loopfolio::reference
