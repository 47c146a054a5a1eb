// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/build.hpp"

#include "network/parts.hpp"

namespace loopfolio::tests {

inline network::PlanSection section(int from, int to, double bore_mm, double length_m,
                                    network::Carries carries = network::Carries::both) {
    network::PlanSection s;
    s.from = from;
    s.to = to;
    s.conduit = {bore_mm * unit::millimetre, 0.0015 * unit::millimetre};
    s.length = length_m * unit::metre;
    s.loss_factor = 1.0;
    s.carries = carries;
    return s;
}

inline network::PlanEmitter radiator(int flow, int back, double watts_at_50k, int room) {
    network::PlanEmitter e;
    e.flow_junction = flow;
    e.return_junction = back;
    e.rating = {watts_at_50k * unit::watt, 1.3};
    e.room = room;
    e.connection = {13.6 * unit::millimetre, 0.0015 * unit::millimetre};
    e.loss_factor = 3.0;
    e.valve_resistance = network::valve_resistance(0.6);
    return e;
}

inline network::Room room(network::RoomControl control, double loss_w_per_k, double set_c = 20.0) {
    network::Room r;
    r.control = control;
    r.loss = HeatLossCoefficient::from_si(loss_w_per_k);
    r.set_temperature = Temperature::from_celsius(set_c);
    return r;
}

/// Checks that the water at every node has the flow-weighted mean temperature of what arrives; returns the largest
/// error, K.
inline double worst_mixing(const network::System& system, const std::vector<MassFlow>& flow,
                           const network::ThermalResult& t) {
    std::vector<double> heat(t.node.size(), 0.0);
    std::vector<double> mass(t.node.size(), 0.0);
    for (std::size_t i = 0; i < flow.size(); ++i) {
        const auto& link = system.pipework.links[i];
        const double m = flow[i].si();
        const auto down = static_cast<std::size_t>(m > 0.0 ? link.to : link.from);
        heat[down] += std::abs(m) * t.outlet[i].kelvin();
        mass[down] += std::abs(m);
    }
    double worst = 0.0;
    for (std::size_t n = 0; n < heat.size(); ++n) {
        if (mass[n] > 0.0) worst = std::max(worst, std::abs(heat[n] / mass[n] - t.node[n].kelvin()));
    }
    return worst;
}

/// A house of `rooms` radiators on a two-pipe tree: a trunk with a radiator at every junction.
inline network::Plan two_pipe_house(int rooms, network::RoomControl control) {
    network::Plan plan;
    plan.junctions = rooms + 1;
    for (int r = 0; r < rooms; ++r) {
        auto s = section(r, r + 1, r < 2 ? 26.2 : 20.2, 3.0 + r % 3);
        s.heat_loss = {Conductivity::from_si(0.25), Temperature::from_celsius(18.0)};
        plan.sections.push_back(s);
        plan.emitters.push_back(radiator(r + 1, r + 1, 1200.0 + 100.0 * (r % 4), r));
        plan.rooms.push_back(room(control, 18.0 + r % 5));
    }
    network::PlanSource source;
    source.pump = curve_pump(3e4, 1.5e10);
    source.square_resistance = 5e4;
    source.minimum_flow = MassFlow::from_si(0.1);
    plan.sources.push_back(source);
    return plan;
}

/// `radiators` on a single pipe from the source and back, each connected by two tees with a length of the pipe between
/// them.
inline network::Plan one_pipe_house(int radiators, network::RoomControl control) {
    network::Plan plan;
    plan.junctions = 2 * radiators + 1;
    int here = 0;
    for (int r = 0; r < radiators; ++r) {
        plan.sections.push_back(section(here, here + 1, 20.2, 3.0, network::Carries::loop));
        plan.sections.push_back(section(here + 1, here + 2, 13.6, 1.0, network::Carries::loop));
        auto e = radiator(here + 1, here + 2, 1500.0, r);
        e.valve_resistance = network::valve_resistance(2.5);
        plan.emitters.push_back(e);
        plan.rooms.push_back(room(control, 20.0));
        here += 2;
    }
    plan.sections.push_back(section(here, 0, 20.2, 6.0, network::Carries::loop));
    network::PlanSource source;
    source.pump = curve_pump(4e4, 1.5e10);
    source.square_resistance = 5e4;
    plan.sources.push_back(source);
    return plan;
}

}  // namespace loopfolio::tests
