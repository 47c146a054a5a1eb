// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/reference/source.hpp"
#include "support/catch.hpp"
#include "support/small_job.hpp"
#include "texts/steps_of_heat_loss.hpp"
#include "texts/steps_of_pipes.hpp"

#include <algorithm>
#include <set>

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
        return std::any_of(section->steps.begin(), section->steps.end(), [&](const design::Step& s) {
            const auto* written = s.result.as_it_stands();
            return written != nullptr && *written == result;
        });
    };
    CHECK(has(text(d.sections[0].hydraulic.velocity, unit::metre_per_second, 3)));
    CHECK(has(text(d.sections[0].pressure_drop, unit::kilopascal, 3)));
    for (const auto& derivation : trace.derivations()) {
        for (const auto& step : derivation.steps) {
            INFO(derivation.id << ": " << step.what.key << " stands on '" << step.source << "'");
            CHECK((step.source.empty() || reference::find_source(step.source) != nullptr));
        }
    }
}

TEST_CASE("a step keeps the key of its name, and the figures of its formula in order") {
    auto job = one_section_job("copper_22", 5000.0);
    job.sections[0].fittings = {{"elbow", 3, 0.0, {}}};
    design::Trace trace;
    const auto d = designed(job, &trace);
    const auto* section = trace.find(design::Subject::section, "S");
    REQUIRE(section);
    std::set<std::string_view> keys;
    for (const auto& step : section->steps) {
        CHECK_FALSE(step.what.says_nothing());
        CHECK(keys.insert(step.what.key).second);
    }
    const auto found = std::find_if(section->steps.begin(), section->steps.end(), [](const design::Step& s) {
        return s.what.id == texts::steps_of_pipes::mass_flow::id;
    });
    REQUIRE(found != section->steps.end());
    CHECK(found->what.key == "mass_flow");
    CHECK(found->formula.id == texts::steps_of_pipes::mass_flow_formula::id);
    REQUIRE(found->formula.figures.size() == 3);
    REQUIRE(found->formula.figures[0].as_it_stands());
    CHECK(*found->formula.figures[0].as_it_stands() == fixed(d.sections[0].load.si(), 0));
    REQUIRE(found->formula.figures[2].as_it_stands());
    CHECK(*found->formula.figures[2].as_it_stands() == fixed(d.drop.si(), 1));
}

TEST_CASE("an element that the job does not name has one key with those that it names") {
    auto job = one_section_job("copper_22", 5000.0);
    job.rooms[0].heat_loss.reset();
    job.rooms[0].elements.resize(2);
    for (auto& element : job.rooms[0].elements) {
        element.kind = job::ElementKind::wall;
        element.area = measured(10.0 * unit::square_metre);
        element.u_value = measured(UValue::from_si(1.0));
    }
    job.rooms[0].elements[0].name = "north wall";
    design::Trace trace;
    designed(job, &trace);
    const auto* room = trace.find(design::Subject::room, job.rooms[0].id);
    REQUIRE(room);
    std::vector<const design::Step*> elements;
    for (const auto& step : room->steps) {
        if (step.what.key == "element") elements.push_back(&step);
    }
    REQUIRE(elements.size() == 2);
    REQUIRE(elements[0]->what.figures.at(0).as_it_stands());
    CHECK(*elements[0]->what.figures.at(0).as_it_stands() == "north wall");
    const auto* unnamed = elements[1]->what.figures.at(0).text();
    REQUIRE(unnamed);
    CHECK(unnamed->key == texts::steps_of_heat_loss::element_unnamed::key);
    CHECK(*unnamed->figures.at(0).as_it_stands() == "2");
}

TEST_CASE("a trace changes no figure") {
    design::Trace trace;
    const auto job = one_section_job("copper_22", 5000.0);
    CHECK(designed(job).duty.head.si() == designed(job, &trace).duty.head.si());
}
