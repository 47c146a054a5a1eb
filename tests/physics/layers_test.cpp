// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/layers.hpp"
#include "loopfolio/base/unit.hpp"

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
    return {
        r(0.13), {{r(0.9), Bridge{r(0.11), 0.067}}, plain_layer(0.18), {r(2.3), Bridge{r(0.7), 0.12}}}, r(0.04), {}};
}

}  // namespace

TEST_CASE("cavity wall with aerated blocks and insulated dry lining") {
    // Published: upper 3.389, lower 2.974, U 0.31. Resistances there are rounded to three decimals.
    const Construction wall{r(0.13),
                            {{solid(12.5, 0.25), {}},
                             {solid(89, 0.038), Bridge{solid(89, 0.13), 0.118}},
                             {solid(100, 0.11), Bridge{solid(100, 0.88), 0.067}},
                             plain_layer(0.18),
                             {solid(102, 0.77), {}}},
                            r(0.04),
                            {}};
    const auto found = transmittance(wall);
    REQUIRE(found);
    const std::string source = "Approved Document L1 (2002), Appendix B, and BRE report 78129";
    Verification limits{{"ISO 6946 limits of a cavity wall", source, Certainty::memory, "m²K/W"}};
    limits.check(3.389, found->upper.si(), 0.002);
    limits.check(2.974, found->lower.si(), 0.002);
    verify({"ISO 6946 U-value of a cavity wall", source, Certainty::memory, "W/m²K"}, 0.31, found->u_value.si(), 0.005);
    CHECK(found->error_bound == Approx((3.390 - 2.973) / (2.0 * 3.1815)).epsilon(0.005));
    CHECK(found->upper / found->lower < greatest_limit_ratio);
}

TEST_CASE("plain walls and a roof that gains insulation") {
    const Construction brick{r(0.13), {{solid(13, 0.57), {}}, {solid(220, 0.77), {}}}, r(0.04), {}};
    const Construction cavity{
        r(0.13),
        {{solid(13, 0.57), {}}, {solid(105, 0.56), {}}, plain_layer(0.18), {solid(105, 0.77), {}}},
        r(0.04),
        {}};
    Verification guide{{"U-values of solid and cavity brick walls", "CIBSE Guide A, tables 3.49 and 3.50, as quoted",
                        Certainty::read, "W/m²K"}};
    guide.check(2.09, transmittance(brick)->u_value.si(), 0.005);  // two decimals
    guide.check(1.44, transmittance(cavity)->u_value.si(), 0.005);
    CHECK(transmittance(brick)->error_bound == Approx(0.0).margin(1e-12));
    const auto roof = with_added_resistance(1.0 * unit::watt_per_square_metre_kelvin, solid(150, 0.04));
    verify({"roof of U 1 with 150 mm of glass fibre", "Chadderton, Building Services Engineering, 5th ed., p. 78",
            Certainty::read, "W/m²K"},
           0.21, roof->si(), 0.005);
    const Construction two_skins{
        r(0.13),
        {{solid(13, 0.57), {}}, {solid(102, 0.56), {}}, {solid(102, 0.77), {}}, {solid(18, 0.50), {}}},
        r(0.04),
        {}};
    // The page sums resistances of two decimals: 0.13 + 0.02 + 0.18 + 0.13 + 0.04 + 0.04 = 0.54.
    Verification page{{"U-value of double brick, rendered", "worked table on an open page on saving energy",
                       Certainty::read, "W/m²K",
                       "the page rounds each resistance to two decimals, and their sum is 0.54 instead of 0.543"}};
    const double exact = 0.13 + 0.013 / 0.57 + 0.102 / 0.56 + 0.102 / 0.77 + 0.018 / 0.50 + 0.04;
    page.check_known(1.85, 1.0 / exact - 1.0 / 0.54, transmittance(two_skins)->u_value.si(), 0.005);
}

TEST_CASE("random constructions, all combinations listed") {
    const auto csv = tests::read_csv("layered.csv");
    REQUIRE(csv.rows.size() == 10);
    Verification u{{"ISO 6946 U-value, random constructions", "itertools and numpy, tests/reference/fabric.py",
                    Certainty::computed, "W/m²K"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto found = transmittance({r(csv.number(i, "inside")),
                                          layers_of(csv.rows[i][csv.column("layers")]),
                                          r(csv.number(i, "outside")),
                                          {}});
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
        const Layer studs{solid(depth, csv.number(i, "insulation")),
                          Bridge{solid(depth, csv.number(i, "stud")), share}};
        const auto found = transmittance(
            {r(0.13), {{solid(12.5, 0.25), {}}, studs, {solid(102, 0.77), {}}}, r(0.04), {}});
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
    wall.corrections = {0.015 * unit::watt_per_square_metre_kelvin, 0.005 * unit::watt_per_square_metre_kelvin};
    CHECK(correction_share(*bare) == 0.0);
    CHECK(correction_share(*transmittance(wall)) == Approx(0.02 / (1.0 / bare->total.si())).epsilon(1e-12));
    CHECK((transmittance(wall)->u_value - bare->u_value).si() == Approx(0.02).epsilon(1e-12));
    CHECK(transmittance(wall)->total == bare->total);
    std::ranges::reverse(wall.layers);  // which way round is all the same
    CHECK(transmittance(wall)->u_value.si() == Approx(bare->u_value.si() + 0.02).epsilon(1e-12));
}

TEST_CASE("air gaps in insulation") {
    // The guidance calculates its cavity wall with bridged R1 and RT, as in the edition of 1996.
    verify({"ISO 6946 correction for air gaps, level 1", "Approved Document L1 (2002), Appendix B", Certainty::memory,
            "W/m²K"},
           0.003, gap_correction(1, r(1.822), r(3.182))->si(), 0.0005);
    Verification v{
        {"ISO 6946 correction for air gaps", "BS EN ISO 6946:2017, annex F, by hand", Certainty::computed, "W/m²K"}};
    v.check(0.0, gap_correction(0, r(2.5), r(3.0))->si(), 1e-12);
    v.check(0.0069444, gap_correction(1, r(2.5), r(3.0))->si(), 1e-6);
    v.check(0.0277778, gap_correction(2, r(2.5), r(3.0))->si(), 1e-6);
    CHECK(gap_correction(2, r(3.0), r(3.0))->si() == Approx(0.04));
    for (const int level : {-1, 3}) CHECK_FALSE(gap_correction(level, r(1.0), r(2.0)));
    for (const double bad : {0.0, -1.0, 2.1, nan_value}) CHECK_FALSE(gap_correction(1, r(bad), r(2.0)));
    CHECK_FALSE(gap_correction(1, r(1.0), r(nan_value)));
}

TEST_CASE("fasteners through insulation") {
    const auto ties = [](double conductivity, double mm2, double number, double d0, double d1) {
        return Fasteners{conductivity * unit::watt_per_metre_kelvin, mm2 * unit::square_millimetre, number,
                         d0 * unit::millimetre, d1 * unit::millimetre};
    };
    Verification v{
        {"ISO 6946 correction for fasteners", "BS EN ISO 6946:2017, annex F, by hand", Certainty::computed, "W/m²K"}};
    // 0.8 x 17 x 12.5e-6 x 2.5 / 0.1 x (2.5/3)^2; 0.8 x 50 x 28.3e-6 x 4 / 0.12 x (3.2/3.6)^2, half of it at half
    // depth.
    v.check(0.00295139, fastener_correction(ties(17, 12.5, 2.5, 100, 100), r(2.5), r(3.0))->si(), 1e-8);
    v.check(0.0298140, fastener_correction(ties(50, 28.3, 4, 120, 120), r(3.2), r(3.6))->si(), 1e-6);
    v.check(0.0149070, fastener_correction(ties(50, 28.3, 4, 120, 60), r(3.2), r(3.6))->si(), 1e-6);
    CHECK(fastener_correction(ties(50, 28.3, 4, 120, 200), r(3.2), r(3.6)) ==
          fastener_correction(ties(50, 28.3, 4, 120, 120), r(3.2), r(3.6)));
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(fastener_correction(ties(bad, 12, 2, 100, 100), r(2.0), r(3.0)));
        CHECK_FALSE(fastener_correction(ties(17, bad, 2, 100, 100), r(2.0), r(3.0)));
        CHECK_FALSE(fastener_correction(ties(17, 12, bad, 100, 100), r(2.0), r(3.0)));
        CHECK_FALSE(fastener_correction(ties(17, 12, 2, bad, 100), r(2.0), r(3.0)));
        CHECK_FALSE(fastener_correction(ties(17, 12, 2, 100, bad), r(2.0), r(3.0)));
        CHECK_FALSE(fastener_correction(ties(17, 12, 2, 100, 100), r(bad), r(3.0)));
    }
    CHECK_FALSE(fastener_correction(ties(0.99, 12, 2, 100, 100), r(2.0), r(3.0)));
    CHECK_FALSE(fastener_correction(ties(17, 12, 2, 100, 100), r(3.1), r(3.0)));
}

TEST_CASE("the correction for fasteners is 0.8 of what the lower limit gains by as thin a bridge") {
    // Every plane has one temperature: for a share that approaches zero, dU = n A (lambda_f - lambda) / d (R1 / RT)^2.
    const double thickness = 100.0, insulation = 0.04, metal = 17.0;
    Construction wall{r(0.13), {plain_layer(0.2), {solid(thickness, insulation), {}}}, r(0.04), {}};
    const double share = 1e-7;
    const auto bare = transmittance(wall);
    const auto whole = unbridged_total(wall);
    CHECK(whole.si() == Approx(2.87).epsilon(1e-12));
    wall.layers[1].bridge = Bridge{solid(thickness, metal), share};
    CHECK(unbridged_total(wall) == whole);
    const double gained = 1.0 / transmittance(wall)->lower.si() - 1.0 / bare->lower.si();
    const Fasteners ties{metal * unit::watt_per_metre_kelvin, Area::from_si(share), 1.0, thickness * unit::millimetre,
                         thickness * unit::millimetre};
    verify({"ISO 6946 correction for fasteners against the lower limit of the layers", "ISO 6946, two ways of it",
            Certainty::computed, ""},
           0.8 * metal / (metal - insulation),
           fastener_correction(ties, wall.layers[1].resistance, whole)->si() / gained, 1e-4);
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
        for (auto part : {&Corrections::gaps, &Corrections::fasteners}) {
            auto corrected = sample();
            corrected.corrections.*part = UValue::from_si(bad);
            CHECK_FALSE(transmittance(corrected));
        }
        CHECK_FALSE(with_added_resistance(UValue::from_si(1.0), r(bad)));
    }
    auto wall = sample();
    wall.layers.assign(most_bridged_layers, {r(1.0), Bridge{r(0.5), 0.1}});
    CHECK(transmittance(wall));
    wall.layers.push_back(wall.layers.front());
    CHECK_FALSE(transmittance(wall));
}
