// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/climate.hpp"

#include "loopfolio/base/unit.hpp"
#include "reference/rows.hpp"

#include <array>
#include <cstddef>

namespace loopfolio::reference {

namespace {

struct Whole {
    int celsius;
    int hours;
};

template <std::size_t N>
constexpr std::array<ClimateRow, N> rows_of(const std::array<Whole, N>& whole) {
    std::array<ClimateRow, N> out{};
    for (std::size_t i = 0; i < N; ++i) {
        out[i] = {unit::celsius(whole[i].celsius), unit::hour(whole[i].hours)};
    }
    return out;
}

constexpr auto average = rows_of(std::to_array<Whole>({
    {-10, 1},  {-9, 25}, {-8, 23},  {-7, 24},  {-6, 27},  {-5, 68},  {-4, 91},  {-3, 89}, {-2, 165},
    {-1, 173}, {0, 240}, {1, 280},  {2, 320},  {3, 357},  {4, 356},  {5, 303},  {6, 330}, {7, 326},
    {8, 348},  {9, 335}, {10, 315}, {11, 215}, {12, 169}, {13, 151}, {14, 105}, {15, 74},
}));

constexpr auto warmer = rows_of(std::to_array<Whole>({
    {2, 3},
    {3, 22},
    {4, 63},
    {5, 63},
    {6, 175},
    {7, 162},
    {8, 259},
    {9, 360},
    {10, 428},
    {11, 430},
    {12, 503},
    {13, 444},
    {14, 384},
    {15, 294},
}));

constexpr auto colder = rows_of(std::to_array<Whole>({
    {-22, 1},  {-21, 6},  {-20, 13}, {-19, 17}, {-18, 19}, {-17, 26}, {-16, 39}, {-15, 41}, {-14, 35}, {-13, 52},
    {-12, 37}, {-11, 41}, {-10, 43}, {-9, 54},  {-8, 90},  {-7, 125}, {-6, 169}, {-5, 195}, {-4, 278}, {-3, 306},
    {-2, 454}, {-1, 385}, {0, 490},  {1, 533},  {2, 380},  {3, 228},  {4, 261},  {5, 279},  {6, 229},  {7, 269},
    {8, 233},  {9, 230},  {10, 243}, {11, 191}, {12, 146}, {13, 150}, {14, 97},  {15, 61},
}));

constexpr auto limit = unit::celsius(16.0);
constexpr StandbyHours average_standby{unit::hour(178.0), {}, unit::hour(3850.0), unit::hour(3672.0)};

constexpr auto table = std::to_array<Climate>({
    {"average", "average climate of EN 14825", unit::celsius(-10.0), limit, average, average_standby, "en-14825"},
    {"warmer", "warmer climate of EN 14825", unit::celsius(2.0), limit, warmer, {}, "en-14825"},
    {"colder", "colder climate of EN 14825", unit::celsius(-22.0), limit, colder, {}, "en-14825"},
});

}  // namespace

std::span<const Climate> climates() { return table; }
const Climate* find_climate(std::string_view name) { return find_row(table, name); }
std::vector<std::string_view> climate_names() { return names_of(table); }

}  // namespace loopfolio::reference
