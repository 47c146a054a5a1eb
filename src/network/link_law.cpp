// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/link_law.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopfolio::network {

namespace {

constexpr double usual_velocity = 0.3;  // m/s
constexpr double usual_drop = 1000.0;   // Pa
constexpr double two_over_ln10 = 2.0 / std::numbers::ln10;

/// d(ln f)/d(ln Re) of Colebrook and White at a known friction factor: the implicit equation for x = 1/sqrt f,
/// differentiated.
double colebrook_exponent(double reynolds, double relative_roughness, double factor) {
    const double x = 1.0 / std::sqrt(factor);
    const double b = 2.51 / reynolds;
    const double ratio = two_over_ln10 * b / (relative_roughness / 3.7 + b * x);
    return -2.0 * ratio / (1.0 + ratio);
}

/// Slope df/dRe of the cubic that connects laminar and turbulent flow with equal values and slopes.
double transition_slope(double reynolds, double relative_roughness) {
    using physics::laminar_below;
    using physics::turbulent_above;
    constexpr double width = turbulent_above - laminar_below;
    constexpr double lower = 64.0 / laminar_below;
    const double upper = physics::colebrook(turbulent_above, relative_roughness);
    const double p1 = -width * lower / laminar_below;
    const double p2 = width * upper / turbulent_above * colebrook_exponent(turbulent_above, relative_roughness, upper);
    const double t = (reynolds - laminar_below) / width;
    const double rise = upper - lower;
    return (p1 + t * (2.0 * (3.0 * rise - 2.0 * p1 - p2) + t * 3.0 * (p1 + p2 - 2.0 * rise))) / width;
}

Tangent friction_at(const LinkLaw& law, double flow, double reynolds) {
    if (reynolds < physics::laminar_below) return {law.laminar * flow, law.laminar};
    const double f = physics::darcy_friction_factor(reynolds, law.relative_roughness);
    const double exponent = reynolds > physics::turbulent_above
                                ? colebrook_exponent(reynolds, law.relative_roughness, f)
                                : transition_slope(reynolds, law.relative_roughness) * reynolds / f;
    const double drop = law.friction * f * std::abs(flow);
    return {drop * flow, drop * (2.0 + exponent)};
}

void take_conduit(LinkLaw& law, const Link& link, const physics::FluidState& fluid) {
    const double d = link.conduit.bore.si();
    const double area = std::numbers::pi / 4.0 * d * d;
    const double dynamic = 0.5 / (fluid.density.si() * area * area);  // Pa at 1 kg/s
    law.square += link.loss_factor * dynamic;
    law.usual_flow = usual_velocity * fluid.density.si() * area;
    law.reynolds_per_flow = physics::reynolds_number(MassFlow::from_si(1.0), link.conduit.bore, fluid.viscosity);
    law.friction = link.length.si() / d * dynamic;
    law.laminar = 64.0 / law.reynolds_per_flow * law.friction;
    law.relative_roughness = link.conduit.roughness / link.conduit.bore;
}

}  // namespace

LinkLaw link_law(const Link& link, const physics::FluidState& fluid) {
    LinkLaw law;
    law.volume = 1.0 / fluid.density.si();
    law.square = link.square_resistance;
    if (link.valve_resistance > 0.0) {
        const VolumeFlow at_one_kilogram = MassFlow::from_si(1.0) / fluid.density;
        law.square += link.valve_resistance * physics::valve_pressure_drop(at_one_kilogram, 1.0, fluid.density).si();
    }
    if (link.conduit.bore.si() > 0.0) take_conduit(law, link, fluid);
    if (law.square > 0.0) {
        const double by_drop = std::sqrt(usual_drop / law.square);
        law.usual_flow = law.usual_flow > 0.0 ? std::min(law.usual_flow, by_drop) : by_drop;
    }
    return law;
}

Tangent drop_at(const LinkLaw& law, double flow) {
    Tangent out;
    if (law.friction > 0.0) out = friction_at(law, flow, law.reynolds_per_flow * std::abs(flow));
    if (law.square > 0.0) {
        constexpr double still = still_flow.si() * still_flow.si();
        const double squared = flow * flow;
        const double root = std::sqrt(squared + still);
        out.value += law.square * flow * root;
        out.slope += law.square * (2.0 * squared + still) / root;
    }
    return out;
}

}  // namespace loopfolio::network
