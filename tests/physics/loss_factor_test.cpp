// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/friction.hpp"

#include "support/catch.hpp"

#include <cmath>

using namespace loopfolio;
using namespace loopfolio::physics;

TEST_CASE("sudden enlargement by Borda and Carnot") {
    // 0.5625: documentation of the Python library fluids; 0.29889 computed with it for 15 to 22 mm copper.
    CHECK(sudden_enlargement(0.5 * unit::metre, 1.0 * unit::metre) == Approx(0.5625));
    CHECK(sudden_enlargement(13.6 * unit::millimetre, 20.2 * unit::millimetre) ==
          Approx(0.29889).margin(5e-6));
    CHECK(sudden_enlargement(1.0 * unit::metre, 1.0 * unit::metre) == 0.0);
    CHECK(sudden_enlargement(1e-6 * unit::metre, 1.0 * unit::metre) == Approx(1.0));   // exit into a vessel
}

TEST_CASE("sudden contraction, textbook form") {
    // fluids 1.3.1: 0.2777777 for 3 to 2 (its documentation), 0.27336 for 22 to 15 mm copper; entry 0.5
    // (Crane, Idelchik).
    CHECK(sudden_contraction(3.0 * unit::metre, 2.0 * unit::metre) == Approx(0.2777777).margin(1e-7));
    CHECK(sudden_contraction(20.2 * unit::millimetre, 13.6 * unit::millimetre) ==
          Approx(0.27336).margin(5e-6));
    CHECK(sudden_contraction(1.0 * unit::metre, 1e-6 * unit::metre) == Approx(0.5));
}

TEST_CASE("an insert costs a contraction and an enlargement, on the velocity of the pipe") {
    const auto bore = 12.0 * unit::millimetre;
    CHECK(insert_loss_factor(bore, Length{}) == 0.0);
    CHECK(insert_loss_factor(bore, bore) == 0.0);
    CHECK(insert_loss_factor(bore, 13.0 * unit::millimetre) == 0.0);
    double wider = 0.0;
    for (double mm = 11.9; mm > 4.0; mm -= 0.1) {
        const double zeta = insert_loss_factor(bore, mm * unit::millimetre);
        CHECK(zeta > wider);
        wider = zeta;
    }
    // Half the area: (0.25 + 0.25) x 4, worked by hand.
    CHECK(insert_loss_factor(bore, (12.0 / std::sqrt(2.0)) * unit::millimetre) == Approx(2.0));
}

TEST_CASE("an insert fitting in 16 mm multilayer costs about half a metre to a metre of its pipe") {
    // Common practice, no source.
    const auto fluid = water(45.0 * unit::celsius).value();
    const Conduit pipe{12.0 * unit::millimetre, 0.007 * unit::millimetre};
    for (const double v : {0.4, 0.6, 0.9}) {
        const auto flow = pipe_flow(flow_at_velocity(v * unit::metre_per_second, pipe, fluid), pipe, fluid);
        const auto loss = insert_loss_factor(pipe.bore, 8.5 * unit::millimetre) * flow.dynamic_pressure;
        const double metres = (loss / flow.gradient).si();
        CHECK(metres > 0.5);
        CHECK(metres < 1.0);
    }
}

TEST_CASE("a valve's pressure drop follows from its Kv") {
    // Definition of Kv (VDI/VDE 2173, EN 60534, from memory): 0.9 m3/h through 2.5 m3/h is 0.1296 bar.
    const auto flow = 0.9 * unit::cubic_metre_per_hour;
    CHECK(valve_pressure_drop(flow, 2.5, Density::from_si(1000.0)).in(unit::kilopascal) == Approx(12.96));
    CHECK(valve_pressure_drop(flow, 2.84605, Density::from_si(1000.0)).in(unit::bar) ==
          Approx(0.1).epsilon(1e-5));
    CHECK(valve_pressure_drop(flow, 2.5, Density::from_si(1030.0)).in(unit::kilopascal) ==
          Approx(12.96 * 1.03));
    // As a loss factor: Kv 2.312 in a bore of 15 mm is 15.1533746 (documentation of fluids, with 1.6e9
    // rounded).
    const auto rho = Density::from_si(1000.0);
    const auto drop = valve_pressure_drop(flow, 2.312, rho);
    const auto moving = pipe_flow(flow * rho, {15.0 * unit::millimetre, Length{}},
                                  {rho, {}, DynamicViscosity::from_si(1e-3)});
    CHECK(drop / moving.dynamic_pressure == Approx(15.1533746).epsilon(1e-3));
}
