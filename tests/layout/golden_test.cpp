// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout_support.hpp"

#include "support/catch.hpp"

#include <cstdlib>
#include <fstream>
#include <iterator>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// Compares the report's layout with tests/data/layout/NAME.txt. With LOOPFOLIO_ACCEPT=1 in the environment it writes
/// the file instead; read it before committing it.
void check_golden(const std::string& name, const report::Report& report) {
    const std::string path = std::string{LOOPFOLIO_TEST_DATA} + "/layout/" + name + ".txt";
    const std::string found = layout::dump(layout::lay_out(report, FixedWidth{}));
    const char* accept = std::getenv("LOOPFOLIO_ACCEPT");
    if (accept != nullptr && std::string{accept} == "1") std::ofstream{path, std::ios::binary} << found;
    std::ifstream in{path, std::ios::binary};
    const std::string expected{std::istreambuf_iterator<char>{in}, {}};
    CHECK(found == expected);
}

}  // namespace

TEST_CASE("pages as text: running text") {
    check_golden(
        "text",
        report_of(
            {report::Paragraph{"Your house needs **11.4\u00a0kW** of heat on the coldest day.", true},
             report::KeyFigures{{{"11.4\u00a0kW", "heat the house needs"}, {"3 of 12", "radiators to change"}}},
             report::Heading{1, "What changes"},
             report::List{{"The radiator in the hall.", "Two lengths of pipe under the landing floor."}, true},
             report::Caution{"Hot water", "Water above 60\u00a0°C scalds. Only a competent person may set the valve."},
             report::Facts{{{"Address", "3 Mill Lane, Overwater"}, {"Built", "1936"}}}, report::VerdictKey{}}));
}

TEST_CASE("pages as text: tables and forms") {
    report::Table table = plain_table(3);
    table.rows.insert(table.rows.begin(), {{{"Ground floor", {}}}, false, true});
    table.rows.push_back({{{"Sum", {}}, {"600.5", {}}}, true, false});
    table.rows[1].cells[0].verdict = Verdict::keep_noted;
    table.note = "From the survey.";
    check_golden(
        "tables",
        report_of({table,
                   report::Derivation{"Flow", {{"Flow from the load", "q = P / (c dT)", "0.198 l/s", "[water-1]"}}},
                   report::Checklist{{{"System flushed", ""}, {"Static pressure, cold", "bar"}}},
                   report::SignOff{"Signed for the work as listed.", {"Installer"}}}));
}

TEST_CASE("pages as text: drawings") {
    report::BarChart chart{"Rooms", "W", {"heat loss", "output"}, {{"Hall", {400.0, 600.0}, Verdict::keep}}, 0, ""};
    report::PipeTree tree;
    using Kind = report::PipeTree::Node::Kind;
    tree.caption = "Pipework";
    tree.nodes = {
        {"Heat source", "12\u00a0kW", Kind::source, -1, "", 1.0, {}, true, true, {}},
        {"J1", "", Kind::junction, 0, "A1 · 28\u00a0mm", 1.0, Verdict::keep, true, true, {}},
        {"Hall", "0.9\u00a0kW", Kind::emitter, 1, "A2 · 15\u00a0mm", 0.5, Verdict::change, true, false,
         Verdict::change},
        {"Study", "", Kind::emitter, 1, "A3 · 10\u00a0mm", 0.4, Verdict::keep_noted, false, true, Verdict::keep},
    };
    check_golden("drawings", report_of({chart, tree}));
}

TEST_CASE("pages as text: ranges") {
    report::RangeChart chart;
    chart.caption = "What moves the heat loss";
    chart.unit = "W";
    chart.axis = "change of the heat loss";
    chart.low_name = "at the low end";
    chart.high_name = "at the high end";
    chart.rows = {{"Loft", "100\u00a0mm", "300\u00a0mm", 180.0, 40.0},
                  {"Walls of solid brick", "1.4", "2.1", -640.0, 580.0},
                  {"Boiler", "as found", "new", 0.0, -90.0}};
    check_golden("ranges", report_of({chart}));
}
