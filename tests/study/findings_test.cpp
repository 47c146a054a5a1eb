// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "support/catch.hpp"
#include "support/jobs_of_every_check.hpp"
#include "support/small_job.hpp"
#include "support/studied.hpp"

#include <algorithm>
#include <map>

using namespace loopfolio;
using namespace loopfolio::tests;
using design::Check;

namespace {

/// A pressure drop per metre is a preference, and a small cylinder is heated more than once: neither is ever to change.
Verdict worst_possible(Check check) {
    return check == Check::section_gradient || check == Check::store_volume ? Verdict::keep_noted : Verdict::change;
}

}  // namespace

TEST_CASE("every check is made, with figures of its dimension and the worst verdict that it can have") {
    std::map<Check, Verdict> worst;
    for (const auto& job : jobs_of_every_check()) {
        const auto s = studied(job);
        for (const auto& f : s.findings) {
            const auto row = design::row_of(f.check);
            INFO(row.name);
            CHECK_NOTHROW(row.shown.value(f.figure));
            CHECK_NOTHROW(row.shown.value(f.limit));
            const auto [at, added] = worst.try_emplace(f.check, f.verdict);
            if (!added) at->second = worse(at->second, f.verdict);
        }
    }
    int checks = 0;
    for (; !design::row_of(static_cast<Check>(checks)).name.empty(); ++checks) {
        const auto check = static_cast<Check>(checks);
        INFO(design::row_of(check).name);
        REQUIRE(worst.contains(check));
        CHECK(worst.at(check) == worst_possible(check));
    }
    CHECK(static_cast<std::size_t>(checks) == worst.size());
}

TEST_CASE("one finding to change makes the whole house one to change") {
    // Nothing else in this flat is past a limit.
    const auto s = studied(with_maximum_drop(3.0));
    for (const auto& f : s.findings) CHECK((f.verdict != Verdict::change || f.check == Check::source_maximum_drop));
    CHECK(s.verdict == Verdict::change);
    const auto& drop = s.design.at(s.design.duty.source_maximum_drop);
    CHECK(design::figure_as<TemperatureDifference>(drop).si() == Approx(6.0));
    CHECK(design::limit_as<TemperatureDifference>(drop).si() == Approx(3.0));
    CHECK(studied(manifold_flat()).verdict != Verdict::change);
    // The same of every check that can change anything.
    for (const auto& job : jobs_of_every_check()) {
        const auto study = studied(job);
        for (const auto& f : study.findings) CHECK((f.verdict != Verdict::change || study.verdict == Verdict::change));
    }
}

TEST_CASE("a range that makes the circulator too weak is an effect in the register") {
    // A longer pipe carries the same water at the same speed: it asks more of the pump and changes nothing else.
    auto job = one_section_job("copper_22", 2000.0);
    job.sections[0].length = assumed(10.0 * unit::metre, 10.0 * unit::metre, 200.0 * unit::metre);
    const Pressure head = 2.0 * designed(job).duty.head;
    job.circulator.emplace();
    job.circulator->curve = {{0.0 * unit::litre_per_minute, head}, {100.0 * unit::litre_per_minute, 0.99 * head}};
    const auto s = studied(job);
    REQUIRE(s.design.duty.circulator);
    CHECK(s.design.verdict_of(s.design.duty.circulator) == Verdict::keep);
    const auto line = std::ranges::find(s.inputs, "section length", &study::Assumption::what);
    REQUIRE(line != s.inputs.end());
    REQUIRE(line->at_low);
    REQUIRE(line->at_high);
    CHECK(line->at_low->verdicts_changed == 0);
    CHECK(line->at_high->verdicts_changed == 1);
}
