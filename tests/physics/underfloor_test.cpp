// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/underfloor.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/emitter.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <limits>
#include <string>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

Temperature c(double celsius) { return celsius * unit::celsius; }
TemperatureDifference k(double kelvin) { return kelvin * unit::kelvin; }
HeatFlux q(double value) { return HeatFlux::from_si(value); }
ThermalResistance r(double value) { return ThermalResistance::from_si(value); }

FloorTables read_tables() {
    FloorTables out;
    const auto factors = tests::read_csv("floor_factors.csv");
    for (std::size_t i = 0; i < factors.rows.size(); ++i) {
        const double covering = factors.number(i, "covering_m2k_per_w"), pitch = factors.number(i, "pitch_mm") / 1e3;
        if (i == 0 || covering != factors.number(i - 1, "covering_m2k_per_w")) {
            out.pitch.push_back({covering, 0.0, factors.number(i, "a_pitch")});
        }
        out.cover.push_back({covering, pitch, factors.number(i, "a_cover")});
        out.diameter.push_back({covering, pitch, factors.number(i, "a_diameter")});
    }
    const auto limits = tests::read_csv("floor_limits.csv");
    for (std::size_t i = 0; i < limits.rows.size(); ++i) {
        auto& table = limits.rows[i][limits.column("name")] == "coefficient" ? out.limit : out.limit_exponent;
        table.push_back(
            {limits.number(i, "pitch_mm") / 1e3, limits.number(i, "cover_m2k_per_w"), limits.number(i, "value")});
    }
    return out;
}

const FloorTables& tables() {
    static const FloorTables all = read_tables();
    return all;
}

FloorBuild build(double pitch_mm, double cover_mm, double screed, double covering, double outside_mm) {
    return {pitch_mm * unit::millimetre, cover_mm * unit::millimetre, screed * unit::watt_per_metre_kelvin, r(covering),
            outside_mm * unit::millimetre};
}

FloorBuild usual() { return build(150, 45, 1.2, 0.05, 16); }

}  // namespace

TEST_CASE("basic characteristic of a heated floor") {
    const std::string source = "EN 1264-2, as trade pages print it";
    Verification v{{"flux of a floor 9 and 15 K over its room", source, Certainty::read, "W/m²"}};
    v.check(100.0, floor_flux(k(9))->si(), 0.5);
    v.check(175.0, floor_flux(k(15))->si(), 0.5);
    verify({"excess of a floor at 50 W/m²", "EN 1264-2, q = 8.92 dT^1.1, solved by hand", Certainty::computed, "K"},
           4.792, floor_excess(q(50))->si(), 0.0005);
    const auto csv = tests::read_csv("floor_basic_characteristic.csv");
    REQUIRE(csv.rows.size() == 12);
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto excess = k(csv.number(i, "excess_k"));
        CHECK(floor_flux(excess)->si() == Approx(csv.number(i, "flux_w_per_m2")).epsilon(1e-12));
        CHECK(floor_excess(*floor_flux(excess))->si() == Approx(excess.si()).epsilon(1e-12));
    }
    CHECK(floor_flux(k(0))->si() == 0.0);
    for (const double bad : {-1.0, nan_value}) {
        CHECK_FALSE(floor_flux(k(bad)));
        CHECK_FALSE(floor_excess(q(bad)));
    }
}

TEST_CASE("transfer, flow temperature and limit of random floors") {
    const auto csv = tests::read_csv("floor_outputs.csv");
    REQUIRE(csv.rows.size() == 60);
    const std::string source = "EN 1264-2 by scipy, tests/reference/fabric.py";
    Verification transfers{{"transfer of a heated floor, type A", source, Certainty::computed, "W/m²K"}};
    Verification flows{{"flow temperature of a heated floor", source, Certainty::computed, "°C"}};
    Verification limits{{"limit of a heated floor", source, Certainty::computed, "W/m²"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        auto b = build(csv.number(i, "pitch_mm"), csv.number(i, "cover_mm"), csv.number(i, "screed"),
                       csv.number(i, "covering"), csv.number(i, "outside_mm"));
        b.pipe_wall = csv.number(i, "wall_mm") * unit::millimetre;
        b.pipe = csv.number(i, "pipe") * unit::watt_per_metre_kelvin;
        CAPTURE(i);
        const auto transfer = floor_transfer(b, tables());
        REQUIRE(transfer);
        transfers.check(csv.number(i, "transfer"), transfer->si(), 1e-9);
        const auto wanted = q(csv.number(i, "wanted"));
        const auto drop = k(csv.number(i, "drop_k"));
        const auto flow = floor_flow_temperature(*transfer, wanted, drop, c(20));
        REQUIRE(flow);
        flows.check(csv.number(i, "flow_c"), flow->celsius(), 1e-8);
        const auto output = floor_output(*transfer, *flow, drop, c(20));
        REQUIRE(output);
        CHECK(output->flux.si() == Approx(wanted.si()).epsilon(1e-10));
        CHECK(floor_flux(output->surface - c(20))->si() == Approx(wanted.si()).epsilon(1e-10));
        const auto limit = floor_limit(b, tables(), k(csv.number(i, "surface_k")));
        REQUIRE(limit);
        limits.check(csv.number(i, "limit_flux"), limit->flux.si(), 1e-7);
        CHECK((*transfer * limit->water_excess).si() == Approx(limit->flux.si()).epsilon(1e-12));
    }
}

TEST_CASE("EN 1264 against conduction round the pipe") {
    // The standard's bare floor gives more heat than conduction explains, increasingly so with wider spacing. The cause
    // is not established. The difference is calculated together with the conduction, by scipy from the standard's
    // tables, and the program's result is compared with that.
    const auto csv = tests::read_csv("floor_conduction.csv");
    REQUIRE(csv.rows.size() == 11);
    const std::string source = "conduction in two dimensions, scipy, tests/reference/fabric.py";
    const std::string why = "ours is the standard; why it differs from conduction is not established";
    Verification bare{{"transfer of a bare heated floor", source, Certainty::computed, "W/m²K", why}};
    Verification covered{{"transfer of a covered heated floor", source, Certainty::computed, "W/m²K", why}};
    Verification even{{"flux at 9 K of the warmest spot, pitch to 0.2 m", source, Certainty::computed, "W/m²", why}};
    double bare_before = 0.0;
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const double expected = csv.number(i, "transfer"), covering = csv.number(i, "covering");
        const auto b = build(1e3 * csv.number(i, "pitch_m"), 1e3 * csv.number(i, "cover_m"), csv.number(i, "screed"),
                             covering, 1e3 * csv.number(i, "outside_m"));
        const auto transfer = floor_transfer(b, tables());
        REQUIRE(transfer);
        const double standard = csv.number(i, "standard"), over = standard / expected - 1.0;
        (covering > 0.0 ? covered : bare).check_known(expected, standard - expected, transfer->si(), 1e-9);
        if (covering == 0.0) {  // rows of bare floors are in order of their spacing
            CHECK(over > bare_before);
            bare_before = over;
        }
        if (csv.number(i, "pitch_m") > 0.201) continue;
        const double mean_excess = 9.0 * csv.number(i, "evenness");
        const double by_conduction = 8.92 * std::pow(mean_excess, 1.1);  // the basic characteristic, W/m2
        even.check_known(by_conduction, csv.number(i, "standard_limit") - by_conduction,
                         floor_limit(b, tables(), k(9))->flux.si(), 1e-7);
    }
}

TEST_CASE("another pipe: its wall is a resistance in series with the floor") {
    // By hand: 1.1 q T W of each metre of pipe pass through a resistance that differs by ln(D/d)/(2 pi lambda).
    auto b = usual();
    const double before = floor_transfer(b, tables())->si();
    b.pipe = 0.41 * unit::watt_per_metre_kelvin;
    b.pipe_wall = 1.5 * unit::millimetre;
    const double two_pi = 2.0 * std::acos(-1.0);
    const double less = std::log(16.0 / 12.0) / (two_pi * 0.35) - std::log(16.0 / 13.0) / (two_pi * 0.41);
    CHECK(1.0 / floor_transfer(b, tables())->si() == Approx(1.0 / before - 1.1 * 0.150 * less).epsilon(1e-12));
}

TEST_CASE("a floor gives less with wider pipes, thicker cover, poorer screed, more covering, thinner pipe") {
    const auto gives = [](const FloorBuild& b) { return floor_transfer(b, tables())->si(); };
    const double reference = gives(usual());
    for (const auto& worse :
         {build(200, 45, 1.2, 0.05, 16), build(150, 60, 1.2, 0.05, 16), build(150, 45, 1.0, 0.05, 16),
          build(150, 45, 1.2, 0.10, 16), build(150, 45, 1.2, 0.05, 12)}) {
        CHECK(gives(worse) < reference);
    }
    // The limit rises with the surface temperature allowed, and an edge may be warmer than an occupied area.
    double last = 0.0;
    for (const double excess : {5.0, 9.0, 15.0}) {
        const auto limit = floor_limit(usual(), tables(), k(excess));
        REQUIRE(limit);
        CHECK(limit->flux.si() > last);
        CHECK(limit->flux <= *floor_flux(k(excess)));
        last = limit->flux.si();
    }
}

TEST_CASE("the warmest spot is where the limit curves say it is") {
    // The inverse of the curves: the excess whose limit is this flux, found by bisection.
    for (const double flux : {20.0, 60.0, 90.0}) {
        double low = 0.01, high = 20.0;
        for (int i = 0; i < 60; ++i) {
            const double middle = 0.5 * (low + high);
            (floor_limit(usual(), tables(), k(middle))->flux.si() < flux ? low : high) = middle;
        }
        for (const double stated : {9.0, 15.0}) {
            const auto spot = warmest_excess(*floor_limit(usual(), tables(), k(stated)), k(stated), q(flux));
            REQUIRE(spot);
            CHECK(spot->si() == Approx(low).epsilon(1e-9));
        }
        CHECK(low >= floor_excess(q(flux))->si() - 1e-9);  // no cooler than the mean
    }
    const auto limit = floor_limit(usual(), tables(), k(9));
    CHECK(warmest_excess(*limit, k(9), limit->flux)->si() == Approx(9.0));
    CHECK(warmest_excess(*limit, k(9), q(0))->si() == 0.0);
    CHECK_FALSE(warmest_excess(*limit, k(9), q(-1)));
    CHECK_FALSE(warmest_excess(*limit, k(0), q(50)));
}

TEST_CASE("heat down, water and length of a loop") {
    // By hand: the plane of the pipes is at room + q Ro; from there the loss is (room + q Ro - below) / Ru.
    const auto up = resistance_upward(usual());
    REQUIRE(up);
    CHECK(up->si() == Approx(1.0 / 10.8 + 0.05 + 0.045 / 1.2).epsilon(1e-12));
    const double plane = 20.0 + 60.0 * up->si();
    const auto down = flux_downward(q(60), *up, r(1.5), c(20), c(8));
    REQUIRE(down);
    CHECK(down->si() == Approx((plane - 8.0) / 1.5).epsilon(1e-12));
    CHECK(flux_downward(q(10), *up, r(1.5), c(20), c(30))->si() < 0.0);
    // EN 1264-3: m = A q / (cp drop) (1 + Ro/Ru + (room - below)/(q Ru)).
    const auto area = 12.0 * unit::square_metre;
    const auto cp = SpecificHeat::from_si(4180.0);
    const auto flow = loop_flow(area, q(60), *down, k(5), cp);
    REQUIRE(flow);
    CHECK(flow->si() ==
          Approx(12.0 * 60.0 / (4180.0 * 5.0) * (1.0 + up->si() / 1.5 + 12.0 / (60.0 * 1.5))).epsilon(1e-12));
    CHECK(loop_length(area, 150.0 * unit::millimetre, 8.0 * unit::metre)->si() == Approx(88.0).epsilon(1e-12));
}

TEST_CASE("a floor outside the relation is refused") {
    CHECK(floor_transfer(usual(), tables()));
    for (const auto& bad :
         {build(49, 45, 1.2, 0.05, 16), build(376, 45, 1.2, 0.05, 16), build(150, 9, 1.2, 0.05, 16),
          build(150, 66, 1.2, 0.05, 16), build(150, 45, 0.2, 0.05, 16), build(150, 45, 1.2, -0.01, 16),
          build(150, 45, 1.2, 0.151, 16), build(150, 45, 1.2, 0.05, 7), build(150, 45, 1.2, 0.05, 31),
          build(nan_value, 45, 1.2, 0.05, 16), build(150, nan_value, 1.2, 0.05, 16),
          build(150, 45, nan_value, 0.05, 16), build(150, 45, 1.2, nan_value, 16),
          build(150, 45, 1.2, 0.05, nan_value)}) {
        CHECK_FALSE(floor_transfer(bad, tables()));
        CHECK_FALSE(floor_limit(bad, tables(), k(9)));
        CHECK_FALSE(resistance_upward(bad));
    }
    CHECK_FALSE(floor_transfer(usual(), FloorTables{}));
    for (const double bad : {0.0, -1.0, 8.0, nan_value}) {
        auto b = usual();
        b.pipe_wall = bad * unit::millimetre;
        CHECK_FALSE(floor_transfer(b, tables()));
    }
    CHECK_FALSE(floor_limit(build(150, 65, 0.5, 0.05, 16), tables(), k(9)));  // 0.13 m2 K/W of screed
    CHECK_FALSE(floor_limit(usual(), tables(), k(20.1)));
    const auto transfer = UValue::from_si(4.0);
    CHECK_FALSE(floor_output(transfer, c(35), k(15), c(20)));
    CHECK_FALSE(floor_output(transfer, c(35), k(-1), c(20)));
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(floor_limit(usual(), tables(), k(bad)));
        CHECK_FALSE(floor_output(UValue::from_si(bad), c(40), k(5), c(20)));
        CHECK_FALSE(floor_flow_temperature(UValue::from_si(bad), q(50), k(5), c(20)));
        CHECK_FALSE(floor_flow_temperature(transfer, q(bad), k(5), c(20)));
        CHECK_FALSE(floor_flow_temperature(transfer, q(50), k(bad), c(20)));
        CHECK_FALSE(flux_downward(q(bad), r(0.2), r(1), c(20), c(10)));
        CHECK_FALSE(flux_downward(q(50), r(0.2), r(bad), c(20), c(10)));
        CHECK_FALSE(loop_length(Area::from_si(bad), 0.15 * unit::metre, {}));
        CHECK_FALSE(loop_length(Area::from_si(10), bad * unit::metre, {}));
        CHECK_FALSE(loop_flow(Area::from_si(10), q(50), q(5), k(bad), SpecificHeat::from_si(4180)));
    }
    CHECK_FALSE(loop_flow(Area::from_si(10), q(50), q(-50), k(5), SpecificHeat::from_si(4180)));
}
