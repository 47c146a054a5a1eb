// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/season.hpp"
#include "loopfolio/reference/climate.hpp"

/// The keys of the heating season.
namespace loopfolio::job {

inline constexpr double most_hours = 8784.0;  ///< of a leap year

consteval Words hours_a_year(Need need) {
    Words out = plain("hours", need, 0, most_hours).advises("a year has 8760 hours, a leap year 8784");
    out.field.unit = unit::hour.symbol;
    return out;
}

namespace keys {

inline constexpr auto season = table(
    choice("climate", depends, "climate", &Season::climate, reference::climate_names)
        .means("`average`, `warmer` or `colder`: a reference climate of EN 14825. This, `bins` or `climate_file`."),
    list("bins", depends, 1, 200)
        .means("Hours of the place itself: a whole year, or all the hours of a year that need heat. These are at least "
               "2000 and reach up to `base_c`, as near as the step between the two warmest. Anything less needs "
               "`period`."),
    line("climate_file", optional, &Season::climate_file)
        .by_hand()
        .means("A [file beside the job](#catalogue-files-beside-the-job) with the weather of the place. Its hours are "
               "asked the same as those of `bins`."),
    maybe_text("climate_source", &Season::climate_source).left_out("nothing").means("Where the hours come from."),
    line("period", optional, &Season::period)
        .left_out("a year")
        .means(
            "What the hours are, where `bins` or `climate_file` hold a part of a year alone: `January 2026`. The pack "
            "then prints it with the figures and calls none of them a year's."),
    number("base_c", optional, 8, 24, unit::celsius, &Season::base)
        .in_register("outdoor temperature without heating", 1)
        .otherwise(&reference::Defaults::season_base)
        .left_out("16 (14 to 17)")
        .means("Outdoor temperature at and above which nothing is heated."),
    number("lowest_flow_c", optional, 20, 70, unit::celsius, &Season::lowest_flow)
        .in_register("lowest flow temperature of heat source", 1)
        .left_out("the coldest flow of the points")
        .means("That the source makes."),
    flag("compensation", &Season::compensation)
        .left_out("`true`")
        .means("Whether the flow temperature follows the weather; else it stays at the design's."),
    number("cycling_factor", optional, 0, 1, unit::number, &Season::cycling_factor)
        .in_register("cycling factor", 2)
        .otherwise(&reference::Defaults::cycling_factor)
        .left_out("0.9")
        .means("Cc of EN 14825: 1 where starting and stopping costs nothing."),
    makers::numbers("compare_flows_c", optional, 25, 80, unit::celsius)
        .left_out("none")
        .means("One to four flow temperatures of the design day to reckon the season again with."),
    number("standby_w", optional, 0, 500, unit::watt, &Season::standby)
        .in_register("electricity while nothing is heated", 0)
        .left_out("none")
        .means("Electricity drawn while nothing is heated, over the rest of 8,760 hours or of the `period`."),
    number("electricity_price_per_kwh", optional, 0, 10'000, money_per_kilowatt_hour, &Season::price)
        .in_record("price")
        .in_register("price of electricity", 4)
        .left_out("no cost")
        .means("In `currency`. Nothing, or far from usual in pounds, euros, dollars or francs (0.02 to 2), draws a "
               "warning."),
    makers::entry("currency", Form::text, depends, 1.0, 12.0, &Season::currency)
        .means("Needed with a price: `GBP`, `£`."),
    number("carbon_kg_per_kwh", optional, 0, 3, kilogram_per_kilowatt_hour, &Season::carbon)
        .in_register("carbon dioxide of electricity", 3)
        .left_out("no carbon")
        .means("Carbon dioxide for each kilowatt-hour of electricity."));

inline constexpr auto bin = table(
    plain("outdoor_c", always, -60, 40, unit::celsius).means("Outdoor temperature, each once."),
    hours_a_year(always).means("Hours a year; all together at most 8784."));

inline constexpr auto climate_row = table(
    plain("outdoor_c", always, -60, 50, unit::celsius)
        .means("Outdoor temperature; the same one may come again. A year without an hour below the base is refused, "
               "one whose coldest hour lies over 15 K from the design outdoor temperature is warned of."),
    hours_a_year(depends).left_out("one hour").means("In every line or in none; all together at most 8784."));

}  // namespace keys

}  // namespace loopfolio::job
