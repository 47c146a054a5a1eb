// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/fluid.hpp"

#include "physics/water_viscosity.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace loopfolio::physics {

namespace {

constexpr double gas_constant = 461.526;  // J/(kg K), IAPWS-IF97
constexpr double lowest_kelvin = 273.15;
constexpr double highest_kelvin = 623.15;
constexpr double highest_pascal = 100e6;

/// One term n (7.1 - pi)^i (tau - 1.222)^j of the free enthalpy.
struct Term {
    int i;
    int j;
    double n;
};

/// IAPWS R7-97(2012), Table 2: region 1.
constexpr std::array<Term, 34> region_1 = {{
    {0, -2, 1.46329712131670e-01},    {0, -1, -8.45481871691140e-01},   {0, 0, -3.75636036720400e+00},
    {0, 1, 3.38551691683850e+00},     {0, 2, -9.57919633878720e-01},    {0, 3, 1.57720385132280e-01},
    {0, 4, -1.66164171995010e-02},    {0, 5, 8.12146299835680e-04},     {1, -9, 2.83190801238040e-04},
    {1, -7, -6.07063015658740e-04},   {1, -1, -1.89900682184190e-02},   {1, 0, -3.25297487705050e-02},
    {1, 1, -2.18417171754140e-02},    {1, 3, -5.28383579699300e-05},    {2, -3, -4.71843210732670e-04},
    {2, 0, -3.00017807930260e-04},    {2, 1, 4.76613939069870e-05},     {2, 3, -4.41418453308460e-06},
    {2, 17, -7.26949962975940e-16},   {3, -4, -3.16796448450540e-05},   {3, 0, -2.82707979853120e-06},
    {3, 6, -8.52051281201030e-10},    {4, -5, -2.24252819080000e-06},   {4, -2, -6.51712228956010e-07},
    {4, 10, -1.43417299379240e-13},   {5, -8, -4.05169968601170e-07},   {8, -11, -1.27343017416410e-09},
    {8, -6, -1.74248712306340e-10},   {21, -29, -6.87621312955310e-19}, {23, -31, 1.44783078285210e-20},
    {29, -38, 2.63357816627950e-23},  {30, -39, -1.19476226400710e-23}, {31, -40, 1.82280945814040e-24},
    {32, -41, -9.35370872924580e-26},
}};
constexpr std::size_t powers_of_pressure = 33;  // 0 to 32
constexpr std::size_t lowest_j = 41;            // j runs from -41 to 17
constexpr std::size_t highest_j = 17;

/// base^0 to base^(N-1).
template <std::size_t N>
std::array<double, N> powers(double base) {
    std::array<double, N> out;
    out[0] = 1.0;
    for (std::size_t k = 1; k < N; ++k) out[k] = out[k - 1] * base;
    return out;
}

/// Derivatives of the free enthalpy that the properties here need.
struct Derivatives {
    double pi;
    double tau;
    double tau_tau;
};

Derivatives region_1_derivatives(double pi, double tau) {
    const double a = 7.1 - pi;
    const double b = tau - 1.222;
    const auto of_a = powers<powers_of_pressure>(a);
    const auto of_b = powers<highest_j + 1>(b);
    const auto of_inverse_b = powers<lowest_j + 1>(1.0 / b);
    Derivatives sum{};
    for (const auto& term : region_1) {
        const double b_power = term.j >= 0 ? of_b[static_cast<std::size_t>(term.j)]
                                           : of_inverse_b[static_cast<std::size_t>(-term.j)];
        const double value = term.n * of_a[static_cast<std::size_t>(term.i)] * b_power;
        sum.pi -= term.i * value;
        sum.tau += term.j * value;
        sum.tau_tau += term.j * (term.j - 1) * value;
    }
    return {sum.pi / a, sum.tau / b, sum.tau_tau / (b * b)};
}

/// IAPWS R7-97(2012), Eq. 30: saturation pressure in Pa, 273.15 K to 647.096 K.
double saturation_pressure(double kelvin) {
    const double theta = kelvin - 0.23855557567849 / (kelvin - 650.17534844798);
    const double a = (theta + 1167.0521452767) * theta - 724213.16703206;
    const double b = (-17.073846940092 * theta + 12020.824702470) * theta - 3232555.0322333;
    const double c = (14.915108613530 * theta - 4823.2657361591) * theta + 405113.40542057;
    const double root = 2.0 * c / (-b + std::sqrt(b * b - 4.0 * a * c));
    return 1e6 * root * root * root * root;
}

bool in_range(double kelvin, double pascal) {
    return kelvin >= lowest_kelvin && kelvin <= highest_kelvin && pascal <= highest_pascal &&
           pascal >= saturation_pressure(kelvin);
}

Derivatives derivatives(double kelvin, double pascal) {
    return region_1_derivatives(pascal / 16.53e6, 1386.0 / kelvin);
}

}  // namespace

std::optional<FluidState> water(Temperature t, Pressure p) {
    const double kelvin = t.kelvin();
    if (!in_range(kelvin, p.si())) return std::nullopt;
    const auto g = derivatives(kelvin, p.si());
    const double tau = 1386.0 / kelvin;
    const auto density = Density::from_si(16.53e6 / (gas_constant * kelvin * g.pi));
    const auto specific_heat = SpecificHeat::from_si(-gas_constant * tau * tau * g.tau_tau);
    return FluidState{density, specific_heat, water_viscosity(t, density)};
}

std::optional<SpecificEnthalpy> water_enthalpy(Temperature t, Pressure p) {
    const double kelvin = t.kelvin();
    if (!in_range(kelvin, p.si())) return std::nullopt;
    return SpecificEnthalpy::from_si(gas_constant * 1386.0 * derivatives(kelvin, p.si()).tau);
}

}  // namespace loopfolio::physics
