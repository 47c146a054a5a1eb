// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/defaults.hpp"

#include "loopfolio/base/unit.hpp"

namespace loopfolio::reference {

namespace {

constexpr std::string_view common_practice = "common-practice";

constexpr Temperature celsius(double value) { return Temperature::from_celsius(value); }
constexpr Volume litres(double value) { return value * unit::litre; }
constexpr TemperatureDifference kelvin(double value) { return value * unit::kelvin; }

constexpr Defaults table = {
    .no_heat_above = {celsius(15.5), "degree-days"},
    .factor_of_unheated = {0.5, common_practice, 0.3, 0.8},  // half way, until the job knows better
    .factor_of_ground = {1.0, "iso-13370"},
    .fill_temperature = {celsius(10.0), "en-12828"},
    .content_of_rating = {5.0, common_practice, 3.0, 10.0},  // panels 3 to 6, columns and old castings 10 or more
    .defrost_fall = {kelvin(5.0), common_practice, kelvin(3.0), kelvin(8.0)},
    .hot_water_each = {litres(50.0), common_practice, litres(35.0), litres(80.0)},
    .hot_water_drawn = {celsius(40.0), common_practice},
    .cold_water = {celsius(10.0), common_practice, celsius(5.0), celsius(15.0)},
    .hot_water_stored = {celsius(50.0), common_practice},
    .store_usable = {0.8, common_practice, 0.7, 0.9},
    .hot_cycle = {celsius(60.0), "hse-hsg274"},
    // The standard's base is one for all houses; sun, people and insulation move it (range: common practice, no
    // source).
    .season_base = {celsius(16.0), "en-14825", celsius(14.0), celsius(17.0)},
    .cycling_factor = {0.9, "en-14825"},
};

}  // namespace

const Defaults& defaults() { return table; }

}  // namespace loopfolio::reference
