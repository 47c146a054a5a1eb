// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <limits>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

constexpr ThermalResistance none{};
ThermalResistance r(double value) { return ThermalResistance::from_si(value); }

/// A floor of 100 m2 with this characteristic dimension B' = 2A/P.
std::optional<UValue> floor_with(double characteristic, ThermalResistance insulation) {
    return ground_floor_u_value(100.0 * unit::square_metre, (200.0 / characteristic) * unit::metre, insulation);
}

}  // namespace

TEST_CASE("a solid floor on clay, all rows of Approved Document L1 (2002), table C1") {
    const auto csv = tests::read_csv("ground_floor.csv");
    REQUIRE(csv.rows.size() == 20);
    Verification table{
        {"U-value of a solid floor on clay", "Approved Document L1 (2002), table C1", Certainty::memory, "W/m²K"}};
    Verification formula{{"U-value of a solid floor on clay by formula", "BS EN ISO 13370 in double precision",
                          Certainty::computed, "W/m²K"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const double ratio = csv.number(i, "p_over_a");
        CAPTURE(ratio);
        const auto u = ground_floor_u_value(100.0 * unit::square_metre, 100.0 * ratio * unit::metre, none);
        REQUIRE(u);
        table.check(csv.number(i, "published"), u->si(), 0.005);  // two decimals
        formula.check(csv.number(i, "computed"), u->si(), 1e-12 * csv.number(i, "computed"));
    }
}

TEST_CASE("a floor on other ground, bare and insulated") {
    // B' = 8 m; by the formula: dt = 0.3 + lambda (0.17 + Rf + 0.04).
    Verification v{
        {"U-values of floors on clay, sand and rock", "BS EN ISO 13370, by hand", Certainty::computed, "W/m²K"}};
    const auto on = [](double conductivity, double insulation) {
        GroundFloor ground;
        ground.ground = conductivity * unit::watt_per_metre_kelvin;
        return ground_floor_u_value(100.0 * unit::square_metre, 25.0 * unit::metre, r(insulation), ground)->si();
    };
    v.check(0.435123, on(1.5, 0.0), 1e-6);
    v.check(0.554049, on(2.0, 0.0), 1e-6);
    v.check(0.864075, on(3.5, 0.0), 1e-6);
    v.check(0.218490, on(2.0, 2.5), 1e-6);
    v.check(0.260397, on(3.5, 2.5), 1e-6);
}

TEST_CASE("ISO 13370, single floors") {
    // The first is a detached house of a published example (P 33.8 m, A 58.89 m2), whose table row reads
    // 0.74 at a rounded ratio of 0.55.
    Verification v{
        {"U-values of floors, bare and insulated", "BS EN ISO 13370, by hand", Certainty::computed, "W/m²K"}};
    v.check(0.76124, ground_floor_u_value(58.89 * unit::square_metre, 33.8 * unit::metre, none)->si(), 7.6e-6);
    v.check(0.69756, floor_with(4.0, none)->si(), 6.9e-6);
    v.check(0.24221, floor_with(4.0, r(2.5))->si(), 7.2e-6);  // the well insulated branch
    v.check(0.43512, floor_with(8.0, none)->si(), 8.7e-6);
    v.check(0.19432, floor_with(8.0, r(2.5))->si(), 5.8e-6);
}

TEST_CASE("insulation and a larger floor lower the U-value, also across the two branches") {
    for (double b = 1.0; b < 20.0; b += 0.5) {
        double bare = 10.0;
        for (double resistance = 0.0; resistance < 6.0; resistance += 0.1) {
            CAPTURE(b, resistance);
            const double u = floor_with(b, r(resistance))->si();
            CHECK(u < bare);
            CHECK(floor_with(b + 0.5, r(resistance))->si() < u);
            bare = u;
        }
    }
}

TEST_CASE("a floor that cannot be is refused") {
    const auto a = 20.0 * unit::square_metre;
    const auto p = 10.0 * unit::metre;
    CHECK_FALSE(ground_floor_u_value(Area{}, p, none));
    CHECK_FALSE(ground_floor_u_value(a, Length{}, none));
    CHECK_FALSE(ground_floor_u_value(a, p, r(-0.1)));
    CHECK_FALSE(ground_floor_u_value(a, p, r(std::numeric_limits<double>::quiet_NaN())));
    CHECK_FALSE(ground_floor_u_value(Area::from_si(std::numeric_limits<double>::infinity()), p, none));
}

TEST_CASE("ventilation and fabric terms give the worked example of Chadderton, 5th ed., example 3.6") {
    // Hall 20 x 10 x 3 m, one air change, 21 °C inside, -4 °C outside: 15 835 W with 0.33 and F2 = 1.1.
    const auto u = [](double value) { return value * unit::watt_per_square_metre_kelvin; };
    const auto m2 = [](double value) { return value * unit::square_metre; };
    const auto fabric = u(5.7) * m2(20) + u(0.5) * m2(152) + u(5.7) * m2(8) + u(0.3) * m2(200) + u(0.6) * m2(200);
    CHECK(fabric.si() == Approx(415.6));
    const auto air = ventilation_coefficient(0.33, 1.0 * unit::per_hour, 600.0 * unit::cubic_metre);
    CHECK(air.si() == Approx(198.0));
    verify({"heat loss of a hall from its terms", "Chadderton, Building Services Engineering, 5th ed., example 3.6",
            Certainty::read, "W"},
           15835.0, ((fabric + 1.1 * air) * (25.0 * unit::kelvin)).si(), 0.0158);
}

TEST_CASE("the air constant is density times heat of air") {
    // 1.2041 kg/m3 x 1006 J/(kg K) / 3600 = 0.3365 Wh/(m3 K); EN 12831-1 rounds to 0.34.
    const auto by_constant = ventilation_coefficient(0.34, 0.5 * unit::per_hour, 50.0 * unit::cubic_metre);
    const double by_air = 1.2041 * 1006.0 * (0.5 / 3600.0) * 50.0;
    verify({"ventilation of 50 m³ at half a change an hour", "dry air at 20 °C and 1 atm, rho cp, by hand",
            Certainty::computed, "W/K"},
           by_air, by_constant.si(), 0.005 * 0.5 * 50.0);  // 0.34 has two digits
}
