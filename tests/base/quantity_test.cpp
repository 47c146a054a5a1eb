// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/base/verdict.hpp"

#include "support/catch.hpp"

#include <algorithm>
#include <type_traits>

using namespace loopfolio;

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};

static_assert(Addable<Length, Length>);
static_assert(!Addable<Length, Area>, "a length and an area must not add up");
static_assert(!Addable<Temperature, Temperature>, "two points of a scale must not add up");
static_assert(!Addable<Power, Pressure>);
static_assert(std::is_same_v<decltype(Length{} * Length{}), Area>);
static_assert(std::is_same_v<decltype(Length{} / Length{}), double>);
static_assert(std::is_same_v<decltype(Temperature{} - Temperature{}), TemperatureDifference>);
static_assert(std::is_same_v<decltype(UValue{} * Area{}), HeatLossCoefficient>);
static_assert(std::is_same_v<decltype(HeatLossCoefficient{} * TemperatureDifference{}), Power>);

TEST_CASE("units turn into each other by name") {
    CHECK((22.0 * unit::millimetre).in(unit::metre) == Approx(0.022));
    CHECK((30.0 * unit::litre_per_minute).in(unit::litre_per_second) == Approx(0.5));
    CHECK((1.8 * unit::cubic_metre_per_hour).in(unit::litre_per_second) == Approx(0.5));
    CHECK((21.0 * unit::celsius).kelvin() == Approx(294.15));
    CHECK(unit::percent(25.0) == Approx(0.25));
}

TEST_CASE("each verdict and basis has its word, and the worse of two verdicts is the greater") {
    CHECK(word(Verdict::keep) == "keep");
    CHECK(word(Verdict::keep_noted) == "keep, noted");
    CHECK(word(Verdict::change) == "change");
    for (const auto a : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        for (const auto b : {Verdict::keep, Verdict::keep_noted, Verdict::change}) CHECK(worse(a, b) == std::max(a, b));
    }
    CHECK(word(Basis::absent) == "absent");
    CHECK(word(Basis::measured) == "measured");
    CHECK(word(Basis::document) == "document");
    CHECK(word(Basis::assumed) == "assumed");
    CHECK(word(Basis::default_value) == "default");
    CHECK(word(Basis::derived) == "derived");
    CHECK_FALSE(Input<double>{}.given());
    CHECK(Input<double>::filled(1.0, "key").basis == Basis::default_value);
    CHECK(Input<double>::derived(1.0, "key").basis == Basis::derived);
}
