// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/link_law.hpp"

#include "network/parts.hpp"
#include "network/pump_law.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <numbers>

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("a link drops what Darcy and Weisbach say, in every regime") {
    const auto water = plain_water();
    for (const double roughness : {0.0, 0.0015, 0.2}) {
        const auto link = pipe(0, 1, 15.0, 7.0, 2.5, roughness);
        const auto law = network::link_law(link, water);
        for (const double reynolds : {100.0, 1900.0, 2300.0, 3000.0, 3999.0, 4001.0, 2e4, 1e6}) {
            const auto flow = MassFlow::from_si(reynolds / law.reynolds_per_flow);
            const auto there = physics::pipe_flow(flow, link.conduit, water);
            const double expected = (there.gradient * link.length + 2.5 * there.dynamic_pressure).si();
            CAPTURE(roughness, reynolds);
            CHECK(network::drop_at(law, flow.si()).value ==
                  Approx(expected).epsilon(1e-7));  // still_flow bends the loss factor
            CHECK(network::drop_at(law, -flow.si()).value == Approx(-expected).epsilon(1e-7));
        }
    }
}

TEST_CASE("the slope of a link's drop is its derivative") {
    for (const double roughness : {0.0, 0.0015, 0.2}) {
        auto link = pipe(0, 1, 15.0, 7.0, 2.5, roughness);
        link.valve_resistance = network::valve_resistance(1.3);
        const auto law = network::link_law(link, plain_water());
        for (const double reynolds : {0.0, 1e-3, 500.0, 1990.0, 2010.0, 2500.0, 3990.0, 4010.0, 1e5}) {
            const double m = reynolds / law.reynolds_per_flow;
            const double h = std::max(1e-6 * m, 1e-9);
            const double central = (network::drop_at(law, m + h).value - network::drop_at(law, m - h).value) / (2 * h);
            CAPTURE(roughness, reynolds);
            CHECK(network::drop_at(law, m).slope == Approx(central).epsilon(1e-5));
        }
    }
}

TEST_CASE("a pump follows its points, falls all the way, and keeps to its affinity") {
    network::Pump pump;
    for (const auto& [q, h] : {std::pair{0.0, 60e3}, {0.5e-3, 58e3}, {1.0e-3, 50e3}, {1.5e-3, 35e3}}) {
        pump.points.push_back({VolumeFlow::from_si(q), Pressure::from_si(h)});
    }
    const auto full = network::pump_law(pump);
    for (const auto& p : pump.points) CHECK(rise_at(full, p.flow.si()).value == Approx(p.rise.si()));
    for (double q = -1e-3; q < 3e-3; q += 1e-5) {
        CHECK(rise_at(full, q + 1e-5).value < rise_at(full, q).value);
        const double central = (rise_at(full, q + 1e-9).value - rise_at(full, q - 1e-9).value) / 2e-9;
        CHECK(rise_at(full, q).slope == Approx(central).epsilon(1e-3).margin(1e3));
    }
    CHECK(past_curve(full, 1.6e-3));
    CHECK_FALSE(past_curve(full, 1.4e-3));
    pump.speed = 0.7;
    const auto slow = network::pump_law(pump);
    CHECK(rise_at(slow, 0.7 * 0.8e-3).value == Approx(0.49 * rise_at(full, 0.8e-3).value));
}

TEST_CASE("between uneven points a pump's curve has the slopes of Fritsch and Butland") {
    const auto csv = read_csv("network/pump_slopes.csv");
    Verification verification{
        {"slope of a pump's curve at its points", "scipy 1.17.1, PchipInterpolator", Certainty::computed, "Pa s/m³"}};
    std::size_t inner = 0;
    for (std::size_t first = 0; first < csv.rows.size();) {
        network::Pump pump;
        std::size_t row = first;
        for (; row < csv.rows.size() && csv.number(row, "curve") == csv.number(first, "curve"); ++row) {
            pump.points.push_back({VolumeFlow::from_si(1e-3 * csv.number(row, "flow_l_per_s")),
                                   Pressure::from_si(1e3 * csv.number(row, "head_kpa"))});
        }
        const auto law = network::pump_law(pump);
        REQUIRE(law.slope.size() == row - first);
        for (std::size_t i = 1; i + 1 < law.slope.size(); ++i, ++inner) {
            const double slope = csv.number(first + i, "slope_pa_s_per_m3");
            CAPTURE(first, i);
            verification.check(slope, law.slope[i], 1e-10 * std::abs(slope) + 1e-6);
            CHECK(rise_at(law, pump.points[i].flow.si()).slope == Approx(law.slope[i]).margin(1e-6));
        }
        first = row;
    }
    CHECK(inner == 8);
}

TEST_CASE("a controlled pump keeps its set point until its curve lies below") {
    auto pump = curve_pump(6e4, 4e10);
    pump.mode = network::PumpMode::constant_pressure;
    pump.set_rise = Pressure::from_si(3e4);
    auto law = network::pump_law(pump);
    CHECK(rise_at(law, 0.5e-3).value == Approx(3e4));
    CHECK(rise_at(law, 1.0e-3).value == Approx(2e4));
    pump.mode = network::PumpMode::proportional_pressure;
    pump.set_flow = VolumeFlow::from_si(0.8e-3);
    law = network::pump_law(pump);
    CHECK(rise_at(law, 0.0).value == Approx(1.5e4));
    CHECK(rise_at(law, 0.4e-3).value == Approx(2.25e4));
    CHECK(rise_at(law, 0.82e-3).value == Approx(3e4));
}
