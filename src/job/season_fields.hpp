// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/field_makers.hpp"

/// The keys of the heating season.
namespace loopfolio::job {

/// Money in whatever currency the job names, and mass of carbon dioxide, for each kilowatt-hour of electricity.
inline constexpr NumberUnit money_per_kilowatt_hour{1.0, "per kWh", "_per_kwh"};
inline constexpr NumberUnit kilogram_per_kilowatt_hour{1.0, "kg/kWh", "_kg_per_kwh"};

inline constexpr double most_hours = 8784.0;   // of a leap year

inline constexpr std::array season_fields{
    choice("climate", depends),
    list("bins", depends, 1, 200),
    line("climate_file", optional),
    maybe_text("climate_source"),
    measure("base_c", optional, 8, 24, unit::celsius),
    measure("lowest_flow_c", optional, 20, 70, unit::celsius),
    flag("compensation"),
    measure("cycling_factor", optional, 0, 1, unit::number),
    Field{"compare_flows_c", Form::numbers, optional, 25, 80, "°C", "_c"},
    measure("standby_w", optional, 0, 500, unit::watt),
    measure("electricity_price_per_kwh", optional, 0, 10'000, money_per_kilowatt_hour),
    Field{"currency", Form::text, depends, 1, 12},
    measure("carbon_kg_per_kwh", optional, 0, 3, kilogram_per_kilowatt_hour),
};

inline constexpr std::array bin_fields{
    Field{"outdoor_c", Form::plain, always, -60, 40, "°C", "_c"},
    Field{"hours", Form::plain, always, 0, most_hours, "h", "", "a year has 8760 hours, a leap year 8784"},
};

inline constexpr std::array climate_row_fields{
    Field{"outdoor_c", Form::plain, always, -60, 50, "°C", "_c"},
    Field{"hours", Form::plain, depends, 0, most_hours, "h", "", "a year has 8760 hours, a leap year 8784"},
};

}  // namespace loopfolio::job
