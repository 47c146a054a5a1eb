// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "physics/water_viscosity.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace loopfolio::physics {

namespace {

/// IAPWS R12-08, Table 2: factors of (Tc/T - 1)^i (rho/rhoc - 1)^j.
constexpr std::array<std::array<double, 7>, 6> finite_density = {{
    {{0.520094, 0.222531, -0.281378, 0.161913, -0.0325372, 0.0, 0.0}},
    {{0.0850895, 0.999115, -0.906851, 0.257399, 0.0, 0.0, 0.0}},
    {{-1.08374, 1.88797, -0.772479, 0.0, 0.0, 0.0, 0.0}},
    {{-0.289555, 1.26613, -0.489837, 0.0, 0.0698452, 0.0, -0.00435673}},
    {{0.0, 0.0, -0.257040, 0.0, 0.0, 0.00872102, 0.0}},
    {{0.0, 0.120573, 0.0, 0.0, 0.0, 0.0, -0.000593264}},
}};

/// IAPWS R12-08, Table 1: factors of (Tc/T)^i.
constexpr std::array<double, 4> dilute_gas = {1.67752, 2.20462, 0.6366564, -0.241605};

template <std::size_t N>
double polynomial(const std::array<double, N>& coefficients, double x) {
    double sum = 0.0;
    for (std::size_t k = N; k-- > 0;) sum = sum * x + coefficients[k];
    return sum;
}

}  // namespace

DynamicViscosity water_viscosity(Temperature t, Density density) {
    const double inverse_t = 647.096 / t.kelvin();
    const double rho = density.si() / 322.0;
    const double dilute = 100.0 / (std::sqrt(inverse_t) * polynomial(dilute_gas, inverse_t));
    double sum = 0.0;
    for (std::size_t i = finite_density.size(); i-- > 0;) {
        sum = sum * (inverse_t - 1.0) + polynomial(finite_density[i], rho - 1.0);
    }
    return DynamicViscosity::from_si(1e-6 * dilute * std::exp(rho * sum));
}

}  // namespace loopfolio::physics
