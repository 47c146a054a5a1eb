// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/exchanger.hpp"

#include <cmath>

namespace loopfolio::physics {

double counterflow_effectiveness(double transfer_units, double ratio) {
    // Close to equal flows the formula is 0/0; its limit there is off by less than 1e-9.
    if (1.0 - ratio < 1e-9) return transfer_units / (1.0 + transfer_units);
    const double e = std::exp(-transfer_units * (1.0 - ratio));
    return (1.0 - e) / (1.0 - ratio * e);
}

HeaderTemperatures through_header(const MixedSides& s) {
    const TemperatureDifference drop = s.emitter_flow - s.emitter_return;
    if (s.source < s.emitters) return {s.emitter_return + (s.emitters / s.source) * drop, s.emitter_return};
    return {s.emitter_flow, s.emitter_flow - (s.emitters / s.source) * drop};
}

}  // namespace loopfolio::physics
