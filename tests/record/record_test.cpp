// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"

#include "record/values.hpp"
#include "support/catch.hpp"
#include "support/sample_design.hpp"

#include <fstream>
#include <functional>
#include <iterator>
#include <limits>
#include <set>
#include <sstream>

using namespace loopfolio;
using record::Json;

namespace {

std::string record_of(const study::Study& s) { return record::to_json(s); }

const study::Study& sample() {
    static const study::Study made = tests::studied(tests::sample_job());
    return made;
}

void each_value(const Json& value, const std::function<void(const std::string&, const Json&)>& visit,
                const std::string& key = {}) {
    visit(key, value);
    if (value.is_object()) {
        for (const auto& [name, member] : value.items()) each_value(member, visit, name);
    } else if (value.is_array()) {
        for (const auto& member : value) each_value(member, visit, key);
    }
}

}  // namespace

TEST_CASE("the record reads back and ends in a newline") {
    const std::string text = record_of(sample());
    REQUIRE(text.back() == '\n');
    const Json json = Json::parse(text);
    std::vector<std::string> keys;
    for (const auto& [key, value] : json.items()) keys.push_back(key);
    CHECK(keys ==
          std::vector<std::string>{"record",      "record_version",   "origin",    "verdict",     "findings",
                                   "job",         "design",           "sizes",     "source_line", "flow_for_all_c",
                                   "wider_pipes", "section_remedies", "build_ups", "air",         "totals",
                                   "rules",       "operation",        "plant",     "flags",       "circumstances",
                                   "register",    "derivations"});
    CHECK(json["origin"]["job_sha256"] == sample().origin.job_sha256);
    CHECK(text.find("NaN") == std::string::npos);
}

TEST_CASE("a record on a disk tells its status and the digest of its inputs") {
    study::Study s = sample();
    s.house.values.identity.status = job::Status::issued;
    const auto filed = record::filed(record_of(s));
    REQUIRE(filed);
    CHECK(filed->status == "issued");
    CHECK(filed->inputs_sha256 == record::inputs_sha256(s.origin));
    const auto earlier = record::filed(R"({"record": "loopfolio design record", "job": {}, "origin": 1})");
    REQUIRE(earlier);
    CHECK(earlier->status + earlier->inputs_sha256 == "");
    for (const std::string_view other : {"", "{", "[]", "{\"record\": 1}", "{\"record\": \"of a concert\"}", "\xff"})
        CHECK_FALSE(record::filed(other));
}

TEST_CASE("the digest of the inputs is that of their digests, one a line, as sha256sum prints them") {
    study::Origin origin;
    origin.job_sha256 = record::sha256("job");
    CHECK(record::inputs_sha256(origin) == record::sha256(record::sha256("job") + "\n"));
    origin.files = {{"a/b.csv", record::sha256("b")}};
    CHECK(record::inputs_sha256(origin) ==
          record::sha256(record::sha256("job") + "\n" + record::sha256("b") + "  a/b.csv\n"));
}

TEST_CASE("the record states its version, and so does its description") {
    CHECK(Json::parse(record_of(sample()))["record_version"] == record::record_version);
    std::ifstream in{std::string{LOOPFOLIO_SOURCE_DIR} + "/docs/record.md"};
    const std::string doc{std::istreambuf_iterator<char>{in}, {}};
    CHECK(doc.find("number of this description, " + std::to_string(record::record_version) + ";") != std::string::npos);
}

TEST_CASE("the same design gives the same bytes") {
    CHECK(record_of(sample()) == record_of(tests::studied(tests::sample_job())));
}

TEST_CASE("inputs carry value, basis, range and source") {
    const Json job = Json::parse(record_of(sample()))["job"];
    const Json& air = job["rooms"][0]["air_changes_per_hour"];
    CHECK(air["value"] == 1.5);
    CHECK(air["basis"] == "assumed");
    CHECK(air["low"] == 1.0);
    CHECK(air["high"] == 2.0);
    CHECK(air["source"] == "judged on site");
    CHECK(job["conditions"]["drop_k"]["basis"] == "default");
    CHECK(job["conditions"]["outdoor_c"]["value"] == -3.0);
    CHECK(job["conditions"]["outdoor_c"]["low"].is_null());
    CHECK(job["identity"]["design_date"] == "2026-10-14");
    CHECK(job["emitters"][0]["length_mm"].is_null());
    CHECK(job["fluid"]["concentration_percent"].is_null());
}

TEST_CASE("every finding is in the list, with check, subject, verdict, figure, limit, margin and unit") {
    const auto& s = sample();
    const Json list = Json::parse(record_of(s))["findings"];
    REQUIRE(list.size() == s.findings.size());
    for (std::size_t i = 0; i < list.size(); ++i) {
        const auto& f = s.findings[i];
        const auto row = design::row_of(f.check);
        INFO(row.name << " " << f.index);
        CHECK(list[i]["check"] == std::string{row.name});
        CHECK(list[i]["subject"] == std::string{word(f.subject)});
        CHECK(list[i]["verdict"] == std::string{word(f.verdict)});
        CHECK(list[i]["unit"] == std::string{row.shown.symbol});
        CHECK(list[i]["figure"].get<double>() == Approx(row.shown.value(f.figure)).epsilon(1e-11));
        CHECK(list[i]["limit"].get<double>() == Approx(row.shown.value(f.limit)).epsilon(1e-11));
        CHECK(list[i]["margin"].is_null() == !f.margin.has_value());
        if (f.margin) CHECK(list[i]["margin"].get<double>() == Approx(*f.margin).epsilon(1e-11));
    }
    CHECK(Json::parse(record_of(s))["verdict"] == std::string{word(s.verdict)});
}

TEST_CASE("a finding beside the thing that it is about is the one of the list") {
    const auto& s = sample();
    const Json json = Json::parse(record_of(s))["design"];
    const auto expect = [&](const Json& finding, design::FindingId id, const char* unit) {
        const auto& f = s.design.at(id);
        CHECK(finding["verdict"] == std::string{word(f.verdict)});
        CHECK(finding["figure"].get<double>() == Approx(design::row_of(f.check).shown.value(f.figure)).epsilon(1e-11));
        CHECK(finding["unit"] == unit);
    };
    for (std::size_t i = 0; i < s.design.sections.size(); ++i) {
        expect(json["sections"][i]["velocity"], s.design.sections[i].velocity, "m/s");
        expect(json["sections"][i]["gradient"], s.design.sections[i].gradient, "Pa/m");
    }
    for (std::size_t i = 0; i < s.design.emitters.size(); ++i) {
        expect(json["emitters"][i]["finding"], s.design.emitters[i].finding, "W");
    }
    expect(json["duty"]["circulator"], s.design.duty.circulator, "kPa");
    expect(json["duty"]["source_capacity"], s.design.duty.source_capacity, "kW");
    expect(json["duty"]["source_minimum_flow"], s.design.duty.source_minimum_flow, "L/min");
    // One figure of each dimension, calculated by hand in the unit that the record states.
    CHECK(json["duty"]["circulator"]["figure"].get<double>() ==
          Approx(s.design.duty.head.si() / 1000.0).epsilon(1e-11));
    CHECK(json["duty"]["source_capacity"]["figure"].get<double>() ==
          Approx(s.design.duty.source_load.si() / 1000.0).epsilon(1e-11));
    CHECK(json["sections"][0]["velocity"]["figure"].get<double>() ==
          Approx(s.design.sections[0].hydraulic.velocity.si()).epsilon(1e-11));
    CHECK(json["emitters"][0]["finding"]["figure"].get<double>() ==
          Approx(s.design.emitters[0].output.si()).epsilon(1e-11));
    CHECK(json["emitters"][0]["finding"]["limit"].get<double>() ==
          Approx(s.design.emitters[0].load.si()).epsilon(1e-11));
}

TEST_CASE("the register and the derivations are whole") {
    const auto& s = sample();
    const Json json = Json::parse(record_of(s));
    CHECK(json["register"].size() == s.inputs.size());
    CHECK(json["derivations"].size() == s.trace.derivations().size());
    CHECK(json["flags"].size() == s.design.flags.size());
}

TEST_CASE("a step has its key, and the words of the default template") {
    const auto& s = sample();
    const Json json = Json::parse(record_of(s))["derivations"];
    for (std::size_t i = 0; i < json.size(); ++i) {
        const auto& steps = s.trace.derivations()[i].steps;
        REQUIRE(json[i]["steps"].size() == steps.size());
        for (std::size_t k = 0; k < steps.size(); ++k) {
            const auto& step = json[i]["steps"][k];
            CHECK(step["key"] == steps[k].what.key);
            CHECK(step["what"].get<std::string>().size() > 0);
            CHECK(step["formula"].get<std::string>().empty() == steps[k].formula.says_nothing());
        }
    }
    const auto last = json.back()["steps"].back();
    CHECK(last["key"] == "pump_head_there");
    CHECK(last["what"] == "head of the circulator at that flow");
    CHECK(last["formula"] == "its curve, smooth through the maker's points, or its set point");
}

TEST_CASE("what a figure can not say is null") {
    const double infinite = std::numeric_limits<double>::infinity();
    CHECK(record::number(std::numeric_limits<double>::quiet_NaN()).is_null());
    CHECK(record::number(infinite).is_null());
    CHECK(record::number(-infinite).is_null());
    auto s = sample();
    s.design.findings[static_cast<std::size_t>(s.design.sections[0].gradient.at)].limit = PressureGradient::from_si(
        infinite);
    s.design.findings[static_cast<std::size_t>(s.design.rooms[0].finding.at)].margin =
        std::numeric_limits<double>::quiet_NaN();
    const Json json = Json::parse(record_of(s))["design"];
    CHECK(json["sections"][0]["gradient"]["limit"].is_null());
    CHECK(json["rooms"][0]["finding"]["margin"].is_null());
}

TEST_CASE("numbers are written as they were meant") {
    CHECK(record::number(0.1 + 0.2).dump() == "0.3");
    CHECK(record::number(-0.0).dump() == "0.0");
    CHECK(record::number(1.0 / 3.0).dump() == "0.333333333333");
    CHECK(record::number(6.02214076e23).dump() == "6.02214076e+23");
    for (const double celsius : {-3.2, 0.01, 0.1, 20.1, 45.0, 54.9}) {
        CHECK(record::number_in(Temperature::from_celsius(celsius), unit::celsius) == Json(celsius));
    }
    for (const double litres : {17.9, 0.7, 12.0}) {
        CHECK(record::number_in(litres * unit::litre_per_minute, unit::litre_per_minute) == Json(litres));
    }
}

TEST_CASE("hostile words stay words") {
    auto s = sample();
    s.house.values.rooms[0].name = "a \"quoted\" \\ room\x01 \xff";
    const Json json = Json::parse(record_of(s));
    CHECK(json["job"]["rooms"][0]["name"].get<std::string>().find("\"quoted\" \\ room") != std::string::npos);
}

TEST_CASE("docs/record.md describes every key") {
    // What the job file calls the same is described there.
    std::string doc;
    for (const char* name : {"/docs/record.md", "/docs/job-file.md"}) {
        std::ifstream in{LOOPFOLIO_SOURCE_DIR + std::string{name}};
        REQUIRE(in);
        doc.append(std::istreambuf_iterator<char>{in}, {});
    }
    std::set<std::string> missing;
    const auto visit = [&](const std::string& key, const Json&) {
        if (!key.empty() && doc.find("`" + key + "`") == std::string::npos) missing.insert(key);
    };
    auto glycol = tests::sample_job();
    glycol.fluid.kind = job::FluidName::propylene_glycol;
    glycol.fluid.concentration = tests::measured(0.25);
    glycol.sections[0].fittings.push_back({"other", 1, 2.5, {}});
    glycol.emitters[0].length = tests::measured(1.2 * unit::metre);
    each_value(Json::parse(record_of(tests::studied(glycol))), visit);
    CHECK(missing == std::set<std::string>{});
}
