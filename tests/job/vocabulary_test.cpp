// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/findings.hpp"
#include "job/sample_job.hpp"
#include "job/vocabulary.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/materials.hpp"
#include "loopfolio/reference/reference.hpp"
#include "loopfolio/reference/underfloor.hpp"
#include "support/catch.hpp"

#include <fstream>
#include <map>
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

/// What docs/job-file.md has to say in `takes` for a field.
std::string takes(const job::Group& group, const Field& field) {
    const std::string unit = (field.unit.empty() || field.unit == "%" ? "" : " ") + std::string{field.unit};
    const std::string range = yaml::decimal(field.low) + " to " + yaml::decimal(field.high) + unit;
    switch (field.form) {
        case Form::number: return "number, " + range;
        case Form::plain: return group.name == "a value" ? "plain number" : "plain number, " + range;
        case Form::whole:
            return "whole number, " + (field.low == field.high ? yaml::decimal(field.low) : range);
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

std::string needed(Need need) {
    return need == Need::always ? "yes" : need == Need::optional ? "no" : "see text";
}

/// `## `rooms`: each room` is the heading of group `rooms`.
std::string group_of_heading(std::string line) {
    line.erase(0, line.find_first_not_of("# "));
    std::erase(line, '`');
    for (const auto& group : job::vocabulary()) {
        std::string name{group.name};
        if (name.starts_with("a value") || name == "the file")
            name[0] = static_cast<char>(name[0] - 'a' + 'A');
        if (line == name || line.starts_with(name + " ") || line.starts_with(name + ":"))
            return std::string{group.name};
    }
    return {};
}

std::vector<std::string> cells(const std::string& row) {
    std::vector<std::string> out;
    std::istringstream parts{row.substr(1)};
    for (std::string cell; std::getline(parts, cell, '|');) {
        const auto first = cell.find_first_not_of(' ');
        out.push_back(first == cell.npos ? "" : cell.substr(first, cell.find_last_not_of(' ') - first + 1));
    }
    return out;
}

/// The rows of the tables of docs/job-file.md, as `group.key` with what they say.
std::map<std::string, std::vector<std::string>> documented() {
    std::map<std::string, std::vector<std::string>> out;
    std::istringstream in{file_text("docs/job-file.md")};
    std::string group;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("#")) group = group_of_heading(line);
        if (group.empty() || !line.starts_with("| `")) continue;
        const auto row = cells(line);
        REQUIRE(row.size() == 5);
        out[group + "." + row[0].substr(1, row[0].size() - 2)] = row;
    }
    return out;
}

}  // namespace

TEST_CASE("docs/job-file.md has every key of the reader, with its range, and no other") {
    auto rows = documented();
    for (const auto& group : job::vocabulary()) {
        for (const auto& field : group.fields) {
            const std::string name = std::string{group.name} + "." + std::string{field.key};
            INFO(name);
            REQUIRE(rows.contains(name));
            CHECK(rows[name][1] == needed(field.need));
            CHECK(rows[name][2] == takes(group, field));
            rows.erase(name);
        }
    }
    for (const auto& row : rows) FAIL_CHECK("the reader has no key " << row.first);
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
    const std::set<std::string_view> pure{"exponent", "factor", "leakage_divisor", "cycling_factor",
                                          "persons", "hot_cycles_a_year"};
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

namespace {

constexpr std::string_view skeleton = "templates/job/starting-point.yaml";

/// The skeleton with its spare keys switched on: a `#` with no space after it hides one.
std::string switched_on(const std::string& text) {
    std::string out;
    std::istringstream in{text};
    for (std::string line; std::getline(in, line);) {
        const auto mark = line.find_first_not_of(' ');
        const bool spare =
            mark != line.npos && line[mark] == '#' && mark + 1 < line.size() && line[mark + 1] != ' ';
        if (spare) line.erase(mark, 1);
        out += line + "\n";
    }
    return out;
}

}  // namespace

TEST_CASE("the skeleton reads as it stands, and with everything switched on") {
    const std::string text = file_text(std::string{skeleton});
    CHECK(tests::said(text).empty());
    CHECK(tests::said(switched_on(text)).empty());
    CHECK(switched_on(text) != text);
}

TEST_CASE("the skeleton shows every key") {
    const std::string text = file_text(std::string{skeleton});
    for (const auto& group : job::vocabulary()) {
        for (const auto& field : group.fields) {
            if (field.suffix == "_l_per_s") continue;   // the other way to write a flow
            INFO(group.name << "." << field.key);
            CHECK(text.find(std::string{field.key} + ":") != std::string::npos);
        }
    }
}

TEST_CASE("the examples read without a word") {
    for (const std::string name : {"semi-detached", "manifold-flat", "hill-cottage-glycol", "old-grange", "bungalow-ring",
                                   "one-pipe-loop", "underfloor-flat"}) {
        const auto beside = [](const std::string& file) -> std::variant<std::string, job::FileFault> { return file_text("examples/" + file); };
        CHECK(job::read_job(file_text("examples/" + name + ".yaml"), "job.yaml", nullptr, beside).diagnostics.empty());
    }
}
