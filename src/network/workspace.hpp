// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/hydraulics.hpp"
#include "network/newton.hpp"
#include "network/streams.hpp"

namespace loopfolio::network {

/// Fluid properties by link, and the temperatures (kelvin) that they were looked up at.
struct PropertyState {
    physics::Fluid of;
    SpecificHeat specific_heat;
    std::vector<double> wanted;
    std::vector<double> held;
    std::vector<physics::FluidState> fluid;
};

struct Workspace::Parts {
    FlowState flow;
    ThermalState heat;
    PropertyState properties;
};

/// solve_thermal() for a system that has been checked already.
[[nodiscard]] ThermalResult find_temperatures(const System& system, std::span<const MassFlow> flow, SpecificHeat cp,
                                              Workspace& workspace);

}  // namespace loopfolio::network
