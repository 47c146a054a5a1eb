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
    // Flat on one side and steep on the other, which the plain false position takes for ever to close.
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
