// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/sound.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <limits>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;

namespace {

SoundPath path(double power, double metres, double directivity = directivity_on_ground, double barrier = 0.0) {
    return {power, metres * unit::metre, directivity, barrier};
}

const std::string standards = "ISO 9613-2 / ISO 3744";

}  // namespace

TEST_CASE("sound spreads over a sphere, a half, a quarter and an eighth") {
    struct Row {
        double metres, directivity, below;
    };  // level under the sound power level
    // ISO 9613-2 divergence 20 lg r + 11; ISO 3744 hemisphere 20 lg r + 8.
    tests::Verification v{{"sound pressure level at a distance", standards, Certainty::memory, "dB(A)",
                           "the standards round 10 lg 4 pi = 10.99 and what follows from it to whole decibels"}};
    for (const auto& r : {Row{1, 1, 11}, {10, 1, 31}, {1, 2, 8}, {10, 2, 28}, {1, 4, 5}, {1, 8, 2}}) {
        const double below = 10.0 * std::log10(4.0 * M_PI * r.metres * r.metres / r.directivity);
        v.check_known(60.0 - r.below, r.below - below, *sound_pressure_level(path(60, r.metres, r.directivity)), 1e-9);
    }
    // On a sphere of 1 m2, r = 0.2821 m, sound pressure level and sound power level are equal.
    tests::verify({"sound pressure level over 1 m2", "4 pi r2 = 1 m2", Certainty::computed, "dB(A)"}, 60.0,
                  *sound_pressure_level(path(60, 0.28209479177, directivity_free)), 1e-6);
}

TEST_CASE("twice as far is 6 dB less, a wall 3 dB more, a barrier what is stated") {
    for (const double r : {1.0, 3.0, 8.0}) {
        const double level = *sound_pressure_level(path(62, r));
        CHECK(level - *sound_pressure_level(path(62, 2.0 * r)) == Approx(6.0206).margin(1e-4));
        CHECK(*sound_pressure_level(path(62, r, directivity_by_wall)) - level == Approx(3.0103).margin(1e-4));
        CHECK(level - *sound_pressure_level(path(62, r, directivity_on_ground, 5.0)) == Approx(5.0));
    }
}

TEST_CASE("levels add as energy") {
    tests::Verification v{{"sum of sound levels", "10 lg sum 10^(L/10), by hand", Certainty::computed, "dB(A)"}};
    struct Row {
        std::vector<double> levels;
        double sum;
    };
    for (const auto& r : {Row{{40, 40}, 43.0103},
                          {{40, 30}, 40.4139},
                          {{50, 50, 50, 50}, 56.0206},
                          {{37}, 37},
                          {{35, 38, 41}, 43.4363}}) {
        v.check(r.sum, *sum_of_levels(r.levels), 1e-4);
    }
    CHECK(*sum_of_levels(std::vector{4000.0, 4000.0}) == Approx(4003.0103));  // no overflow on the way
    CHECK_FALSE(sum_of_levels({}));
    CHECK_FALSE(sum_of_levels(std::vector{40.0, std::numeric_limits<double>::infinity()}));
}

TEST_CASE("distance and level turn into each other") {
    for (const double q : {1.0, 2.0, 4.0, 8.0}) {
        const auto there = path(58, 4.5, q, 3.0);
        CHECK(distance_to_level(there, *sound_pressure_level(there))->si() == Approx(4.5).epsilon(1e-12));
    }
}

TEST_CASE("a path that is none is refused") {
    constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(sound_pressure_level(path(60, bad)));
        CHECK_FALSE(sound_pressure_level(path(60, 1, bad)));
    }
    CHECK_FALSE(sound_pressure_level(path(nan_value, 1)));
    CHECK_FALSE(sound_pressure_level(path(60, 1, 9)));
    CHECK_FALSE(sound_pressure_level(path(60, 1, 2, -1)));
    CHECK_FALSE(distance_to_level(path(60, 1), nan_value));
}
