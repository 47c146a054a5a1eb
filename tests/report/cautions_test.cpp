// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"

#include "loopfolio/reference/source.hpp"

#include <functional>
#include <set>

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
    const Case cases[] = {
        {"Gas", "Gas Safety (Installation and Use) Regulations 1998",
         with_source([](auto& source) { source.replaces_gas_appliance = true; })},
        {"Refrigerant that can burn", "exclusion zone",
         with_source([](auto& source) { source.flammable_refrigerant = true; })},
        {"Electricity", "BS 7671", with_source([](auto&) {})},
        {"Old lagging may hold asbestos", "Control of Asbestos Regulations 2012",
         [](auto& job) { job.old_lagging = true; }},
        {"Hot water under pressure", "G3", [](auto& job) { job.unvented_hot_water = true; }},
        {"Germs in stored hot water", "L8", [](auto& job) { job.hot_water_store = true; }},
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
        {"Lofts, ladders and roofs", "Work at Height Regulations 2005",
         [](auto& job) { job.sections[0].existing = false; }},
    };
    const std::set<std::string> always{"Hot and heavy parts", "What comes first"};
    CHECK(titles(plain_job(), household) == always);
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
            if (caution.title == "Germs in stored hot water") out += caution.text;
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
