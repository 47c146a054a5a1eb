// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/physics/friction.hpp"

#include <vector>

namespace loopfolio::network {

/// How a pump is controlled. The two controlled modes give their set point, or the pressure of the curve where that is
/// lower.
enum class PumpMode {
    constant_speed,         ///< follows its curve
    constant_pressure,      ///< `set_rise` at every flow
    proportional_pressure,  ///< half of `set_rise` at no flow, rising straight to all of it at `set_flow`
                            ///< and staying there
};

struct PumpPoint {
    VolumeFlow flow;
    Pressure rise;
};

/// A pump. Its curve is either two or more points (flow rising from 0 or more, pressure not rising, joined by a
/// monotone cubic and extrapolated straight at both ends) or, without points, shutoff - linear Q - square Q|Q| with
/// coefficients >= 0. A controlled pump may have no curve: it then gives its set point at every flow.
struct Pump {
    PumpMode mode = PumpMode::constant_speed;
    std::vector<PumpPoint> points;
    Pressure shutoff;     ///< pressure rise against a closed valve
    double linear = 0.0;  ///< Pa s/m3
    double square = 0.0;  ///< Pa s2/m6
    double speed = 1.0;   ///< share of the speed for which the curve holds, above 0 to 1.5; affinity laws
    Pressure set_rise;    ///< set point of a controlled pump
    VolumeFlow set_flow;  ///< for proportional pressure: the flow at which `set_rise` is reached
};

/// Pressure that a pump adds at a flow >= 0, as the solver calculates it.
[[nodiscard]] Pressure pump_rise(const Pump& pump, VolumeFlow flow);

/// The components between two nodes: any of pipe, valves, a fixed resistance and a pump, in series. Flow and pressure
/// drop are positive from `from` to `to`, and a pump works in that direction. Swapping the ends of a link changes the
/// results only if it has a pump.
struct Link {
    int from = 0;
    int to = 0;
    physics::Conduit conduit;        ///< bore 0 where there is no pipe; relative roughness up to 0.05
    Length length;                   ///< >= 0; may be 0 only with a loss factor
    double loss_factor = 0.0;        ///< sum of the loss factors on v2/2 in `conduit`, >= 0
    double valve_resistance = 0.0;   ///< sum of 1/Kv2 over the valves, h2/m6, >= 0; see valve_resistance()
    double square_resistance = 0.0;  ///< dp = k m|m|, Pa/(kg/s)2, >= 0
    int pump = -1;                   ///< index into Pipework::pumps, -1 for none
    bool closed = false;             ///< it contains a shut valve: the link is left out
};

/// 1/Kv2 of a valve, Kv in m3/h at 1 bar, > 0. Those of valves in series add up.
[[nodiscard]] constexpr double valve_resistance(double kv) { return 1.0 / (kv * kv); }

/// A network of any shape: branched, looped, several pumps, several parts.
struct Pipework {
    int nodes = 0;
    std::vector<Link> links;
    std::vector<Pump> pumps;
    std::vector<MassFlow> drawn;  ///< by node: flow taken out, negative where it is fed in; empty for a closed system
    int reference_node = 0;       ///< pressures are relative to this node; in any other part, to its first node
};

/// Below about this flow a quadratic resistance becomes linear, as the seat of a valve does: dp = k m sqrt(m2 +
/// still2). The relative error in pressure is 5e-9 at 0.01 kg/s, and the solver never meets a zero slope.
inline constexpr MassFlow still_flow = MassFlow::from_si(1e-6);

}  // namespace loopfolio::network
