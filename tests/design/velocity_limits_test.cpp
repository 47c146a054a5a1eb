// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/source.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/inputs.hpp"
#include "support/small_job.hpp"
#include "support/verification.hpp"

#include <algorithm>

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("above 1.0 m/s a copper or steel pipe of 12 to 54 mm is at least noted, above 1.5 m/s any pipe changes") {
    // CIBSE Guide B, 1986, table B1.13 gives 1.0 m/s to 50 mm; no document in hand forbids 1.5 m/s for good.
    for (const auto& pipe : reference::pipes()) {
        INFO(pipe.name);
        const auto& guide = reference::velocity_guide(pipe);
        CHECK(guide.preferred.value <= 1.0 * unit::metre_per_second);
        CHECK(guide.limit.value == 1.5 * unit::metre_per_second);
        CHECK(guide.preferred.low <= guide.preferred.value);
        CHECK(guide.preferred.value <= guide.preferred.high);
        CHECK(guide.limit.low <= 1.0 * unit::metre_per_second);
        CHECK(reference::find_source(guide.preferred.source) != nullptr);
        CHECK(reference::find_source(guide.limit.source) != nullptr);
    }
    CHECK(reference::velocity_guide(*reference::find_pipe("copper_10")).name == "microbore_copper");
    CHECK(reference::velocity_guide(*reference::find_pipe("copper_12")).name == "copper_and_steel");
    CHECK(reference::velocity_guide(*reference::find_pipe("steel_dn15")).name == "copper_and_steel");
    CHECK(reference::velocity_guide(*reference::find_pipe("pex_15")).name == "plastic_and_multilayer");
    for (const auto& said : reference::published_velocities()) CHECK(reference::find_source(said.source) != nullptr);
}

TEST_CASE("a section takes its own limits, else the house's, else those of its pipe") {
    auto job = one_section_job("copper_10", 500.0);
    CHECK(design::resolve(job).values.sections[0].velocity_preferred.value == 1.0 * unit::metre_per_second);
    job.conditions.velocity_preferred = measured(unit::metre_per_second(0.7));
    CHECK(design::resolve(job).values.sections[0].velocity_preferred.value == 0.7 * unit::metre_per_second);
    job.sections[0].velocity_preferred = measured(unit::metre_per_second(0.6));
    auto house = design::resolve(job);
    CHECK(house.values.sections[0].velocity_preferred.value == 0.6 * unit::metre_per_second);
    // A pipe in its place keeps what the job states, and takes the rest from its own size.
    const auto& wider = *reference::find_pipe("copper_22");
    design::replace_pipe(house.values, 0, wider);
    CHECK(house.values.sections[0].velocity_preferred.value == 0.6 * unit::metre_per_second);
    auto guided = design::resolve(one_section_job("copper_10", 500.0));
    design::replace_pipe(guided.values, 0, wider);
    CHECK(guided.values.sections[0].velocity_preferred.value == 0.9 * unit::metre_per_second);
}

TEST_CASE("a pump that the job does not describe is judged by what circulators of houses give") {
    const auto csv = read_csv("usual_pump_heads.csv");
    Verification heads{{"head of usual circulators", "published curves, put together; tests/data/usual_pump_heads.csv",
                        Certainty::practice, "m"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto head = reference::usual_pump_head(unit::litre_per_minute(csv.number(i, "flow_l_per_min")));
        REQUIRE(head);
        heads.check(csv.number(i, "low_m"), head->low_m, 0.005);
        heads.check(csv.number(i, "high_m"), head->high_m, 0.005);
    }
    CHECK_FALSE(reference::usual_pump_head(unit::litre_per_minute(50.1)));
    CHECK_FALSE(reference::usual_pump_head(unit::litre_per_minute(-0.1)));
    const auto between = reference::usual_pump_head(unit::litre_per_minute(15.0));
    REQUIRE(between);
    CHECK(between->low_m == Approx(4.5));

    const auto verdict = [](const design::Design& d) {
        REQUIRE(d.duty.usual_circulator);
        return d.verdict_of(d.duty.usual_circulator);
    };
    CHECK(verdict(designed(one_section_job("copper_22", 3000.0))) == Verdict::keep);
    const auto steep = designed(one_section_job("copper_10", 3000.0));
    CHECK(verdict(steep) == Verdict::change);
    CHECK(steep.verdict == Verdict::change);
    auto large = designed(one_section_job("copper_35", 20'000.0));
    CHECK_FALSE(large.duty.usual_circulator);
    CHECK(std::ranges::any_of(large.flags, [](const auto& f) { return f.caveat == design::Caveat::flow_far_off; }));
}
