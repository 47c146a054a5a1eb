// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/cycling.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <limits>

using namespace loopfolio;
using namespace loopfolio::physics;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
const FluidState warm = water(40.0 * unit::celsius).value();
const auto swing = 5.0 * unit::kelvin;

/// Starts per hour of a thermostat that switches at both ends of the swing, simulated step by step.
double counted_starts(Volume volume, Power least, Power load) {
    const double capacity = (warm.density * warm.specific_heat * volume).si();
    constexpr double step = 0.05;
    double above = 0.0;
    bool runs = false;
    int starts = 0;
    constexpr int hours = 200;
    for (double t = 0.0; t < hours * 3600.0; t += step) {
        above += ((runs ? least.si() : 0.0) - load.si()) * step / capacity;
        if (above <= 0.0 && !runs) {
            runs = true;
            ++starts;
        }
        if (above >= swing.si()) runs = false;
    }
    return static_cast<double>(starts) / hours;
}

}  // namespace

TEST_CASE("water against short runs, by hand") {
    // Here and below the program's water is IAPWS-IF97, whose cp is lower by 0.02 %.
    // 3 kW minimum output, 1 kW load, 10 minutes, 5 K: 2000 W x 600 s / (992.26 x 4179.2 x 5) = 57.9 L.
    const auto least = 3.0 * unit::kilowatt;
    const auto load = 1.0 * unit::kilowatt;
    const auto volume = volume_for_run(least, load, unit::minute(10), swing, warm);
    REQUIRE(volume);
    tests::verify({"volume against short runs", "by hand, water by IAPWS-95", tests::Certainty::computed, "L"}, 57.8756,
                  volume->in(unit::litre), 0.03);
    CHECK(volume_for_run(least, least, unit::minute(10), swing, warm) == Volume{});
    CHECK(*run_share(load, least) == Approx(1.0 / 3.0));
    CHECK(*run_share(4.0 * unit::kilowatt, least) == 1.0);
}

TEST_CASE("run and volume turn into each other") {
    for (const double kilowatts : {0.1, 0.7, 1.5, 2.9}) {
        const auto load = kilowatts * unit::kilowatt, least = 3.0 * unit::kilowatt;
        const auto volume = volume_for_run(least, load, unit::minute(12), swing, warm);
        const auto cycle = run_cycle(*volume, least, load, swing, warm);
        REQUIRE(cycle);
        CHECK(cycle->run.in(unit::minute) == Approx(12.0).epsilon(1e-12));
        CHECK(cycle->run / (cycle->run + cycle->rest) == Approx(*run_share(load, least)).epsilon(1e-12));
        CHECK(volume_holding(*heat_in(*volume, swing, warm), swing, warm)->si() == Approx(volume->si()));
    }
}

TEST_CASE("starts agree with a thermostat stepped through time") {
    const auto volume = 60.0 * unit::litre;
    for (const double kilowatts : {0.3, 1.0, 1.5, 2.4}) {
        const auto cycle = run_cycle(volume, 3.0 * unit::kilowatt, kilowatts * unit::kilowatt, swing, warm);
        REQUIRE(cycle);
        CAPTURE(kilowatts);
        CHECK(cycle->starts_per_hour ==
              Approx(counted_starts(volume, 3.0 * unit::kilowatt, kilowatts * unit::kilowatt)).epsilon(0.01));
    }
}

TEST_CASE("most starts are at half of the least output") {
    const auto volume = 60.0 * unit::litre;
    const auto least = 3.0 * unit::kilowatt;
    const auto busiest = busiest_cycle(volume, least, swing, warm);
    REQUIRE(busiest);
    for (double share = 0.05; share < 1.0; share += 0.05) {
        CHECK(run_cycle(volume, least, share * least, swing, warm)->starts_per_hour <=
              busiest->starts_per_hour * (1.0 + 1e-12));
    }
    CHECK(volume_for_starts(busiest->starts_per_hour, least, swing, warm)->si() == Approx(volume.si()).epsilon(1e-12));
}

TEST_CASE("a defrost takes its heat from the water") {
    // 5 minutes at 6 kW with a temperature fall of 8 K: 1.8 MJ, 54.3 L.
    const auto volume = volume_holding(6.0 * unit::kilowatt * unit::minute(5), 8.0 * unit::kelvin, warm);
    tests::verify({"volume for a defrost", "by hand, water by IAPWS-95", tests::Certainty::computed, "L"}, 54.2584,
                  volume->in(unit::litre), 0.03);
}

TEST_CASE("what has no cycle is refused") {
    const auto kilowatt = 1.0 * unit::kilowatt, least = 3.0 * unit::kilowatt;
    const auto volume = 60.0 * unit::litre;
    for (const double bad : {0.0, -1.0, nan_value}) {
        CHECK_FALSE(run_share(kilowatt, bad * unit::kilowatt));
        CHECK_FALSE(heat_in(bad * unit::litre, swing, warm));
        CHECK_FALSE(volume_holding(Energy::from_si(bad), swing, warm));
        CHECK_FALSE(volume_holding(1.0 * unit::kilowatt_hour, bad * unit::kelvin, warm));
        CHECK_FALSE(volume_for_run(bad * unit::kilowatt, kilowatt, unit::minute(10), swing, warm));
        CHECK_FALSE(volume_for_run(least, kilowatt, unit::minute(bad), swing, warm));
        CHECK_FALSE(run_cycle(volume, least, bad * unit::kilowatt, swing, warm));
        CHECK_FALSE(volume_for_starts(bad, least, swing, warm));
    }
    CHECK_FALSE(volume_for_run(least, -1.0 * kilowatt, unit::minute(10), swing, warm));
    CHECK_FALSE(run_cycle(volume, least, least, swing, warm));
    CHECK_FALSE(heat_in(volume, swing, FluidState{}));
}
