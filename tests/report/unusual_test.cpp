// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/inputs.hpp"
#include "support/studied.hpp"

#include <set>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// A house in which everything that a job may state and is not usual is stated at once.
job::Job unusual_house() {
    auto job = example_job("semi-detached");
    job.conditions.outdoor = measured(Temperature::from_celsius(-16.0));
    job.rooms[0].floor_area = measured(151.0 * unit::square_metre);
    job.rooms[2].name = job.rooms[1].name;
    auto& emitter = job.emitters[0];
    emitter.length = measured(40.0 * unit::metre);
    job.sections[0].length = measured(501.0 * unit::metre);
    auto& source = *job.heat_source;
    for (auto& point : source.performance) point.capacity = 8.0 * unit::kilowatt;
    auto& coldest = source.performance.front();
    coldest.performance = 9.0;
    return job;
}

}  // namespace

TEST_CASE("the examples state nothing unusual") {
    for (const auto& name : example_names()) {
        INFO(name);
        CHECK(design::unusual_flags(studied(example_job(name)).house.values).empty());
    }
}

TEST_CASE("what is unusual is in the list of less certain figures of both parts, with its subjects") {
    const auto job = unusual_house();
    const auto made = studied(job);
    std::set<design::Caveat> kinds;
    for (const auto& flag : design::unusual_flags(made.house.values)) kinds.insert(flag.caveat);
    CHECK(kinds.size() == 7);
    const auto pack = composed(made);
    for (const auto part : {installer, assessor}) {
        INFO(part);
        const auto lines = lines_of(pack.parts[part], false);
        const auto says = [&](const std::vector<std::string>& parts) { return !line_with(lines, parts).empty(); };
        CHECK(says({"design outdoor temperature, \u221216\u00a0°C, is unusual"}));
        CHECK(says({"floor area of " + job.rooms[0].name + " is unusual"}));
        CHECK(says({job.emitters[0].id, "longer than a wall of its room"}));
        CHECK(says({"better COP in colder air, at \u221215\u00a0°C"}));
        CHECK(says({"capacity, 8.0\u00a0kW, looks like its nominal output"}));
        CHECK(says({"Another room has the name of " + job.rooms[2].id}));
        CHECK(says({"m long in all, one way, more than a house has"}));
    }
}
