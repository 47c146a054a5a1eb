// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopfolio::job {

/// Hours of the season at one outdoor temperature.
struct OutdoorHours {
    Temperature outdoor;
    Duration time;
};

/// The heating season to calculate. It needs a manufacturer's table with every capacity.
struct Season {
    std::string climate;       ///< name in reference::climates(); empty where the job gives its own hours
    std::string climate_file;  ///< file that `bins` are read from, as the job names it; else empty
    /// Hours in a file of hourly temperatures, which are grouped by whole degrees; else 0.
    int readings = 0;
    std::vector<OutdoorHours> bins;  ///< sorted by outdoor temperature; empty with `climate`
    std::string climate_source;      ///< source of the hours; may be empty
    /// What the hours are, where they are a part of a year: `January 2026`. Empty where the figures hold for a year.
    std::string period;
    Input<Temperature> base;  ///< outdoor temperature from which heating is off; filled unless stated
    /// Minimum flow temperature of the heat source; filled with the lowest in its manufacturer's table.
    Input<Temperature> lowest_flow;
    /// The flow temperature follows the weather; else it stays at the design's.
    bool compensation = true;
    Input<double> cycling_factor;  ///< Cc of EN 14825, 0 to 1; filled unless stated
    /// At most four, rising: design flow temperatures for which the season is calculated again.
    std::vector<Temperature> compare_flows;
    std::optional<Input<Power>> standby;  ///< electric power drawn while there is no heating
    std::optional<Input<double>> price;   ///< of electricity, in `currency` per kilowatt-hour
    std::string currency;
    std::optional<Input<double>> carbon;  ///< of electricity, in kg of carbon dioxide per kilowatt-hour
    Place place;
};

}  // namespace loopfolio::job
