// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

/// Where the water of a heat source and that of the emitters meet: mixed in a header, or through a plate.
namespace loopfolio::physics {

/// Effectiveness of a counterflow exchanger: (1 - exp(-N (1 - C))) / (1 - C exp(-N (1 - C))), and N / (1 + N) where
/// both capacity flows are alike. `transfer_units` N = UA / C_min >= 0, `ratio` C = C_min / C_max, 0 to 1. Source: the
/// effectiveness-NTU method as in any heat-transfer text (Incropera and DeWitt).
[[nodiscard]] double counterflow_effectiveness(double transfer_units, double ratio);

struct MixedSides {
    MassFlow source;           ///< > 0, round the heat source
    MassFlow emitters;         ///< > 0, round the emitters
    Temperature emitter_flow;  ///< that the emitters need
    Temperature emitter_return;
};

struct HeaderTemperatures {
    Temperature source_leaving;  ///< that the source must make
    Temperature source_entering;
};

/// Conservation of mass and energy in a header whose two ends mix fully, and which loses no heat. The fluid has one
/// specific heat. With less flow on the source's side return water joins the emitters' flow, and the source must make
/// more than they need; with more, flow water joins the source's return.
[[nodiscard]] HeaderTemperatures through_header(const MixedSides& sides);

}  // namespace loopfolio::physics
