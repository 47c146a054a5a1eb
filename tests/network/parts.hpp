// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/unit.hpp"
#include "loopfolio/network/hydraulics.hpp"

#include <cstddef>

namespace loopfolio::tests {

/// Water near 50 °C with rounded properties, so that closed forms can be calculated by hand.
inline physics::FluidState plain_water() {
    return {Density::from_si(988.0), SpecificHeat::from_si(4180.0), DynamicViscosity::from_si(0.547e-3)};
}

inline network::Link pipe(int from, int to, double bore_mm, double length_m, double loss_factor = 0.0,
                          double roughness_mm = 0.0015) {
    network::Link link;
    link.from = from;
    link.to = to;
    link.conduit = {bore_mm * unit::millimetre, roughness_mm * unit::millimetre};
    link.length = length_m * unit::metre;
    link.loss_factor = loss_factor;
    return link;
}

inline network::Link valve(int from, int to, double kv) {
    network::Link link;
    link.from = from;
    link.to = to;
    link.valve_resistance = network::valve_resistance(kv);
    return link;
}

inline network::Link pump_link(int from, int to, int pump, double square_resistance = 0.0) {
    network::Link link;
    link.from = from;
    link.to = to;
    link.pump = pump;
    link.square_resistance = square_resistance;
    return link;
}

/// H = shutoff - square Q2, SI.
inline network::Pump curve_pump(double shutoff, double square) {
    network::Pump pump;
    pump.shutoff = Pressure::from_si(shutoff);
    pump.square = square;
    return pump;
}

inline network::Pump level_pump(double rise) {
    network::Pump pump;
    pump.mode = network::PumpMode::constant_pressure;
    pump.set_rise = Pressure::from_si(rise);
    return pump;
}

/// A two-pipe ladder: pump link 0 from the return to the flow side, then `rungs` of flow pipe, return
/// pipe and emitter branch (valve and connection). Nodes: flow 0..rungs, return rungs+1..2 rungs+1.
inline network::Pipework ladder(int rungs, network::Pump pump) {
    network::Pipework p;
    p.nodes = 2 * (rungs + 1);
    const auto back = [&](int n) { return rungs + 1 + n; };
    p.pumps.push_back(std::move(pump));
    p.links.push_back(pump_link(back(0), 0, 0, 2e5));
    for (int n = 1; n <= rungs; ++n) {
        p.links.push_back(pipe(n - 1, n, 20.2, 4.0, 1.5));
        p.links.push_back(pipe(back(n), back(n - 1), 20.2, 4.0, 1.5));
        auto branch = pipe(n, back(n), 13.6, 3.0, 4.0);
        branch.valve_resistance = network::valve_resistance(0.8);
        p.links.push_back(branch);
    }
    return p;
}

inline network::HydraulicResult solve(const network::Pipework& p) { return solve_hydraulics(p, plain_water()); }

inline double flow_of(const network::HydraulicResult& r, std::size_t link) { return r.flow.at(link).si(); }

}  // namespace loopfolio::tests
