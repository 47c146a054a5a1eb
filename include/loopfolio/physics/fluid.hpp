// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string_view>

namespace loopfolio::physics {

enum class FluidKind { water, propylene_glycol, ethylene_glycol };

/// What flows: water, or a glycol at a mass fraction.
struct Fluid {
    FluidKind kind = FluidKind::water;
    double mass_fraction = 0.0;  ///< of glycol, 0 to 0.6
};

struct FluidState {
    Density density;
    SpecificHeat specific_heat;
    DynamicViscosity viscosity;
};

/// Absolute pressure that water is evaluated at: a closed house system at about 1 bar gauge. Density
/// changes by less than 0.01 % per bar.
inline constexpr Pressure system_pressure = Pressure::from_si(0.2e6);

/// Water by IAPWS-IF97 region 1 and the IAPWS R12-08 viscosity (without critical enhancement).
/// Valid for liquid water, 273.15 K to 623.15 K and up to 100 MPa, above saturation pressure.
/// Returns nothing outside that range or for a value that is not finite.
[[nodiscard]] std::optional<FluidState> water(Temperature t, Pressure p = system_pressure);

/// Specific enthalpy of liquid water, same relation and range.
[[nodiscard]] std::optional<SpecificEnthalpy> water_enthalpy(Temperature t, Pressure p = system_pressure);

/// Glycol and water by Melinder's polynomials (IIF-IIR 2010). Mass fraction 0 to 0.6, up to 100 °C, and
/// above the freezing point. Returns nothing outside.
[[nodiscard]] std::optional<FluidState> glycol(FluidKind kind, double mass_fraction, Temperature t);

/// Freezing point of a glycol and water mixture (Melinder), mass fraction 0 to 0.6.
[[nodiscard]] std::optional<Temperature> freezing_point(FluidKind kind, double mass_fraction);

/// Whichever of the two the fluid is.
[[nodiscard]] std::optional<FluidState> state_of(const Fluid& fluid, Temperature t);

/// Mass fraction of a glycol mixture made up to a volume fraction (volumes measured at 15.6 °C before
/// mixing), 0 to 0.6. By linear interpolation of the ASHRAE 2001 table. Nothing outside.
[[nodiscard]] std::optional<double> mass_fraction_from_volume(FluidKind kind, double volume_fraction);

}  // namespace loopfolio::physics
