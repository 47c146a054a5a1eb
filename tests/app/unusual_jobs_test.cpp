// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "app/support.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// `check` of a job of tests/data/repro, each of which shows a fault that version 0.1.0 had. The catalogue that some of
/// them name is that of the examples.
Run checked(const std::string& name) {
    const Folder folder;
    std::filesystem::copy(examples() / "catalogue", folder.path + "/catalogue");
    const auto job = std::string{LOOPFOLIO_SOURCE_DIR} + "/tests/data/repro/" + name + ".yaml";
    std::filesystem::copy(job, folder.path + "/job.yaml");
    return program({"check", folder.path + "/job.yaml"});
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("jobs that state what cannot be are refused with place, rule and hint") {
    const struct {
        std::string job, place, rule, hint;
    } rows[] = {
        {"season_one_hour", "job.yaml:1039:3: error: season.bins: ", "have 1 hours up to 0 °C, which is neither a year",
         "say with `period` what they are"},
        {"season_january_only", "job.yaml:1039:3: error: season.bins: ",
         "have 720 hours up to 8 °C, which is neither a year", "say with `period` what they are"},
        {"min_output_50_capacity_9", "error: heat_source.minimum_output_kw = 50: ",
         "must not be above the capacity, at most 15.2 kW", "what one unit can be turned down to"},
    };
    for (const auto& row : rows) {
        const auto run = checked(row.job);
        INFO(row.job << "\n" << run.err);
        CHECK(run.code == app::exit_invalid);
        CHECK(run.out.empty());
        CHECK(holds(run.err, row.place + row.rule));
        CHECK(holds(run.err, row.hint));
    }
}

TEST_CASE("jobs that state what is unusual are asked about, and check lists it with the less certain figures") {
    const struct {
        std::string job, asked, listed;
    } rows[] = {
        {"cop_rises_when_colder", "warning: heat_source.performance.points: have a higher `ratio` at ",
         "has a better COP in colder air, at "},
        {"minus40", "warning: conditions.outdoor_temperature_c = -40: ", "temperature, \u221240 °C, is unusual"},
        {"emitter_20m_in_tiny", "length_mm = 20000: is longer than a wall of its room",
         "longer than a wall of its room"},
        {"emitter_20m_in_tiny", "floor_area_m2 = 0.5: is unusual for one room", "is unusual for one room"},
        {"pipe_5000m", "length_m = 500: belongs to ", "m long in all, one way, more than a house has"},
    };
    for (const auto& row : rows) {
        const auto run = checked(row.job);
        INFO(row.job << "\n" << run.err << run.out);
        CHECK(run.code == app::exit_done);
        CHECK(holds(run.err, row.asked));
        const auto list = run.out.find("less firm\n");
        REQUIRE(list != std::string::npos);
        CHECK(run.out.find(row.listed, list) != std::string::npos);
    }
}
