// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// How long a heating season stays at one outdoor temperature, to the whole degree.
struct ClimateRow {
    Temperature outdoor;
    Duration time;
};

/// Hours of a year without heating, and those with a crankcase heater on, of a unit that only
/// heats.
struct StandbyHours {
    Duration thermostat_off;
    Duration standby;
    Duration crankcase_heater;
    Duration off;
};

/// A reference heating season of EN 14825. None of them is a place: a site's own climate lies
/// between them or beside them.
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
