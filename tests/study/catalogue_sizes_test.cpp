// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/catalogue_sizes.hpp"

#include "support/catch.hpp"
#include "support/small_job.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

job::EmitterSize size(std::string model, double watts, double length, double height) {
    return {std::move(model),         "", "panel_22", unit::watt(watts), 1.3, unit::millimetre(length),
            unit::millimetre(height), {}};
}

/// A room of 1000 W at 20 °C with flow and return of 50/40 °C, and an emitter of 1 m by 0.6 m that is too small.
job::Job small_house() {
    auto job = bare_job(50.0, 10.0);
    job.rooms.push_back(stated_room("room", 1000.0, 20.0));
    job.emitters.push_back(panel("E", "room", "A", 1200.0, 1.3));
    job.emitters[0].length = measured(unit::millimetre(1000.0));
    job.emitters[0].height = measured(unit::millimetre(600.0));
    job.sections.push_back(section("S", "HS", "A", "copper_22", 10.0));
    return job;
}

std::vector<study::SizeChoice> choices(const job::Job& job) {
    return study::sizes_that_serve(design::resolve(job).values, designed(job));
}

}  // namespace

// EN 442: log mean excess of 50/40/20 is 10 / ln(30/20) = 24.663 K against 49.833 K for the rating, so that an exponent
// of 1.3 leaves (24.663/49.833)^1.3 = 0.4008 of the rating; by hand. 1000 W then ask for 2495 W.
TEST_CASE("sizes serve where their rating, turned to the water that is there, meets the load") {
    auto job = small_house();
    job.sizes = {size("too small", 2490, 900, 500), size("just", 2500, 1400, 600), size("fits", 2800, 1000, 600),
                 size("wide", 2600, 1200, 600),     size("huge", 6000, 2000, 700), size("high", 2550, 900, 700)};
    const auto found = choices(job);
    REQUIRE(found.size() == 1);
    REQUIRE(found[0].offers.size() == study::most_offers);
    const auto model = [&](std::size_t i) {
        return job.sizes[static_cast<std::size_t>(found[0].offers[i].size)].model;
    };
    CHECK(model(0) == "fits");
    CHECK(model(1) == "just");
    CHECK(model(2) == "high");
    CHECK(model(3) == "wide");
    CHECK(found[0].offers[0].fits == std::optional{true});
    CHECK(found[0].offers[1].fits == std::optional{false});
    CHECK(found[0].offers[1].output.in(unit::watt) == Approx(0.4008 * 2500).epsilon(2e-4));
    CHECK_FALSE(found[0].largest);
}

TEST_CASE("what is no panel is offered its own kind, where the catalogue has that") {
    for (const std::string kind : {"towel_rail", "skirting", "fan_convector", "fan_radiator", "column"}) {
        INFO(kind);
        auto job = small_house();
        job.emitters[0].kind = kind;
        job.sizes = {size("panel", 2800, 1000, 600), size("own", 3000, 1000, 600),
                     size("own, too small", 900, 1000, 600)};
        job.sizes[1].kind = job.sizes[2].kind = kind;
        const auto found = choices(job);
        REQUIRE(found.size() == 1);
        REQUIRE(found[0].offers.size() == 1);
        CHECK(found[0].offers[0].size == 1);
        job.sizes.erase(job.sizes.begin() + 1);
        const auto none = choices(job);
        CHECK(none[0].offers.empty());
        REQUIRE(none[0].largest);
        CHECK(none[0].largest->size == 1);
        job.sizes.pop_back();
        CHECK(choices(job)[0].offers.size() == 1);  // a panel, rather than nothing
    }
    auto job = small_house();
    job.sizes = {size("panel", 2800, 1000, 600), size("column", 2900, 1000, 600)};
    job.sizes[1].kind = "column";
    CHECK(choices(job)[0].offers.size() == 2);
}

TEST_CASE("a catalogue whose largest is too small says so, and a measure that is not known stays open") {
    auto job = small_house();
    job.sizes = {size("a", 2000, 900, 500), size("b", 2400, 900, 600)};
    job.sizes[1].length.reset();
    const auto found = choices(job);
    REQUIRE(found.size() == 1);
    CHECK(found[0].offers.empty());
    REQUIRE(found[0].largest);
    CHECK(found[0].largest->size == 1);
    CHECK_FALSE(found[0].largest->fits);
}

TEST_CASE("without a catalogue, or with an emitter that does, there is nothing to choose") {
    CHECK(choices(small_house()).empty());
    auto job = small_house();
    job.emitters[0].output_at_50k = measured(unit::watt(3000.0));
    job.sizes = {size("a", 4000, 900, 500)};
    CHECK(choices(job).empty());
}
