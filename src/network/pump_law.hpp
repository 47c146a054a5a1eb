// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/pipework.hpp"
#include "network/tangent.hpp"

#include <vector>

namespace loopfolio::network {

/// A pump prepared for many evaluations, with its curve at the speed that it runs at.
struct PumpLaw {
    PumpMode mode = PumpMode::constant_speed;
    bool has_curve = false;
    std::vector<double> flow;   // m3/s
    std::vector<double> rise;   // Pa
    std::vector<double> slope;  // Pa s/m3, at the points
    double shutoff = 0.0;
    double linear = 0.0;
    double square = 0.0;
    double set_rise = 0.0;
    double set_flow = 0.0;
};

[[nodiscard]] PumpLaw pump_law(const Pump& pump);

/// Pressure rise in Pa at a volume flow in m3/s of either sign.
[[nodiscard]] Tangent rise_at(const PumpLaw& law, double flow);

/// Whether this flow lies beyond the last point of a curve given by points.
[[nodiscard]] bool past_curve(const PumpLaw& law, double flow);

}  // namespace loopfolio::network
