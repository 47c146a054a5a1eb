// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"

#include "loopfolio/job/names.hpp"
#include "loopfolio/reference/source.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

using Change = std::function<void(job::Job&)>;

job::Job plain_job() {
    job::Job job = sample_job();
    job.heat_source.reset();
    job.circulator.reset();
    job.conditions.flow = measured(Temperature::from_celsius(75.0));
    job.conditions.drop = measured(10.0 * unit::kelvin);
    for (auto& section : job.sections) section.pipe = "copper_28";
    for (auto& room : job.rooms) {
        if (room.fabric) room.fabric->era = reference::Era::from_2012;
    }
    return job;
}

std::set<std::string> titles(const job::Job& job, std::size_t part) {
    std::set<std::string> out;
    for (const auto& caution : all_of<report::Caution>(composed(studied(job)).parts[part])) out.insert(caution.title);
    return out;
}

}  // namespace

TEST_CASE("cautions follow from what the job holds") {
    struct Case {
        const char* title;
        const char* law;  ///< which the installer's caution must name
        Change change;
    };
    const auto with_source = [](auto set) {
        return [set](job::Job& job) {
            job.heat_source = job::HeatSource{};
            job.heat_source->at = "plant";
            set(*job.heat_source);
        };
    };
    const auto replacing = [&](job::Replaced what) {
        return with_source([what](auto& source) { source.replaces = what; });
    };
    const auto with_era = [](reference::Era era) { return [era](job::Job& job) { job.rooms[0].fabric->era = era; }; };
    const Case cases[] = {
        {"Gas", "Gas Safety (Installation and Use) Regulations 1998",
         with_source([](auto& source) { source.replaces_gas_appliance = true; })},
        {"Gas", "Test for tightness", replacing(job::Replaced::gas)},
        {"Gas", "temporary bond", replacing(job::Replaced::not_known)},
        {"The old heat source", "Identify the fuel", replacing(job::Replaced::not_known)},
        {"Bottled or tank gas (LPG)", "heavier than air", replacing(job::Replaced::lpg)},
        {"Heating oil", "Shut the fire valve", replacing(job::Replaced::oil)},
        {"Solid fuel", "back boiler", replacing(job::Replaced::solid_fuel)},
        {"Refrigerant that can burn", "exclusion zone",
         with_source([](auto& source) { source.flammable_refrigerant = true; })},
        {"Refrigerant", "A1, A2L, A3", with_source([](auto&) {})},
        {"The outdoor unit", "Anti-freeze valves", with_source([](auto&) {})},
        {"Electricity", "Electricity at Work Regulations 1989", with_source([](auto&) {})},
        {"Asbestos", "Control of Asbestos Regulations 2012", [](auto& job) { job.old_lagging = true; }},
        {"Asbestos", "Presume asbestos", with_era(reference::Era::before_1900)},
        {"Asbestos", "Presume asbestos", with_era(reference::Era::from_1996)},
        {"Asbestos", "unknown age",
         [](auto& job) {
             job.rooms[0].fabric.reset();
             job.rooms[0].heat_loss = measured(900.0 * unit::watt);
         }},
        {"Hot water under pressure", "turn off every heat input, leave the water on",
         [](auto& job) { job.unvented_hot_water = true; }},
        {"Hot water cylinder with an open vent", "cold feed", [](auto& job) { job.hot_water_store = true; }},
        {"Germs and scalds from stored hot water", "L8", [](auto& job) { job.hot_water_store = true; }},
        {"Poisonous heating water", "COSHH",
         [](auto& job) {
             job.fluid.kind = job::FluidName::ethylene_glycol;
             job.fluid.concentration = measured(0.2);
         }},
        {"Antifreeze in the heating water", "COSHH",
         [](auto& job) {
             job.fluid.kind = job::FluidName::propylene_glycol;
             job.fluid.concentration = measured(0.2);
         }},
        {"Under floors and in walls", "joists", [](auto& job) { job.sections[0].existing = false; }},
        {"Under floors and in walls", "FFP3", with_source([](auto&) {})},
        {"Lofts, ladders and roofs", "Work at Height Regulations 2005",
         [](auto& job) { job.sections[0].existing = false; }},
        {"Lofts, ladders and roofs", "Avoid work at height", with_source([](auto&) {})},
        {"Flames and hot tools", "one hour", with_source([](auto&) {})},
    };
    const std::set<std::string> always{"Carbon monoxide",    "Pressure tests",      "Filling the system",
                                       "Cleaning chemicals", "Hot and heavy parts", "What comes first"};
    CHECK(titles(plain_job(), household) == always);
    CHECK(titles(plain_job(), installer) == always);
    for (const auto& c : cases) {
        INFO(c.title);
        job::Job job = plain_job();
        c.change(job);
        CHECK(titles(job, household).count(c.title) == 1);
        CHECK(titles(job, installer).count(c.title) == 1);
        for (const auto& caution : all_of<report::Caution>(composed(studied(job)).parts[installer])) {
            if (caution.title == c.title) CHECK(has(caution.text, c.law));
        }
    }
}

TEST_CASE("only the fuel that is replaced has its caution, once it is known") {
    const std::set<std::string> fuels{"Gas", "Bottled or tank gas (LPG)", "Heating oil", "Solid fuel",
                                      "The old heat source"};
    const auto printed = [&](job::Replaced what) {
        auto job = plain_job();
        job.heat_source = job::HeatSource{};
        job.heat_source->at = "plant";
        job.heat_source->replaces = what;
        std::set<std::string> out;
        for (const auto& title : titles(job, household)) {
            if (fuels.contains(title)) out.insert(title);
        }
        return out;
    };
    using Titles = std::set<std::string>;
    CHECK(printed(job::Replaced::gas) == Titles{"Gas"});
    CHECK(printed(job::Replaced::lpg) == Titles{"Bottled or tank gas (LPG)"});
    CHECK(printed(job::Replaced::oil) == Titles{"Heating oil"});
    CHECK(printed(job::Replaced::solid_fuel) == Titles{"Solid fuel"});
    CHECK(printed(job::Replaced::electric).empty());
    CHECK(printed(job::Replaced::nothing).empty());
    CHECK(printed(job::Replaced::not_known) == Titles{"Gas", "The old heat source"});
}

TEST_CASE("a caution that the job rules out is listed for the assessor instead") {
    auto job = sample_job();
    job.fluid.kind = job::FluidName::water;
    job.hot_water_store = true;
    for (const auto& rule : default_look().cautions) {
        const auto standing = job::standing_caution_names();
        if (std::ranges::find(standing, rule.id) != standing.end()) continue;
        INFO(rule.id);
        auto without = job;
        without.cautions_ruled_out = {{rule.id, "S. Marsh, surveyor", {}, "report 1184 found none"}};
        without.cautions_ruled_out[0].date = date::year{2026} / 9 / 2;
        auto expected = titles(job, household);
        // The two cautions on germs share a title and never hold together.
        expected.erase(rule.id == "legionella" ? std::string{} : rule.title);
        CHECK(titles(without, household) == expected);
        CHECK(titles(without, installer) == expected);
        const auto listed = joined(lines_of(composed(studied(without)).parts[assessor], true));
        CHECK(has(listed, rule.title + " | S. Marsh, surveyor | "));
        CHECK(has(listed, "report 1184 found none"));
    }
    CHECK_FALSE(has(joined(lines_of(composed(studied(job)).parts[assessor], true)), "Cautions ruled out"));
}

TEST_CASE("the names that a job may rule out are those of the default's cautions") {
    std::set<std::string_view> names, ids;
    for (const auto name : job::caution_names()) names.insert(name);
    for (const auto name : job::standing_caution_names()) names.insert(name);
    for (const auto& rule : default_look().cautions) ids.insert(rule.id);
    CHECK(names == ids);
}

TEST_CASE("the vessel's pre-charge is set before water goes in, and the filling link comes off after it") {
    auto job = sample_job();
    std::vector<std::string> items;
    for (const auto& list : all_of<report::Checklist>(composed(studied(job)).parts[installer])) {
        for (const auto& item : list.items) items.push_back(item.text);
    }
    const auto place = [&](std::string_view start) {
        const auto found = std::ranges::find_if(items, [&](const auto& item) { return item.starts_with(start); });
        REQUIRE(found != items.end());
        return found - items.begin();
    };
    CHECK(place("New pipe and emitters") < place("Joints pressure tested with water, not air"));
    CHECK(place("Joints pressure tested") < place("Pressure test: time held"));
    CHECK(place("Pressure test: fall") < place("System flushed"));
    CHECK(place("System flushed") < place("Air pre-charge"));
    CHECK(place("Air pre-charge") < place("Cold fill pressure"));
    CHECK(place("Cold fill pressure") < place("Filling link removed"));
    CHECK(place("Filling link removed") < place("Air let out"));
    CHECK(has(items[static_cast<std::size_t>(place("Air pre-charge"))], "with no water pressure on it"));
    CHECK(place("Carbon monoxide alarm") < place("Household shown"));
}

TEST_CASE("what a caution rests on is named to the installer and listed for the assessor") {
    const auto pack = composed(studied(sample_job()));
    const auto sources = joined(lines_of(pack.parts[assessor], true));
    std::size_t based = 0;
    for (const auto& rule : default_look().cautions) {
        for (const auto& caution : all_of<report::Caution>(pack.parts[installer])) {
            if (caution.title != rule.title) continue;
            for (const auto& key : rule.basis) {
                const auto* source = reference::find_source(key);
                const bool habit = source->certainty == reference::Certainty::common_practice;
                CHECK(has(caution.text, habit ? std::string{word(source->certainty)} : std::string{source->title}));
                CHECK(has(sources, std::string{source->title}));
                ++based;
            }
        }
    }
    CHECK(based >= 3);
    for (const auto& rule : default_look().cautions) CHECK((rule.id == "what_comes_first" || !rule.basis.empty()));
}

TEST_CASE("a pack never takes the place of a designer") {
    const auto pack = composed(studied(sample_job()));
    CHECK(has(joined(lines_of(pack.parts[household], false)), "It never takes the place of one"));
    CHECK(has(joined(lines_of(pack.parts[installer], false)), "never replaces one"));
}

TEST_CASE("what is said of germs goes by whether the job states a hot cycle") {
    const auto said = [](const job::Job& job, std::size_t part) {
        std::string out;
        for (const auto& caution : all_of<report::Caution>(composed(studied(job)).parts[part])) {
            if (caution.title == "Germs and scalds from stored hot water") out += caution.text;
        }
        return out;
    };
    auto job = plain_job();
    job.hot_water_store = true;
    CHECK(has(said(job, household), "sets no times"));
    CHECK_FALSE(has(said(job, household), "turn this off"));
    CHECK(has(said(job, installer), "No hot cycle is stated"));
    job.hot_water = job::HotWater{};
    job.hot_water->persons = measured(3.0);
    job.hot_water->store = measured(200.0 * unit::litre);
    job.hot_water->source_flow = measured(Temperature::from_celsius(60.0));
    job.hot_water->immersion = measured(3.0 * unit::kilowatt);
    job.hot_water->hot_cycles_a_year = measured(52.0);
    CHECK(has(said(job, household), "Do not turn this off"));
    CHECK_FALSE(has(said(job, household), "sets no times"));
    CHECK(has(said(job, installer), "hot cycle on the sheet"));
}
