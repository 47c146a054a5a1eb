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

/// Hours that a season stays at one outdoor temperature.
struct OutdoorHours {
    Temperature outdoor;
    Duration time;
};

/// The heating season that a job asks to be reckoned. It comes with a maker's table that states every capacity.
struct Season {
    std::string climate;                     ///< name in reference::climates(); empty with hours of the job's own
    std::string climate_file;                ///< that `bins` are read from, as the job names it; else empty
    int readings = 0;                        ///< hours of a file of hourly temperatures, gathered by whole degrees; else 0
    std::vector<OutdoorHours> bins;          ///< rising outdoor temperature; empty with `climate`
    std::string climate_source;              ///< where the hours come from; may be empty
    Input<Temperature> base;                 ///< outdoor, at and above which nothing is heated; filled unless stated
    Input<Temperature> lowest_flow;          ///< that the source makes; filled with the coldest of its maker's table
    bool compensation = true;                ///< flow temperature follows the weather; else it stays at the design's
    Input<double> cycling_factor;            ///< Cc of EN 14825, 0 to 1; filled unless stated
    std::vector<Temperature> compare_flows;  ///< at most four, rising: design flow temperatures to reckon it again with
    std::optional<Input<Power>> standby;     ///< electricity drawn while nothing is heated
    std::optional<Input<double>> price;      ///< of a kilowatt-hour of electricity, in `currency`
    std::string currency;
    std::optional<Input<double>> carbon;     ///< kg of carbon dioxide for a kilowatt-hour of electricity
    Place place;
};

}  // namespace loopfolio::job
