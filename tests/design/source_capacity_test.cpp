// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "support/catch.hpp"
#include "support/small_job.hpp"

#include <algorithm>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// A house of 6 kW at -3 °C with a flow temperature of 50 °C, and a table of 5 to 9 kW at that temperature from -7 to 1
/// °C.
job::Job house() {
    auto job = one_section_job("copper_35", 6000.0);
    for (const auto& [outdoor, flow, kilowatts] :
         {std::tuple{-7.0, 45.0, 6.0}, {-7.0, 55.0, 4.0}, {1.0, 45.0, 10.0}, {1.0, 55.0, 8.0}}) {
        job.heat_source->performance.push_back(
            {unit::celsius(outdoor), unit::celsius(flow), unit::kilowatt(kilowatts), 3.0, {}, {}});
    }
    return job;
}

bool flagged(const design::Design& d, design::Caveat caveat) {
    return std::ranges::find(d.flags, caveat, &design::Flag::caveat) != d.flags.end();
}

}  // namespace

TEST_CASE("without a stated capacity the maker's table is asked for that of the design day") {
    const auto d = designed(house());  // by hand: half way between the outdoor and between the flow temperatures, 7 kW
    REQUIRE(d.duty.capacity);
    CHECK(d.duty.capacity->in(unit::kilowatt) == Approx(7.0));
    CHECK(d.duty.capacity_by_table);
    CHECK(d.verdict_of(d.duty.source_capacity) == Verdict::keep);

    auto derated = house();
    derated.heat_source->defrost_derating = measured(0.2);
    derated.heat_source->defrost_from = measured(unit::celsius(-5.0));
    derated.heat_source->defrost_to = measured(unit::celsius(5.0));
    CHECK(designed(derated).duty.capacity->in(unit::kilowatt) == Approx(5.6));
    CHECK(designed(derated).verdict == Verdict::change);
    derated.heat_source->number = 2;
    CHECK(designed(derated).duty.capacity->in(unit::kilowatt) == Approx(11.2));

    auto beyond = house();
    beyond.conditions.outdoor = measured(unit::celsius(-9.0));
    CHECK_FALSE(designed(beyond).duty.source_capacity);
}

TEST_CASE("a stated capacity counts, and is told where it is far from the table") {
    auto job = house();
    job.heat_source->capacity = measured(unit::kilowatt(7.6));
    CHECK(designed(job).duty.capacity->in(unit::kilowatt) == Approx(7.6));
    CHECK_FALSE(designed(job).duty.capacity_by_table);
    CHECK_FALSE(flagged(designed(job), design::Caveat::capacity_unlike_table));
    job.heat_source->capacity = measured(unit::kilowatt(14.0));
    CHECK(flagged(designed(job), design::Caveat::capacity_unlike_table));
}

TEST_CASE("the verdict of a design counts the largest drop at the heat source") {
    auto job = house();
    CHECK(designed(job).verdict != Verdict::change);
    job.heat_source->maximum_drop = measured(unit::kelvin(3.0));
    const auto d = designed(job);
    REQUIRE(d.duty.source_maximum_drop);
    for (const auto& finding : d.findings) {
        const bool of_drop = finding.check == design::Check::source_maximum_drop;
        CHECK((finding.verdict == Verdict::change) == of_drop);
    }
    CHECK(d.verdict == Verdict::change);
}

TEST_CASE("valves on a thin pipe are those that radiators are made for") {
    auto job = one_section_job("copper_10", 500.0);
    job.emitters[0].fittings = {{"thermostatic_valve", 1, 0.0, {}}};
    CHECK(design::resolve(job).values.emitters[0].connection == "copper_15");
    job.emitters[0].connection = "copper_10";
    CHECK(design::resolve(job).values.emitters[0].connection == "copper_10");
    CHECK(design::resolve(one_section_job("copper_22", 500.0)).values.emitters[0].connection == "copper_22");
}
