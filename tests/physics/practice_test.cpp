// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// What installers carry in their heads, against the relations. Every figure is common practice, no source.
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/friction.hpp"

#include "support/catch.hpp"

using namespace loopfolio;
using namespace loopfolio::physics;

namespace {

const FluidState warm = water(42.5 * unit::celsius).value();   // mean of 45/40
Conduit copper(double bore_mm) { return {bore_mm * unit::millimetre, 0.0015 * unit::millimetre}; }

Power carried(double bore_mm, double drop_k, double v = 0.9) {
    return flow_at_velocity(v * unit::metre_per_second, copper(bore_mm), warm) * warm.specific_heat *
           (drop_k * unit::kelvin);
}

}  // namespace

TEST_CASE("10 kW at 5 K is about 30 litres a minute") {
    const auto flow = 10.0 * unit::kilowatt / (warm.specific_heat * (5.0 * unit::kelvin)) / warm.density;
    CHECK(flow.in(unit::litre_per_minute) == Approx(30.0).epsilon(0.05));
}

TEST_CASE("what copper carries at 0.9 m/s") {
    CHECK(carried(13.6, 5.0).in(unit::kilowatt) == Approx(3.0).epsilon(0.12));    // 15 mm: about 3 kW
    CHECK(carried(20.2, 5.0).in(unit::kilowatt) == Approx(6.0).epsilon(0.03));    // 22 mm: about 6 kW
    CHECK(carried(20.2, 10.0).in(unit::kilowatt) == Approx(12.0).epsilon(0.03));  // 12 kW in 22 mm wants 10 K
    CHECK(carried(20.2, 5.0) < 10.0 * unit::kilowatt);                            // 10 kW wants 28 mm
    CHECK(carried(26.2, 5.0) > 10.0 * unit::kilowatt);
    CHECK(carried(32.6, 5.0) < 20.0 * unit::kilowatt);                            // 20 kW wants 42 mm
    CHECK(carried(39.6, 5.0) > 20.0 * unit::kilowatt);
}

TEST_CASE("25 to 30 % glycol leaves about nine tenths: less at equal gradient, more at equal velocity") {
    const auto limit = 300.0 * unit::pascal_per_metre;
    const auto pipe = copper(26.2);
    const auto speed = 0.9 * unit::metre_per_second;
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
        CHECK(slow > 0.83);
        CHECK(slow < 0.9);
        CHECK(fast > 0.9);
        CHECK(fast < 0.98);
    }
}

TEST_CASE("twice the bore is four times the area and about six times the flow, not eight") {
    const auto limit = 200.0 * unit::pascal_per_metre;
    const double times =
        flow_at_gradient(limit, copper(30.0), warm) / flow_at_gradient(limit, copper(15.0), warm);
    CHECK(times == Approx(6.3).epsilon(0.05));
}
