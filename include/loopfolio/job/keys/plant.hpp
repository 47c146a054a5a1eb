// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/job/keys/makers.hpp"
#include "loopfolio/job/names.hpp"

/// The keys for everything beyond rooms and pipes: hot water, the system's water, sound.
namespace loopfolio::job {

namespace keys {

inline constexpr auto hot_water = table(
    flag("store", &Job::hot_water_store)
        .in_record("hot_water_store")
        .left_out("`false`")
        .means("Whether there is a hot-water store."),
    flag("unvented", &Job::unvented_hot_water)
        .in_record("unvented_hot_water")
        .left_out("`false`")
        .means("Whether it is unvented; needs `store: true`."),
    mapping("supply", optional)
        .left_out("no sheet")
        .means("What is drawn from the store and how it is heated; needs `store: true`."));

inline constexpr auto supply = table(
    number("persons", always, 0.5, 30, unit::number, &HotWater::persons)
        .in_register("persons that draw hot water", 1)
        .means("Who draws hot water."),
    number("each_l", optional, 5, 300, unit::litre, &HotWater::each)
        .in_register("hot water for each person a day", 0)
        .otherwise(&reference::Defaults::hot_water_each)
        .left_out("50 (35 to 80)")
        .means("Drawn a day by each, mixed at `drawn_c`."),
    number("drawn_c", optional, 30, 60, unit::celsius, &HotWater::drawn)
        .in_register("hot water as drawn", 1)
        .otherwise(&reference::Defaults::hot_water_drawn)
        .left_out("40")
        .means("At the tap."),
    number("cold_c", optional, 1, 25, unit::celsius, &HotWater::cold)
        .in_register("cold water main", 1)
        .otherwise(&reference::Defaults::cold_water)
        .left_out("10 (5 to 15)")
        .means("Of the water main."),
    number("store_l", always, 20, 2000, unit::litre, &HotWater::store)
        .in_register("content of hot-water store", 0)
        .advises("a store of no litres is no store: leave `supply` out")
        .means("Content of the store."),
    number("stored_c", optional, 40, 70, unit::celsius, &HotWater::stored)
        .in_register("hot water as stored", 1)
        .otherwise(&reference::Defaults::hot_water_stored)
        .left_out("50")
        .means("That the store is kept at."),
    number("usable_percent", optional, 40, 100, unit::percent, &HotWater::usable)
        .in_register("share of the store drawn hot", 0)
        .otherwise(&reference::Defaults::store_usable)
        .left_out("80 (70 to 90)")
        .means("Share of the store that leaves it hot."),
    number("coil_ua_w_per_k", depends, 20, 20'000, unit::watt_per_kelvin, &HotWater::coil)
        .in_register("UA of the store's coil", 0)
        .means("Heat through the coil for each kelvin of log mean difference. This or `plate_ua_w_per_k`."),
    number("plate_ua_w_per_k", depends, 20, 50'000, unit::watt_per_kelvin, &HotWater::plate)
        .in_register("UA of the store's plate exchanger", 0)
        .means("The same of a plate exchanger beside the store."),
    number("source_flow_c", always, 35, 80, unit::celsius, &HotWater::source_flow)
        .in_register("flow temperature for hot water", 1)
        .means("Flow temperature that the heat source makes for hot water; above `stored_c`."),
    number("source_capacity_kw", optional, 0.5, 100, unit::kilowatt, &HotWater::source_capacity)
        .in_register("heat source capacity for hot water", 2)
        .left_out("the maker's points")
        .means("What the heat source makes then; without points, its `capacity_kw`."),
    number("standing_loss_kwh", optional, 0, 20, unit::kilowatt_hour, &HotWater::standing_loss)
        .in_register("standing loss of the store a day", 2)
        .left_out("not counted")
        .means("A day, as tested at 45 K over the room."),
    number("immersion_kw", optional, 0.5, 12, unit::kilowatt, &HotWater::immersion)
        .in_register("immersion heater", 1)
        .left_out("none")
        .means("Electric heater in the store."),
    number("hot_cycles_a_year", optional, 0, 366, unit::number, &HotWater::hot_cycles_a_year)
        .in_register("hot cycles of the store a year", 0)
        .left_out("none")
        .means("How often the store is made hotter against legionella."),
    number("hot_cycle_c", optional, 55, 75, unit::celsius, &HotWater::hot_cycle)
        .in_register("hot cycle's temperature", 1)
        .listed_where([](const HotWater& h) { return h.hot_cycles_a_year.has_value(); })
        .otherwise(&reference::Defaults::hot_cycle)
        .left_out("60")
        .means("That it is then made."));

inline constexpr auto system_water = table(
    number("height_m", always, 0, 30, unit::metre, &SystemWater::height)
        .in_register("height over the expansion vessel", 1)
        .means("Of the highest water over the expansion vessel."),
    number("safety_valve_bar", always, 1, 10, unit::bar, &SystemWater::safety_valve)
        .in_register("safety valve setting", 1)
        .means("Its setting."),
    number("vessel_l", optional, 1, 1000, unit::litre, &SystemWater::vessel)
        .in_register("content of expansion vessel", 0)
        .left_out("the next usual size is named")
        .means("Nominal content of the vessel that is there or chosen."),
    number("precharge_bar", optional, 0.2, 6, unit::bar, &SystemWater::precharge)
        .in_register("precharge of expansion vessel", 2)
        .left_out("what the height needs, 0.7 at least")
        .means("Of the vessel; below the safety valve."),
    number("cold_fill_bar", optional, 0.3, 8, unit::bar, &SystemWater::cold_fill)
        .in_register("cold fill pressure", 2)
        .left_out("what puts the reserve into the vessel")
        .means("Not below the precharge, stated or found; below the safety valve."),
    number("fill_temperature_c", optional, 4, 25, unit::celsius, &SystemWater::fill_temperature)
        .in_register("temperature of the fill", 1)
        .otherwise(&reference::Defaults::fill_temperature)
        .left_out("10")
        .means("Of the water when it is filled."),
    number("highest_temperature_c", optional, 30, 95, unit::celsius, &SystemWater::highest_temperature)
        .in_register("highest temperature of the system", 1)
        .left_out("the warmest flow temperature")
        .means("That the water can come to."),
    number("source_content_l", optional, 0, 200, unit::litre, &SystemWater::source_content)
        .in_register("content of heat source", 1)
        .left_out("none")
        .means("Water in the heat source."),
    number("other_content_l", optional, 0, 1000, unit::litre, &SystemWater::other_content)
        .in_register("content not surveyed elsewhere", 1)
        .left_out("none")
        .means("Coils, pipes that are not surveyed."),
    number("content_of_rating_l_per_kw", optional, 1, 30, unit::litre_per_kilowatt, &SystemWater::content_of_rating)
        .in_register("content of emitters for their rating", 1)
        .otherwise(&reference::Defaults::content_of_rating)
        .left_out("5 (3 to 10)")
        .means("For emitters that state no `water_content_l`: for each kilowatt at 50 K."),
    number("inhibitor_dose_percent", optional, 0.05, 5, unit::percent, &SystemWater::inhibitor_dose)
        .in_register("inhibitor dose", 2)
        .left_out("none")
        .means("Of the content, by its maker."),
    number("frost_c", optional, -40, 0, unit::celsius, &SystemWater::frost)
        .in_register("frost that the water has to stand", 1)
        .left_out("none")
        .means("That the water has to stand."),
    flag("antifreeze_valves", &SystemWater::antifreeze_valves)
        .left_out("`false`")
        .means("Valves that let plain water out before it freezes; not with glycol."),
    number("defrost_heat_kwh", optional, 0.01, 10, unit::kilowatt_hour, &SystemWater::defrost_heat)
        .in_register("heat of one defrost", 2)
        .left_out("none")
        .means("That one defrost takes from the water."),
    number("defrost_fall_k", optional, 1, 20, unit::kelvin, &SystemWater::defrost_fall)
        .in_register("fall of the water in a defrost", 1)
        .listed_where([](const SystemWater& w) { return w.defrost_heat.has_value(); })
        .otherwise(&reference::Defaults::defrost_fall)
        .left_out("5 (3 to 8)")
        .means("That the water may cool meanwhile."),
    number("least_volume_l", optional, 1, 500, unit::litre, &SystemWater::least_volume)
        .in_register("least volume that the source needs", 0)
        .left_out("none")
        .means("That the maker of the heat source asks to be always open."),
    number("always_open_l", optional, 0, 2000, unit::litre, &SystemWater::always_open)
        .in_register("volume that no valve shuts off", 0)
        .left_out("the whole content")
        .means("In circuits that no valve shuts; not more than the content."));

inline constexpr auto sound = table(
    number("power_level_db", always, 30, 90, unit::decibel, &Sound::power_level)
        .in_register("sound power level of the outdoor unit", 0)
        .means("Sound power level of one unit, dB(A), by its maker; all units of the heat source are counted, as if "
               "they stood in one place."),
    number("distance_m", always, 0.5, 200, unit::metre, &Sound::distance)
        .in_register("distance to the neighbour's window", 1)
        .means("From the unit to the window."),
    choice("standing", always, "place", &Sound::standing, sound_place_names)
        .means("`on_ground`, `by_wall` or `in_corner`: how many large hard surfaces stand beside it."),
    number("barrier_db", optional, 0, 30, unit::decibel, &Sound::barrier)
        .in_register("sound that a barrier takes off", 0)
        .left_out("nothing between")
        .means("What a barrier takes off, as the designer judges."),
    number("background_db", optional, 10, 80, unit::decibel, &Sound::background)
        .in_register("sound without the unit", 0)
        .left_out("not counted")
        .means("Heard at the window without the unit, dB(A)."),
    number("limit_db", optional, 20, 70, unit::decibel, &Sound::limit)
        .in_register("sound limit of the local rule", 0)
        .left_out("no verdict")
        .means("Of the local rule, dB(A)."),
    maybe_line("rule", &Sound::rule).left_out("nothing").means("Its name, as it is to be printed."));

}  // namespace keys

}  // namespace loopfolio::job
