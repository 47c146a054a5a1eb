// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// What installers carry in their heads, against the relations. Every figure is common practice, no source.
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/friction.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <string>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

const std::string saying = "sayings of the trade";
const FluidState warm = water(42.5 * unit::celsius).value();   // mean of 45/40
Conduit copper(double bore_mm) { return {bore_mm * unit::millimetre, 0.0015 * unit::millimetre}; }

Power carried(double bore_mm, double drop_k, double v = 0.9) {
    return flow_at_velocity(v * unit::metre_per_second, copper(bore_mm), warm) * warm.specific_heat *
           (drop_k * unit::kelvin);
}

}  // namespace

TEST_CASE("10 kW at 5 K is about 30 litres a minute") {
    const auto flow = 10.0 * unit::kilowatt / (warm.specific_heat * (5.0 * unit::kelvin)) / warm.density;
    verify({"flow of 10 kW at 5 K", saying, Certainty::practice, "L/min"}, 30.0,
           flow.in(unit::litre_per_minute), 1.5);
}

TEST_CASE("what copper carries at 0.9 m/s") {
    Verification v{{"heat that 15 and 22 mm copper carries at 0.9 m/s", saying, Certainty::practice, "kW"}};
    v.check(3.0, carried(13.6, 5.0).in(unit::kilowatt), 0.12 * 3.0);              // 15 mm: about 3 kW
    v.check(6.0, carried(20.2, 5.0).in(unit::kilowatt), 0.03 * 6.0);              // 22 mm: about 6 kW
    v.check(12.0, carried(20.2, 10.0).in(unit::kilowatt), 0.03 * 12.0);           // 12 kW in 22 mm wants 10 K
    CHECK(carried(20.2, 5.0) < 10.0 * unit::kilowatt);                            // 10 kW wants 28 mm
    CHECK(carried(26.2, 5.0) > 10.0 * unit::kilowatt);
    CHECK(carried(32.6, 5.0) < 20.0 * unit::kilowatt);                            // 20 kW wants 42 mm
    CHECK(carried(39.6, 5.0) > 20.0 * unit::kilowatt);
}

TEST_CASE("25 to 30 % glycol leaves about nine tenths: less at equal gradient, more at equal velocity") {
    const auto limit = 300.0 * unit::pascal_per_metre;
    const auto pipe = copper(26.2);
    const auto speed = 0.9 * unit::metre_per_second;
    Verification slower{
        {"heat that 25 to 30 % glycol carries, equal gradient", saying, Certainty::practice, ""}};
    Verification as_fast{
        {"heat that 25 to 30 % glycol carries, equal velocity", saying, Certainty::practice, ""}};
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
        slower.check(0.9, slow, 0.07);
        as_fast.check(0.9, fast, 0.08);
        CHECK(slow < 0.9);
        CHECK(fast > 0.9);
    }
}

TEST_CASE("twice the bore is four times the area and about six times the flow, not eight") {
    const auto limit = 200.0 * unit::pascal_per_metre;
    const double times =
        flow_at_gradient(limit, copper(30.0), warm) / flow_at_gradient(limit, copper(15.0), warm);
    verify({"flow of twice the bore at equal gradient", saying, Certainty::practice, ""}, 6.3, times,
           0.05 * 6.3);
}
