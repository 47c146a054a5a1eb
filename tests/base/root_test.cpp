// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/root.hpp"

#include "support/catch.hpp"

#include <cmath>

using namespace loopfolio;

TEST_CASE("a root is found where the function changes sign, whichever way it runs") {
    const auto cubic = [](double x) { return x * x * x - 2.0; };
    CHECK(find_root(cubic, 0.0, 3.0, 1e-12).value() == Approx(std::cbrt(2.0)).margin(1e-11));
    CHECK(find_root(cubic, 3.0, 0.0, 1e-12).value() == Approx(std::cbrt(2.0)).margin(1e-11));
    CHECK(find_root([](double x) { return 1.0 - std::exp(x); }, -5.0, 2.0, 1e-12).value() == Approx(0.0).margin(1e-11));
    // The function is flat on one side and steep on the other, where plain false position converges far too slowly.
    CHECK(find_root([](double x) { return std::pow(x, 25) - 1e-10; }, 0.0, 10.0, 1e-10).value() ==
          Approx(std::pow(1e-10, 1.0 / 25.0)).margin(1e-9));
    CHECK(find_root([](double x) { return x; }, 0.0, 1.0, 1e-9).value() == 0.0);
    CHECK(find_root([](double x) { return x - 1.0; }, 0.0, 1.0, 1e-9).value() == 1.0);
    CHECK_FALSE(find_root([](double x) { return x * x + 1.0; }, -1.0, 1.0, 1e-9));
    CHECK_FALSE(find_root([](double x) { return std::sqrt(x); }, -1.0, 1.0, 1e-9));
}

TEST_CASE("a root costs few calls") {
    int calls = 0;
    const auto counted = [&](double x) {
        ++calls;
        return std::exp(x) - 5.0;
    };
    CHECK(find_root(counted, 0.0, 10.0, 1e-10).value() == Approx(std::log(5.0)).margin(1e-9));
    CHECK(calls < 60);
}

namespace {

struct Known {
    double (*f)(double);
    double low, high, root;
};

}  // namespace

TEST_CASE("roots are found to the tolerance, from either end") {
    const Known cases[]{
        {[](double x) { return x * x - 2.0; }, 0.0, 2.0, 1.41421356237309505},                // OEIS A002193
        {[](double x) { return std::cos(x) - x; }, 0.0, 1.0, 0.73908513321516064},            // OEIS A003957
        {[](double x) { return x * std::exp(x) - 1.0; }, 0.0, 1.0, 0.56714329040978387},      // OEIS A030178
        {[](double x) { return x * x * x - 2.0 * x - 5.0; }, 2.0, 3.0, 2.09455148154232659},  // Wallis's, OEIS A007493
    };
    for (const auto& row : cases) {
        for (const double tolerance : {1e-3, 1e-6, 1e-12}) {
            CAPTURE(row.root, tolerance);
            for (const bool turned : {false, true}) {
                const auto found = find_root(row.f, turned ? row.high : row.low, turned ? row.low : row.high,
                                             tolerance);
                REQUIRE(found);
                CHECK(std::abs(*found - row.root) <= tolerance);
            }
        }
    }
}

TEST_CASE("curves that stall a false position still end, in few calls") {
    const Known rows[]{
        {[](double x) { return std::pow(x, 15.0); }, -0.5, 3.0, 0.0},     // flat at the root, steep beside it
        {[](double x) { return x < 0.3 ? -1e-9 : 1e9; }, 0.0, 1.0, 0.3},  // a step
        {[](double x) { return std::exp(40.0 * x) - std::exp(2.0); }, 0.0, 1.0, 0.05},
    };
    for (const auto& row : rows) {
        int calls = 0;
        const auto found = find_root(
            [&](double x) {
                ++calls;
                return row.f(x);
            },
            row.low, row.high, 1e-6);
        REQUIRE(found);
        CAPTURE(row.root, *found);
        // Where the curve is as good as nothing in double precision near the root, any such x is one.
        CHECK((std::abs(*found - row.root) <= 1e-6 || std::abs(row.f(*found)) < 1e-12));
        CHECK(calls <= 202);
    }
}

TEST_CASE("an end that is a root is given as it is, and ends of one sign give nothing") {
    const auto line = [](double x) { return x - 1.0; };
    CHECK(find_root(line, 1.0, 2.0, 1e-6) == 1.0);
    CHECK(find_root(line, 0.0, 1.0, 1e-6) == 1.0);
    CHECK_FALSE(find_root(line, 2.0, 3.0, 1e-6));
    CHECK_FALSE(find_root([](double) { return std::nan(""); }, 0.0, 1.0, 1e-6));
}
