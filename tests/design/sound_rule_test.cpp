// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/design/sound.hpp"
#include "support/catch.hpp"
#include "support/inputs.hpp"

#include <cmath>
#include <numbers>
#include <optional>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

date::year_month_day on(int y, unsigned m, unsigned d) { return date::year{y} / date::month{m} / date::day{d}; }

job::Job unit_of(double power_level, double metres, reference::Nation nation, date::year_month_day day) {
    job::Job job;
    job.property.nation = nation;
    job.identity.design_date = day;
    job.sound.emplace();
    job.sound->power_level = measured(power_level);
    job.sound->distance = measured(metres * unit::metre);
    job.sound->standing = job::SoundPlace::on_ground;
    return job;
}

/// Lp = Lw + 10 lg(Q / (4 pi r2)), by hand.
double level(double power_level, double directivity, double metres) {
    return power_level + 10.0 * std::log10(directivity / (4.0 * std::numbers::pi * metres * metres));
}

struct Judged {
    design::SoundPlan plan;
    design::Findings findings;
};
Judged judged_of(const job::Job& job) {
    Judged out;
    out.plan = *design::plan_sound(job, out.findings);
    return out;
}

}  // namespace

// MCS 020 a) issue 1.1 and SI 2025/560, read on pages that quote them: the unit alone, rounded to 0.1, at most 37.0
// dB(A).
TEST_CASE("in England since 29 May 2025 the unit alone is held against 37.0") {
    const auto job = unit_of(60.0, 5.0, reference::Nation::england, on(2026, 10, 14));
    const auto j = judged_of(job);
    REQUIRE(j.plan.rule);
    CHECK(j.plan.rule->edition->key == "mcs-020-a");
    CHECK(j.plan.rule->limit == 37.0);
    CHECK_FALSE(j.plan.rule->background);
    const double alone = level(60.0, 2.0, 5.0);
    CHECK(j.plan.rule->figure == Approx(std::round(10.0 * alone) / 10.0));
    REQUIRE(j.plan.by_rule);
    CHECK(j.findings.at(0).verdict == Verdict::change);
    // The distance at which the unit alone has 37 dB(A).
    REQUIRE(j.plan.far_enough);
    CHECK(level(60.0, 2.0, j.plan.far_enough->in(unit::metre)) == Approx(37.0));
}

TEST_CASE("the rounded level is held against the limit, as the rule says") {
    // Power levels that give 37.04 and 37.06 dB(A) at 5 m.
    const double to_level = level(0.0, 2.0, 5.0);
    for (const auto& [wanted, verdict] : {std::pair{37.04, Verdict::keep}, {37.06, Verdict::change}}) {
        const auto job = unit_of(wanted - to_level, 5.0, reference::Nation::england, on(2026, 10, 14));
        CHECK(judged_of(job).findings.at(0).verdict == verdict);
    }
}

// From memory: 42 dB(A) with an assumed background of 40, so that the unit may have 37.6.
TEST_CASE("in Scotland the unit is judged with the background that the rule counts") {
    const double to_level = level(0.0, 2.0, 5.0);
    for (const auto& [wanted, verdict] : {std::pair{37.6, Verdict::keep}, {38.0, Verdict::change}}) {
        const auto job = unit_of(wanted - to_level, 5.0, reference::Nation::scotland, on(2026, 10, 14));
        const auto j = judged_of(job);
        REQUIRE(j.plan.rule);
        CHECK(j.plan.rule->background == 40.0);
        CHECK(j.plan.rule->limit == 42.0);
        CHECK(j.findings.at(0).verdict == verdict);
        const double both = 10.0 * std::log10(std::pow(10.0, 4.0) + std::pow(10.0, wanted / 10.0));
        CHECK(std::abs(j.plan.rule->figure - both) <= 0.05 + 1e-9);
    }
}

TEST_CASE("the day of the design decides which rule it is, and a nation without one is not judged") {
    const auto key = [](reference::Nation nation, date::year_month_day day) {
        const auto rule = design::sound_rule(unit_of(60.0, 5.0, nation, day));
        return rule ? std::string{rule->edition->key} : std::string{};
    };
    CHECK(key(reference::Nation::england, on(2025, 5, 28)) == "mcs-020");
    CHECK(key(reference::Nation::england, on(2025, 5, 29)) == "mcs-020-a");
    CHECK(key(reference::Nation::wales, on(2026, 5, 31)) == "mcs-020");
    CHECK(key(reference::Nation::wales, on(2026, 6, 1)) == "mcs-020-a");
    CHECK(key(reference::Nation::not_stated, on(2026, 10, 14)).empty());
    const auto j = judged_of(unit_of(60.0, 5.0, reference::Nation::elsewhere, on(2026, 10, 14)));
    CHECK_FALSE(j.plan.rule);
    CHECK(j.findings.empty());
    CHECK_FALSE(j.plan.far_enough);
}

TEST_CASE("a limit of the job's own is judged beside the rule") {
    auto job = unit_of(60.0, 5.0, reference::Nation::england, on(2026, 10, 14));
    job.sound->limit = measured(45.0);
    job.sound->background = measured(30.0);
    const auto j = judged_of(job);
    REQUIRE(j.findings.size() == 2);
    CHECK(j.findings[0].verdict == Verdict::change);
    CHECK(j.findings[1].verdict == Verdict::keep);
    CHECK(j.plan.far_enough->in(unit::metre) > 5.0);
}
