// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/handover.hpp"

#include "job/refusals.hpp"
#include "loopfolio/job/read_job.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

std::string told(const std::string& lines) {
    std::string out = said(sample_job + lines);
    for (auto at = out.find("job.yaml:"); at != std::string::npos; at = out.find("job.yaml:")) out.erase(at, 9);
    return out;
}

}  // namespace

TEST_CASE("a brief, controls, treatment, refrigerant, dangers and duty holders are read as the job has them") {
    const auto read = job::read_job(
        sample_job +
            "brief: {agreed_with: M. Whitlock, agreed_on: 2026-10-02, decisions: [no bath]}\n"
            "controls: {set_back: none, left_open: [r1]}\n"
            "water_treatment: {cleaning: flushed, next_test: 2027-10-02}\n"
            "refrigerant: {name: R290, charge: 1.3 kg}\n"
            "residual_risks: [{risk: steep stairs, where: landing, controlled_by: fitter}]\n"
            "duty_holders: {electrician: A. Watts}\n",
        "job.yaml");
    REQUIRE(read.job);
    const auto& handover = read.job->handover;
    REQUIRE(handover.brief);
    CHECK(handover.brief->agreed_with == "M. Whitlock");
    CHECK(*handover.brief->agreed_on == date::year{2026} / 10 / 2);
    CHECK(handover.brief->decisions == std::vector<std::string>{"no bath"});
    REQUIRE(handover.controls);
    CHECK(handover.controls->left_open == std::vector<std::string>{"r1"});
    REQUIRE(handover.treatment);
    CHECK_FALSE(handover.treatment->cleaned_on);
    CHECK(*handover.treatment->next_test == date::year{2027} / 10 / 2);
    REQUIRE(handover.refrigerant);
    CHECK(handover.refrigerant->charge == "1.3 kg");
    REQUIRE(handover.risks.size() == 1);
    CHECK(handover.risks.front().controlled_by == "fitter");
    CHECK(handover.duties->electrician == "A. Watts");
    CHECK_FALSE(job::read_job(sample_job, "job.yaml").job->handover.brief);
}

TEST_CASE("valves that stay open are those of emitters of the house") {
    CHECK(told("controls: {left_open: [r1, r9]}\n").find("controls.left_open: names `r9`, which is no emitter") !=
          std::string::npos);
    CHECK(told("controls: {thermostatic: [r1, r1]}\n").find("names `r1` twice\n    hint: keep one of the two") !=
          std::string::npos);
    CHECK(told("controls: {left_open: [r1], thermostatic: [r1]}\n").empty());
}

TEST_CASE("a brief needs the person who agreed, a refrigerant its name, a danger its place and its keeper") {
    CHECK(told("brief: {occupancy: two}\n").find("brief.agreed_with: is missing") != std::string::npos);
    CHECK(told("refrigerant: {charge: 1 kg}\n").find("refrigerant.name: is missing") != std::string::npos);
    const auto risk = told("residual_risks: [{risk: steep stairs}]\n");
    CHECK(risk.find("`where`") != std::string::npos);
    CHECK(risk.find("`controlled_by`") != std::string::npos);
    CHECK(told("brief: {agreed_with: M, agreed_on: 2026-13-01}\n").find("is not a day of the calendar") !=
          std::string::npos);
}
