// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/register.hpp"

#include "loopfolio/reference/source.hpp"
#include "support/catch.hpp"
#include "support/season_house.hpp"
#include "support/small_job.hpp"
#include "support/studied.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

double kilowatt_hours(Energy energy) { return energy.in(unit::kilowatt_hour); }

design::SeasonBands planned(const job::Job& job) { return studied(job).plant.season->bands.value(); }

/// One heated room with one element, heated by one emitter.
job::Job job_with(const job::Element& element) {
    auto job = one_section_job("copper_22", 2000.0);
    job.rooms[0].heat_loss.reset();
    job.rooms[0].elements = {element};
    return job;
}

}  // namespace

TEST_CASE("everything neither measured nor documented is in the register") {
    auto job = one_section_job("copper_22", 5000.0);
    job.rooms[0].heat_loss.reset();
    job.rooms[0].fabric.emplace();
    job.rooms[0].fabric->outside_walls = 2;
    const auto lines = studied(job).inputs;
    const auto line = [&](const std::string& what) {
        const auto at = std::find_if(lines.begin(), lines.end(), [&](const auto& l) { return l.what == what; });
        REQUIRE(at != lines.end());
        return *at;
    };
    for (const auto* what :
         {"preferred velocity", "velocity limit", "air permeability at 50 Pa", "U-value, wall", "bore", "roughness"}) {
        CHECK(study::needs_care(line(what)));
        CHECK(line(what).basis == Basis::default_value);
        CHECK(reference::find_source(line(what).source) != nullptr);
    }
    CHECK_FALSE(study::needs_care(line("section length")));
    const auto air = line("air permeability at 50 Pa");
    REQUIRE(air.at_low);
    REQUIRE(air.at_high);
    CHECK(air.at_low->source_load_change.si() <= 0.0);
    CHECK(air.at_high->source_load_change.si() >= 0.0);
}

TEST_CASE("equal assumptions of several rooms stand in one line") {
    auto job = one_section_job("copper_22", 5000.0);
    job.rooms.push_back(stated_room("other", 500.0));
    job.emitters.push_back(panel("F", "other", "A", 2000.0));
    const auto lines = study::inputs_register(design::resolve(job));
    const auto count = std::count_if(lines.begin(), lines.end(), [](const auto& l) { return l.what == "floor area"; });
    CHECK(count == 1);
}

TEST_CASE("the register lists what figures are derived from, and what each of those does") {
    job::Element wall;
    wall.kind = job::ElementKind::wall;
    wall.area = measured(unit::square_metre(10.0));
    wall.layers.emplace_back();
    wall.layers[0].material = "brick_outer";
    wall.layers[0].thickness = measured(unit::millimetre(215.0));
    bool seen = false;
    for (const auto& line : studied(job_with(wall)).inputs) {
        CHECK(line.what != "U-value of element");
        if (line.what != "conductivity of layer") continue;
        seen = true;
        REQUIRE(line.subjects.size() == 1);
        CHECK(line.subjects[0].ends_with(", brickwork, outer leaf"));
        REQUIRE(line.at_low);
        CHECK(line.at_low->source_load_change < Power{});
        CHECK(line.at_high->source_load_change > Power{});
    }
    CHECK(seen);
}

TEST_CASE("ground of an unknown kind has a range as wide as the kinds that it may be, and what it does is shown") {
    job::Element floor;
    floor.kind = job::ElementKind::floor;
    floor.area = measured(unit::square_metre(48.0));
    floor.beyond = job::Beyond::ground;
    floor.slab.emplace();
    floor.slab->perimeter = measured(unit::metre(12.0));
    floor.slab->insulation = measured(unit::square_metre_kelvin_per_watt(0.0));
    bool seen = false;
    for (const auto& line : studied(job_with(floor)).inputs) {
        if (line.what != "conductivity of ground") continue;
        seen = true;
        CHECK(line.range == "1.0 to 2.5");
        REQUIRE(line.at_high);
        CHECK(line.at_high->source_load_change > Power{});
    }
    CHECK(seen);
}

TEST_CASE("the bands are the ranges of the inputs, combined as a root of squares") {
    auto job = season_house({9000.0});
    CHECK(planned(job).ranges == 1);  // the base's own, unless it is stated
    job.season->base = measured(unit::celsius(16.0));
    CHECK(planned(job).ranges == 0);
    job.season->price = assumed(0.30, 0.24, 0.33);
    auto plan = planned(job);
    const double used = kilowatt_hours(plan.electricity.value);
    CHECK(plan.ranges == 1);
    CHECK(plan.electricity.low.si() == Approx(plan.electricity.high.si()));
    CHECK(plan.cost->low == Approx(0.24 * used));
    CHECK(plan.cost->value == Approx(0.30 * used));
    CHECK(plan.cost->high == Approx(0.33 * used));
    // Two rooms with ranges of their own: the demand changes with each, by its share.
    job.rooms[0].heat_loss = assumed(unit::watt(5000.0), unit::watt(4000.0), unit::watt(5300.0));
    job.rooms.push_back(stated_room("other", 4000.0));
    job.rooms[1].heat_loss = assumed(unit::watt(4000.0), unit::watt(3250.0), unit::watt(4400.0));
    job.emitters.push_back(panel("E2", "other", "A", 16'000.0));
    plan = planned(job);
    CHECK(plan.ranges == 3);
    const double demand = kilowatt_hours(plan.demand.value), per_watt = demand / 9000.0;
    CHECK(kilowatt_hours(plan.demand.low) == Approx(demand - per_watt * std::hypot(1000.0, 750.0)));
    CHECK(kilowatt_hours(plan.demand.high) == Approx(demand + per_watt * std::hypot(300.0, 400.0)));
}
