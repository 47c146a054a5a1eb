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

Json record_of(const study::Study& s) { return Json::parse(record::to_json(s)); }

const Json& whole() {
    static const Json made = record_of(tests::studied(tests::with_season(tests::sample_job())));
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
    const Json json = record_of(tests::studied(tests::sample_job()));
    CHECK(json["job"]["season"].is_null());
    CHECK(json["plant"]["season"].is_null());
}

TEST_CASE("the season's sums are the sums of its bins, and its performance their quotient") {
    const Json& season = whole()["plant"]["season"];
    const Json &sums = season["sums"], &bins = season["bins"];
    for (const char* key : {"demand_kwh", "source_heat_kwh", "backup_heat_kwh", "unmet_kwh", "source_electricity_kwh",
                            "backup_input_kwh"}) {
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

TEST_CASE("the record holds what came from files, and what the catalogue offers") {
    auto job = tests::with_season(tests::sample_job());
    job.season->climate.clear();
    job.season->climate_file = "here.csv";
    job.season->readings = 8760;
    job.season->bins = {{2.0 * unit::celsius, 8760.0 * unit::hour}};
    job.heat_source->model = "EX-8";
    job.heat_source->further.push_back({"smaller", "EX-4", job.heat_source->performance, "sheet", {}, 2, {}});
    job.sizes = {{"large", "", "panel_22", 9000.0 * unit::watt, {}, {}, {}, {}}};
    auto s = tests::studied(job);
    s.origin.files = {{"here.csv", record::sha256("x")}};
    const auto json = Json::parse(record::to_json(s));
    CHECK(json["origin"]["files"][0]["name"] == "here.csv");
    CHECK(json["origin"]["files"][0]["sha256"] == record::sha256("x"));
    CHECK(json["job"]["season"]["climate_file"] == "here.csv");
    CHECK(json["job"]["season"]["hourly_readings"] == 8760);
    CHECK(json["job"]["heat_source"]["model"] == "EX-8");
    CHECK(json["job"]["heat_source"]["further_units"][0]["number"] == 2);
    CHECK(json["job"]["heat_source"]["further_units"][0]["performance"]["points"] ==
          json["job"]["heat_source"]["performance"]["points"]);
    CHECK(json["plant"]["season"]["degree_days_kd"] == Approx((16.0 - 2.0) * 365.0));
    REQUIRE_FALSE(json["sizes"].empty());
    CHECK(json["sizes"][0]["serve"][0]["model"] == "large");
    CHECK(json["sizes"][0]["serve"][0]["fits_place"].is_null());
}
