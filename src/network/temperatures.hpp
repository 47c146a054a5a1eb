// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "network/streams.hpp"

namespace loopfolio::network {

struct TemperatureOutcome {
    bool found = false;
    int rounds = 0;
    double last_change = 0.0;  // K
};

/// Calculates temperatures in the direction of flow, node by node and with the rooms in between: exact, and linear in
/// the size of the network. This works only where every source meets its flow temperature and no water circulates
/// without passing a source; elsewhere `found` is false.
[[nodiscard]] TemperatureOutcome sweep_temperatures(ThermalState& state, const System& system);

/// Calculates all nodes and rooms together, by Newton's method with a sparse factorisation. For sources at their
/// capacity and for water that circulates.
[[nodiscard]] TemperatureOutcome solve_temperatures(ThermalState& state, const System& system);

/// Outlet temperature of a stream in the present state.
[[nodiscard]] double outlet_of(ThermalState& state, const System& system, const Stream& stream);

/// A source's outlet, and whether its temperature follows the inlet (at capacity, or idle because the water is warm
/// enough).
struct SourceOutlet {
    double temperature = 0.0;
    bool follows_inlet = false;
    bool at_capacity = false;
};
[[nodiscard]] SourceOutlet source_outlet(const Source& source, const Stream& stream, double inlet);

}  // namespace loopfolio::network
