// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "network/streams.hpp"

namespace loopfolio::network {

struct TemperatureOutcome {
    bool found = false;
    int rounds = 0;
    double last_change = 0.0;   // K
};

/// In the direction of flow, node by node, rooms in between: exact and linear in the size of the network.
/// Only where every source meets its flow temperature and no water comes round to where it was without
/// passing one; `found` is false elsewhere.
[[nodiscard]] TemperatureOutcome sweep_temperatures(ThermalState& state, const System& system);

/// All nodes and rooms at once: Newton with a sparse factorisation. For sources at their capacity and
/// water that circulates.
[[nodiscard]] TemperatureOutcome solve_temperatures(ThermalState& state, const System& system);

/// Outlet temperature of a stream on the state as it stands.
[[nodiscard]] double outlet_of(ThermalState& state, const System& system, const Stream& stream);

/// A source's outlet, and whether it falls with its inlet (at capacity, or left idle by warmer water).
struct SourceOutlet {
    double temperature = 0.0;
    bool follows_inlet = false;
    bool at_capacity = false;
};
[[nodiscard]] SourceOutlet source_outlet(const Source& source, const Stream& stream, double inlet);

}  // namespace loopfolio::network
