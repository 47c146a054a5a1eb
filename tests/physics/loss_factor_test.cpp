// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/friction.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <cmath>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

TEST_CASE("sudden enlargement by Borda and Carnot") {
    verify({"enlargement to twice the bore", "documentation of the Python library fluids", Certainty::read, ""}, 0.5625,
           sudden_enlargement(0.5 * unit::metre, 1.0 * unit::metre), 5e-6);
    verify({"enlargement from 15 to 22 mm copper", "Python library fluids 1.3.1", Certainty::computed, ""}, 0.29889,
           sudden_enlargement(13.6 * unit::millimetre, 20.2 * unit::millimetre), 5e-6);
    CHECK(sudden_enlargement(1.0 * unit::metre, 1.0 * unit::metre) == 0.0);
    verify({"exit into a vessel", "Borda and Carnot: all of the dynamic pressure", Certainty::computed, ""}, 1.0,
           sudden_enlargement(1e-6 * unit::metre, 1.0 * unit::metre), 1e-5);
}

TEST_CASE("sudden contraction, textbook form") {
    verify({"contraction to two thirds of the bore", "documentation of the Python library fluids", Certainty::read, ""},
           0.2777777, sudden_contraction(3.0 * unit::metre, 2.0 * unit::metre), 1e-7);
    verify({"contraction from 22 to 15 mm copper", "Python library fluids 1.3.1", Certainty::computed, ""}, 0.27336,
           sudden_contraction(20.2 * unit::millimetre, 13.6 * unit::millimetre), 5e-6);
    verify({"sharp entry from a vessel", "Crane and Idelchik, as the Python library fluids quotes them",
            Certainty::read, ""},
           0.5, sudden_contraction(1.0 * unit::metre, 1e-6 * unit::metre), 5e-6);
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
    verify({"insert of half the area", "(0.25 + 0.25) x 4, by hand", Certainty::computed, ""}, 2.0,
           insert_loss_factor(bore, (12.0 / std::sqrt(2.0)) * unit::millimetre), 2e-5);
}

TEST_CASE("an insert fitting in 16 mm multilayer costs about half a metre to a metre of its pipe") {
    tests::Verification metres{{"metres of 16 mm multilayer that an insert costs, 0.5 to 1", "sayings of the trade",
                                Certainty::practice, "m"}};
    const auto fluid = water(45.0 * unit::celsius).value();
    const Conduit pipe{12.0 * unit::millimetre, 0.007 * unit::millimetre};
    for (const double v : {0.4, 0.6, 0.9}) {
        const auto flow = pipe_flow(flow_at_velocity(v * unit::metre_per_second, pipe, fluid), pipe, fluid);
        const auto loss = insert_loss_factor(pipe.bore, 8.5 * unit::millimetre) * flow.dynamic_pressure;
        // The rule gives a range, and the program's result lies within it.
        metres.check_inside((loss / flow.gradient).si(), 0.5, 1.0);
    }
}

TEST_CASE("a valve's pressure drop follows from its Kv") {
    // 0.9 m3/h through 2.5 m3/h is 0.1296 bar.
    tests::Verification v{
        {"pressure drop of a valve", "definition of Kv, VDI/VDE 2173 and EN 60534", Certainty::memory, "kPa"}};
    const auto flow = 0.9 * unit::cubic_metre_per_hour;
    v.check(12.96, valve_pressure_drop(flow, 2.5, Density::from_si(1000.0)).in(unit::kilopascal), 1e-4);
    v.check(10.0, valve_pressure_drop(flow, 2.84605, Density::from_si(1000.0)).in(unit::kilopascal), 1e-4);
    v.check(12.96 * 1.03, valve_pressure_drop(flow, 2.5, Density::from_si(1030.0)).in(unit::kilopascal), 1e-4);
    // Kv is a flow at 1 bar, so zeta = 2 x 10^5 / 1000 x (3600 pi/4)^2 d^4 / Kv^2 = 1.598876e9 d^4 / Kv^2.
    const auto rho = Density::from_si(1000.0);
    const auto drop = valve_pressure_drop(flow, 2.312, rho);
    const auto moving = pipe_flow(flow * rho, {15.0 * unit::millimetre, Length{}},
                                  {rho, {}, DynamicViscosity::from_si(1e-3)});
    Verification known{{"loss factor of Kv 2.312 in a bore of 15 mm", "documentation of the Python library fluids",
                        Certainty::read, "", "the documentation rounds 1.598876e9 to 1.6e9"}};
    const double exact = 200.0 * std::pow(3600.0 * M_PI / 4.0, 2) * std::pow(0.015, 4) / (2.312 * 2.312);
    known.check_known(15.1533746, exact - 15.1533746, drop / moving.dynamic_pressure, 1e-9);
}
