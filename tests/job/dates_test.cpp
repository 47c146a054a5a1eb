// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"
#include "loopfolio/job/read_job.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("the work does not start before it is designed") {
    check_refusals({
        {"design_date: 2026-10-14", "design_date: 2026-10-14, works_start: 2026-10-13",
         "2:79: error: job.works_start = 2026-10-13: lies before `design_date`\n"
         "    hint: the rules are those of the design's day: date the design before the work starts\n"},
        {"design_date: 2026-10-14", "design_date: 2026-10-14, works_start: soon",
         "2:79: error: job.works_start = soon: must be a date written year-month-day\n"
         "    hint: write it like 2026-10-14\n"},
        {"design_date: 2026-10-14", "design_date: 2026-10-14, works_start: 2026-10-14", ""},
    });
}

TEST_CASE("a job says in which nation the house stands, by its name") {
    const auto read = job::read_job(with(sample_job, "property: {", "property: {nation: wales, "), "job.yaml");
    REQUIRE(read.job);
    CHECK(read.job->property.nation == reference::Nation::wales);
    CHECK(job::read_job(sample_job, "job.yaml").job->property.nation == reference::Nation::not_stated);
    const std::string told = said(with(sample_job, "property: {", "property: {nation: Cornwall, "));
    CHECK(told.rfind("job.yaml:6:20: error: property.nation = Cornwall: ", 0) == 0);
}
