// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/studied.hpp"

#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

date::year_month_day on(int y, unsigned m, unsigned d) { return date::year{y} / date::month{m} / date::day{d}; }

job::Job house_in(reference::Nation nation, date::year_month_day day) {
    auto job = example_job("semi-detached");
    job.property.nation = nation;
    job.identity.design_date = day;
    job.identity.works_start.reset();
    return job;
}

std::vector<std::string> assessor_lines(const job::Job& job) {
    return lines_of(composed(studied(job)).parts[assessor], true);
}

}  // namespace

// What published rules ask of a design file in the United Kingdom, as found on 30 November 2026; how well each is known
// stands beside it in src/reference/editions.cpp.
TEST_CASE("the pack of an English house names the edition in force of every rule") {
    const auto lines = assessor_lines(house_in(reference::Nation::england, on(2026, 11, 30)));
    const std::vector<std::vector<std::string>> rows = {
        {"Design heat load", "BS EN 12831-1:2017", "heat losses"},
        {"Room temperatures", "Domestic Heating Design Guide, 11th edition, 2026"},
        {"Design by a certified installer", "MIS 3005-D, issue 3.0", "5 December 2025"},
        {"Sound of the outdoor unit", "MCS 020 a), issue 1.1 of 14 April 2025", "29 May 2025"},
        {"Outdoor unit without planning application", "SI 2025/560", "29 May 2025"},
        {"Electricity supply", "Energy Networks Association"},
        {"Flow temperature", "Approved Document L, volume 1: dwellings, 2021 edition", "24 March 2027"},
        {"Performance estimate", "MCS 031", "18 March 2025"},
        {"Grant", "SI 2022/565"},
        {"Commissioning, notice", "SI 2010/2214", "40, 43 and 44"},
        {"Treatment of the system's water", "BS 7593:2019"},
        {"Installation and commissioning papers", "BS EN 14336:2025"},
        {"Bacteria in hot water, code", "L8, 4th edition, 2013"},
        {"Bacteria in hot water, guidance", "HSG274, part 2, 2nd edition, March 2024"},
        {"Duty holders", "SI 2015/51"},
        {"Refrigerant", "BS EN 378-1:2016+A1:2020"},
        {"Right to cancel", "SI 2013/3134"},
        {"Data assumed of existing dwellings", "RdSAP 10", "15 June 2025"},
        {"Electrical installation", "BS 7671:2018+A4:2026"},
        {"Safety of hot water stores", "Approved Document G, 2015 edition with 2016 and 2024 amendments"},
        {"Water-based heating systems", "BS EN 12828:2012+A1:2014"},
        {"How sound spreads", "ISO 9613-2:2024"},
        {"Work on gas fittings", "SI 1998/2451"},
    };
    for (const auto& row : rows) {
        INFO(row.front());
        CHECK_FALSE(line_with(lines, row).empty());
    }
    CHECK_FALSE(line_with(lines, {"For England, on 30 November 2026", "does not say when the work starts"}).empty());
}

TEST_CASE("a rule that is not held for the nation, or on which the nations differ, is said to be not covered") {
    const auto scotland = assessor_lines(house_in(reference::Nation::scotland, on(2026, 11, 30)));
    CHECK_FALSE(line_with(scotland, {"Grant", "not covered for this nation"}).empty());
    CHECK_FALSE(line_with(scotland, {"Sound of the outdoor unit", "MCS 020, planning standard"}).empty());
    const auto elsewhere = assessor_lines(house_in(reference::Nation::elsewhere, on(2026, 11, 30)));
    CHECK_FALSE(line_with(elsewhere, {"Sound of the outdoor unit", "not covered for this nation"}).empty());
    CHECK_FALSE(line_with(elsewhere, {"Design heat load", "BS EN 12831-1:2017"}).empty());
    const auto nowhere = assessor_lines(house_in(reference::Nation::not_stated, on(2026, 11, 30)));
    CHECK_FALSE(line_with(nowhere, {"Sound of the outdoor unit", "the nations differ"}).empty());
    CHECK_FALSE(line_with(nowhere, {"Treatment of the system's water", "BS 7593:2019"}).empty());
    CHECK_FALSE(line_with(nowhere, {"does not say in which nation"}).empty());
    const auto ireland = assessor_lines(house_in(reference::Nation::northern_ireland, on(2026, 11, 30)));
    CHECK_FALSE(line_with(ireland, {"Work on gas fittings", "SR 2004/63"}).empty());
}

TEST_CASE("what changes before the work starts is said, and what changes after it stands apart") {
    auto job = house_in(reference::Nation::england, on(2026, 11, 30));
    job.identity.works_start = on(2027, 3, 24);
    const std::string edition = "Approved Document L, volume 1: dwellings, 2026 edition";
    CHECK_FALSE(line_with(assessor_lines(job), {"before the work starts", "from 24 March 2027: " + edition}).empty());
    job.identity.works_start = on(2027, 3, 23);
    const auto lines = assessor_lines(job);
    CHECK(line_with(lines, {"before the work starts**, from 24 March 2027"}).empty());
    CHECK_FALSE(line_with(lines, {"from 24 March 2027: " + edition}).empty());
}

TEST_CASE("a design that stands on a replaced edition says so, and titles are those of the day") {
    const auto now = assessor_lines(house_in(reference::Nation::england, on(2026, 11, 30)));
    CHECK_FALSE(line_with(now, {"BS EN 12828:2003", "was replaced from 2012 by BS EN 12828:2012+A1:2014"}).empty());
    CHECK_FALSE(line_with(now, {"annex D, expansion vessels", "replaced", "from 2012 by"}).empty());
    // Before amendment 4 was in force, the list of sources names the edition before it.
    const auto before = assessor_lines(house_in(reference::Nation::england, on(2026, 1, 1)));
    CHECK_FALSE(line_with(before, {"[", "BS 7671:2018, Requirements", "before amendment 4"}).empty());
    const auto early = assessor_lines(house_in(reference::Nation::england, on(2011, 1, 1)));
    CHECK(line_with(early, {"BS EN 12828:2003", "was replaced"}).empty());
}
