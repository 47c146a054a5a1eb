// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/ventilation.hpp"

#include "loopfolio/base/unit.hpp"

#include <array>
#include <cstddef>
#include <utility>

namespace loopfolio::reference {

namespace {

constexpr std::string_view standard_source = "en-12831-1-air";
constexpr std::string_view guide_source = "dhdg-2026";

constexpr auto air_by = std::to_array<Named<AirBy>>({
    {AirBy::en_12831_2017, "en_12831_2017", "EN 12831-1:2017"},
    {AirBy::bs_5449_1990, "bs_5449_1990", "BS 5449:1990"},
    {AirBy::guide_categories, "guide_categories", "the categories of the Domestic Heating Design Guide of 2021"},
});
constexpr auto categories = std::to_array<Named<GuideCategory>>({
    {GuideCategory::a, "a", "A: older houses"},
    {GuideCategory::b, "b", "B: built about 2000"},
    {GuideCategory::c, "c", "C: built or fully treated after 2006"},
});

/// Air changes of one use, an hour: the minimum of the standard with its range, and the guide's categories A, B and C.
struct Row {
    RoomUse use;
    double least, least_low, least_high;
    std::array<double, 3> category;
};
// The minimum holds for rooms with windows. Its upper end in kitchens and wet rooms is the 1.5 of the edition of 2003,
// its lower end a room whose air other rooms hand on; the other ends are common practice. The categories are from
// memory.
constexpr auto rows = std::to_array<Row>({
    {RoomUse::living, 0.5, 0.3, 0.7, {1.5, 1.0, 0.5}},
    {RoomUse::dining, 0.5, 0.3, 0.7, {1.5, 1.0, 0.5}},
    {RoomUse::kitchen, 0.5, 0.3, 1.5, {2.0, 1.5, 0.5}},
    {RoomUse::bedroom, 0.5, 0.3, 0.7, {1.0, 1.0, 0.5}},
    {RoomUse::bedroom_with_ensuite, 0.5, 0.3, 1.0, {2.0, 1.5, 1.0}},
    {RoomUse::bathroom, 0.5, 0.0, 1.5, {3.0, 1.5, 0.5}},
    {RoomUse::toilet, 0.5, 0.0, 1.5, {3.0, 1.5, 1.5}},
    {RoomUse::hall, 0.0, 0.0, 0.5, {2.0, 1.0, 0.5}},
    {RoomUse::landing, 0.0, 0.0, 0.5, {2.0, 1.0, 0.5}},
    {RoomUse::study, 0.5, 0.3, 0.7, {1.5, 1.5, 0.5}},
    {RoomUse::utility, 0.5, 0.0, 1.5, {3.0, 2.0, 0.5}},
    {RoomUse::store, 0.5, 0.0, 0.5, {1.0, 0.5, 0.5}},
});
constexpr const Row& row_of(RoomUse use) { return rows[static_cast<std::size_t>(use)]; }

constexpr Cited<AirChangeRate> rate(double value, double low, double high, std::string_view source) {
    return {unit::per_hour(value), unit::per_hour(low), unit::per_hour(high), source};
}

constexpr StandardAir defaults_of_standard{
    // The standard's table by shelter and height was not read: its other values are known to lie about this one.
    .volume_flow_factor = {0.05, 0.03, 0.07, standard_source},
    .direction_factor = 2.0,
    .facade_factor_one = 12.0,
    .facade_factor_more = 8.0,
    .house_share = 0.5,
    .source = standard_source,
};

constexpr auto flues = std::to_array<Named<Flue>>({
    {Flue::none, "none", ""},
    {Flue::open_fireplace, "open_fireplace", "open fireplace"},
    {Flue::open_flue, "open_flue", "open flue"},
    {Flue::closed_stove, "closed_stove", "closed stove"},
    {Flue::solid_fuel_boiler, "solid_fuel_boiler", "solid fuel boiler"},
    {Flue::blocked_chimney, "blocked_chimney", "blocked and vented chimney"},
});

constexpr Cited<VolumeFlow> flow(double value, double low, double high) {
    constexpr auto per_hour = unit::cubic_metre_per_hour;
    return {per_hour(value), per_hour(low), per_hour(high), "sap-10"};
}
// The ends of the ranges are common practice; the 40 of an open fireplace is that of the procedure of 2012.
constexpr std::array flue_rates{flow(0, 0, 0),   flow(80, 40, 120), flow(20, 10, 40),
                                flow(10, 5, 20), flow(20, 10, 40),  flow(20, 0, 40)};
static_assert(flue_rates.size() == flues.size());

}  // namespace

std::span<const Named<AirBy>> air_by_names() { return air_by; }
std::span<const Named<GuideCategory>> guide_category_names() { return categories; }
std::span<const Named<Flue>> flue_names() { return flues; }

std::string_view edition_of(AirBy by) {
    switch (by) {
        case AirBy::en_12831_2017: return "en-12831-1";
        case AirBy::bs_5449_1990: return "bs-5449-1990";
        case AirBy::guide_categories: return "dhdg";
    }
    return "";
}

Cited<AirChangeRate> replaced_air_changes(AirBy by, RoomUse use, GuideCategory category) {
    const auto& older = defaults_for(use);
    if (by != AirBy::guide_categories) {
        return rate(older.air_changes_per_hour, older.air_changes_low, older.air_changes_high,
                    older.air_changes_source);
    }
    const auto& of = row_of(use).category;
    return rate(of[static_cast<std::size_t>(category)], of[2], of[0], edition_of(by));
}

const StandardAir& standard_air() { return defaults_of_standard; }

Cited<AirChangeRate> minimum_air(RoomUse use) {
    const auto& row = row_of(use);
    return rate(row.least, row.least_low, row.least_high, guide_source);
}

Cited<Velocity> untested_permeability(Nation nation, date::year_month_day day, std::optional<Era> era) {
    constexpr auto per = unit::cubic_metre_per_hour_square_metre;
    // Houses of the last decades were tested against limits of 10 and less; tests of older ones spread from 2 to 29.
    const bool late = era && *era >= Era::from_2007;
    for (const auto& [rule, source] : {std::pair{Rule::scheme_design, std::string_view{"mis-3005-d"}},
                                       std::pair{Rule::design_guide, guide_source}}) {
        if (const auto set = figure_in_force(rule, Setting::permeability, nation, day))
            return {per(set->value), per(late ? 3.0 : 6.0), per(late ? 12.0 : 20.0), source};
    }
    return {per(12.0), per(late ? 3.0 : 6.0), per(late ? 12.0 : 20.0), "common-practice"};
}

Cited<VolumeFlow> flue_air(Flue flue) { return flue_rates[static_cast<std::size_t>(flue)]; }

}  // namespace loopfolio::reference
