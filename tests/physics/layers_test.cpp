// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/layers.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <sstream>
#include <string>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

ThermalResistance r(double value) { return ThermalResistance::from_si(value); }

ThermalResistance solid(double mm, double conductivity) {
    return *resistance_of(mm * unit::millimetre, conductivity * unit::watt_per_metre_kelvin);
}

Layer plain_layer(double resistance) { return {r(resistance), {}}; }

/// Layers as `resistance/bridge/share;...`, share 0 for none.
std::vector<Layer> layers_of(const std::string& text) {
    std::vector<Layer> out;
    std::istringstream in{text};
    for (std::string one; std::getline(in, one, ';');) {
        std::istringstream cells{one};
        double resistance = 0.0, bridge = 0.0, share = 0.0;
        char slash = 0;
        cells >> resistance >> slash >> bridge >> slash >> share;
        Layer layer = plain_layer(resistance);
        if (share > 0.0) layer.bridge = Bridge{r(bridge), share};
        out.push_back(layer);
    }
    return out;
}

Construction sample() {
    return {r(0.13), {{r(0.9), Bridge{r(0.11), 0.067}}, plain_layer(0.18), {r(2.3), Bridge{r(0.7), 0.12}}}, r(0.04), {}};
}

}  // namespace

TEST_CASE("cavity wall with aerated blocks and insulated dry lining") {
    // Published: upper 3.389, lower 2.974, U 0.31. Resistances there are rounded to three decimals.
    const Construction wall{
        r(0.13),
        {{solid(12.5, 0.25), {}},
         {solid(89, 0.038), Bridge{solid(89, 0.13), 0.118}},
         {solid(100, 0.11), Bridge{solid(100, 0.88), 0.067}},
         plain_layer(0.18),
         {solid(102, 0.77), {}}},
        r(0.04), {}};
    const auto found = transmittance(wall);
    REQUIRE(found);
    const std::string source = "Approved Document L1 (2002), Appendix B, and BRE report 78129";
    Verification limits{{"ISO 6946 limits of a cavity wall", source, Certainty::memory, "m²K/W"}};
    limits.check(3.389, found->upper.si(), 0.002);
    limits.check(2.974, found->lower.si(), 0.002);
    verify({"ISO 6946 U-value of a cavity wall", source, Certainty::memory, "W/m²K"}, 0.31, found->u_value.si(),
           0.005);
    CHECK(found->error_bound == Approx((3.390 - 2.973) / (2.0 * 3.1815)).epsilon(0.005));
    CHECK(found->upper / found->lower < greatest_limit_ratio);
}

TEST_CASE("plain walls and a roof that gains insulation") {
    const Construction brick{r(0.13), {{solid(13, 0.57), {}}, {solid(220, 0.77), {}}}, r(0.04), {}};
    const Construction cavity{r(0.13), {{solid(13, 0.57), {}}, {solid(105, 0.56), {}}, plain_layer(0.18),
                                        {solid(105, 0.77), {}}}, r(0.04), {}};
    Verification guide{{"U-values of solid and cavity brick walls", "CIBSE Guide A, tables 3.49 and 3.50, as quoted",
                        Certainty::read, "W/m²K"}};
    guide.check(2.09, transmittance(brick)->u_value.si(), 0.0051);
    guide.check(1.44, transmittance(cavity)->u_value.si(), 0.0051);
    CHECK(transmittance(brick)->error_bound == Approx(0.0).margin(1e-12));
    const auto roof = with_added_resistance(1.0 * unit::watt_per_square_metre_kelvin, solid(150, 0.04));
    verify({"roof of U 1 with 150 mm of glass fibre", "Chadderton, Building Services Engineering, 5th ed., p. 78",
            Certainty::read, "W/m²K"}, 0.21, roof->si(), 0.005);
    const Construction two_skins{r(0.13), {{solid(13, 0.57), {}}, {solid(102, 0.56), {}}, {solid(102, 0.77), {}},
                                           {solid(18, 0.50), {}}}, r(0.04), {}};
    verify({"U-value of double brick, rendered", "worked table on an open page on saving energy", Certainty::read,
            "W/m²K"}, 1.85, transmittance(two_skins)->u_value.si(), 0.015);   // resistances rounded there
}

TEST_CASE("random constructions, all combinations listed") {
    const auto csv = tests::read_csv("layered.csv");
    REQUIRE(csv.rows.size() == 10);
    Verification u{{"ISO 6946 U-value, random constructions", "itertools and numpy, tests/reference/fabric.py",
                    Certainty::computed, "W/m²K"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto found = transmittance({r(csv.number(i, "inside")), layers_of(csv.rows[i][csv.column("layers")]),
                                          r(csv.number(i, "outside")), {}});
        CAPTURE(i);
        REQUIRE(found);
        CHECK(found->upper.si() == Approx(csv.number(i, "upper")).epsilon(1e-10));
        CHECK(found->lower.si() == Approx(csv.number(i, "lower")).epsilon(1e-10));
        u.check(csv.number(i, "u_value"), found->u_value.si(), 1e-10);
    }
}

TEST_CASE("conduction in two dimensions lies between the limits and near their mean") {
    const auto csv = tests::read_csv("bridged_wall.csv");
    Verification v{{"ISO 6946 against conduction in two dimensions, wall with studs",
                    "scipy, finite volumes, tests/reference/fabric.py", Certainty::computed, "W/m²K"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const double depth = 1e3 * csv.number(i, "depth_m");
        const double share = csv.number(i, "half_stud_m") / csv.number(i, "half_pitch_m");
        const Layer studs{solid(depth, csv.number(i, "insulation")), Bridge{solid(depth, csv.number(i, "stud")), share}};
        const auto found = transmittance({r(0.13), {{solid(12.5, 0.25), {}}, studs, {solid(102, 0.77), {}}}, r(0.04), {}});
        REQUIRE(found);
        const double u = csv.number(i, "u_value");
        CHECK(1.0 / u < found->upper.si());
        CHECK(1.0 / u > found->lower.si());
        v.check(u, found->u_value.si(), found->error_bound * u);
    }
}

TEST_CASE("limits meet without a bridge, with a bridge like the rest, and at shares of none and all") {
    const auto with = [](double resistance, double share) {
        return transmittance({r(0.13), {plain_layer(0.5), {r(2.0), Bridge{r(resistance), share}}}, r(0.04), {}});
    };
    for (const auto& [bridge, share, total] :
         {std::tuple{2.0, 0.3, 2.67}, {0.5, 0.0, 2.67}, {0.5, 1.0, 1.17}, {9.0, 0.0, 2.67}}) {
        const auto found = with(bridge, share);
        REQUIRE(found);
        CHECK(found->upper.si() == Approx(total).epsilon(1e-12));
        CHECK(found->lower.si() == Approx(total).epsilon(1e-12));
        CHECK(found->error_bound == Approx(0.0).margin(1e-12));
    }
    double last = 1e9;
    for (double share = 0.0; share <= 1.0; share += 0.05) {
        const auto found = with(0.5, share);
        CHECK(found->upper.si() >= found->lower.si() - 1e-12);
        CHECK(found->total.si() < last);
        last = found->total.si();
    }
}

TEST_CASE("a stated correction is added to the U-value alone") {
    auto wall = sample();
    const auto bare = transmittance(wall);
    wall.correction = 0.02 * unit::watt_per_square_metre_kelvin;
    CHECK((transmittance(wall)->u_value - bare->u_value).si() == Approx(0.02).epsilon(1e-12));
    CHECK(transmittance(wall)->total == bare->total);
    std::ranges::reverse(wall.layers);   // which way round is all the same
    CHECK(transmittance(wall)->u_value.si() == Approx(bare->u_value.si() + 0.02).epsilon(1e-12));
}

TEST_CASE("what is no construction is refused") {
    CHECK(transmittance(sample()));
    CHECK_FALSE(transmittance({r(0.13), {}, r(0.04), {}}));
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(resistance_of(bad * unit::millimetre, 1.0 * unit::watt_per_metre_kelvin));
        CHECK_FALSE(resistance_of(1.0 * unit::millimetre, bad * unit::watt_per_metre_kelvin));
        CHECK_FALSE(with_added_resistance(UValue::from_si(bad), r(1.0)));
        auto wall = sample();
        wall.layers[1].resistance = r(bad);
        CHECK_FALSE(transmittance(wall));
        wall = sample();
        wall.layers[0].bridge->resistance = r(bad);
        CHECK_FALSE(transmittance(wall));
    }
    for (const double bad : {-0.01, 1.01, nan_value}) {
        auto wall = sample();
        wall.layers[0].bridge->share = bad;
        CHECK_FALSE(transmittance(wall));
    }
    for (const double bad : {-0.01, nan_value}) {
        for (auto part : {&Construction::inside_surface, &Construction::outside_surface}) {
            auto wall = sample();
            wall.*part = r(bad);
            CHECK_FALSE(transmittance(wall));
        }
        auto wall = sample();
        wall.correction = UValue::from_si(bad);
        CHECK_FALSE(transmittance(wall));
        CHECK_FALSE(with_added_resistance(UValue::from_si(1.0), r(bad)));
    }
    auto wall = sample();
    wall.layers.assign(most_bridged_layers, {r(1.0), Bridge{r(0.5), 0.1}});
    CHECK(transmittance(wall));
    wall.layers.push_back(wall.layers.front());
    CHECK_FALSE(transmittance(wall));
}
