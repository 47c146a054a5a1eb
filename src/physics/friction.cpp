// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/friction.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace loopfolio::physics {

namespace {

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double highest_roughness = 0.05;
constexpr double two_over_ln10 = 2.0 / std::numbers::ln10;

bool roughness_in_range(double relative) { return relative >= 0.0 && relative <= highest_roughness; }

Area cross_section(Length bore) { return std::numbers::pi / 4.0 * (bore * bore); }

double square(double x) { return x * x; }

/// x = 1/sqrt f of Colebrook and White. Newton from Haaland's explicit form, which is within 1.5 %, so that
/// three steps reach rounding; the equation is concave and rising in x, so no step can run away.
double inverse_root_of_factor(double reynolds, double relative_roughness) {
    const double a = relative_roughness / 3.7;
    const double b = 2.51 / reynolds;
    double x = -1.8 * std::log10(6.9 / reynolds + std::pow(a, 1.11));
    for (int i = 0; i < 8; ++i) {
        const double inside = a + b * x;
        const double step = (x + two_over_ln10 * std::log(inside)) / (1.0 + two_over_ln10 * b / inside);
        x -= step;
        if (std::abs(step) <= 1e-9 * x) break;  // the next step would be the square of this one
    }
    return x;
}

/// Value and slope in Re, at one Reynolds number.
struct Tangent {
    double value;
    double slope;
};

Tangent colebrook_tangent(double reynolds, double relative_roughness) {
    const double x = inverse_root_of_factor(reynolds, relative_roughness);
    const double b = 2.51 / reynolds;
    const double ratio = two_over_ln10 * b / (relative_roughness / 3.7 + b * x);
    const double x_slope = x * ratio / (reynolds * (1.0 + ratio));
    return {1.0 / (x * x), -2.0 * x_slope / (x * x * x)};
}

/// Cubic in Re between the two ends of the transition.
class TransitionCubic {
public:
    explicit TransitionCubic(double relative_roughness)
        : upper_{colebrook_tangent(turbulent_above, relative_roughness)} {}

    [[nodiscard]] Tangent at(double reynolds) const {
        const double t = (reynolds - laminar_below) / width;
        const double p1 = width * lower_.slope;
        const double p2 = width * upper_.slope;
        const double rise = upper_.value - lower_.value;
        const double c2 = 3.0 * rise - 2.0 * p1 - p2;
        const double c3 = p1 + p2 - 2.0 * rise;
        return {lower_.value + t * (p1 + t * (c2 + t * c3)), (p1 + t * (2.0 * c2 + t * 3.0 * c3)) / width};
    }

private:
    static constexpr double width = turbulent_above - laminar_below;
    static constexpr Tangent lower_{64.0 / laminar_below, -64.0 / (laminar_below * laminar_below)};
    Tangent upper_;
};

/// Re at which f Re2 of the transition equals `target`; f Re2 rises all the way. Newton, kept inside a
/// bracket that shrinks with every step.
double transition_reynolds(double target, double relative_roughness) {
    const TransitionCubic cubic{relative_roughness};
    double low = laminar_below;
    double high = turbulent_above;
    double re = 0.5 * (low + high);
    for (int i = 0; i < 100; ++i) {
        const auto f = cubic.at(re);
        const double miss = f.value * re * re - target;
        (miss > 0.0 ? high : low) = re;
        const double slope = re * (f.slope * re + 2.0 * f.value);
        double next = re - miss / slope;
        if (!(next > low && next < high)) next = 0.5 * (low + high);
        const double moved = std::abs(next - re);
        re = next;
        if (moved <= 1e-13 * re) break;
    }
    return re;
}

}  // namespace

std::string_view word(Regime regime) {
    switch (regime) {
        case Regime::still: return "still";
        case Regime::laminar: return "laminar";
        case Regime::transition: return "transition";
        case Regime::turbulent: return "turbulent";
    }
    return "";
}

double reynolds_number(MassFlow flow, Length bore, DynamicViscosity viscosity) {
    return 4.0 * std::abs(flow.si()) / (std::numbers::pi * bore.si() * viscosity.si());
}

double colebrook(double reynolds, double relative_roughness) {
    if (!std::isfinite(reynolds) || reynolds < laminar_below || !roughness_in_range(relative_roughness)) {
        return not_a_number;
    }
    return 1.0 / square(inverse_root_of_factor(reynolds, relative_roughness));
}

double darcy_friction_factor(double reynolds, double relative_roughness) {
    if (!std::isfinite(reynolds) || reynolds <= 0.0 || !roughness_in_range(relative_roughness)) {
        return not_a_number;
    }
    if (reynolds < laminar_below) return 64.0 / reynolds;
    if (reynolds > turbulent_above) return colebrook(reynolds, relative_roughness);
    return TransitionCubic{relative_roughness}.at(reynolds).value;
}

PipeFlow pipe_flow(MassFlow flow, const Conduit& conduit, const FluidState& fluid) {
    if (flow.si() <= 0.0) return {};
    PipeFlow out;
    out.velocity = flow / (fluid.density * cross_section(conduit.bore));
    out.reynolds = reynolds_number(flow, conduit.bore, fluid.viscosity);
    out.regime = regime_of(out.reynolds);
    out.friction_factor = darcy_friction_factor(out.reynolds, conduit.roughness / conduit.bore);
    out.dynamic_pressure = 0.5 * (fluid.density * (out.velocity * out.velocity));
    out.gradient = out.friction_factor * out.dynamic_pressure / conduit.bore;
    return out;
}

MassFlow flow_at_velocity(Velocity limit, const Conduit& conduit, const FluidState& fluid) {
    return fluid.density * cross_section(conduit.bore) * limit;
}

// The gradient fixes f Re2 = 2 rho d3 (dp/L) / mu2. Laminar flow and Colebrook are explicit in it (the
// root in Colebrook's logarithm is Re sqrt f); only the transition is solved.
MassFlow flow_at_gradient(PressureGradient limit, const Conduit& conduit, const FluidState& fluid) {
    const double d = conduit.bore.si();
    const double mu = fluid.viscosity.si();
    const double relative = conduit.roughness.si() / d;
    const double target = 2.0 * fluid.density.si() * d * d * d * limit.si() / (mu * mu);
    if (!std::isfinite(target) || target <= 0.0 || !roughness_in_range(relative)) {
        return MassFlow::from_si(not_a_number);
    }
    double re = target / 64.0;
    if (re >= laminar_below) {
        const double root = std::sqrt(target);
        re = -2.0 * root * std::log10(relative / 3.7 + 2.51 / root);
        if (re < turbulent_above) re = transition_reynolds(target, relative);
    }
    return MassFlow::from_si(re * std::numbers::pi * d * mu / 4.0);
}

double insert_loss_factor(Length bore, Length insert_bore) {
    if (!(insert_bore.si() > 0.0) || !(insert_bore < bore)) return 0.0;
    const double area_ratio = square(insert_bore / bore);
    const double on_narrow = sudden_contraction(bore, insert_bore) + sudden_enlargement(insert_bore, bore);
    return on_narrow / square(area_ratio);
}

double sudden_enlargement(Length narrow, Length wide) { return square(1.0 - square(narrow / wide)); }

double sudden_contraction(Length wide, Length narrow) { return 0.5 * (1.0 - square(narrow / wide)); }

Pressure valve_pressure_drop(VolumeFlow flow, double kv, Density density) {
    constexpr double second_per_hour = 3600.0;
    constexpr double pascal_per_bar = 1e5;
    constexpr double water_density = 1000.0;  // that Kv is defined with
    const double ratio = flow.si() * second_per_hour / kv;
    return Pressure::from_si(ratio * ratio * pascal_per_bar * density.si() / water_density);
}

}  // namespace loopfolio::physics
