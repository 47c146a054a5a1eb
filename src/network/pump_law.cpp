// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/pump_law.hpp"

#include "network/at.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

/// Slopes at the points of a monotone piecewise cubic (Fritsch and Butland 1984, from memory; scipy's PchipInterpolator
/// has the same inner ones): zero where the sign of the secants changes, and elsewhere their weighted harmonic mean,
/// 1 / (α/left secant + (1 − α)/right secant) with α = (left width + 2 right width) / (3 (left width + right width)).
/// So the secant over the narrower gap, whose points are nearer, counts more. At the ends the slope is the secant.
std::vector<double> monotone_slopes(const std::vector<double>& x, const std::vector<double>& y) {
    const std::size_t n = x.size();
    std::vector<double> slope(n, (y[1] - y[0]) / (x[1] - x[0]));
    for (std::size_t i = 1; i + 1 < n; ++i) {
        const double left = x[i] - x[i - 1];
        const double right = x[i + 1] - x[i];
        const double a = (y[i] - y[i - 1]) / left;
        const double b = (y[i + 1] - y[i]) / right;
        const double wa = left + 2.0 * right;
        const double wb = 2.0 * left + right;
        slope[i] = a * b > 0.0 ? (wa + wb) / (wa / a + wb / b) : 0.0;
    }
    slope[n - 1] = (y[n - 1] - y[n - 2]) / (x[n - 1] - x[n - 2]);
    return slope;
}

Tangent between(const PumpLaw& law, double q) {
    const auto upper = std::upper_bound(law.flow.begin(), law.flow.end(), q);
    const auto i = at(upper - law.flow.begin()) - 1;
    const double width = law.flow[i + 1] - law.flow[i];
    const double t = (q - law.flow[i]) / width;
    const double p1 = width * law.slope[i];
    const double p2 = width * law.slope[i + 1];
    const double up = law.rise[i + 1] - law.rise[i];
    const double c2 = 3.0 * up - 2.0 * p1 - p2;
    const double c3 = p1 + p2 - 2.0 * up;
    return {law.rise[i] + t * (p1 + t * (c2 + t * c3)), (p1 + t * (2.0 * c2 + t * 3.0 * c3)) / width};
}

Tangent curve_at(const PumpLaw& law, double q) {
    if (law.flow.empty()) {
        return {law.shutoff - law.linear * q - law.square * q * std::abs(q),
                -law.linear - 2.0 * law.square * std::abs(q)};
    }
    if (q <= law.flow.front()) {
        return {law.rise.front() + law.slope.front() * (q - law.flow.front()), law.slope.front()};
    }
    if (q >= law.flow.back()) {
        return {law.rise.back() + law.slope.back() * (q - law.flow.back()), law.slope.back()};
    }
    return between(law, q);
}

Tangent target_at(const PumpLaw& law, double q) {
    if (law.mode == PumpMode::constant_pressure || q >= law.set_flow) return {law.set_rise, 0.0};
    const double half = 0.5 * law.set_rise;
    if (q <= 0.0) return {half, 0.0};
    return {half + half * q / law.set_flow, half / law.set_flow};
}

}  // namespace

PumpLaw pump_law(const Pump& pump) {
    PumpLaw law;
    law.mode = pump.mode;
    const double s = pump.speed;
    for (const auto& p : pump.points) {
        law.flow.push_back(s * p.flow.si());
        law.rise.push_back(s * s * p.rise.si());
    }
    if (!law.flow.empty()) {
        law.slope = monotone_slopes(law.flow, law.rise);
        // Even if a curve ends flat, its extrapolation falls, so that it always meets the network's curve.
        law.slope.back() = std::min(law.slope.back(), -law.rise.front() / law.flow.back());
    }
    law.shutoff = s * s * pump.shutoff.si();
    law.linear = s * pump.linear;
    law.square = pump.square;
    law.has_curve = !law.flow.empty() || law.shutoff > 0.0;
    law.set_rise = pump.set_rise.si();
    law.set_flow = pump.set_flow.si();
    return law;
}

Tangent rise_at(const PumpLaw& law, double flow) {
    if (law.mode == PumpMode::constant_speed) return curve_at(law, flow);
    const Tangent target = target_at(law, flow);
    if (!law.has_curve) return target;
    const Tangent most = curve_at(law, flow);
    return most.value < target.value ? most : target;
}

Pressure pump_rise(const Pump& pump, VolumeFlow flow) {
    return Pressure::from_si(rise_at(pump_law(pump), flow.si()).value);
}

bool past_curve(const PumpLaw& law, double flow) { return !law.flow.empty() && flow > law.flow.back(); }

}  // namespace loopfolio::network
