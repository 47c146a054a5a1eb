// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/ventilation.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/design_allowance.hpp"
#include "loopfolio/physics/fabric.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <limits>

using namespace loopfolio;
using namespace loopfolio::physics;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

Temperature c(double celsius) { return celsius * unit::celsius; }
AirChangeRate ac(double per_hour) { return per_hour * unit::per_hour; }
HeatLossCoefficient h(double value) { return value * unit::watt_per_kelvin; }

constexpr auto lapse = Lapse::from_si(0.006);

}  // namespace

TEST_CASE("leakage from a test at 50 Pa") {
    CHECK(leakage_by_divisor(ac(10), 20)->in(unit::per_hour) == Approx(0.5).epsilon(1e-12));
    // EN 12831:2003, 6.3: V = 2 V n50 e epsilon.
    CHECK(leakage_by_exposure(ac(8), 0.03, 1.2)->in(unit::per_hour) == Approx(0.576).epsilon(1e-12));
    CHECK(leakage_by_exposure(ac(8), 0.0, 1.0)->si() == 0.0);
    for (const double bad : {-1.0, nan_value}) {
        CHECK_FALSE(leakage_by_divisor(ac(bad), 20));
        CHECK_FALSE(leakage_by_divisor(ac(8), bad));
        CHECK_FALSE(leakage_by_exposure(ac(bad), 0.03, 1.0));
        CHECK_FALSE(leakage_by_exposure(ac(8), bad, 1.0));
        CHECK_FALSE(leakage_by_exposure(ac(8), 0.03, bad));
    }
    CHECK_FALSE(leakage_by_divisor(ac(8), 4.9));
    CHECK_FALSE(leakage_by_divisor(ac(8), 50.1));
    CHECK_FALSE(leakage_by_exposure(ac(8), 0.11, 1.0));
    CHECK_FALSE(leakage_by_exposure(ac(8), 0.03, 2.1));
}

TEST_CASE("fans with recovery") {
    CHECK(air_changes_to_warm({ac(0.5), 0.8, ac(0.1)})->in(unit::per_hour) == Approx(0.2).epsilon(1e-12));
    CHECK(air_changes_to_warm({ac(0.5), 0.0, ac(0.1)})->in(unit::per_hour) == Approx(0.6).epsilon(1e-12));
    CHECK(air_changes_to_warm({ac(0.5), 1.0, ac(0.1)})->in(unit::per_hour) == Approx(0.1).epsilon(1e-12));
    // The heat balance of the exchanger: the supply air leaves at outdoor + recovery (room - outdoor).
    const double room = 21.0, outdoor = -3.0, recovery = 0.73, supply = outdoor + recovery * (room - outdoor);
    const auto volume = 40.0 * unit::cubic_metre;
    const auto whole = ventilation_coefficient(0.34, *air_changes_to_warm({ac(0.6), recovery, ac(0)}), volume);
    CHECK(whole.si() * (room - outdoor) == Approx(0.34 * 0.6 * 40.0 * (room - supply)).epsilon(1e-12));
    for (const double bad : {-0.01, 1.01, nan_value}) CHECK_FALSE(air_changes_to_warm({ac(0.5), bad, ac(0.1)}));
    for (const double bad : {-0.01, nan_value}) {
        CHECK_FALSE(air_changes_to_warm({ac(bad), 0.5, ac(0.1)}));
        CHECK_FALSE(air_changes_to_warm({ac(0.5), 0.5, ac(bad)}));
    }
}

TEST_CASE("an unheated space takes in what it loses") {
    for (const double to_rooms : {0.0, 5.0, 40.0, 300.0}) {
        const UnheatedSpace space{h(to_rooms), h(60)};
        const auto t = unheated_temperature(space, c(20), c(-4));
        REQUIRE(t);
        CHECK(*t >= c(-4 - 1e-9));
        CHECK(*t <= c(20));
        CHECK((space.to_rooms * (c(20) - *t)).si() == Approx((space.to_outside * (*t - c(-4))).si()).margin(1e-9));
        CHECK(*unheated_factor(space) == Approx((c(20) - *t) / (c(20) - c(-4))).epsilon(1e-12));
    }
    CHECK(unheated_temperature({h(30), h(0)}, c(20), c(-4))->celsius() == Approx(20.0));
    CHECK_FALSE(unheated_factor({h(0), h(0)}));
    CHECK_FALSE(unheated_temperature({h(30), h(10)}, c(nan_value), c(-4)));
    for (const double bad : {-1.0, nan_value}) {
        CHECK_FALSE(unheated_factor({h(bad), h(10)}));
        CHECK_FALSE(unheated_factor({h(10), h(bad)}));
    }
}

TEST_CASE("outdoor temperature with height") {
    // -0.6 K per 100 m.
    CHECK(outdoor_at_height(c(-1.8), 250.0 * unit::metre, lapse)->celsius() == Approx(-3.3).epsilon(1e-9));
    CHECK(outdoor_at_height(c(-1.8), Length{}, lapse)->celsius() == Approx(-1.8));
    CHECK(outdoor_at_height(c(-1.8), 1000.0 * unit::metre, lapse));
    for (const double bad : {-1.0, 1000.1, nan_value}) CHECK_FALSE(outdoor_at_height(c(0), bad * unit::metre, lapse));
    for (const double bad : {-1.0, nan_value}) CHECK_FALSE(outdoor_at_height(c(0), Length{}, Lapse::from_si(bad)));
    CHECK_FALSE(outdoor_at_height(c(nan_value), Length{}, lapse));
}

TEST_CASE("heating up and margins") {
    CHECK(heat_up_power(18.0 * unit::square_metre, HeatFlux::from_si(11))->si() == Approx(198.0));
    CHECK(with_margin(2000.0 * unit::watt, 0.15)->si() == Approx(2300.0).epsilon(1e-12));
    for (const double bad : {-1.0, nan_value}) {
        CHECK_FALSE(heat_up_power(Area::from_si(bad), HeatFlux::from_si(11)));
        CHECK_FALSE(heat_up_power(Area::from_si(18), HeatFlux::from_si(bad)));
        CHECK_FALSE(with_margin(Power::from_si(bad), 0.1));
        CHECK_FALSE(with_margin(Power::from_si(2000), bad));
    }
    CHECK_FALSE(heat_up_power(Area{}, HeatFlux::from_si(11)));
    CHECK_FALSE(with_margin(Power::from_si(2000), 1.01));
}

TEST_CASE("air of a house and its rooms by EN 12831-1:2017") {
    // Worked by hand from equations 18 to 23: 300 m² of envelope at 6 m³/(h·m²), f_qv 0.05, f_fac 8, a room of 40 m².
    using tests::Certainty;
    tests::Verification v{
        {"air of a house and of a room", "EN 12831-1:2017, equations 18 to 23, by hand", Certainty::computed, "m³/h"}};
    constexpr auto flow = unit::cubic_metre_per_hour;
    struct Row {
        double extract, combustion, supply, adjustment, leakage, drawn_in, part, room;
    };
    for (const Row& r : {Row{0, 0, 0, 1.0, 90.0, 0.0, 12.0, 24.0},
                         {60, 0, 0, 0.849057, 76.4151, 60.0, 18.18868, 28.37736},
                         {20, 80, 0, 0.669421, 60.2479, 100.0, 21.36639, 29.39945},
                         {0, 0, 90, 0.714286, 64.2857, 0.0, 8.57143, 17.14286}}) {
        const AirZone zone{unit::square_metre(300),
                           unit::cubic_metre_per_hour_square_metre(6),
                           0.05,
                           8.0,
                           flow(r.extract),
                           flow(r.combustion),
                           flow(r.supply)};
        const auto air = air_of_zone(zone);
        REQUIRE(air);
        const auto part = part_of_room(*air, zone, unit::square_metre(40));
        CHECK(air->adjustment == Approx(r.adjustment).margin(1e-6));
        v.check(r.leakage, air->leakage.in(flow), 1e-4);
        v.check(r.drawn_in, air->drawn_in.in(flow), 1e-9);
        v.check(r.part, part.in(flow), 1e-5);
        v.check(r.room, air_of_room(*air, part, 2.0).in(flow), 1e-5);
        // The parts of all rooms are the whole, and one room has at most the whole.
        CHECK(part_of_room(*air, zone, zone.envelope).si() == Approx(air->through_envelope.si()).epsilon(1e-12));
        CHECK(air_of_room(*air, air->through_envelope, 2.0).si() == Approx(air->through_envelope.si()).epsilon(1e-12));
    }
    CHECK(technical_air(flow(30), flow(20), flow(0)).in(flow) == Approx(30.0));
    CHECK(technical_air(flow(30), flow(20), flow(40)).in(flow) == Approx(60.0));
}

TEST_CASE("a house that nothing leaks into, and figures that no house has") {
    constexpr auto flow = unit::cubic_metre_per_hour;
    const AirZone tight{unit::square_metre(300), {}, 0.05, 8.0, {}, {}, {}};
    REQUIRE(air_of_zone(tight));
    CHECK(air_of_zone(tight)->through_envelope.si() == 0.0);
    CHECK(air_of_room(*air_of_zone(tight), {}, 2.0).si() == 0.0);
    CHECK(part_of_room(*air_of_zone(tight), AirZone{}, {}).si() == 0.0);
    auto drawn = tight;
    drawn.extract = flow(50);  // what fans take out comes in somewhere
    CHECK(air_of_zone(drawn)->through_envelope.in(flow) == Approx(50.0));
    for (const double bad : {-1.0, nan_value}) {
        auto zone = tight;
        zone.envelope = unit::square_metre(bad);
        CHECK_FALSE(air_of_zone(zone));
        zone = tight;
        zone.permeability = unit::cubic_metre_per_hour_square_metre(bad);
        CHECK_FALSE(air_of_zone(zone));
        zone = tight;
        zone.extract = flow(bad);
        CHECK_FALSE(air_of_zone(zone));
        zone = tight;
        zone.combustion = flow(bad);
        CHECK_FALSE(air_of_zone(zone));
        zone = tight;
        zone.supply = flow(bad);
        CHECK_FALSE(air_of_zone(zone));
        zone = tight;
        zone.volume_flow_factor = bad;
        CHECK_FALSE(air_of_zone(zone));
        zone = tight;
        zone.facade_factor = bad;
        CHECK_FALSE(air_of_zone(zone));
    }
    auto zone = tight;
    zone.volume_flow_factor = 0.0;
    CHECK_FALSE(air_of_zone(zone));
    zone.volume_flow_factor = 1.01;
    CHECK_FALSE(air_of_zone(zone));
}
