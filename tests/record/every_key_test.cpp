// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "support/every_key.hpp"
#include "record/parts.hpp"
#include "support/catch.hpp"

#include <map>

using namespace loopfolio;
using record::Json;

namespace {

/// Gathers the inputs in `value` by their source, each with its key.
void gather(const Json& value, const std::string& key, std::map<std::string, std::string>& out) {
    const bool input = value.is_object() && value.contains("basis") && value.contains("low");
    if (input) out[value["source"].get<std::string>()] = key;
    if (value.is_object()) {
        for (const auto& [name, member] : value.items()) gather(member, name, out);
    } else if (value.is_array()) {
        for (const auto& member : value) gather(member, key, out);
    }
}

std::set<std::string> keys_of(const Json& value) {
    std::set<std::string> out;
    for (const auto& [name, member] : value.items()) out.insert(name);
    return out;
}

}  // namespace

TEST_CASE("every input of a job stands in the record under the name that its row gives") {
    for (auto& job : tests::jobs_with_every_key()) {
        const auto marked = tests::mark(job);
        std::map<std::string, std::string> written;
        gather(record::job_json(job), "", written);
        REQUIRE(marked.size() > 100);
        for (const auto& input : marked) {
            INFO(input.key << " of " << input.subject);
            REQUIRE(written.contains(input.source));
            if (!input.record.empty()) CHECK(written[input.source] == input.record);
        }
    }
}

TEST_CASE("every text, name, flag and whole number of a table stands in the record") {
    const auto jobs = tests::jobs_with_every_key();
    const Json json = record::job_json(jobs.front());
    const auto check = [](const auto& rows, const Json& object) {
        const auto there = keys_of(object);
        job::each_row(rows, [&](const auto& row) {
            if constexpr (requires { row.names; }) {
                INFO(row.field.key);
                CHECK((row.record.empty() || there.contains(std::string{row.record})));
            }
        });
    };
    check(job::keys::top, json);
    check(job::keys::hot_water, json);
    check(job::keys::identity, json["identity"]);
    check(job::keys::firm, json["firm"]);
    check(job::keys::designer, json["designer"]);
    check(job::keys::household, json["household"]);
    check(job::keys::property, json["property"]);
    check(job::keys::fluid, json["fluid"]);
    check(job::keys::room, json["rooms"][0]);
    check(job::keys::fabric, json["rooms"][0]["fabric"]);
    const Json& element = json["rooms"][1]["elements"][0];
    check(job::keys::element, element);
    check(job::keys::element_beyond, element);
    check(job::keys::emitter, json["emitters"][0]);
    check(job::keys::emitter_more, json["emitters"][0]);
    check(job::keys::loop, json["emitters"][0]);
    check(job::keys::section, json["sections"][0]);
    check(job::keys::mixer, json["mixers"][0]);
    check(job::keys::separation, json["separation"]);
    check(job::keys::circulator, json["circulator"]);
    check(job::keys::further_circulator, json["further_circulators"][0]);
    check(job::keys::heat_source, json["heat_source"]);
    check(job::keys::heat_source_cautions, json["heat_source"]);
    check(job::keys::running, json["heat_source"]["running"]);
    check(job::keys::further_units, json["heat_source"]["further_units"][0]);
    check(job::keys::system_water, json["system_water"]);
    check(job::keys::sound, json["sound"]);
    check(job::keys::season, json["season"]);
}
