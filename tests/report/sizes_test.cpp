// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/catalogue_sizes.hpp"
#include "report/pack_text.hpp"
#include "support/catch.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

const report::Table* sizes_in(const report::Report& pack) {
    for (const auto& block : pack.parts[installer].blocks) {
        const auto* table = std::get_if<report::Table>(&block);
        if (table != nullptr && table->caption == "Sizes of the catalogue that would serve") return table;
    }
    return nullptr;
}

job::EmitterSize size(std::string model, double watts) {
    return {std::move(model),  "double **panel**", "panel_22", watts * unit::watt, {},
            1.2 * unit::metre, 0.6 * unit::metre,  {}};
}

}  // namespace

TEST_CASE("the work list is followed by what the catalogue has for each emitter that is too small") {
    auto job = sample_job();
    REQUIRE(sizes_in(composed(studied(job))) == nullptr);
    job.sizes = {size("small", 100.0), size("large", 9000.0)};
    const auto sample = studied(job);
    const auto& choices = sample.sizes;
    REQUIRE_FALSE(choices.empty());
    const auto pack = composed(sample);
    const auto* table = sizes_in(pack);
    REQUIRE(table != nullptr);
    REQUIRE(table->rows.size() == choices.size());
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const auto& e = sample.house.values.emitters[static_cast<std::size_t>(choices[i].emitter)];
        const auto& r = sample.design.emitters[static_cast<std::size_t>(choices[i].emitter)];
        const auto watts = [](Power power) {  // without the unit, which is in the column's head
            const std::string said = text(power, unit::watt, 0);
            return said.substr(0, said.find("\u00a0"));
        };
        CHECK(text_of(table->rows[i]) == e.id + " | " + watts(r.load) +
                                             " | large, double 'panel' | 1,200 × 600 | 9,000 | " +
                                             watts(choices[i].offers.at(0).output) + " | to be measured");
    }
    job.sizes = {size("small", 100.0)};
    const auto none = composed(studied(job));
    CHECK(text_of(sizes_in(none)->rows.at(0)).ends_with("the largest, and too small"));
}

TEST_CASE("the pack names each file that it was made from, with its digest") {
    auto s = studied(sample_job());
    s.origin.files = {{"here/e.csv", std::string(64, 'a')}};
    const auto pack = composed(s);
    bool told = false;
    for (const auto& facts : all_of<report::Facts>(pack.parts[assessor])) {
        for (const auto& f : facts.facts)
            told = told || (f.term == "SHA-256 of here/e.csv" && f.text == std::string(64, 'a'));
    }
    CHECK(told);
}
