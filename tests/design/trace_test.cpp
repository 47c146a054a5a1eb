// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/design/assumptions.hpp"
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

TEST_CASE("everything neither measured nor documented is in the register") {
    auto job = one_section_job("copper_22", 5000.0);
    job.rooms[0].heat_loss.reset();
    job.rooms[0].fabric.emplace();
    job.rooms[0].fabric->outside_walls = 2;
    const auto filled = design::fill_defaults(job);
    const auto d = designed(job);
    const auto lines = design::inputs_register_with_effects(filled, d);
    const auto line = [&](const std::string& what) {
        const auto at = std::find_if(lines.begin(), lines.end(), [&](const auto& l) { return l.what == what; });
        REQUIRE(at != lines.end());
        return *at;
    };
    for (const auto* what : {"preferred velocity", "velocity limit", "air changes per hour", "U-value, wall", "bore", "roughness"}) {
        CHECK(design::needs_care(line(what)));
        CHECK(line(what).basis == Basis::default_value);
        CHECK(reference::find_source(line(what).source) != nullptr);
    }
    CHECK_FALSE(design::needs_care(line("section length")));
    const auto air = line("air changes per hour");
    REQUIRE(air.at_low);
    REQUIRE(air.at_high);
    CHECK(air.at_low->source_load_change.si() <= 0.0);
    CHECK(air.at_high->source_load_change.si() >= 0.0);
}

TEST_CASE("equal assumptions of several rooms stand in one line") {
    auto job = one_section_job("copper_22", 5000.0);
    job.rooms.push_back(stated_room("other", 500.0));
    job.emitters.push_back(panel("F", "other", "A", 2000.0));
    const auto lines = design::inputs_register(design::fill_defaults(job));
    const auto count = std::count_if(lines.begin(), lines.end(), [](const auto& l) { return l.what == "floor area"; });
    CHECK(count == 1);
}
