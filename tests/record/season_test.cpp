// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"
#include "record/values.hpp"
#include "support/catch.hpp"
#include "support/sample_season.hpp"

#include <fstream>
#include <functional>
#include <iterator>
#include <set>

using namespace loopfolio;
using record::Json;

namespace {

Json record_of(const tests::Sample& s) {
    const record::Origin origin{"loopfolio", "0.1.0", "example.yaml", record::sha256("example")};
    return Json::parse(record::to_json(origin, s.job, s.design, s.operation, s.plant, s.inputs, s.trace));
}

const Json& whole() {
    static const Json made = record_of(tests::designed(tests::with_season(tests::sample_job())));
    return made;
}

void each_key(const Json& value, const std::function<void(const std::string&)>& visit) {
    if (value.is_object()) {
        for (const auto& [key, member] : value.items()) {
            visit(key);
            each_key(member, visit);
        }
    } else if (value.is_array()) {
        for (const auto& member : value) each_key(member, visit);
    }
}

double sum_of(const Json& bins, const char* key) {
    double out = 0.0;
    for (const auto& bin : bins) out += bin[key].get<double>();
    return out;
}

}  // namespace

TEST_CASE("a season without one is null, in the job and in the plant") {
    const Json json = record_of(tests::designed(tests::sample_job()));
    CHECK(json["job"]["season"].is_null());
    CHECK(json["plant"]["season"].is_null());
}

TEST_CASE("the season's sums are the sums of its bins, and its performance their quotient") {
    const Json& season = whole()["plant"]["season"];
    const Json &sums = season["sums"], &bins = season["bins"];
    for (const char* key : {"demand_kwh", "source_heat_kwh", "backup_heat_kwh", "unmet_kwh", "source_electricity_kwh", "backup_input_kwh"}) {
        INFO(key);
        CHECK(sums[key].get<double>() == Approx(sum_of(bins, key)).epsilon(1e-10));
    }
    const double heat = sums["source_heat_kwh"].get<double>() + sums["backup_heat_kwh"].get<double>();
    const double electricity = sums["source_electricity_kwh"].get<double>() + sums["backup_input_kwh"].get<double>() +
                               sums["standby_electricity_kwh"].get<double>();
    CHECK(sums["whole_performance"].get<double>() == Approx(heat / electricity).epsilon(1e-10));
    CHECK(season["bands"]["electricity_kwh"]["value"].get<double>() == Approx(electricity).epsilon(1e-10));
    CHECK(season["bands"]["cost"]["value"].get<double>() == Approx(0.3 * electricity).epsilon(1e-10));
    CHECK(season["compared"].size() == 2);
}

TEST_CASE("docs/record.md describes every key of a season") {
    std::ifstream in{std::string{LOOPFOLIO_SOURCE_DIR} + "/docs/record.md"};
    const std::string doc{std::istreambuf_iterator<char>{in}, {}};
    std::set<std::string> missing;
    const auto visit = [&](const std::string& key) {
        if (doc.find("`" + key + "`") == std::string::npos) missing.insert(key);
    };
    each_key(whole()["plant"]["season"], visit);
    each_key(whole()["job"]["season"], visit);
    each_key(whole()["job"]["heat_source"], visit);
    CHECK(missing == std::set<std::string>{});
}
