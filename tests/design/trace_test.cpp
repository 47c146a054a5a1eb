// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/reference/source.hpp"
#include "support/catch.hpp"
#include "support/small_job.hpp"

#include <algorithm>

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("a derivation ends in the figures of the design, and its sources exist") {
    auto job = one_section_job("copper_22", 5000.0);
    job.sections[0].fittings = {{"elbow", 3, 0.0, {}}};
    design::Trace trace;
    const auto d = designed(job, &trace);
    const auto* section = trace.find(design::Subject::section, "S");
    REQUIRE(section);
    const auto has = [&](const std::string& result) {
        return std::any_of(section->steps.begin(), section->steps.end(),
                           [&](const design::Step& s) { return s.result == result; });
    };
    CHECK(has(text(d.sections[0].hydraulic.velocity, unit::metre_per_second, 3)));
    CHECK(has(text(d.sections[0].pressure_drop, unit::kilopascal, 3)));
    for (const auto& derivation : trace.derivations()) {
        for (const auto& step : derivation.steps) {
            INFO(derivation.id << ": " << step.what << " stands on '" << step.source << "'");
            CHECK((step.source.empty() || reference::find_source(step.source) != nullptr));
        }
    }
}

TEST_CASE("a trace changes no figure") {
    design::Trace trace;
    const auto job = one_section_job("copper_22", 5000.0);
    CHECK(designed(job).duty.head.si() == designed(job, &trace).duty.head.si());
}
