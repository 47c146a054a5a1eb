// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/sample_job.hpp"
#include "loopfolio/base/unit.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <map>

using namespace loopfolio;
using tests::with;

namespace {

using Files = std::map<std::string, std::string>;

job::ReadResult read(const std::string& text, const Files& files) {
    return job::read_job(text, "jobs/job.yaml", nullptr,
                         [&](const std::string& name) -> std::variant<std::string, job::FileFault> {
                             const auto at = files.find(name);
                             if (at == files.end()) return job::FileFault{"cannot be read: No such file or directory"};
                             return at->second;
                         });
}

std::string said(const std::string& text, const Files& files) {
    std::string out;
    for (const auto& d : read(text, files).diagnostics) out += text_of(d);
    return out;
}

const std::string sources = R"(- model: EX-8
  source: sheet 3
  name: air-source heat pump of the catalogue
  minimum_flow_l_per_min: 12
  flammable_refrigerant: true
  performance:
    points:
      - {outdoor_c: -7, flow_c: 35, capacity_kw: 5.6, ratio: 3.0}
      - {outdoor_c: 7, flow_c: 35, capacity_kw: 7.4, ratio: 4.6}
)";
const std::string source_table = R"(# a remark
model,name,outdoor_c,flow_c,capacity_kw,ratio,source,minimum_flow_l_per_min,flammable_refrigerant
EX-8,air-source heat pump of the catalogue,-7,35,5.6,3.0,sheet 3,12,true
EX-9,another,-7,35,8,3.1,,,
EX-8,,7,35,7.4,4.6,,,
)";
const std::string sizes = R"(model,name,kind,output_at_50k_w,exponent,length_mm,height_mm,water_content_l
P22-600-1000,"double panel, 600 high",panel_22,1750,1.34,1000,600,5.7
P22-600-1200,,panel_22,2100,,1200,600,
)";

std::string job_with(const std::string& catalogue, const std::string& source = "  model: EX-8\n") {
    return with(with(tests::sample_job, "rooms:\n", "catalogue: " + catalogue + "\nrooms:\n"),
                "  name: air-source heat pump\n", source);
}

}  // namespace

TEST_CASE("a heat source takes from the catalogue what the job leaves out") {
    for (const auto& [name, text] : Files{{"s.yaml", sources}, {"s.csv", source_table}}) {
        INFO(name);
        const auto result = read(
            job_with("{heat_sources: " + name + "}", "  model: EX-8\n  name: the pump behind the house\n"),
            {{name, text}});
        REQUIRE(result.job);
        const auto& source = *result.job->heat_source;
        CHECK(source.name == "the pump behind the house");
        CHECK(source.model == "EX-8");
        REQUIRE(source.performance.size() == 2);
        CHECK(source.performance[1].capacity->in(unit::kilowatt) == Approx(7.4));
        CHECK(source.performance_source == "sheet 3");
        CHECK(source.flammable_refrigerant);
        CHECK(source.minimum_flow->value.in(unit::litre_per_minute) == Approx(12.0));
        CHECK(source.minimum_flow->basis == Basis::document);
        CHECK(source.minimum_flow->source == name + (name == "s.csv" ? ", line 3" : ", line 4"));
        CHECK(source.minimum_flow->place.file == 1);
        REQUIRE(result.files.size() == 1);
        CHECK(result.files[0].bytes == text);
    }
}

TEST_CASE("an emitter takes its model from the catalogue, and the sizes stay at hand") {
    const std::string text = with(job_with("{emitters: sizes.csv}", "  name: heat pump\n"),
                                  "    kind: panel_22\n    output_at_50k_w: 1950\n",
                                  "    model: P22-600-1000\n    height_mm: 590\n");
    const auto result = read(text, {{"sizes.csv", sizes}});
    REQUIRE(result.job);
    const auto& e = result.job->emitters.at(0);
    CHECK(e.kind == "panel_22");
    CHECK(e.output_at_50k.value.in(unit::watt) == Approx(1750.0));
    CHECK(e.output_at_50k.basis == Basis::document);
    CHECK(e.exponent.value == Approx(1.34));
    CHECK(e.height.value.in(unit::millimetre) == Approx(590.0));
    CHECK(e.height.basis == Basis::measured);
    CHECK(e.content->value.in(unit::litre) == Approx(5.7));
    REQUIRE(result.job->sizes.size() == 2);
    CHECK(result.job->sizes[1].output_at_50k.in(unit::watt) == Approx(2100.0));
    CHECK_FALSE(result.job->sizes[1].exponent);
}

TEST_CASE("further units take their table from the catalogue too") {
    const auto result = read(
        job_with("{heat_sources: s.csv}", "  model: EX-8\n  further_units: [{model: EX-9, number: 2}]\n"),
        {{"s.csv", source_table}});
    REQUIRE(result.diagnostics.empty());
    const auto& further = result.job->heat_source->further.at(0);
    CHECK(further.name == "another");
    CHECK(further.number == 2);
    CHECK(further.performance.at(0).capacity->in(unit::kilowatt) == Approx(8.0));
}

TEST_CASE("faults of a catalogue are told at their place in it") {
    struct Case {
        std::string job;
        Files files;
        std::string said;
    };
    const std::string catalogue = "{heat_sources: s.yaml}";
    const std::vector<Case> cases{
        {job_with(catalogue),
         {},
         "jobs/job.yaml:10:27: error: catalogue.heat_sources = s.yaml: cannot be read: No such file or directory"},
        {job_with("{heat_sources: /etc/s.yaml}"),
         {},
         "catalogue.heat_sources = /etc/s.yaml: must be a path from the job file's own folder\n"
         "    hint: write it from the job file's folder, such as `../catalogue/x.csv`\n"},
        {job_with("{heat_sources: \"\"}"), {}, "catalogue.heat_sources = \"\": must not be empty"},
        {job_with("{emitters: \"\"}", "  name: pump\n"), {}, "catalogue.emitters = \"\": must not be empty"},
        {job_with(catalogue, "  name: pump\n  model: \"\"\n"),
         {{"s.yaml", sources}},
         "heat_source.model = \"\": must not be empty"},
        {job_with(catalogue) + "season: {climate_file: \"\"}\n",
         {{"s.yaml", sources}},
         "season.climate_file = \"\": must not be empty"},
        {job_with("{heat_sources: s.csv}"),
         {{"s.csv", ""}},
         "jobs/s.csv:1:1: error: the file is empty\n    hint: the first line names the columns, such as `model,"},
        {job_with("{heat_sources: s.txt}"), {}, "catalogue.heat_sources = s.txt: must end in `.yaml` or `.csv`"},
        {job_with(catalogue, "  model: EX-7\n"),
         {{"s.yaml", sources}},
         "heat_source.model = EX-7: is not in the catalogue\n    hint: did you mean `EX-8`?"},
        {job_with("{}", "  model: EX-8\n"), {}, "catalogue.heat_sources: is missing: a `model` is looked up in it"},
        {with(tests::sample_job, "  at: SOURCE", "  model: EX-8\n  at: SOURCE"),
         {},
         "catalogue: is missing: a `model` is looked up in it"},
        {job_with(catalogue),
         {{"s.yaml", "model: EX-8\n"}},
         "jobs/s.yaml:1:1: error: a catalogue of heat sources is a list"},
        {job_with(catalogue),
         {{"s.yaml", "- model: EX-8\n  performance: [\n"}},
         "jobs/s.yaml:2:16: error: is not YAML"},
        {job_with(catalogue),
         {{"s.yaml", with(sources, "minimum_flow_l_per_min: 12", "minimum_flow_l_per_min: 0")}},
         "jobs/s.yaml:4:27: error: heat_source.minimum_flow_l_per_min = 0: must lie between 0.1 and 300 L/min"},
        {job_with(catalogue),
         {{"s.yaml", with(sources, "name:", "at: J1\n  name:")}},
         "jobs/s.yaml:3:3: error: at: is not a key here (model EX-8)\n"},
        {job_with(catalogue),
         {{"s.yaml", with(sources, "flow_c: 35, capacity_kw: 7.4", "flow_c: 45, capacity_kw: 7.4")}},
         "heat_source.performance.points: have a hole"},
        {job_with("{heat_sources: s.csv}"),
         {{"s.csv", with(source_table, "EX-8,,7", "EX-8,elsewhere,7")}},
         "jobs/s.csv:5:6: error: name = elsewhere: is air-source heat pump of the catalogue on line 3 for the same "
         "model"},
        {job_with("{emitters: e.csv}", "  name: pump\n"),
         {{"e.csv", with(sizes, "panel_22,1750", "panel_29,1750")}},
         "jobs/e.csv:2:39: error: [0].kind = panel_29"},
        {job_with("{emitters: e.csv}", "  name: pump\n"),
         {{"e.csv", with(sizes, "P22-600-1200", "P22-600-1000")}},
         "[1].model = P22-600-1000: stands twice in the catalogue"},
        {job_with("{emitters: e.csv}", "  name: pump\n"),
         {{"e.csv", with(sizes, "1750", "")}},
         "[0].output_at_50k_w: is missing"},
    };
    for (const auto& c : cases) {
        INFO(c.said);
        const std::string all = said(c.job, c.files);
        INFO(all);
        CHECK(all.find(c.said) != std::string::npos);
        CHECK(all.find("is a key of") == std::string::npos);
        CHECK_FALSE(read(c.job, c.files).job);
    }
    CHECK(tests::said(job_with(catalogue)).find("names a file, and none can be read here") != std::string::npos);
}

TEST_CASE("the first line of a table is told once, and the rows are not told for it") {
    struct Case {
        std::string job;
        Files files;
        std::vector<std::string> said;
    };
    const std::string emitter_job = with(job_with("{emitters: e.csv}", "  name: heat pump\n"),
                                         "    kind: panel_22\n    output_at_50k_w: 1950\n",
                                         "    model: P22-600-1000\n");
    const std::string source_job = job_with("{heat_sources: s.csv}") + "season: {climate: average}\n";
    const std::string weather_job = job_with("{heat_sources: s.yaml}") + "season: {climate_file: w.csv}\n";
    std::string hours = "outdoor,hours\n";
    for (int i = 0; i < 8760; ++i) hours += "4.5,1\n";
    const auto table = [](const std::string& text, const std::string& from, const std::string& to) {
        return Files{{"e.csv", with(text, from, to)}};
    };
    const auto of_source = [](const std::string& from, const std::string& to) {
        return Files{{"s.csv", with(source_table, from, to)}};
    };
    const std::vector<Case> cases{
        {emitter_job,
         table(sizes, "output_at_50k_w", "output_at_50_w"),
         {"jobs/e.csv:1:17: error: output_at_50_w: is not a column of a catalogue of emitters\n    hint: did you mean "
          "`output_at_50k_w`?\n"}},
        {emitter_job,
         table(sizes, "length_mm", "length_m"),
         {"jobs/e.csv:1:42: error: length_m: is not a column of a catalogue of emitters\n    hint: write `length_mm`, "
          "in mm\n"}},
        {emitter_job,
         table(sizes, "output_at_50k_w", "at"),
         {"jobs/e.csv:1:1: error: output_at_50k_w: is missing: each row of a catalogue of emitters needs it\n    hint: "
          "add the column to the first line\n",
          "jobs/e.csv:1:17: error: at: is not a column of a catalogue of emitters\n    hint: its columns are `model`, "
          "`name`, `kind`, `output_at_50k_w`, "
          "`exponent`, `length_mm`, `height_mm` and `water_content_l`\n"}},
        {emitter_job,
         table(sizes, "model", "id"),
         {"jobs/e.csv:1:1: error: id: is not a column of a catalogue of emitters\n    hint: its columns are ",
          "jobs/e.csv:1:1: error: model: is missing: each row"}},
        {source_job,
         of_source("ratio", "ratios"),
         {"jobs/s.csv:2:41: error: ratios: is not a column of a catalogue of heat sources\n    hint: did you mean "
          "`ratio`?\n"}},
        {source_job,
         of_source(",ratio", ",source_of_points"),
         {"jobs/s.csv:2:1: error: ratio: is missing: each row of a catalogue of heat sources needs it",
          "jobs/s.csv:2:41: error: source_of_points: is not a column"}},
        {source_job,
         of_source("model", "models"),
         {"jobs/s.csv:2:1: error: models: is not a column of a catalogue of heat sources\n    hint: did you mean "
          "`model`?\n"}},
        {weather_job,
         {{"s.yaml", sources}, {"w.csv", hours}},
         {"jobs/w.csv:1:1: error: outdoor: is not a column of a climate file\n    hint: write `outdoor_c`, in °C\n"}},
        {weather_job,
         {{"s.yaml", sources}, {"w.csv", "outdoor_c;hour\n5;10\n"}},
         {"jobs/w.csv:1:11: error: hour: is not a column of a climate file\n    hint: did you mean `hours`?\n"}},
    };
    for (const auto& c : cases) {
        const auto result = read(c.job, c.files);
        std::vector<std::string> told;
        for (const auto& d : result.diagnostics) told.push_back(text_of(d));
        CAPTURE(told, c.said);
        REQUIRE(told.size() == c.said.size());
        for (const auto& line : c.said)
            CHECK(std::ranges::any_of(told, [&](const std::string& t) { return t.starts_with(line); }));
        CHECK_FALSE(result.job);
    }
}

TEST_CASE("a table of models without points, and one whose points come from the job") {
    const std::string table = "model;name;minimum_flow_l_per_min\nEX-8;the pump;12\n";
    const auto result = read(job_with("{heat_sources: s.csv}"), {{"s.csv", table}});
    REQUIRE(result.job);
    CHECK(result.job->heat_source->name == "the pump");
}

TEST_CASE("a model keeps its own kind, and a second unit of one model is a number") {
    const std::string text = with(job_with("{emitters: e.csv}", "  name: heat pump\n"),
                                  "    kind: panel_22\n    output_at_50k_w: 1950\n",
                                  "    kind: towel_rail\n    model: P22-600-1000\n");
    CHECK(said(text, {{"e.csv", sizes}})
              .find("emitters[0].kind = towel_rail: is not the kind of the model, `panel_22`\n"
                    "    hint: leave `kind` out, or name another model\n") != std::string::npos);
    CHECK(said(with(text, "towel_rail", "panel_22"), {{"e.csv", sizes}}).empty());
    const std::string twice = job_with("{heat_sources: s.csv}", "  model: EX-8\n  further_units: [{model: EX-8}]\n");
    const auto warned = read(twice, {{"s.csv", source_table}});
    REQUIRE(warned.job);
    REQUIRE(warned.diagnostics.size() == 1);
    CHECK(text_of(warned.diagnostics[0])
              .find("warning: heat_source.further_units[0].model = EX-8: is the heat source's own model\n"
                    "    hint: state how many there are as `number` of `heat_source`\n") != std::string::npos);
}

TEST_CASE("what a model that is not found would have filled is not told as missing too") {
    const std::string text = job_with("{heat_sources: s.yaml}", "  model: EX-7\n") + "season: {climate: average}\n";
    CHECK(read(text, {{"s.yaml", sources}}).diagnostics.size() == 1);
    CHECK(read(text, {}).diagnostics.size() == 1);
}

TEST_CASE("units of another kind state what they give") {
    const std::string points = "  performance: {points: [{outdoor_c: -7, flow_c: 35, capacity_kw: 5, ratio: 3}]}\n";
    const auto job = [&](const std::string& lines) { return tests::sample_job + lines; };
    CHECK(
        said(job(points +
                 "  further_units: [{name: second, performance: {points: [{outdoor_c: -7, flow_c: 35, ratio: 3}]}}]\n"),
             {})
            .find("heat_source.further_units[0].performance.points: state no capacity at -7 °C outdoors") !=
        std::string::npos);
    CHECK(said(job("  further_units: [{name: second, performance: {points: [{outdoor_c: -7, flow_c: 35, capacity_kw: "
                   "4, ratio: 3}]}}]\n"),
               {})
              .find("heat_source.performance: is missing: `further_units` share the load") != std::string::npos);
    CHECK(said(job(points + "  further_units: [{name: second}]\n"), {})
              .find("heat_source.further_units[0].performance: is missing") != std::string::npos);
}

TEST_CASE("a season takes its hours from a climate file") {
    const std::string season = "season: {climate_file: w.csv}\n";
    const std::string text = job_with("{heat_sources: s.yaml}") + season;
    const auto read_with = [&](const std::string& weather) {
        return read(text, {{"s.yaml", sources}, {"w.csv", weather}});
    };
    const auto stated = read_with("outdoor_c,hours\n5,8000\n-3,80\n5,600\n");
    REQUIRE(stated.job);
    REQUIRE(stated.job->season->bins.size() == 2);
    CHECK(stated.job->season->bins[1].time.in(unit::hour) == Approx(8600.0));
    CHECK(stated.job->season->readings == 0);

    // 8760 readings, grouped as in EN 14825: by whole degrees, with halves rounded up.
    std::string hourly = "outdoor_c\n";
    for (int i = 0; i < 8760; ++i) hourly += i % 2 == 0 ? "4.5\n" : i % 4 == 1 ? "-0.5\n" : "-0.6\n";
    const auto gathered = read_with(hourly);
    REQUIRE(gathered.diagnostics.empty());
    const auto& bins = gathered.job->season->bins;
    REQUIRE(bins.size() == 3);
    CHECK(bins[0].outdoor.celsius() == Approx(-1.0));
    CHECK(bins[1].outdoor.celsius() == Approx(0.0).margin(1e-9));
    CHECK(bins[2].outdoor.celsius() == Approx(5.0));
    CHECK(bins[2].time.in(unit::hour) == Approx(4380.0));
    CHECK(gathered.job->season->readings == 8760);

    const auto readings = [](int number) {
        std::string out = "outdoor_c\n";
        for (int i = 0; i < number; ++i) out += "5\n";
        return out;
    };
    struct Case {
        std::string weather, said;
    };
    for (const auto& c : std::vector<Case>{
             {"outdoor_c,hours\n5,9000\n", "jobs/w.csv:2:3: error: [0].hours = 9000: must lie between 0 and 8784 h"},
             {"outdoor_c,hours\n5,8000\n6,800\n", "season.climate_file = w.csv: has 8800 hours together"},
             {"outdoor_c,hours\n5,20\n6,\n",
              "jobs/w.csv:3:1: error: [1].hours: is missing: the first line states them"},
             {"outdoor_c,hours\n5,\n6,20\n",
              "jobs/w.csv:3:3: error: [1].hours = 20: stand here, and not in the first line"},
             {"outdoor_c,hours\n5,0\n", "has no hours at all"},
             {"outdoor_c\n5\n",
              "error: season.climate_file = w.csv: has 1 hours up to 5 °C, which is neither a year nor all of it that "
              "needs heat"},
             {readings(8759), "warning: season.climate_file = w.csv: has 8759 hours, and a year has 8760"},
             {readings(8672), "error: season.climate_file = w.csv: has 8672 hours up to 5 °C, which is neither"},
             {"outdoor_c,hours\n", "names a file without a line"},
             {"temperature\n5\n",
              "jobs/w.csv:1:1: error: the first line names no column of a climate file\n    hint: its columns are "
              "`outdoor_c` and `hours`\n"}}) {
        INFO(c.said);
        const std::string all = said(text, {{"s.yaml", sources}, {"w.csv", c.weather}});
        INFO(all);
        CHECK(all.find(c.said) != std::string::npos);
    }
    CHECK(said(text, {{"s.yaml", sources}, {"w.csv", "outdoor_c,hours\n40,5000\n"}})
              .find("season.climate_file = w.csv: has no hour that asks for heat: the coldest is 40 °C") !=
          std::string::npos);
    CHECK(said(text, {{"s.yaml", sources}, {"w.csv", "outdoor_c,hours\n-30,5000\n"}})
              .find("warning: season.climate_file = w.csv: has -30 °C as the coldest hour, far from the design outdoor "
                    "temperature") != std::string::npos);
    CHECK(said(job_with("{heat_sources: s.yaml}") + "season: {climate: average, climate_file: w.csv}\n",
               {{"s.yaml", sources}, {"w.csv", "outdoor_c,hours\n5,10\n"}})
              .find("season.climate_file = w.csv: says the same as `climate`") != std::string::npos);
}
