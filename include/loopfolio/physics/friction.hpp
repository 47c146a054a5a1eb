// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/physics/fluid.hpp"

#include <string_view>

namespace loopfolio::physics {

enum class Regime { still, laminar, transition, turbulent };
[[nodiscard]] std::string_view word(Regime regime);

inline constexpr double laminar_below = 2000.0;  ///< Reynolds number
inline constexpr double turbulent_above = 4000.0;

[[nodiscard]] constexpr Regime regime_of(double reynolds) {
    if (reynolds <= 0.0) return Regime::still;
    if (reynolds < laminar_below) return Regime::laminar;
    if (reynolds <= turbulent_above) return Regime::transition;
    return Regime::turbulent;
}

/// Re = 4 m / (pi d mu); dimensionless. `flow` may be negative: the magnitude counts.
[[nodiscard]] double reynolds_number(MassFlow flow, Length bore, DynamicViscosity viscosity);

/// Darcy friction factor from Colebrook and White, 1/sqrt f = -2 log10(eps/(3.7 D) + 2.51/(Re sqrt f)),
/// solved to rounding. Range: Re >= 2000, relative roughness 0 to 0.05. NaN outside.
[[nodiscard]] double colebrook(double reynolds, double relative_roughness);

/// Darcy friction factor at any Reynolds number above zero: 64/Re below 2000, Colebrook and White above 4000,
/// between them a cubic in Re that meets both with the same value and slope, so that a solver sees
/// no kink. NaN for a Reynolds number that is zero, negative or not finite, and for a relative roughness
/// outside 0 to 0.05.
[[nodiscard]] double darcy_friction_factor(double reynolds, double relative_roughness);

/// Pipe as friction sees it.
struct Conduit {
    Length bore;
    Length roughness;
};

/// A pipe carrying a flow: what the velocity, regime and gradient are.
struct PipeFlow {
    Velocity velocity;
    double reynolds = 0.0;
    Regime regime = Regime::still;
    double friction_factor = 0.0;
    PressureGradient gradient;
    Pressure dynamic_pressure;  ///< rho v2 / 2, what a loss factor is multiplied by
};

/// Darcy and Weisbach. `flow` >= 0; all zero for no flow. `bore` > 0.
[[nodiscard]] PipeFlow pipe_flow(MassFlow flow, const Conduit& conduit, const FluidState& fluid);

/// The mass flow at which the velocity in the pipe reaches `limit`.
[[nodiscard]] MassFlow flow_at_velocity(Velocity limit, const Conduit& conduit, const FluidState& fluid);

/// The mass flow at which the pressure gradient reaches `limit` (> 0), to 1e-10 relative. NaN outside.
[[nodiscard]] MassFlow flow_at_gradient(PressureGradient limit, const Conduit& conduit, const FluidState& fluid);

/// Loss factor of one insert fitting on v2/2 of the pipe: a sudden contraction, 0.5 (1 - beta2) on the
/// narrow velocity, and a Borda-Carnot enlargement, both turned to the pipe's velocity. beta2 is the area
/// ratio. 0 where the insert is not narrower than the pipe, or is 0.
[[nodiscard]] double insert_loss_factor(Length bore, Length insert_bore);

/// Borda-Carnot, on the upstream velocity: (1 - (d1/d2)^2)^2, d1 <= d2.
[[nodiscard]] double sudden_enlargement(Length narrow, Length wide);
/// 0.5 (1 - (d2/d1)^2), on the downstream velocity, d2 <= d1.
[[nodiscard]] double sudden_contraction(Length wide, Length narrow);

/// Pressure drop of a valve by its Kv: dp = (Q/Kv)^2 bar with Q in m3/h of water; density-corrected
/// by rho/1000. Kv > 0.
[[nodiscard]] Pressure valve_pressure_drop(VolumeFlow flow, double kv, Density density);

}  // namespace loopfolio::physics
