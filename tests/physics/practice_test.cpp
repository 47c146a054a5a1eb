// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// Rules of thumb of installers, compared with the formulas. Every figure is common practice, no source.
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/friction.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <string>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

const std::string saying = "sayings of the trade";
const FluidState warm = water(42.5 * unit::celsius).value();  // mean of 45/40
Conduit copper(double bore_mm) { return {bore_mm * unit::millimetre, 0.0015 * unit::millimetre}; }

Power carried(double bore_mm, double drop_k, double v = 0.9) {
    return flow_at_velocity(v * unit::metre_per_second, copper(bore_mm), warm) * warm.specific_heat *
           (drop_k * unit::kelvin);
}

}  // namespace

TEST_CASE("10 kW at 5 K is about 30 litres a minute") {
    const auto flow = 10.0 * unit::kilowatt / (warm.specific_heat * (5.0 * unit::kelvin)) / warm.density;
    // The rule is to the nearest 5 L/min.
    verify({"flow of 10 kW at 5 K", saying, Certainty::practice, "L/min"}, 30.0, flow.in(unit::litre_per_minute), 2.5);
    // IAPWS-95 at 42.5 °C: 991.28 kg/m3 and 4179.4 J/(kg K), between the rows for 40 and 45 °C of water_2bar.csv.
    verify({"flow of 10 kW at 5 K, exactly", "heat balance with IAPWS-95, by hand", Certainty::computed, "L/min"},
           10e3 / (4179.4 * 5.0) / 991.28 * 60e3, flow.in(unit::litre_per_minute), 0.02);  // cp of IF97 is 0.06 % off
}

TEST_CASE("what copper carries at 0.9 m/s") {
    Verification v{{"heat that 15 and 22 mm copper carries at 0.9 m/s", saying, Certainty::practice, "kW"}};
    // The rules are in whole kilowatts, so the tolerance of each is half a kilowatt.
    v.check(3.0, carried(13.6, 5.0).in(unit::kilowatt), 0.5);    // 15 mm: about 3 kW
    v.check(6.0, carried(20.2, 5.0).in(unit::kilowatt), 0.5);    // 22 mm: about 6 kW
    v.check(12.0, carried(20.2, 10.0).in(unit::kilowatt), 0.5);  // 12 kW in 22 mm needs 10 K
    // The same by hand: pi/4 d2 v rho cp dT, water by IAPWS-95 at 42.5 °C; cp of IF97 is up to 0.06 % off.
    Verification exact{{"heat that 15 and 22 mm copper carries at 0.9 m/s, exactly",
                        "flow and heat balance with IAPWS-95, by hand", Certainty::computed, "kW"}};
    const auto by_hand = [](double bore_mm, double drop_k) {
        return M_PI / 4.0 * bore_mm * bore_mm * 1e-6 * 0.9 * 991.28 * 4179.4 * drop_k / 1e3;
    };
    for (const double bore : {13.6, 20.2}) {
        exact.check(by_hand(bore, 5.0), carried(bore, 5.0).in(unit::kilowatt), 6e-4 * by_hand(bore, 5.0));
    }
    CHECK(carried(20.2, 5.0) < 10.0 * unit::kilowatt);  // 10 kW wants 28 mm
    CHECK(carried(26.2, 5.0) > 10.0 * unit::kilowatt);
    CHECK(carried(32.6, 5.0) < 20.0 * unit::kilowatt);  // 20 kW wants 42 mm
    CHECK(carried(39.6, 5.0) > 20.0 * unit::kilowatt);
}

TEST_CASE("25 to 30 % glycol leaves about nine tenths: less at equal gradient, more at equal velocity") {
    const auto limit = 300.0 * unit::pascal_per_metre;
    const auto pipe = copper(26.2);
    const auto speed = 0.9 * unit::metre_per_second;
    // The rule does not say whether pressure or speed stays the same, and lies between the two.
    Verification between{{"heat that 25 to 30 % glycol carries, between equal gradient and equal velocity", saying,
                          Certainty::practice, ""}};
    const auto share = [&](MassFlow mixed, SpecificHeat cp, MassFlow plain) {
        return mixed * cp / (plain * warm.specific_heat);
    };
    for (const double volume : {0.25, 0.30}) {
        const auto x = mass_fraction_from_volume(FluidKind::propylene_glycol, volume);
        const auto mixed = glycol(FluidKind::propylene_glycol, *x, 42.5 * unit::celsius);
        const double slow = share(flow_at_gradient(limit, pipe, *mixed), mixed->specific_heat,
                                  flow_at_gradient(limit, pipe, warm));
        const double fast = share(flow_at_velocity(speed, pipe, *mixed), mixed->specific_heat,
                                  flow_at_velocity(speed, pipe, warm));
        CAPTURE(volume, slow, fast);
        between.check_inside(0.9, slow, fast);
    }
}

TEST_CASE("twice the bore is four times the area and about six times the flow, not eight") {
    const auto limit = 200.0 * unit::pascal_per_metre;
    const double times = flow_at_gradient(limit, copper(30.0), warm) / flow_at_gradient(limit, copper(15.0), warm);
    // Q goes with d^2.5 where a pipe is fully rough and with d^(19/7) where it is smooth and Blasius holds, f with
    // Re^-1/4.
    Verification v{{"flow of twice the bore at equal gradient, between smooth and rough", "2^2.5 and 2^(19/7), by hand",
                    Certainty::computed, ""}};
    v.check_inside(times, std::pow(2.0, 2.5), std::pow(2.0, 19.0 / 7.0));
    Verification said{
        {"flow of twice the bore at equal gradient, between smooth and rough", saying, Certainty::practice, ""}};
    said.check_inside(6.3, std::pow(2.0, 2.5), std::pow(2.0, 19.0 / 7.0));
}
