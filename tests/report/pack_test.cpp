// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"

#include "loopfolio/reference/fittings.hpp"
#include "loopfolio/reference/source.hpp"

#include <algorithm>
#include <map>
#include <set>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

const study::Study& sample() {
    static const study::Study made = studied(sample_job());
    return made;
}

job::Job large_house(int rooms) {
    job::Job job = sample_job();
    job.rooms.clear();
    job.emitters.clear();
    job.sections.clear();
    for (int i = 0; i < rooms; ++i) {
        const std::string n = std::to_string(i);
        job.rooms.push_back(sample_room("r" + n, "Room " + n, reference::RoomUse::bedroom, 12.0));
        job.sections.push_back(
            sample_section("S" + n, i == 0 ? "plant" : "n" + std::to_string(i - 1), "n" + n, "copper_54", 3.0));
        job.emitters.push_back(sample_emitter("R" + n, "r" + n, "n" + n, 2000.0));
    }
    return job;
}

job::Job bare_job() {
    job::Job job = sample_job();
    job.heat_source.reset();
    job.circulator.reset();
    job.survey_notes.clear();
    job.emitters.clear();
    job.household = {};
    job.designer = {};
    return job;
}

/// Checks what must not appear in any pack, whatever the job.
void check_form(const report::Report& pack) {
    REQUIRE(pack.parts.size() == 4);
    for (const auto& part : pack.parts) {
        REQUIRE(!part.blocks.empty());
        for (const auto& table : all_of<report::Table>(part)) {
            INFO(table.caption);
            CHECK(!table.rows.empty());
            for (const auto& row : table.rows) {
                CHECK(row.cells.size() <= (row.group_head ? 1 : table.columns.size()));
                CHECK(!row.cells.empty());
            }
            CHECK(!table.rows.back().group_head);
        }
        for (const auto& list : all_of<report::List>(part)) CHECK(!list.items.empty());
        for (const auto& facts : all_of<report::Facts>(part)) {
            for (const auto& fact : facts.facts) CHECK(!fact.text.empty());
        }
        for (const auto& key : all_of<report::KeyFigures>(part))
            CHECK((key.figures.size() >= 1 && key.figures.size() <= 4));
        for (const auto& chart : all_of<report::BarChart>(part)) {
            CHECK(!chart.groups.empty());
            for (const auto& group : chart.groups) CHECK(group.values.size() == chart.series.size());
        }
        for (const auto& line : lines_of(part, true)) {
            INFO(line);
            std::size_t stars = 0;
            for (std::size_t at = line.find("**"); at != std::string::npos; at = line.find("**", at + 2)) ++stars;
            CHECK(stars % 2 == 0);
            for (const char* wrong : {" nan ", "-nan", " nan|", " inf ", "-inf", "..", "  ", " ,", "::", " .", "()"})
                CHECK(!has(line, wrong));
        }
    }
}

void check_tree(const report::PipeTree& tree) {
    REQUIRE(!tree.nodes.empty());
    CHECK(tree.nodes[0].parent == -1);
    for (std::size_t i = 1; i < tree.nodes.size(); ++i) {
        CHECK(tree.nodes[i].parent >= 0);
        CHECK(static_cast<std::size_t>(tree.nodes[i].parent) < i);
        CHECK(tree.nodes[i].pipe_weight <= 1.0);
    }
}

}  // namespace

TEST_CASE("a pack is well formed, whatever the job") {
    SECTION("sample") { check_form(composed(sample())); }
    SECTION("hardly anything stated") { check_form(composed(studied(bare_job()))); }
    SECTION("no derivations and no register") {
        study::Study s = sample();
        s.trace = {};
        s.inputs.clear();
        check_form(composed(s));
    }
}

TEST_CASE("three hundred rooms make a pack") {
    const auto pack = composed(studied(large_house(300)));
    check_form(pack);
    std::size_t bars = 0;
    for (const auto& chart : all_of<report::BarChart>(pack.parts[household])) bars += chart.groups.size();
    CHECK(bars == 300);
    check_tree(all_of<report::PipeTree>(pack.parts[installer]).at(0));
}

TEST_CASE("the pack is named after the job") {
    const auto pack = composed(sample());
    CHECK(pack.title == "Heating design pack");
    CHECK(pack.subtitle == "semi-detached house, built about 1936, 4 Example Road, Exampleton");
    CHECK(pack.header_left == "EX-104 · revision A");
    CHECK(pack.header_right == "14 October 2026 · 4 Example Road");
    CHECK(pack.footer == "Example Heating");
    CHECK((pack.year == 2026 && pack.month == 10 && pack.day == 14));
}

TEST_CASE("stars in a job are words, not markup") {
    job::Job job = sample_job();
    job.rooms[0].name = "**Living** room*";
    job.survey_notes = {"Five ***** stars"};
    job.property.address[0] = "*4 Example Road*";
    check_form(composed(studied(job)));
}

TEST_CASE("the installer's sums are the sums of their columns") {
    const auto tables = all_of<report::Table>(composed(sample()).parts[installer]);
    const auto& rooms = tables.at(1);
    REQUIRE(rooms.caption == "Rooms on the design day");
    Power loss;
    for (const auto& r : sample().design.rooms) loss += r.loss;
    CHECK(rooms.rows.back().emphasised);
    CHECK(rooms.rows.back().cells.at(5).text == fixed(loss.si(), 0));
    CHECK(has(rooms.note, "Not heated: Store."));
}

TEST_CASE("the index circuit adds up to the head") {
    for (const auto& table : all_of<report::Table>(composed(sample()).parts[installer])) {
        if (!has(table.caption, "Index circuit")) continue;
        const auto& head = table.rows.back().cells.at(6).text;
        CHECK(table.rows.at(table.rows.size() - 2).cells.at(7).text == head);
        CHECK(head == fixed(sample().design.duty.head.si() / 1000.0, 2));
        return;
    }
    FAIL("no index circuit");
}

TEST_CASE("the drawn tree holds every section and emitter once") {
    const auto tree = all_of<report::PipeTree>(composed(sample()).parts[installer]).at(0);
    check_tree(tree);
    std::multiset<std::string> sections, emitters;
    for (const auto& node : tree.nodes) {
        if (!node.pipe_label.empty()) sections.insert(node.pipe_label.substr(0, node.pipe_label.find(' ')));
        if (node.kind == report::PipeTree::Node::Kind::emitter)
            emitters.insert(node.label.substr(0, node.label.find(' ')));
    }
    CHECK(sections == std::multiset<std::string>{"S1", "S2", "S3", "S4"});
    CHECK(emitters == std::multiset<std::string>{"R1", "R2", "R3", "R4"});
}

TEST_CASE("the register shows every assumed and every default value") {
    const auto lines = lines_of(composed(sample()).parts[assessor], true);
    int care = 0;
    for (const auto& a : sample().inputs) {
        if (!study::needs_care(a)) continue;
        ++care;
        INFO(a.what);
        const auto source = a.is_key ? std::string{word(reference::find_source(a.source)->certainty)} : a.source;
        CHECK(!line_with(lines, {a.what.substr(1), a.value, a.range, source}).empty());
    }
    CHECK(care > 10);
}

TEST_CASE("every source that the pack names is listed with its certainty") {
    const auto part = composed(sample()).parts[assessor];
    for (const auto& table : all_of<report::Table>(part)) {
        if (!has(table.caption, "Sources")) continue;
        const auto listed = joined(lines_of({"", "", {table}}, true));
        for (const auto& a : sample().inputs) {
            if (a.is_key) CHECK(has(listed, std::string{reference::find_source(a.source)->title}));
        }
        return;
    }
    FAIL("no sources");
}

TEST_CASE("every method names a source that is listed") {
    job::Job job = sample_job();
    job.fluid.kind = job::FluidName::propylene_glycol;
    job.fluid.concentration = measured(0.25);
    job.fluid.basis = job::ConcentrationBasis::volume;
    std::set<std::string> named, listed;
    for (const auto& table : all_of<report::Table>(composed(studied(job)).parts[assessor])) {
        for (const auto& row : table.rows) {
            if (table.caption == "Relations used" && row.cells.at(3).text != "definition") {
                const auto& source = row.cells.at(3).text;
                named.insert(source.substr(0, source.find(' ')));
            }
            if (has(table.caption, "Sources")) listed.insert(row.cells.at(0).text);
        }
    }
    CHECK(named.size() >= 6);
    for (const auto& source : named) {
        INFO(source);
        CHECK(listed.count(source) == 1);
    }
}

TEST_CASE("the work list names what is new and what has to change") {
    job::Job job = sample_job();
    job.sections[3].existing = false;
    // With the air changes of the replaced table the first length is past a limit.
    job.conditions.air_by = reference::AirBy::bs_5449_1990;
    const study::Study s = studied(job);
    const auto tables = all_of<report::Table>(composed(s).parts[installer]);
    const auto lines = lines_of({"", "", {tables.at(0)}}, true);
    REQUIRE(tables.at(0).caption == "What is new and what has to change");
    CHECK(!line_with(lines, {"S4", "new in this design"}).empty());
    CHECK(!line_with(lines, {"Study", "no emitter"}).empty());
    CHECK(!line_with(lines, {"R1", "at 50 K or more"}).empty());
    CHECK(!line_with(lines, {"S1", "limit", "22 mm copper"}).empty());
}

TEST_CASE("worked examples come from the calculation itself") {
    const auto shown = all_of<report::Derivation>(composed(sample()).parts[assessor]);
    REQUIRE(shown.size() == 4);
    const auto* duty = sample().trace.find(design::Subject::circulator, "duty");
    REQUIRE(duty != nullptr);
    REQUIRE(shown.back().steps.size() == duty->steps.size());
    for (std::size_t i = 0; i < duty->steps.size(); ++i)
        CHECK(shown.back().steps[i].result == default_look().texts(duty->steps[i].result, {}));
}

TEST_CASE("the steps of a derivation are written by the template that the pack is printed by") {
    const auto* duty = sample().trace.find(design::Subject::circulator, "duty");
    REQUIRE(duty != nullptr);
    const auto own = templates::read_template(
        "own",
        [](const std::string& path) -> std::optional<std::string> {
            if (path == "own/pack.yaml") return "loopfolio_template: 1\n";
            if (path == "own/wording/steps_of_pump.yaml") return "total_flow: water in all\n";
            if (path == "own/wording/steps_of_emitters.yaml") {
                return "emitter_pressure_drop_formula: \"by {pipe}: {factor}\"\n";
            }
            if (path == "own/wording/names.yaml") return "22 mm copper: 22 mm tube\n";
            return std::nullopt;
        },
        report::vocabulary());
    REQUIRE(own.made);
    const auto shown = all_of<report::Derivation>(composed(sample(), *own.made).parts[assessor]);
    CHECK(shown.back().steps.at(0).what == "water in all");
    CHECK(own.made->texts(duty->steps.at(0).what, {}) == "water in all");
    CHECK(templates::default_words()(duty->steps.at(0).what, {}) == "total flow");
    bool renamed = false;
    for (const auto& derivation : shown) {
        for (const auto& step : derivation.steps) renamed = renamed || has(step.formula, "by 22 mm tube: ");
    }
    CHECK(renamed);
}

TEST_CASE("each part stands alone: it says whose house, which revision and what signing means") {
    for (const std::size_t i : {household, installer, assessor}) {
        auto look = default_look();
        look.parts = {look.parts[summary], look.parts[i]};  // as `--part` does
        const auto pack = composed(sample(), look);
        REQUIRE(pack.parts.size() == 2);
        const auto all = joined(lines_of(pack.parts[0], true)) + joined(lines_of(pack.parts[1], true));
        CHECK(has(all, "4 Example Road"));
        CHECK(has(all, "EX-104, revision A"));
        CHECK(all_of<report::SignOff>(pack.parts[1]).size() == 1);
        CHECK(all_of<report::VerdictKey>(pack.parts[1]).size() == 1);
        CHECK(all_of<report::Paragraph>(pack.parts[0]).at(0).lead);
    }
}

TEST_CASE("every loss factor that the pressure drops rest on is printed with its count") {
    const auto tables = all_of<report::Table>(composed(sample()).parts.at(assessor));
    const auto found = std::find_if(tables.begin(), tables.end(),
                                    [](const report::Table& t) { return t.caption == "Loss factors used"; });
    REQUIRE(found != tables.end());
    std::map<std::string, int> counts;
    for (const auto& section : sample().house.values.sections) {
        for (const auto& f : section.fittings) counts[f.kind] += f.count;
    }
    for (const auto& emitter : sample().house.values.emitters) {
        for (const auto& f : emitter.fittings) counts[f.kind] += f.count;
    }
    for (const auto& [kind, count] : counts) {
        const auto* fitting = reference::find_fitting(kind);
        if (fitting == nullptr) continue;  // a factor that the job gives
        const auto line = std::string{fitting->label} + " | " + fixed(fitting->zeta, 2) + " | ";
        const bool printed = std::any_of(found->rows.begin(), found->rows.end(), [&](const report::Row& row) {
            return text_of(row).starts_with(line) && row.cells.at(3).text == fixed(count, 0);
        });
        INFO(kind);
        CHECK(printed);
    }
}

TEST_CASE("the balancing table stands in the order of the work, with the changes made") {
    const auto tables = all_of<report::Table>(composed(sample()).parts.at(installer));
    const auto found = std::find_if(tables.begin(), tables.end(), [](const report::Table& t) {
        return t.caption == "Balancing, in the order of the work";
    });
    REQUIRE(found != tables.end());
    const auto& operation = sample().operation;
    REQUIRE(operation.changes.any());
    CHECK(found->note.find("With the changes of the work list made") != std::string::npos);
    REQUIRE(found->rows.size() == operation.changed.valves.size());
    for (std::size_t i = 0; i < found->rows.size(); ++i) {
        const auto& valve = operation.changed.valves[i];
        CHECK(found->rows[i].cells[1].text ==
              sample().house.values.emitters[static_cast<std::size_t>(valve.emitter)].id);
        CHECK((valve.kv == 0.0) == (found->rows[i].cells[5].text == "open"));
        // The valves are sorted by the resistance to add, the smallest first.
        if (i > 0) CHECK(valve.added >= operation.changed.valves[i - 1].added);
    }
}

TEST_CASE("the pack says in one plain sentence what happens if nothing is changed") {
    const auto& s = sample();
    const auto words = joined(lines_of(composed(s).parts[summary], false));
    const auto& state = s.operation.states.front();
    const auto worst = static_cast<std::size_t>(state.least_served);
    REQUIRE(state.rooms[worst].temperature < s.house.values.rooms[worst].temperature.value);
    CHECK(words.find("If nothing were changed, with every valve fully open, ") != std::string::npos);
    const auto reached = text(state.rooms[worst].temperature, unit::celsius, 1);
    const auto at = words.find(s.house.values.rooms[worst].name);
    REQUIRE(at != std::string::npos);
    CHECK(words.find("would reach only " + reached, at) != std::string::npos);
}
