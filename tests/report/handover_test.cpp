// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/inputs.hpp"
#include "support/studied.hpp"

#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

std::vector<std::string> installer_lines(const job::Job& job) {
    return lines_of(composed(studied(job)).parts[installer], true);
}

job::Job bare_house() {
    auto job = example_job("semi-detached");
    job.handover = {};
    for (auto& section : job.sections) section.outside_heated_space = false;
    return job;
}

}  // namespace

// BS 7593:2019: tested each year, treated again or fully tested each five; SI 2013/3134: fourteen days; regulation 44
// of SI 2010/2214: five days. How well each is known stands in src/reference/editions.cpp.
TEST_CASE("papers and notices have the days of the editions in force") {
    auto job = bare_house();
    job.property.nation = reference::Nation::england;
    const auto lines = installer_lines(job);
    CHECK_FALSE(line_with(lines, {"Right to cancel within 14 days", "SI 2013/3134", "household"}).empty());
    CHECK_FALSE(line_with(lines, {"Notice to the network operator within 28 days", "network operator"}).empty());
    CHECK_FALSE(line_with(lines, {"Instructions for running and maintaining, within 5 days"}).empty());
    CHECK_FALSE(line_with(lines, {"Performance estimate", "MCS 031"}).empty());
    CHECK_FALSE(line_with(lines, {"BS 7593:2019", "treated again, or fully tested, every 5 years"}).empty());
    job.property.nation = reference::Nation::elsewhere;
    const auto elsewhere = installer_lines(job);
    CHECK(line_with(elsewhere, {"Right to cancel"}).empty());
    CHECK_FALSE(line_with(elsewhere, {"No edition of the code of practice is held"}).empty());
}

TEST_CASE("what the job does not state of controls, treatment and brief is said to be not stated") {
    const auto lines = installer_lines(bare_house());
    CHECK_FALSE(line_with(lines, {"The job holds no brief"}).empty());
    for (const char* what : {"Set-back", "Room sensor", "Zones", "Frost protection", "Inhibitor", "Next test"}) {
        INFO(what);
        CHECK_FALSE(line_with(lines, {what, "not stated"}).empty());
    }
    CHECK_FALSE(line_with(lines, {"states no pipe outside the heated rooms"}).empty());
}

TEST_CASE("what the job states is printed as it has it, and its stars are no markup") {
    auto job = bare_house();
    job.handover.brief = job::Brief{
        "P. Example, owner", date::year{2026} / 10 / 2, "four at home", "two showers", "", {}};
    job.handover.controls = job::Controls{};
    job.handover.controls->set_back = "2 K from 22.00 **to** 6.00";
    job.handover.controls->left_open = {job.emitters[0].id, job.emitters[1].id};
    job.handover.refrigerant = job::Refrigerant{"R290", "1.3 kg", "A3", "1 m on all sides"};
    job.handover.risks = {{"steep stairs", "loft", "the installer", "two people"}};
    job.sections[0].outside_heated_space = true;
    job.sections[0].insulation.clear();
    job.sections[1].outside_heated_space = true;
    job.sections[1].insulation = "25 mm mineral wool";
    const auto lines = installer_lines(job);
    CHECK_FALSE(line_with(lines, {"Agreed with P. Example, owner on 2 October 2026"}).empty());
    CHECK_FALSE(line_with(lines, {"Set-back", "2 K from 22.00 'to' 6.00"}).empty());
    CHECK_FALSE(line_with(lines, {"Valves that stay open", job.emitters[0].id + " and " + job.emitters[1].id}).empty());
    CHECK_FALSE(line_with(lines, {"Charge: 1.3 kg"}).empty());
    CHECK_FALSE(line_with(lines, {"steep stairs", "loft", "the installer", "two people"}).empty());
    CHECK_FALSE(line_with(lines, {job.sections[0].id + " | ", "to be insulated"}).empty());
    CHECK_FALSE(line_with(lines, {job.sections[1].id, "25 mm mineral wool"}).empty());
}

TEST_CASE("the brief says which temperatures the job states, and the one margin that is taken") {
    auto job = bare_house();
    job.rooms[0].temperature = measured(Temperature::from_celsius(23.0));
    const auto lines = installer_lines(job);
    CHECK_FALSE(line_with(lines, {job.rooms[0].name, "23.0", "as the job states"}).empty());
    CHECK_FALSE(line_with(lines, {"Margin", "none: the heat source is held against the load itself"}).empty());
    job.conditions.heat_up = measured(10.0 * unit::watt_per_square_metre);
    for (auto& room : job.rooms) room.heat_up = {};
    CHECK_FALSE(line_with(installer_lines(job), {"Margin", "for heating up after a set-back, added once"}).empty());
}

TEST_CASE("the first page says what the pack does not hold") {
    auto job = bare_house();
    job.sound.reset();
    job.hot_water.reset();
    const auto first = lines_of(composed(studied(job)).parts[summary], true);
    CHECK_FALSE(line_with(first, {"Not in this pack", "the sound of the outdoor unit", "hot water"}).empty());
    CHECK(line_with(first, {"Not in this pack", "expansion vessel"}).empty());
}
