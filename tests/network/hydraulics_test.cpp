// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/hydraulics.hpp"

#include "network/parts.hpp"
#include "support/catch.hpp"

#include <cmath>
#include <numbers>

using namespace loopfolio;
using namespace loopfolio::tests;
using network::Pipework;

namespace {

/// A ring of the given links behind a pump that holds `rise`: pump from node `from` to node `to`.
Pipework behind_level_pump(int nodes, std::vector<network::Link> links, double rise, int from, int to) {
    Pipework p;
    p.nodes = nodes;
    p.pumps = {level_pump(rise)};
    p.links = std::move(links);
    p.links.push_back(pump_link(from, to, 0));
    return p;
}

/// Hagen and Poiseuille: dp = 128 mu L m / (pi rho d4).
double poiseuille(double bore, double length) {
    const auto w = plain_water();
    return 128.0 * w.viscosity.si() * length / (std::numbers::pi * w.density.si() * std::pow(bore, 4));
}

}  // namespace

TEST_CASE("a laminar pipe follows Hagen and Poiseuille, and parallel ones share as d4/L") {
    const auto r = solve(behind_level_pump(2, {pipe(0, 1, 8.0, 10.0), pipe(0, 1, 6.0, 5.0)}, 60.0, 1, 0));
    REQUIRE(r.solved);
    CHECK(r.reynolds[0] < 2000.0);
    CHECK(flow_of(r, 0) == Approx(60.0 / poiseuille(8e-3, 10.0)).epsilon(1e-9));
    CHECK(flow_of(r, 0) / flow_of(r, 1) == Approx(std::pow(8.0 / 6.0, 4) * 5.0 / 10.0).epsilon(1e-9));
    CHECK(flow_of(r, 2) == Approx(flow_of(r, 0) + flow_of(r, 1)).epsilon(1e-10));
}

TEST_CASE("valves in line add as 1/Kv2 and side by side as Kv") {
    const double rho = plain_water().density.si();
    const auto by_kv = [&](double kv, double rise) {  // dp = (Q/Kv)2 bar, times rho/1000
        return kv * std::sqrt(rise / 1e5 * 1000.0 / rho) * rho / 3600.0;
    };
    const auto line = solve(behind_level_pump(3, {valve(0, 1, 1.2), valve(1, 2, 0.5)}, 1e4, 2, 0));
    REQUIRE(line.solved);
    CHECK(flow_of(line, 0) == Approx(by_kv(1.0 / std::sqrt(1.0 / 1.44 + 1.0 / 0.25), 1e4)).epsilon(1e-8));
    const auto side = solve(behind_level_pump(2, {valve(0, 1, 1.2), valve(0, 1, 0.5)}, 1e4, 1, 0));
    REQUIRE(side.solved);
    CHECK(flow_of(side, 2) == Approx(by_kv(1.7, 1e4)).epsilon(1e-8));
}

TEST_CASE("a pump curve meets a quadratic circuit where the closed form says") {
    // 30000 - 4e9 Q2 = k m2, Q = m / rho.
    Pipework p;
    p.nodes = 2;
    p.pumps = {curve_pump(3e4, 4e9)};
    network::Link resistance;
    resistance.to = 1;
    resistance.square_resistance = 5e4;
    p.links = {resistance, pump_link(1, 0, 0)};
    const auto r = solve(p);
    REQUIRE(r.solved);
    const double rho = plain_water().density.si();
    CHECK(flow_of(r, 0) == Approx(std::sqrt(3e4 / (5e4 + 4e9 / rho / rho))).epsilon(1e-9));
    CHECK(r.rise[0].si() == Approx(5e4 * flow_of(r, 0) * flow_of(r, 0)).epsilon(1e-9));
}

TEST_CASE("proportional pressure meets a quadratic circuit where the closed form says") {
    Pipework p;
    p.nodes = 2;
    network::Pump pump;
    pump.mode = network::PumpMode::proportional_pressure;
    pump.set_rise = Pressure::from_si(2e4);
    pump.set_flow = VolumeFlow::from_si(1e-3);
    p.pumps = {pump};
    network::Link resistance;
    resistance.to = 1;
    resistance.square_resistance = 5e4;
    p.links = {resistance, pump_link(1, 0, 0)};
    const auto r = solve(p);
    REQUIRE(r.solved);
    // 5e4 m2 = 1e4 (1 + m/0.988), of which the positive root.
    const double b = 1e4 / 0.988;
    CHECK(flow_of(r, 0) == Approx((b + std::sqrt(b * b + 4.0 * 5e4 * 1e4)) / 1e5).epsilon(1e-9));
    CHECK(r.iterations < 12);
}

TEST_CASE("a symmetric bridge carries nothing across") {
    const auto arm = [](int a, int b) { return pipe(a, b, 10.0, 5.0, 2.0); };
    auto p = behind_level_pump(4, {arm(0, 1), arm(0, 2), arm(1, 3), arm(2, 3), pipe(1, 2, 10.0, 1.0)}, 5e3, 3, 0);
    const auto r = solve(p);
    REQUIRE(r.solved);
    CHECK(flow_of(r, 0) == Approx(flow_of(r, 1)).epsilon(1e-10));
    CHECK(std::abs(flow_of(r, 4)) < 1e-10);
}

TEST_CASE("a ladder solves to the stated tolerances") {
    for (const int rungs : {1, 5, 30}) {
        const auto p = ladder(rungs, curve_pump(4e4, 1e10));
        const auto r = solve(p);
        CAPTURE(rungs, r.iterations, r.continuity_residual.si(), r.pressure_residual.si());
        REQUIRE(r.solved);
        CHECK(r.iterations <= 12);
        CHECK(r.continuity_residual.si() <= 1e-10 * flow_of(r, 0));
        CHECK(r.pressure_residual.si() <= 1e-9 * 4e4);
        for (std::size_t n = 6; n < p.links.size(); n += 3) {
            CHECK(flow_of(r, n) < flow_of(r, n - 3));  // the farther emitter gets less
        }
    }
}
