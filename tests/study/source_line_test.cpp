// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/source_line.hpp"
#include "support/catch.hpp"
#include "support/sample_design.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// A table with the same capacities at every flow temperature from 35 to 55 °C.
void give_table(job::Job& job, std::initializer_list<std::pair<double, double>> outdoor_and_kilowatts) {
    job.heat_source->performance.clear();
    for (const auto& [outdoor, kilowatts] : outdoor_and_kilowatts) {
        for (const double flow : {35.0, 55.0}) {
            job.heat_source->performance.push_back({Temperature::from_celsius(outdoor),
                                                    Temperature::from_celsius(flow),
                                                    kilowatts * unit::kilowatt,
                                                    3.0,
                                                    {}});
        }
    }
}

struct House {
    job::Job job;
    design::Design design;
};

/// The sample with every room at one temperature, so that the load's line is known by hand.
House house() {
    job::Job job = sample_job();
    for (auto& room : job.rooms) room.temperature = measured(Temperature::from_celsius(20.0));
    job.conditions.flow = measured(Temperature::from_celsius(50.0));
    const auto s = studied(job);
    return {s.house.values, s.design};
}

}  // namespace

TEST_CASE("the load falls in a straight line from the design day to the rooms' temperature") {
    House h = house();
    give_table(h.job, {{-20.0, 5.0}, {0.0, 6.0}, {30.0, 9.0}});
    const auto line = study::source_line(h.job, h.design);
    REQUIRE(line);
    const double outdoor = h.job.conditions.outdoor.value.celsius(), full = h.design.duty.source_load.si();
    for (const auto& p : line->points) {
        const double by_hand = std::max(0.0, full * (20.0 - p.outdoor.celsius()) / (20.0 - outdoor));
        CHECK(p.load.si() == Approx(by_hand).margin(1e-9 * full));
    }
    // The three of the table, the design day and the temperature without load.
    CHECK(line->points.size() == 5);
}

TEST_CASE("the bivalent temperature is where capacity and load are equal, as EN 14825 defines it") {
    House h = house();
    const double outdoor = h.job.conditions.outdoor.value.celsius(),
                 full = h.design.duty.source_load.in(unit::kilowatt);
    // A source that makes two thirds of the design load in any weather is in balance at a third of the way to 20
    // degrees.
    give_table(h.job, {{-20.0, full * 2.0 / 3.0}, {20.0, full * 2.0 / 3.0}});
    const auto line = study::source_line(h.job, h.design);
    REQUIRE(line);
    REQUIRE(line->balance);
    CHECK(line->balance->outdoor.celsius() == Approx(outdoor + (20.0 - outdoor) / 3.0).margin(1e-9));
    CHECK(line->balance->load.in(unit::kilowatt) == Approx(full * 2.0 / 3.0));
    // Sloped: 0.5 at -20 to 1.5 of the load at +20; load (20 - t) / (20 - outdoor).
    give_table(h.job, {{-20.0, 0.5 * full}, {20.0, 1.5 * full}});
    const auto sloped = study::source_line(h.job, h.design);
    REQUIRE(sloped->balance);
    const double t = sloped->balance->outdoor.celsius();
    CHECK(0.5 + (t + 20.0) / 40.0 == Approx((20.0 - t) / (20.0 - outdoor)));
}

TEST_CASE("a source that is always enough, or a table that does not tell, has no bivalent temperature or no line") {
    House h = house();
    give_table(h.job, {{-7.0, 100.0}, {7.0, 120.0}});
    REQUIRE(study::source_line(h.job, h.design));
    CHECK_FALSE(study::source_line(h.job, h.design)->balance);
    h.job.heat_source->performance.back().capacity.reset();
    CHECK_FALSE(study::source_line(h.job, h.design));
    give_table(h.job, {{-7.0, 5.0}});
    CHECK_FALSE(study::source_line(h.job, h.design));
    for (auto& p : h.job.heat_source->performance)
        p.flow = Temperature::from_celsius(30.0);  // the design's 50 lies outside
    CHECK_FALSE(study::source_line(h.job, h.design));
    h.job.heat_source.reset();
    CHECK_FALSE(study::source_line(h.job, h.design));
}
