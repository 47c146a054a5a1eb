// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/allowances.hpp"

#include "loopfolio/base/unit.hpp"
#include "reference/rows.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::reference {

namespace {

constexpr auto per_100_m(double kelvin) { return Quantity<0, -1, 0, 1>::from_si(kelvin / 100.0); }

constexpr Allowances values{
    {per_100_m(0.6), per_100_m(0.5), per_100_m(1.0), "height-rule"},
    {20.0, 10.0, 30.0, "common-practice"},
    {0.15, 0.10, 0.20, "bs-5449-1990"},
};

constexpr std::string_view en_12831_2003 = "en-12831-2003";

constexpr auto shielding_table = std::to_array<Shielding>({
    {"open", "no shelter: windy place, high above its surroundings", 0.03, 0.05, en_12831_2003},
    {"moderate", "some shelter: trees or other houses round it", 0.02, 0.03, en_12831_2003},
    {"heavy", "much shelter: middle of a town, wood", 0.01, 0.02, en_12831_2003},
});

constexpr HeatUpRow row(double fall, double hours, double allowance) {
    return {unit::kelvin(fall), unit::hour(hours), unit::watt_per_square_metre(allowance), en_12831_2003};
}
constexpr auto heat_up = std::to_array<HeatUpRow>({
    row(1, 1, 11),
    row(2, 1, 22),
    row(3, 1, 45),
    row(1, 2, 6),
    row(2, 2, 11),
    row(3, 2, 22),
    row(1, 3, 4),
    row(2, 3, 9),
    row(3, 3, 16),
    row(1, 4, 2),
    row(2, 4, 7),
    row(3, 4, 13),
});

}  // namespace

const Allowances& allowances() { return values; }

std::span<const Shielding> shieldings() { return shielding_table; }
const Shielding* find_shielding(std::string_view name) { return find_row(shielding_table, name); }

HeightFactor height_factor(Length above_ground) {
    if (above_ground > unit::metre(30.0)) return {1.5, en_12831_2003};
    return {above_ground > unit::metre(10.0) ? 1.2 : 1.0, en_12831_2003};
}

std::span<const HeatUpRow> heat_up_rows() { return heat_up; }

std::optional<HeatUpRow> heat_up_allowance(int fall_k, int hours) {
    const auto wanted = [&](const HeatUpRow& r) {
        return r.fall == unit::kelvin(fall_k) && r.time == unit::hour(hours);
    };
    const auto found = std::ranges::find_if(heat_up, wanted);
    if (found == heat_up.end()) return std::nullopt;
    return *found;
}

}  // namespace loopfolio::reference
