// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/underfloor.hpp"

#include "loopfolio/base/unit.hpp"
#include "reference/rows.hpp"

#include <array>
#include <cstddef>

namespace loopfolio::reference {

namespace {

constexpr ThermalResistance r(double value) { return unit::square_metre_kelvin_per_watt(value); }
constexpr Length mm(double value) { return unit::millimetre(value); }

constexpr FloorFactors row(double covering, double pitch, double a_pitch, double a_cover, double a_diameter) {
    return {r(covering), mm(pitch), a_pitch, a_cover, a_diameter};
}
constexpr auto factors = std::to_array<FloorFactors>({
    // covering 0
    row(0, 50, 1.23, 1.069, 1.013),
    row(0, 75, 1.23, 1.066, 1.021),
    row(0, 100, 1.23, 1.063, 1.029),
    row(0, 150, 1.23, 1.057, 1.04),
    row(0, 200, 1.23, 1.051, 1.046),
    row(0, 225, 1.23, 1.048, 1.049),
    row(0, 300, 1.23, 1.0395, 1.053),
    row(0, 375, 1.23, 1.03, 1.056),
    // covering 0.05
    row(0.05, 50, 1.188, 1.056, 1.013),
    row(0.05, 75, 1.188, 1.053, 1.019),
    row(0.05, 100, 1.188, 1.05, 1.025),
    row(0.05, 150, 1.188, 1.046, 1.034),
    row(0.05, 200, 1.188, 1.041, 1.04),
    row(0.05, 225, 1.188, 1.038, 1.043),
    row(0.05, 300, 1.188, 1.031, 1.049),
    row(0.05, 375, 1.188, 1.0221, 1.051),
    // covering 0.1
    row(0.1, 50, 1.156, 1.043, 1.012),
    row(0.1, 75, 1.156, 1.041, 1.016),
    row(0.1, 100, 1.156, 1.039, 1.022),
    row(0.1, 150, 1.156, 1.035, 1.029),
    row(0.1, 200, 1.156, 1.0315, 1.035),
    row(0.1, 225, 1.156, 1.0295, 1.038),
    row(0.1, 300, 1.156, 1.024, 1.044),
    row(0.1, 375, 1.156, 1.0181, 1.046),
    // covering 0.15
    row(0.15, 50, 1.134, 1.037, 1.011),
    row(0.15, 75, 1.134, 1.035, 1.014),
    row(0.15, 100, 1.134, 1.0335, 1.018),
    row(0.15, 150, 1.134, 1.0305, 1.024),
    row(0.15, 200, 1.134, 1.0275, 1.03),
    row(0.15, 225, 1.134, 1.026, 1.033),
    row(0.15, 300, 1.134, 1.021, 1.039),
    row(0.15, 375, 1.134, 1.015, 1.042),
});

/// Screed above the pipe over its conductivity, m2 K/W.
constexpr auto covers = std::to_array<double>({0.01, 0.0208, 0.0292, 0.0375, 0.0458, 0.0542, 0.0625, 0.0708, 0.0792});

struct AtPitch {
    double millimetres;
    std::array<double, covers.size()> values;
};

template <std::size_t N>
constexpr auto points_of(const std::array<AtPitch, N>& rows) {
    std::array<FloorLimitPoint, N * covers.size()> out{};
    for (std::size_t i = 0; i < N; ++i) {
        for (std::size_t j = 0; j < covers.size(); ++j) {
            out[i * covers.size() + j] = {mm(rows[i].millimetres), r(covers[j]), rows[i].values[j]};
        }
    }
    return out;
}

constexpr auto limit_coefficients = points_of(std::to_array<AtPitch>({
    {50, {85, 91.5, 96.8, 100, 100, 100, 100, 100, 100}},
    {75, {75.3, 83.5, 89.9, 96.3, 99.5, 100, 100, 100, 100}},
    {100, {66, 75.4, 82.9, 89.3, 95.5, 98.8, 100, 100, 100}},
    {150, {51, 61.1, 69.2, 76.3, 82.7, 87.5, 91.8, 95.1, 97.8}},
    {200, {38.5, 48.2, 56.2, 63.1, 69.1, 74.5, 81.3, 86.4, 90}},
    {225, {33, 42.5, 49.5, 56.5, 62, 67.5, 75.3, 81.6, 86.1}},
    {300, {20.5, 26.8, 31.6, 36.4, 41.5, 47.5, 57.5, 65.3, 72.4}},
    {375, {11.5, 13.7, 15.5, 18.2, 21.5, 27.5, 40, 49.1, 58.3}},
}));
constexpr auto limit_exponents = points_of(std::to_array<AtPitch>({
    {50, {0.008, 0.005, 0.002, 0, 0, 0, 0, 0, 0}},
    {75, {0.024, 0.021, 0.018, 0.011, 0.002, 0, 0, 0, 0}},
    {100, {0.046, 0.043, 0.041, 0.033, 0.014, 0.005, 0, 0, 0}},
    {150, {0.088, 0.085, 0.082, 0.076, 0.055, 0.038, 0.024, 0.014, 0.006}},
    {200, {0.131, 0.13, 0.129, 0.123, 0.105, 0.083, 0.057, 0.04, 0.028}},
    {225, {0.155, 0.154, 0.153, 0.146, 0.13, 0.11, 0.077, 0.056, 0.041}},
    {262.5, {0.197, 0.196, 0.196, 0.19, 0.173, 0.15, 0.11, 0.083, 0.062}},
    {300, {0.254, 0.253, 0.253, 0.245, 0.228, 0.195, 0.145, 0.114, 0.086}},
    {337.5, {0.322, 0.321, 0.321, 0.31, 0.293, 0.26, 0.187, 0.148, 0.115}},
    {375, {0.422, 0.421, 0.421, 0.405, 0.385, 0.325, 0.23, 0.183, 0.142}},
}));

constexpr std::string_view tables_source = "en-1264-2";

constexpr auto surface_limits = std::to_array<FloorSurfaceLimit>({
    {"occupied", "where people stay", unit::celsius(29.0), unit::celsius(20.0), "en-1264-2"},
    {"edge", "strip of 1 m along outside walls", unit::celsius(35.0), unit::celsius(20.0), "en-1264-2"},
    {"bathroom", "bathroom", unit::celsius(33.0), unit::celsius(24.0), "en-1264-2"},
});

constexpr Cited<ThermalResistance> about(double value, double low, double high) {
    return {r(value), r(low), r(high), "common-practice"};
}
constexpr auto coverings = std::to_array<FloorCovering>({
    {"none", "bare screed", about(0.0, 0.0, 0.0)},
    {"ceramic_tile", "ceramic tiles", about(0.01, 0.005, 0.02)},
    {"stone", "stone", about(0.01, 0.005, 0.02)},
    {"vinyl", "vinyl or linoleum", about(0.02, 0.01, 0.03)},
    {"laminate", "laminate on a thin underlay", about(0.07, 0.05, 0.10)},
    {"engineered_wood", "engineered wood", about(0.10, 0.07, 0.13)},
    {"solid_wood", "solid wood", about(0.13, 0.10, 0.17)},
    {"carpet", "thin carpet, stuck down", about(0.10, 0.06, 0.12)},
    {"carpet_and_underlay", "carpet on underlay", about(0.15, 0.12, 0.25)},
});

constexpr LoopLimits limits_of_a_loop{
    {unit::metre(100.0), unit::metre(100.0), unit::metre(120.0), "common-practice"},
    {unit::kilopascal(20.0), unit::kilopascal(20.0), unit::kilopascal(25.0), "common-practice"},
};

}  // namespace

std::span<const FloorFactors> floor_factors() { return factors; }
std::span<const FloorLimitPoint> floor_limit_coefficients() { return limit_coefficients; }
std::span<const FloorLimitPoint> floor_limit_exponents() { return limit_exponents; }
std::string_view floor_tables_source() { return tables_source; }

std::span<const FloorSurfaceLimit> floor_surface_limits() { return surface_limits; }
const FloorSurfaceLimit* find_floor_surface_limit(std::string_view name) { return find_row(surface_limits, name); }

std::span<const FloorCovering> floor_coverings() { return coverings; }
const FloorCovering* find_floor_covering(std::string_view name) { return find_row(coverings, name); }

const LoopLimits& loop_limits() { return limits_of_a_loop; }

}  // namespace loopfolio::reference
