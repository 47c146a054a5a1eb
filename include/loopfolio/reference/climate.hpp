// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// Hours of a heating season at one outdoor temperature, in whole degrees.
struct ClimateRow {
    Temperature outdoor;
    Duration time;
};

/// Hours of a year without heating, and hours with a crankcase heater on, for a unit that is used only for heating.
struct StandbyHours {
    Duration thermostat_off;
    Duration standby;
    Duration crankcase_heater;
    Duration off;
};

/// A reference heating season of EN 14825. It does not describe a particular place: the climate of a site may lie
/// between two of them or outside all.
struct Climate {
    std::string_view name;                ///< in a job file: `average`
    std::string_view label;               ///< for a reader
    Temperature design;                   ///< that the design load belongs to
    Temperature limit;                    ///< at and above which nothing is heated
    std::span<const ClimateRow> rows;     ///< whole degrees, rising without a gap, to 1 K under the limit
    std::optional<StandbyHours> standby;  ///< where they are known
    std::string_view source;
};

/// Average, warmer, colder.
[[nodiscard]] std::span<const Climate> climates();
[[nodiscard]] const Climate* find_climate(std::string_view name);
[[nodiscard]] std::vector<std::string_view> climate_names();

}  // namespace loopfolio::reference
