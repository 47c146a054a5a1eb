// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/hot_water.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <limits>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

Temperature c(double celsius) { return celsius * unit::celsius; }
HeatLossCoefficient per_kelvin(double watts) { return watts * unit::watt_per_kelvin; }

ReheatDemand usual() { return {200.0 * unit::litre, c(10), c(50), c(55), 6.0 * unit::kilowatt, per_kelvin(600)}; }

}  // namespace

TEST_CASE("heat in hot water, against IAPWS-95") {
    // 100 L at 40 °C from 10 °C, 200 L at 55 °C from 10 °C; iapws 1.5.5, 0.2 MPa.
    Verification v{{"heat of hot water", "IAPWS-95 by iapws, rho(hot) (h(hot) - h(cold))", Certainty::computed, "kWh"}};
    // Enthalpies of IF97 lie within 75 J/kg of those of IAPWS-95, as water_2bar.csv has it; a litre is less than a
    // kilogram.
    v.check(3.458813, heat_to_warm(100.0 * unit::litre, c(10), c(40))->in(unit::kilowatt_hour), 75.0 * 100.0 / 3.6e6);
    v.check(10.306305, heat_to_warm(200.0 * unit::litre, c(10), c(55))->in(unit::kilowatt_hour), 75.0 * 200.0 / 3.6e6);
    const DailyUse use{4.0, 25.0 * unit::litre, c(10), c(40)};
    CHECK(daily_heat(use)->si() == Approx(heat_to_warm(100.0 * unit::litre, c(10), c(40))->si()));
}

TEST_CASE("a store hot enough to be mixed is smaller than what is drawn") {
    // 120 L at 40 from 10 and 50: 120 x 30/40 / 0.8 = 112.5 L.
    const auto mixed = 120.0 * unit::litre;
    CHECK(store_volume(mixed, c(10), c(40), c(50), 0.8)->in(unit::litre) == Approx(112.5).epsilon(1e-12));
    CHECK(store_volume(mixed, c(10), c(40), c(40), 1.0)->in(unit::litre) == Approx(120.0).epsilon(1e-12));
    CHECK_FALSE(store_volume(mixed, c(10), c(40), c(39), 0.8));
    CHECK_FALSE(store_volume(mixed, c(40), c(10), c(50), 0.8));
    for (const double bad : {0.0, -0.5, 1.1, nan_value}) {
        CHECK_FALSE(store_volume(mixed, c(10), c(40), c(50), bad));
    }
}

TEST_CASE("coil and plate, against their temperatures integrated along them") {
    const auto csv = tests::read_csv("exchanger_transfer.csv");
    REQUIRE(csv.rows.size() == 16);
    Verification v{{"heat through a coil or a plate for each kelvin", "scipy solve_bvp (tests/reference/plant.py)",
                    Certainty::computed, "W/K"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto ua = per_kelvin(csv.number(i, "ua_w_per_k"));
        const auto source = per_kelvin(csv.number(i, "source_w_per_k"));
        const auto store = per_kelvin(csv.number(i, "store_w_per_k"));
        const auto found = store.si() == 0.0 ? coil_transfer(ua, source) : plate_transfer(ua, source, store);
        REQUIRE(found);
        v.check(csv.number(i, "transfer_w_per_k"), found->si(), 1e-4);
    }
    // With a very large flow, the limit is UA itself.
    CHECK(coil_transfer(per_kelvin(500), per_kelvin(1e9))->si() == Approx(500.0).epsilon(1e-6));
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(coil_transfer(per_kelvin(bad), per_kelvin(800)));
        CHECK_FALSE(plate_transfer(per_kelvin(500), per_kelvin(800), per_kelvin(bad)));
    }
}

TEST_CASE("reheat time, against the store integrated over time") {
    const auto csv = tests::read_csv("reheat.csv");
    REQUIRE(csv.rows.size() >= 6);
    const std::string by = "scipy solve_ivp (tests/reference/plant.py)";
    Verification fixed{{"reheat time, heat capacity at the mean temperature", by, Certainty::computed, "s"}};
    Verification real{{"reheat time, heat capacity as it changes", by, Certainty::computed, "s",
                       "ours takes the heat capacity at the mean temperature of the store"}};
    // The program's water is IAPWS-IF97, the reference's IAPWS-95; by water_2bar.csv their cp differ by up to 0.06 %.
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto found = reheat({csv.number(i, "volume_l") * unit::litre, c(csv.number(i, "from_c")),
                                   c(csv.number(i, "to_c")), c(csv.number(i, "flow_c")),
                                   csv.number(i, "capacity_w") * unit::watt,
                                   per_kelvin(csv.number(i, "transfer_w_per_k"))});
        CAPTURE(i);
        REQUIRE(found);
        fixed.check(csv.number(i, "fixed_s"), found->time.si(), 6e-4 * csv.number(i, "fixed_s"));
        real.check_known(csv.number(i, "real_s"), csv.number(i, "fixed_s") - csv.number(i, "real_s"), found->time.si(),
                         6e-4 * csv.number(i, "real_s"));
    }
}

TEST_CASE("capacity first, then the coil") {
    const auto r = reheat(usual());
    REQUIRE(r);
    CHECK(r->turns.celsius() == Approx(45.0));  // 55 - 6000/600
    CHECK(r->by_capacity + r->by_transfer == r->time);
    CHECK(r->by_capacity * (6.0 * unit::kilowatt) / r->heat == Approx(35.0 / 40.0).epsilon(1e-12));
    CHECK(r->least.si() == Approx(3000.0));
    auto large = usual();
    large.transfer = per_kelvin(2000);  // 55 - 3 is above 50: the coil never limits
    CHECK(reheat(large)->by_transfer == Duration{});
    CHECK(reheat(large)->time.si() == Approx((r->heat / (6.0 * unit::kilowatt)).si()).epsilon(1e-12));
    auto small = usual();
    small.transfer = per_kelvin(100);  // the coil limits from the start
    CHECK(reheat(small)->by_capacity == Duration{});
    CHECK(reheat(small)->turns == small.from);
    // With a flow temperature as high as the coil needs, the capacity is the only limit.
    auto adequate = usual();
    adequate.flow = *flow_to_pass(adequate.capacity, adequate.transfer, adequate.to);
    CHECK(adequate.flow.celsius() == Approx(60.0));
    CHECK(reheat(adequate)->by_transfer.si() == Approx(0.0).margin(1e-6));
}

TEST_CASE("standing loss follows the excess, and hot water takes its hours") {
    const auto tested = 1.8 * unit::kilowatt_hour, lost = 1.2 * unit::kilowatt_hour;
    const auto drawn = 7.2 * unit::kilowatt_hour;
    CHECK(standing_loss(tested, c(50), c(20))->si() == Approx(lost.si()).epsilon(1e-12));
    CHECK(standing_loss(tested, c(65), c(20))->si() == Approx(tested.si()).epsilon(1e-12));
    CHECK(standing_loss(tested, c(50), c(20), 40.0 * unit::kelvin)->si() == Approx(0.75 * tested.si()));
    CHECK(time_for_hot_water(drawn, lost, 6.0 * unit::kilowatt)->in(unit::hour) == Approx(1.4));
    CHECK_FALSE(standing_loss(tested, c(19), c(20)));
    CHECK_FALSE(standing_loss(-tested, c(50), c(20)));
    CHECK_FALSE(time_for_hot_water(drawn, lost, Power{}));
    CHECK_FALSE(time_for_hot_water(Energy::from_si(nan_value), {}, 6.0 * unit::kilowatt));
}

TEST_CASE("pasteurisation: the source as far as it reaches, the immersion heater on from there") {
    Pasteurisation p{200.0 * unit::litre, c(48), c(60), c(54), 2.0, 52.0};
    const auto half = pasteurise(p);
    REQUIRE(half);
    // 200 L x 12 K, half by each; cp of IF97 differs by up to 0.06 % from that of IAPWS-95.
    tests::verify({"heat of a pasteurisation", "by hand, water by IAPWS-95 at 54 °C", Certainty::computed, "kWh"},
                  2.74982, (half->by_source + half->by_immersion).in(unit::kilowatt_hour), 6e-4 * 2.74982);
    CHECK(half->by_source.si() == Approx(half->by_immersion.si()).epsilon(1e-9));
    CHECK(half->electricity_a_year.si() == Approx(52.0 * (0.5 + 1.0) * half->by_source.si()).epsilon(1e-9));
    p.source_reach = c(40);
    CHECK(pasteurise(p)->by_source == Energy{});
    p.source_performance = 0.0;  // not asked for where the source has no part
    CHECK(pasteurise(p));
    p.source_reach = c(70);
    CHECK_FALSE(pasteurise(p));
    p.source_performance = 2.0;
    CHECK(pasteurise(p)->by_immersion == Energy{});
    p.usual = c(60);
    CHECK_FALSE(pasteurise(p));
}

TEST_CASE("a store that cannot be heated so is refused") {
    const auto with = [](auto change) {
        auto d = usual();
        change(d);
        return reheat(d).has_value();
    };
    CHECK(with([](ReheatDemand&) {}));
    CHECK_FALSE(with([](ReheatDemand& d) { d.flow = c(50); }));  // never gets there
    CHECK_FALSE(with([](ReheatDemand& d) { d.to = c(10); }));
    CHECK_FALSE(with([](ReheatDemand& d) {
        d.to = c(96);
        d.flow = c(99);
    }));
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(with([&](ReheatDemand& d) { d.store = bad * unit::litre; }));
        CHECK_FALSE(with([&](ReheatDemand& d) { d.capacity = bad * unit::watt; }));
        CHECK_FALSE(with([&](ReheatDemand& d) { d.transfer = per_kelvin(bad); }));
        CHECK_FALSE(heat_to_warm(bad * unit::litre, c(10), c(40)));
        CHECK_FALSE(daily_heat({bad, 25.0 * unit::litre, c(10), c(40)}));
        CHECK_FALSE(flow_to_pass(bad * unit::watt, per_kelvin(500), c(50)));
    }
    CHECK_FALSE(heat_to_warm(1.0 * unit::litre, c(40), c(10)));
    CHECK_FALSE(heat_to_warm(1.0 * unit::litre, Temperature::from_kelvin(nan_value), c(10)));
}
