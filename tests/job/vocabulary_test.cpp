// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/vocabulary.hpp"
#include "job/sample_job.hpp"
#include "loopfolio/job/version.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/materials.hpp"
#include "loopfolio/reference/reference.hpp"
#include "loopfolio/reference/underfloor.hpp"
#include "loopfolio/yaml/findings.hpp"
#include "support/catch.hpp"
#include "support/starting_point.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

using namespace loopfolio;
using job::Field;
using job::Form;
using job::Need;

namespace {

std::string file_text(const std::string& name) {
    std::ifstream in{std::string{LOOPFOLIO_SOURCE_DIR} + "/" + name};
    REQUIRE(in);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

/// The text in the column `takes` of docs/job-file.md for a field.
std::string takes(const job::Group& group, const Field& field) {
    const std::string unit = (field.unit.empty() || field.unit == "%" ? "" : " ") + std::string{field.unit};
    const std::string range = yaml::decimal(field.low) + " to " + yaml::decimal(field.high) + unit;
    switch (field.form) {
        case Form::number: return "number, " + range;
        case Form::plain: return group.name == "a value" ? "plain number" : "plain number, " + range;
        case Form::whole: return "whole number, " + (field.low == field.high ? yaml::decimal(field.low) : range);
        case Form::text: return "text, " + range + " characters";
        case Form::id: return "id, " + range + " characters";
        case Form::choice: return "name";
        case Form::flag: return "`true` or `false`";
        case Form::date: return "date";
        case Form::texts: return range + " lines of text";
        case Form::numbers: return "list of plain numbers, " + range;
        case Form::mapping: return "mapping";
        case Form::list: return "list, " + range + " items";
    }
    return {};
}

std::string needed(Need need) { return need == Need::always ? "yes" : need == Need::optional ? "no" : "see text"; }

/// The group that a heading names: `## `rooms`: each room` is the heading of group `rooms`.
std::string group_of_heading(std::string line) {
    line.erase(0, line.find_first_not_of("# "));
    std::erase(line, '`');
    for (const auto& group : job::vocabulary()) {
        std::string name{group.name};
        if (name.starts_with("a value") || name == "the file") name[0] = static_cast<char>(name[0] - 'a' + 'A');
        if (line == name || line.starts_with(name + " ") || line.starts_with(name + ":"))
            return std::string{group.name};
    }
    return {};
}

/// The rows of a group's table, as docs/job-file.md must have them.
std::string rows_of(const job::Group& group) {
    std::string out;
    for (const auto& field : group.fields) {
        out += "| `" + std::string{field.key} + "` | " + needed(field.need) + " | " + takes(group, field) + " | " +
               std::string{field.left_out} + " | " + std::string{field.meaning} + " |\n";
    }
    return out;
}

/// `text` with every table of keys replaced by that of the vocabulary; `missing` gets the groups without a table in it.
std::string written_anew(const std::string& text, std::set<std::string>& missing) {
    for (const auto& group : job::vocabulary()) missing.insert(std::string{group.name});
    std::string out, group;
    bool in_table = false;
    std::istringstream in{text};
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("#")) group = group_of_heading(line);
        const bool row = line.starts_with("| `");
        if (in_table && row) continue;  // written already
        in_table = false;
        out += line + "\n";
        if (group.empty() || line != "|---|---|---|---|---|") continue;
        out += rows_of(job::group(group));
        missing.erase(group);
        in_table = true;
    }
    return out;
}

}  // namespace

TEST_CASE("docs/job-file.md says of every key what its row says, and has no other") {
    const std::string text = file_text("docs/job-file.md");
    std::set<std::string> missing;
    const std::string expected = written_anew(text, missing);
    CHECK(missing.empty());
    if (std::getenv("LOOPFOLIO_ACCEPT") != nullptr) {
        std::ofstream{std::string{LOOPFOLIO_SOURCE_DIR} + "/docs/job-file.md"} << expected;
        return;
    }
    std::istringstream is{text}, wanted{expected};
    for (std::string have, want; std::getline(wanted, want);) {
        std::getline(is, have);
        REQUIRE(have == want);
    }
    CHECK(text == expected);
}

TEST_CASE("the document states the version of the format") {
    const std::string text = file_text("docs/job-file.md");
    CHECK(text.find("as `loopfolio`, now " + std::to_string(job::job_format) + ".") != std::string::npos);
    CHECK(tests::starting_point().find("\nloopfolio: " + std::to_string(job::job_format) + " ") != std::string::npos);
}

TEST_CASE("every row says what its key means and what holds without it") {
    for (const auto& group : job::vocabulary()) {
        for (const auto& field : group.fields) {
            INFO(group.name << "." << field.key);
            CHECK_FALSE(field.meaning.empty());
            CHECK_FALSE(field.left_out.empty());
            CHECK((field.need != Need::always || field.left_out == "–"));
        }
    }
}

TEST_CASE("docs/job-file.md has every name that a job may take from the reference") {
    const std::string text = file_text("docs/job-file.md");
    std::vector<std::string_view> names = reference::pipe_names();
    const auto add = [&](std::string_view name) { names.push_back(name); };
    for (const auto name : reference::fitting_names()) add(name);
    for (const auto name : reference::emitter_kind_names()) add(name);
    for (const auto& row : reference::room_uses()) add(row.name);
    for (const auto& row : reference::era_names()) add(row.name);
    for (const auto& row : reference::wall_names()) add(row.name);
    for (const auto& row : reference::glazing_names()) add(row.name);
    for (const auto& row : reference::roof_names()) add(row.name);
    for (const auto& row : reference::floor_names()) add(row.name);
    for (const auto name : reference::material_names()) add(name);
    for (const auto name : reference::derating_names()) add(name);
    for (const auto name : reference::ground_names()) add(name);
    for (const auto& row : reference::floor_coverings()) add(row.name);
    for (const auto& row : reference::floor_surface_limits()) add(row.name);
    for (const auto name : names) {
        INFO(name);
        CHECK(text.find("`" + std::string{name} + "`") != std::string::npos);
    }
}

TEST_CASE("the key of every number ends in a unit, and no key is there twice") {
    const std::set<std::string_view> pure{"exponent",       "factor",  "leakage_divisor",   "volume_flow_factor",
                                          "cycling_factor", "persons", "hot_cycles_a_year", "wind_shielding"};
    for (const auto& group : job::vocabulary()) {
        std::set<std::string_view> seen;
        for (const auto& field : group.fields) {
            INFO(group.name << "." << field.key);
            CHECK(seen.insert(field.key).second);
            CHECK(field.low <= field.high);
            if (field.form == Form::number && !pure.contains(field.key)) CHECK_FALSE(field.unit.empty());
            CHECK(field.key.ends_with(field.suffix));
        }
    }
}

TEST_CASE("the skeleton reads as it stands, and with everything switched on") {
    const std::string text = tests::starting_point();
    CHECK(tests::said(text).empty());
    // A leakage test beside air changes that are stated: the skeleton shows both.
    const std::string said = tests::said(tests::switched_on(text));
    CHECK(said.find("error") == std::string::npos);
    CHECK(said.find("air_permeability_at_50_pa_m3_per_h_m2: counts for no room that states its own air changes") !=
          std::string::npos);
    CHECK(std::ranges::count(said, '\n') == 2);
    CHECK(tests::switched_on(text) != text);
}

TEST_CASE("the skeleton shows every key") {
    const std::string text = tests::starting_point();
    for (const auto& group : job::vocabulary()) {
        for (const auto& field : group.fields) {
            if (field.suffix == "_l_per_s") continue;  // the other way to write a flow
            INFO(group.name << "." << field.key);
            CHECK(text.find(std::string{field.key} + ":") != std::string::npos);
        }
    }
}

TEST_CASE("the examples read without a word") {
    for (const std::string name : {"semi-detached", "manifold-flat", "hill-cottage-glycol", "old-grange",
                                   "bungalow-ring", "one-pipe-loop", "underfloor-flat"}) {
        const auto beside = [](const std::string& file) -> std::variant<std::string, job::FileFault> {
            return file_text("examples/" + file);
        };
        CHECK(job::read_job(file_text("examples/" + name + ".yaml"), "job.yaml", nullptr, beside).diagnostics.empty());
    }
}
