// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/field_makers.hpp"

/// The keys of what stands beside rooms and pipes: hot water, the system's water, sound.
namespace loopfolio::job {

inline constexpr std::array hot_water_fields{flag("store"), flag("unvented"), mapping("supply", optional)};

inline constexpr std::array supply_fields{
    measure("persons", always, 0.5, 30, unit::number),
    measure("each_l", optional, 5, 300, unit::litre),
    measure("drawn_c", optional, 30, 60, unit::celsius),
    measure("cold_c", optional, 1, 25, unit::celsius),
    measure("store_l", always, 20, 2000, unit::litre, "a store of no litres is no store: leave `supply` out"),
    measure("stored_c", optional, 40, 70, unit::celsius),
    measure("usable_percent", optional, 40, 100, unit::percent),
    measure("coil_ua_w_per_k", depends, 20, 20'000, unit::watt_per_kelvin),
    measure("plate_ua_w_per_k", depends, 20, 50'000, unit::watt_per_kelvin),
    measure("source_flow_c", always, 35, 80, unit::celsius),
    measure("source_capacity_kw", optional, 0.5, 100, unit::kilowatt),
    measure("standing_loss_kwh", optional, 0, 20, unit::kilowatt_hour),
    measure("immersion_kw", optional, 0.5, 12, unit::kilowatt),
    measure("hot_cycles_a_year", optional, 0, 366, unit::number),
    measure("hot_cycle_c", optional, 55, 75, unit::celsius),
};

inline constexpr std::array system_water_fields{
    measure("height_m", always, 0, 30, unit::metre),
    measure("safety_valve_bar", always, 1, 10, unit::bar),
    measure("vessel_l", optional, 1, 1000, unit::litre),
    measure("precharge_bar", optional, 0.2, 6, unit::bar),
    measure("cold_fill_bar", optional, 0.3, 8, unit::bar),
    measure("fill_temperature_c", optional, 4, 25, unit::celsius),
    measure("highest_temperature_c", optional, 30, 95, unit::celsius),
    measure("source_content_l", optional, 0, 200, unit::litre),
    measure("other_content_l", optional, 0, 1000, unit::litre),
    measure("content_of_rating_l_per_kw", optional, 1, 30, unit::litre_per_kilowatt),
    measure("inhibitor_dose_percent", optional, 0.05, 5, unit::percent),
    measure("frost_c", optional, -40, 0, unit::celsius),
    flag("antifreeze_valves"),
    measure("defrost_heat_kwh", optional, 0.01, 10, unit::kilowatt_hour),
    measure("defrost_fall_k", optional, 1, 20, unit::kelvin),
    measure("least_volume_l", optional, 1, 500, unit::litre),
    measure("always_open_l", optional, 0, 2000, unit::litre),
};

inline constexpr std::array sound_fields{
    measure("power_level_db", always, 30, 90, unit::decibel),
    measure("distance_m", always, 0.5, 200, unit::metre),
    choice("standing", always),
    measure("barrier_db", optional, 0, 30, unit::decibel),
    measure("background_db", optional, 10, 80, unit::decibel),
    measure("limit_db", optional, 20, 70, unit::decibel),
    maybe_line("rule"),
};

}  // namespace loopfolio::job
