// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>

namespace loopfolio::physics {

/// How emitters give the design load.
struct EmissionDesign {
    Temperature flow;
    Temperature return_;
    Temperature room;
    double exponent = 1.3;  ///< 1.0 to 1.6
};

struct FlowAndReturn {
    Temperature flow;
    Temperature return_;
};

/// Weather compensation: flow and return temperatures at which the same emitters, with the same
/// water flow, give `share` of the design load into the same room. The logarithmic mean excess
/// scales with share^(1/n), the drop with share; the flow temperature follows in closed form, as in
/// `lowest_flow_temperature`. Source: the power law of BS EN 442, turned round. Share > 0; above 1
/// for weather colder than the design's. Nothing unless flow >= return > room, for an exponent out
/// of range, and where the flow would lie above 95 °C.
[[nodiscard]] std::optional<FlowAndReturn> compensated_flow(const EmissionDesign& design, double share);

}  // namespace loopfolio::physics
