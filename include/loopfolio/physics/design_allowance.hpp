// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>

/// What a design load takes on top, and where it is reckoned.
namespace loopfolio::physics {

/// Power to warm a room again after a set-back, EN 12831-1: A phi, with phi from the national table or as
/// stated. Area > 0, flux >= 0.
[[nodiscard]] std::optional<Power> heat_up_power(Area floor, HeatFlux allowance);

/// A load with a margin for use now and then: load (1 + margin). Load >= 0, margin 0 to 1.
[[nodiscard]] std::optional<Power> with_margin(Power load, double margin);

/// Cooling with height, kelvin per metre.
using Lapse = Quantity<0, -1, 0, 1>;

/// Outdoor temperature of a site that lies above the station its design temperature was taken at: station -
/// lapse height. Height 0 to 1000 m, lapse >= 0. A lower site is not warmed by this: it keeps the station's
/// figure, as height 0.
[[nodiscard]] std::optional<Temperature> outdoor_at_height(Temperature station, Length above_station, Lapse lapse);

}  // namespace loopfolio::physics
