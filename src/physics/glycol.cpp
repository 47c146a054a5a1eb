// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/fluid.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>

namespace loopfolio::physics {

namespace {

constexpr double highest_fraction = 0.6;
constexpr double highest_kelvin = 373.15;

/// Coefficients a[i][j] of (T - base)^i (x - base)^j.
using Surface = std::array<std::array<double, 6>, 4>;

/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIF-IIR 2010, with the
/// temperature in K, the mass fraction from 0 to 1 and the viscosity as ln(Pa s).
struct Mixture {
    double base_kelvin;
    double base_fraction;
    Surface density;
    Surface specific_heat;
    Surface log_viscosity;
    std::array<double, 6> freezing_kelvin;
};

constexpr Mixture propylene = {
    305.8583,
    0.307031,
    {{
        {{1018.0, 76.04, -24.98, -155.0, -113.1, 234.2}},
        {{-0.5406, -0.945, 0.27, 2.829, -2.221, 0.0}},
        {{-0.002666, 0.005541, -0.004018, -0.007175, 0.0, 0.0}},
        {{1.347e-05, -1.343e-05, 3.376e-05, 0.0, 0.0, 0.0}},
    }},
    {{
        {{3882.0, -1304.0, -1598.0, 353.9, 5000.0, -4959.0}},
        {{2.699, 5.07, 0.9534, 31.02, -71.35, 0.0}},
        {{-0.001659, -0.004752, 0.1167, -0.295, 0.0, 0.0}},
        {{-1.032e-05, 0.0001522, -0.000487, 0.0, 0.0, 0.0}},
    }},
    {{
        {{-6.224055, 3.328, 0.5453, -3.9, -1.587, 35.64}},
        {{-0.03045, -0.03984, -0.00086, 0.1054, 0.04475, 0.0}},
        {{0.0002525, 0.0004332, -0.0001593, -0.001589, 0.0, 0.0}},
        {{-1.399e-06, -1.86e-06, -4.465e-07, 0.0, 0.0, 0.0}},
    }},
    {{259.9, -66.31, -109.4, -228.3, -340.9, 146.5}},
};

constexpr Mixture ethylene = {
    304.878,
    0.308462,
    {{
        {{1034.0, 131.1, 0.749, -106.2, -96.23, 489.1}},
        {{-0.4781, -0.6876, 0.7855, 1.229, -7.211, 0.0}},
        {{-0.002692, 0.004805, -0.003995, -0.01153, 0.0, 0.0}},
        {{4.725e-06, 1.69e-06, 4.982e-05, 0.0, 0.0, 0.0}},
    }},
    {{
        {{3737.0, -1799.0, -993.3, 2610.0, 1537.0, -16180.0}},
        {{2.93, 10.46, 3.516, -1.189, -42.72, 0.0}},
        {{-0.004675, -0.04147, 0.05109, -0.1643, 0.0, 0.0}},
        {{-1.389e-05, 1.847e-05, -0.0007138, 0.0, 0.0, 0.0}},
    }},
    {{
        {{-6.437255, 2.471, 0.03328, 1.659, 3.089, -18.65}},
        {{-0.0255, -0.01171, 0.01086, 0.003157, 0.01831, 0.0}},
        {{0.0001782, 0.0001052, 0.0001051, 0.0004063, 0.0, 0.0}},
        {{-7.669e-07, -1.634e-06, -6.475e-06, 0.0, 0.0, 0.0}},
    }},
    {{257.9, -80.8, -133.4, -72.93, 100.6, 11.4}},
};

/// Volume and mass of glycol in percent, one row of the table.
struct Percent {
    double volume;
    double mass;
};

/// ASHRAE Handbook Fundamentals 2001, chapter 21.
constexpr std::array<Percent, 45> propylene_by_volume = {{
    {0, 0},     {4.8, 5},   {9.6, 10},  {14.5, 15}, {19.4, 20}, {20.4, 21}, {21.4, 22}, {22.4, 23}, {23.4, 24},
    {24.4, 25}, {25.3, 26}, {26.4, 27}, {27.4, 28}, {28.4, 29}, {29.4, 30}, {30.4, 31}, {31.4, 32}, {32.4, 33},
    {33.5, 34}, {34.4, 35}, {35.5, 36}, {36.5, 37}, {37.5, 38}, {38.5, 39}, {39.6, 40}, {40.6, 41}, {41.6, 42},
    {42.6, 43}, {43.7, 44}, {44.7, 45}, {45.7, 46}, {46.8, 47}, {47.8, 48}, {48.9, 49}, {49.9, 50}, {50.9, 51},
    {51.9, 52}, {53, 53},   {54, 54},   {55, 55},   {56, 56},   {57, 57},   {58, 58},   {59, 59},   {60, 60},
}};

constexpr std::array<Percent, 45> ethylene_by_volume = {{
    {0, 0},     {4.4, 5},   {8.9, 10},  {13.6, 15}, {18.1, 20}, {19.2, 21}, {20.1, 22}, {21, 23},   {22, 24},
    {22.9, 25}, {23.9, 26}, {24.8, 27}, {25.8, 28}, {26.7, 29}, {27.7, 30}, {28.7, 31}, {29.6, 32}, {30.6, 33},
    {31.6, 34}, {32.6, 35}, {33.5, 36}, {34.5, 37}, {35.5, 38}, {36.5, 39}, {37.5, 40}, {38.5, 41}, {39.5, 42},
    {40.5, 43}, {41.5, 44}, {42.5, 45}, {43.5, 46}, {44.5, 47}, {45.5, 48}, {46.6, 49}, {47.6, 50}, {48.6, 51},
    {49.6, 52}, {50.6, 53}, {51.6, 54}, {52.7, 55}, {53.7, 56}, {54.7, 57}, {55.7, 58}, {56.8, 59}, {57.8, 60},
}};

const Mixture& mixture_of(FluidKind kind) { return kind == FluidKind::propylene_glycol ? propylene : ethylene; }

bool is_glycol_in_range(FluidKind kind, double fraction) {
    return kind != FluidKind::water && fraction >= 0.0 && fraction <= highest_fraction;
}

double polynomial(std::span<const double> coefficients, double x) {
    double sum = 0.0;
    for (std::size_t j = coefficients.size(); j-- > 0;) sum = sum * x + coefficients[j];
    return sum;
}

double surface(const Surface& a, double t, double x) {
    double sum = 0.0;
    for (std::size_t i = a.size(); i-- > 0;) sum = sum * t + polynomial(a[i], x);
    return sum;
}

}  // namespace

std::optional<Temperature> freezing_point(FluidKind kind, double mass_fraction) {
    if (!is_glycol_in_range(kind, mass_fraction)) return std::nullopt;
    const auto& m = mixture_of(kind);
    return Temperature::from_kelvin(polynomial(m.freezing_kelvin, mass_fraction - m.base_fraction));
}

std::optional<FluidState> glycol(FluidKind kind, double mass_fraction, Temperature t) {
    const auto freezing = freezing_point(kind, mass_fraction);
    if (!freezing || !(t > *freezing) || !(t.kelvin() <= highest_kelvin)) return std::nullopt;
    const auto& m = mixture_of(kind);
    const double dt = t.kelvin() - m.base_kelvin;
    const double dx = mass_fraction - m.base_fraction;
    return FluidState{Density::from_si(surface(m.density, dt, dx)),
                      SpecificHeat::from_si(surface(m.specific_heat, dt, dx)),
                      DynamicViscosity::from_si(std::exp(surface(m.log_viscosity, dt, dx)))};
}

std::optional<FluidState> state_of(const Fluid& fluid, Temperature t) {
    return fluid.kind == FluidKind::water ? water(t) : glycol(fluid.kind, fluid.mass_fraction, t);
}

std::optional<double> mass_fraction_from_volume(FluidKind kind, double volume_fraction) {
    if (!is_glycol_in_range(kind, volume_fraction)) return std::nullopt;
    const auto table = kind == FluidKind::propylene_glycol ? std::span<const Percent>{propylene_by_volume}
                                                           : std::span<const Percent>{ethylene_by_volume};
    const double percent = 100.0 * volume_fraction;
    const auto reaches = [&](const Percent& row) { return row.volume >= percent; };
    const auto above = std::find_if(table.begin() + 1, table.end(), reaches);
    if (above == table.end()) return std::nullopt;
    const auto below = above - 1;
    const double share = (percent - below->volume) / (above->volume - below->volume);
    return (below->mass + share * (above->mass - below->mass)) / 100.0;
}

}  // namespace loopfolio::physics
