// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/emitter_rating.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/derating.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <limits>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

Temperature c(double celsius) { return celsius * unit::celsius; }
Power w(double watt) { return watt * unit::watt; }

}  // namespace

TEST_CASE("an output at other temperatures, turned into one at 50 K") {
    // 90/70/20 of older catalogues: 1.27 times as much as at 50 K.
    Verification v{
        {"output at 60 K over that at 50 K, n = 1.3", "trade page on older catalogues", Certainty::read, ""}};
    v.check(1.27, 1000.0 / rating_from(w(1000), c(90), c(70), c(20), 1.3)->output_at_50k.si(), 0.025);
    for (const double n : {1.0, 1.25, 1.6}) {
        const auto rating = rating_from(w(800), c(45), c(40), c(21), n);
        REQUIRE(rating);
        CHECK(rating->exponent == n);
        CHECK((rating->output_at_50k * *output_factor(c(45), c(40), c(21), n)).si() == Approx(800.0).epsilon(1e-12));
    }
    CHECK(rating_from(w(800), c(75), c(65), c(20), 1.3)->output_at_50k.si() == Approx(800.0).epsilon(1e-12));
    CHECK_FALSE(rating_from(w(0), c(45), c(40), c(21), 1.3));
    CHECK_FALSE(rating_from(w(nan_value), c(45), c(40), c(21), 1.3));
    CHECK_FALSE(rating_from(w(800), c(45), c(20), c(21), 1.3));
    CHECK_FALSE(rating_from(w(800), c(45), c(40), c(21), 1.7));
}

TEST_CASE("an emitter by the metre and by the section") {
    CHECK(rating_by_length(w(180), 3.5 * unit::metre, 1.2)->output_at_50k.si() == Approx(630.0).epsilon(1e-12));
    CHECK(rating_by_sections(w(62), 12, 1.3)->output_at_50k.si() == Approx(744.0).epsilon(1e-12));
    CHECK(rating_by_sections(w(62), 12, 1.3)->exponent == 1.3);
    CHECK_FALSE(rating_by_sections(w(62), 0, 1.3));
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(rating_by_length(w(bad), 1.0 * unit::metre, 1.2));
        CHECK_FALSE(rating_by_length(w(180), bad * unit::metre, 1.2));
        CHECK_FALSE(rating_by_sections(w(bad), 3, 1.3));
        CHECK_FALSE(rating_by_sections(w(62), 3, bad));
    }
}

TEST_CASE("a fan-assisted emitter between the speeds that were measured") {
    const std::vector<FanPoint> points{{1, w(600)}, {2, w(1000)}, {4, w(1300)}};
    struct Row {
        double speed, output;
    };
    for (const auto& r : {Row{1, 600}, {1.25, 700}, {2, 1000}, {3, 1150}, {4, 1300}}) {
        CHECK(output_at_speed(points, r.speed)->si() == Approx(r.output).epsilon(1e-12));
        CHECK(*speed_for_output(points, w(r.output)) == Approx(r.speed).epsilon(1e-12));
    }
    CHECK_FALSE(output_at_speed(points, 0.99));
    CHECK_FALSE(output_at_speed(points, 4.01));
    CHECK_FALSE(output_at_speed(points, nan_value));
    CHECK(*speed_for_output(points, w(100)) == 1.0);
    CHECK_FALSE(speed_for_output(points, w(1301)));
    CHECK_FALSE(speed_for_output(points, w(0)));
    CHECK(output_at_speed(std::vector<FanPoint>{{3, w(900)}}, 3)->si() == 900.0);
    CHECK_FALSE(output_at_speed(std::vector<FanPoint>{{3, w(900)}}, 2));
}

TEST_CASE("points of a fan that are no curve are refused") {
    const auto refused = [](const std::vector<FanPoint>& points) {
        return !output_at_speed(points, 1.0) && !speed_for_output(points, w(500));
    };
    CHECK(refused({}));
    CHECK(refused({{1, w(600)}, {1, w(700)}}));
    CHECK(refused({{2, w(600)}, {1, w(700)}}));
    CHECK(refused({{1, w(0)}, {2, w(700)}}));
    CHECK(refused({{-1, w(500)}, {2, w(700)}}));
    CHECK(refused({{1, w(nan_value)}, {2, w(700)}}));
    CHECK_FALSE(speed_for_output(std::vector<FanPoint>{{1, w(600)}, {2, w(500)}}, w(550)));  // falls
}

TEST_CASE("a load among emitters") {
    const std::vector<Power> outputs{w(300), w(0), w(900)};
    const auto shares = shares_of_load(w(800), outputs);
    REQUIRE(shares);
    CHECK((*shares)[0].si() == Approx(200.0));
    CHECK((*shares)[1].si() == 0.0);
    CHECK((*shares)[2].si() == Approx(600.0));
    CHECK_FALSE(shares_of_load(w(800), {}));
    CHECK_FALSE(shares_of_load(w(800), std::vector<Power>{w(0)}));
    CHECK_FALSE(shares_of_load(w(800), std::vector<Power>{w(-1), w(5)}));
    CHECK_FALSE(shares_of_load(w(-1), outputs));
    CHECK_FALSE(shares_of_load(w(nan_value), outputs));
}

TEST_CASE("deratings multiply, and so do their ranges") {
    const std::vector<Derating> two{{0.9, 0.8, 1.0}, {0.95, 0.9, 0.97}};
    const auto all = all_of(two);
    REQUIRE(all);
    CHECK(all->factor == Approx(0.855).epsilon(1e-12));
    CHECK(all->low == Approx(0.72).epsilon(1e-12));
    CHECK(all->high == Approx(0.97).epsilon(1e-12));
    CHECK(all_of({})->factor == 1.0);
    for (const auto& bad : {Derating{0.0, 0.0, 1.0},
                            {0.9, 0.95, 1.0},
                            {0.9, 0.8, 0.85},
                            {1.2, 1.0, 1.6},
                            {-0.5, -1.0, 1.0},
                            {nan_value, 0.8, 1.0},
                            {0.9, nan_value, 1.0},
                            {0.9, 0.8, nan_value}}) {
        CHECK_FALSE(all_of(std::vector<Derating>{{0.9, 0.8, 1.0}, bad}));
    }
}
