// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/exchanger.hpp"

#include "loopfolio/physics/grid.hpp"
#include "support/catch.hpp"
#include "support/verification.hpp"

#include <array>
#include <cmath>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

/// Effectiveness by the route that the formula is derived from: both energy balances integrated along the plate, and
/// the cold side's inlet found by shooting. Independent of the closed form.
double integrated_effectiveness(double transfer_units, double ratio) {
    constexpr int steps = 4000;
    const auto run = [&](double cold_outlet) {
        double hot = 1.0, cold = cold_outlet;  // at the hot inlet; the hot side has the smaller capacity flow
        const double dn = transfer_units / steps;
        for (int i = 0; i < steps; ++i) {
            const double h1 = hot - 0.5 * dn * (hot - cold);
            const double c1 = cold - 0.5 * dn * ratio * (hot - cold);
            hot -= dn * (h1 - c1);
            cold -= dn * ratio * (h1 - c1);
        }
        return std::array{hot, cold};
    };
    double low = 0.0, high = 1.0;
    for (int i = 0; i < 80; ++i) {
        const double middle = 0.5 * (low + high);
        (run(middle)[1] > 0.0 ? high : low) = middle;
    }
    return 1.0 - run(0.5 * (low + high))[0];
}

}  // namespace

TEST_CASE("effectiveness of a plate agrees with its two energy balances integrated along it") {
    Verification v{{"effectiveness of a plate in counterflow", "both energy balances, integrated along the plate",
                    Certainty::computed, ""}};
    for (const double n : {0.2, 1.0, 3.0, 6.0}) {
        for (const double c : {0.0, 0.25, 0.6, 0.95, 1.0}) {
            CAPTURE(n, c);
            const double expected = integrated_effectiveness(n, c);
            v.check(expected, counterflow_effectiveness(n, c), 2e-6 * expected);
        }
    }
}

TEST_CASE("a plate's heat is UA times the log mean difference") {
    // The definition of the log mean temperature difference, as in any heat-transfer text: a second route.
    const double ua = 900.0, hot = 700.0, cold = 1000.0;  // W/K
    const double e = counterflow_effectiveness(ua / hot, hot / cold);
    const double hot_in = 55.0, cold_in = 40.0;
    const double heat = e * hot * (hot_in - cold_in);
    const double hot_out = hot_in - heat / hot, cold_out = cold_in + heat / cold;
    const double a = hot_in - cold_out, b = hot_out - cold_in;
    const double expected = ua * (a - b) / std::log(a / b);
    verify({"heat through a plate", "UA times the log mean difference, by hand", Certainty::computed, "W"}, expected,
           heat, 1e-10 * expected);
}

TEST_CASE("a header conserves water and heat on both its ends") {
    for (const double source : {0.1, 0.25, 0.4, 0.8}) {
        const MixedSides s{MassFlow::from_si(source), MassFlow::from_si(0.4), Temperature::from_celsius(45.0),
                           Temperature::from_celsius(38.0)};
        const auto t = through_header(s);
        CAPTURE(source);
        // The heat from the source equals the heat to the emitters.
        CHECK(source * (t.source_leaving - t.source_entering).si() == Approx(0.4 * 7.0).epsilon(1e-12));
        // Mixing at the flow end, or at the return end.
        if (source < 0.4) {
            CHECK((source * t.source_leaving.kelvin() + (0.4 - source) * s.emitter_return.kelvin()) / 0.4 ==
                  Approx(s.emitter_flow.kelvin()).epsilon(1e-12));
        } else {
            CHECK((0.4 * s.emitter_return.kelvin() + (source - 0.4) * t.source_leaving.kelvin()) / source ==
                  Approx(t.source_entering.kelvin()).epsilon(1e-12));
        }
    }
}

TEST_CASE("a table of two variables is met at its points, bilinear between them, and refused outside") {
    std::vector<GridPoint> points;
    const auto f = [](double x, double y) { return 3.0 + 0.2 * x - 0.5 * y + 0.01 * x * y; };  // bilinear itself
    for (const double x : {-7.0, 2.0, 7.0}) {
        for (const double y : {35.0, 45.0, 55.0}) points.push_back({x, y, f(x, y)});
    }
    for (const double x : {-7.0, -3.4, 2.0, 6.9, 7.0}) {
        for (const double y : {35.0, 41.3, 45.0, 55.0}) {
            CAPTURE(x, y);
            REQUIRE(on_grid(points, x, y));
            CHECK(*on_grid(points, x, y) == Approx(f(x, y)).epsilon(1e-12));
        }
    }
    CHECK_FALSE(on_grid(points, -7.1, 45.0));
    CHECK_FALSE(on_grid(points, 0.0, 55.5));
    CHECK_FALSE(on_grid({}, 0.0, 0.0));
    const std::vector<GridPoint> row{{2.0, 35.0, 4.0}, {2.0, 45.0, 3.0}};
    CHECK(*on_grid(row, 2.0, 40.0) == Approx(3.5));
    CHECK_FALSE(on_grid(row, 2.1, 40.0));
}
