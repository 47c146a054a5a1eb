// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/studied.hpp"

#include <cctype>
#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// All running text of the first page and of the household's part, in small letters.
std::string plain_words(const job::Job& job) {
    const auto pack = composed(studied(job));
    std::string out = joined(lines_of(pack.parts[summary], true)) + joined(lines_of(pack.parts[household], true));
    for (auto& c : out) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

job::Job with_kinds(const std::string& kind) {
    auto job = example_job("semi-detached");
    for (auto& emitter : job.emitters) emitter.kind = kind;
    return job;
}

}  // namespace

TEST_CASE("radiators are called radiators where there is nothing else") {
    const auto words = plain_words(with_kinds("panel_22"));
    CHECK(has(words, "whether its radiators and pipes can do this"));
    CHECK_FALSE(has(words, "heater"));
}

TEST_CASE("towel rails, fan units and floors are never spoken of as radiators") {
    for (const char* kind : {"towel_rail", "fan_convector", "skirting"}) {
        INFO(kind);
        const auto words = plain_words(with_kinds(kind));
        CHECK(has(words, "whether its heaters and pipes can do this"));
        CHECK_FALSE(has(words, "radiator"));
    }
    const auto mixed = plain_words(example_job("underfloor-flat"));
    CHECK(has(mixed, "heaters"));
    CHECK_FALSE(has(mixed, "radiator"));
}

TEST_CASE("no sign of the emitters' noun is left in any pack, and a job's own words stay as they are") {
    for (const auto& name : example_names()) {
        INFO(name);
        const auto pack = composed(studied(example_job(name)));
        for (const auto& part : pack.parts) {
            for (const auto& line : lines_of(part, true)) CHECK_FALSE(has(line, "adiator>"));
        }
    }
    auto job = with_kinds("panel_22");
    job.survey_notes = {"The <radiators> stay."};
    CHECK(has(plain_words(job), "the <radiators> stay."));
}
