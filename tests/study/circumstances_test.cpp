// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/circumstances.hpp"
#include "support/catch.hpp"
#include "support/small_job.hpp"

#include <functional>
#include <set>
#include <string>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

using Names = std::set<std::string>;

/// The circumstances that hold for a house with one room, besides that which always does.
Names of(const std::function<void(job::Job&)>& change) {
    auto job = one_section_job("copper_22", 1000.0);
    job.rooms[0].fabric.emplace();
    job.rooms[0].fabric->era = reference::Era::from_2003;
    job.heat_source.reset();
    for (auto& e : job.emitters) e.existing = true;
    for (auto& s : job.sections) s.existing = true;
    auto house = design::resolve(one_section_job("copper_22", 1000.0));
    const auto d = std::get<design::Design>(design::design(house));
    change(job);
    const auto c = study::circumstances_of(job, d);
    Names out;
    for (const auto& [name, holds] : study::circumstance_names) {
        if (c.*holds) out.insert(std::string{name});
    }
    CHECK(out.erase("always") == 1);
    return out;
}

/// What a new heat source brings with it, and which appliance it replaces.
Names source(job::Replaced replaced, bool gas_stated = false) {
    return of([&](job::Job& job) {
        job.heat_source.emplace();
        job.heat_source->replaces = replaced;
        job.heat_source->replaces_gas_appliance = gas_stated;
    });
}

Names with_source(Names more) {
    more.insert({"new_heat_source", "electrical_work", "fabric_opened", "no_hot_cycle"});
    return more;
}

}  // namespace

TEST_CASE("a house without a heat source, of a known late age, calls for nothing special") {
    CHECK(of([](job::Job&) {}) == Names{"no_hot_cycle"});
}

TEST_CASE("each fuel that is replaced has its own caution, and one that is not known counts as gas") {
    using enum job::Replaced;
    CHECK(source(gas) == with_source({"gas_appliance_replaced"}));
    CHECK(source(lpg) == with_source({"lpg_appliance_replaced"}));
    CHECK(source(oil) == with_source({"oil_appliance_replaced"}));
    CHECK(source(solid_fuel) == with_source({"solid_fuel_appliance_replaced"}));
    CHECK(source(not_known) == with_source({"appliance_unknown", "gas_appliance_replaced"}));
    CHECK(source(not_known, true) == with_source({"gas_appliance_replaced"}));
}

TEST_CASE("what stands in the job calls for its own caution and for no other") {
    const auto changed = [](auto&& change) {
        auto names = of(change);
        names.erase("no_hot_cycle");
        return names;
    };
    CHECK(changed([](job::Job& job) { job.old_lagging = true; }) == Names{"old_lagging", "asbestos_possible"});
    CHECK(changed([](job::Job& job) { job.rooms[0].fabric->era = reference::Era{}; }) == Names{"asbestos_possible"});
    CHECK(changed([](job::Job& job) { job.rooms[0].fabric.reset(); }) == Names{"asbestos_possible"});
    CHECK(changed([](job::Job& job) {
              job.rooms[0].fabric.reset();
              job.rooms[0].heated = false;
          }) == Names{});
    CHECK(changed([](job::Job& job) { job.fluid.kind = job::FluidName::ethylene_glycol; }) == Names{"ethylene_glycol"});
    CHECK(changed([](job::Job& job) { job.fluid.kind = job::FluidName::propylene_glycol; }) ==
          Names{"propylene_glycol"});
    CHECK(changed([](job::Job& job) { job.circulator.emplace(); }) == Names{"electrical_work"});
    CHECK(changed([](job::Job& job) { job.hot_water_store = true; }) == Names{"hot_water_store", "vented_store"});
    CHECK(changed([](job::Job& job) { job.unvented_hot_water = true; }) == Names{"hot_water_store", "unvented_store"});
    CHECK(changed([](job::Job& job) { job.sections[0].existing = false; }) == Names{"fabric_opened"});
    CHECK(changed([](job::Job& job) { job.emitters[0].existing = false; }) == Names{"fabric_opened"});
}

TEST_CASE("a hot cycle that is stated takes the place of none") {
    const auto cycles = [](double a_year) {
        return of([&](job::Job& job) {
            job.hot_water.emplace();
            job.hot_water->hot_cycles_a_year = measured(a_year);
        });
    };
    CHECK(cycles(52.0) == Names{"hot_cycle"});
    CHECK(cycles(0.0) == Names{"no_hot_cycle"});
}
