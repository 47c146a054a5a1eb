// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/pipework.hpp"
#include "loopfolio/physics/fluid.hpp"
#include "network/tangent.hpp"

namespace loopfolio::network {

/// A link's resistance with its fluid, prepared for many evaluations. dp = friction f(Re) m|m| + square m|m|.
struct LinkLaw {
    double laminar = 0.0;            // Pa/(kg/s): the friction term below Re 2000
    double friction = 0.0;           // Pa/(kg/s)2 for a friction factor of 1
    double square = 0.0;             // Pa/(kg/s)2: fittings, valves, fixed resistance
    double reynolds_per_flow = 0.0;  // 1/(kg/s); 0 without a pipe
    double relative_roughness = 0.0;
    double volume = 0.0;      // m3/kg
    double usual_flow = 0.0;  // kg/s: roughly the flow of such a link; scales the first step
};

[[nodiscard]] LinkLaw link_law(const Link& link, const physics::FluidState& fluid);

/// Pressure drop in Pa at a mass flow in kg/s of either sign, without the pump. The slope is exact.
[[nodiscard]] Tangent drop_at(const LinkLaw& law, double flow);

}  // namespace loopfolio::network
