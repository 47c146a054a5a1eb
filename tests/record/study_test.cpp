// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"
#include "record/values.hpp"
#include "support/catch.hpp"
#include "support/jobs_of_every_check.hpp"
#include "support/studied.hpp"

#include <algorithm>
#include <functional>
#include <set>

using namespace loopfolio;
using namespace loopfolio::tests;
using record::Json;

namespace {

/// The sums of a study against those of the parts, which the record writes elsewhere.
void check_totals(const Json& json) {
    const Json& totals = json["totals"];
    const Json& rooms = json["design"]["rooms"];
    double losses = 0.0, leaving = 0.0, air = 0.0, area = 0.0, loss = 0.0, output = 0.0, load = 0.0;
    for (std::size_t i = 0; i < rooms.size(); ++i) {
        losses += rooms[i]["loss_w"].get<double>();
        leaving += rooms[i]["loss_to_outside_w"].get<double>();
        air += rooms[i]["air_not_at_once_w"].get<double>();
        CHECK(totals["rooms"][i]["surplus_w"].get<double>() ==
              Approx(rooms[i]["output_w"].get<double>() - rooms[i]["load_w"].get<double>()).margin(1e-6));
        if (!json["job"]["rooms"][i]["heated"].get<bool>()) continue;
        area += json["job"]["rooms"][i]["floor_area_m2"]["value"].get<double>();
        loss += rooms[i]["loss_w"].get<double>();
        output += rooms[i]["output_w"].get<double>();
        load += rooms[i]["load_w"].get<double>();
    }
    CHECK(totals["losses_w"].get<double>() == Approx(losses));
    CHECK(totals["leaving_w"].get<double>() == Approx(leaving));
    CHECK(totals["between_rooms_w"].get<double>() == Approx(leaving - losses + air).margin(1e-6));
    CHECK(totals["air_not_at_once_w"].get<double>() == Approx(-air).margin(1e-6));
    CHECK(totals["heated"]["floor_area_m2"].get<double>() == Approx(area));
    CHECK(totals["heated"]["loss_w"].get<double>() == Approx(loss));
    CHECK(totals["heated"]["output_w"].get<double>() == Approx(output));
    CHECK(totals["heated"]["heat_up_w"].get<double>() == Approx(load - loss).margin(1e-6));
    CHECK(totals["heated"]["surplus_w"].get<double>() == Approx(output - load).margin(1e-6));
    CHECK(totals["heated"]["rate_w_per_m2"].get<double>() == Approx(loss / area));
}

void check_index_circuit(const Json& json) {
    const Json& duty = json["design"]["duty"];
    const Json& so_far = json["totals"]["index_so_far_kpa"];
    REQUIRE(so_far.size() == duty["index_legs"].size() + 2);
    const double sections = duty["sections_kpa"], emitter = duty["emitter_kpa"], source = duty["source_kpa"];
    CHECK(so_far[so_far.size() - 2].get<double>() == Approx(sections + emitter));
    CHECK(so_far.back().get<double>() == Approx(sections + emitter + source));
    CHECK(json["totals"]["head_m_of_water"].get<double>() ==
          Approx(duty["head_kpa"].get<double>() / json["design"]["metre_of_water_kpa"].get<double>()));
}

void check_verdicts(const study::Study& s, const Json& json) {
    int counted = 0, sections = 0;
    for (const auto& [kind, counts] : json["totals"]["verdicts"].items()) {
        for (const auto& [verdict, count] : counts.items())
            (kind == "sections" ? sections : counted) += count.get<int>();
    }
    CHECK(sections == static_cast<int>(s.design.sections.size()));
    CHECK(counted ==
          std::ranges::count_if(s.findings, [](const auto& f) { return f.subject != design::Subject::section; }));
}

}  // namespace

TEST_CASE("what a study finds beyond its design is in the record") {
    int lines = 0, wider = 0, for_all = 0, build_ups = 0;
    for (const auto& name : example_names()) {
        INFO(name);
        const auto s = studied(example_job(name));
        const Json json = Json::parse(record::to_json(s));
        check_totals(json);
        check_index_circuit(json);
        check_verdicts(s, json);
        CHECK(json["source_line"].is_null() == !s.source_line.has_value());
        if (s.source_line) {
            ++lines;
            CHECK(json["source_line"]["points"].size() == s.source_line->points.size());
            CHECK(json["source_line"]["points"][0]["capacity_kw"].get<double>() ==
                  Approx(s.source_line->points[0].capacity.si() / 1000.0));
            CHECK(json["source_line"]["points"][0]["load_kw"].get<double>() ==
                  Approx(s.source_line->points[0].load.si() / 1000.0));
        }
        CHECK(json["wider_pipes"].is_null() == !s.wider_pipes.has_value());
        if (s.wider_pipes) {
            ++wider;
            CHECK(json["wider_pipes"]["pipes"].size() == s.wider_pipes->changes.size());
            CHECK(json["wider_pipes"]["head_kpa"].get<double>() == Approx(s.wider_pipes->head.si() / 1000.0));
        }
        if (s.flow_for_all) {
            ++for_all;
            CHECK(json["flow_for_all_c"].get<double>() == Approx(s.flow_for_all->celsius()));
        }
        build_ups += static_cast<int>(json["build_ups"].size());
    }
    // The examples hold each of them.
    CHECK(lines > 0);
    CHECK(wider > 0);
    CHECK(for_all > 0);
    CHECK(build_ups > 0);
}

TEST_CASE("a drop at the heat source is written as it is, in kelvin") {
    const Json json = Json::parse(record::to_json(studied(with_maximum_drop(3.0))));
    const Json& beside = json["design"]["duty"]["source_maximum_drop"];
    CHECK(beside["figure"].get<double>() == Approx(6.0));
    CHECK(beside["limit"].get<double>() == Approx(3.0));
    CHECK(beside["unit"] == "K");
    CHECK(beside["verdict"] == "change");
    CHECK(json["verdict"] == "change");
}

TEST_CASE("docs/record.md describes every key of every example") {
    // What the job file calls the same is described there.
    const std::filesystem::path docs = std::filesystem::path{LOOPFOLIO_SOURCE_DIR} / "docs";
    const std::string doc = bytes_of(docs / "record.md") + bytes_of(docs / "job-file.md");
    std::set<std::string> missing;
    const std::function<void(const Json&)> visit = [&](const Json& json) {
        if (json.is_object()) {
            for (const auto& [key, member] : json.items()) {
                if (doc.find("`" + key + "`") == std::string::npos) missing.insert(key);
            }
        }
        if (json.is_structured()) {
            for (const auto& member : json) visit(member);
        }
    };
    for (const auto& name : example_names()) {
        visit(Json::parse(record::to_json(studied(example_job(name)))));
    }
    CHECK(missing == std::set<std::string>{});
}

TEST_CASE("docs/record.md names every check") {
    const std::string doc = bytes_of(std::filesystem::path{LOOPFOLIO_SOURCE_DIR} / "docs/record.md");
    for (int i = 0; !design::row_of(static_cast<design::Check>(i)).name.empty(); ++i) {
        const std::string name{design::row_of(static_cast<design::Check>(i)).name};
        INFO(name);
        CHECK(doc.find("`" + name + "`") != std::string::npos);
    }
}
