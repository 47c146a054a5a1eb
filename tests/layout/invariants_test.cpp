// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout_support.hpp"

#include "support/catch.hpp"

#include <limits>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

void check_sound(const report::Report& report) {
    const FixedWidth measurer;
    const layout::Pages pages = layout::lay_out(report, measurer);
    REQUIRE_FALSE(pages.pages.empty());
    const auto found = faults(pages, measurer);
    for (std::size_t i = 0; i < std::min<std::size_t>(found.size(), 5); ++i) UNSCOPED_INFO(found[i]);
    CHECK(found.empty());
}

report::PipeTree chain(int nodes) {
    report::PipeTree tree;
    for (int i = 0; i < nodes; ++i) {
        report::PipeTree::Node node;
        node.label = "J" + std::to_string(i);
        node.detail = "tee";
        node.parent = i - 1;
        node.pipe_label = "A" + std::to_string(i) + " · 22\u00a0mm · 6.2\u00a0kW";
        tree.nodes.push_back(node);
    }
    return tree;
}

}  // namespace

TEST_CASE("the checker sees what it is there to see") {
    const FixedWidth measurer;
    layout::Pages pages;
    layout::Page page;
    page.items = {layout::TextItem{{100, 100}, "heat", layout::Face::regular, 10.0, 20.0, {}},
                  layout::TextItem{{110, 105}, "flow", layout::Face::regular, 10.0, 20.0, {}},
                  layout::TextItem{{520, 300}, "wider", layout::Face::regular, 10.0, 25.0, {}},
                  layout::TextItem{{100, 400}, "\xc3", layout::Face::regular, 10.0, 9.0, {}}};
    pages.pages.push_back(page);
    const auto found = faults(pages, measurer);
    REQUIRE(found.size() == 4);
    CHECK(found[0].find("outside the margins") == 0);
    CHECK(found[1].find("broken character") == 0);
    CHECK(found[2].find("not the measured width") == 0);
    CHECK(found[3] == "page 1: 'heat' over 'flow'");
}

TEST_CASE("reports of all kinds stay inside their frames and nothing overlaps") {
    for (unsigned number = 0; number < 40; ++number) {
        INFO("report " << number);
        check_sound(random_report(number));
    }
}

TEST_CASE("a word of 300 letters stays inside its frame in every place") {
    const std::string monster(300, 'm');
    const std::string accents = [] {
        std::string out;
        for (int i = 0; i < 200; ++i) out += "e\u0301";
        return out;
    }();
    for (const std::string& word : {monster, accents}) {
        report::Table table = plain_table(3);
        table.caption = table.note = word;
        table.columns[0].head = table.columns[1].unit = word;
        table.rows[1].cells[1].text = word;
        report::PipeTree tree = chain(4);
        for (auto& node : tree.nodes) node.label = node.detail = node.pipe_label = word;
        report::Report report = report_of(
            {report::Heading{1, word}, report::Paragraph{word}, report::List{{word}, true}, report::Caution{word, word},
             report::KeyFigures{{{word, word}, {word, word}}}, table, report::Facts{{{word, word}}}, tree,
             report::BarChart{word, word, {word, word}, {{word, {1.0, 2.0}, {}}}, 0, ""},
             report::Checklist{{{word, word}}}, report::SignOff{word, {word}},
             report::Derivation{word, {{word, word, word, word}}}});
        report.title = report.author = report.header_left = report.header_right = report.footer = word;
        report.parts[0].title = word;
        check_sound(report);
    }
}

TEST_CASE("reports of nothing are pages all the same") {
    SECTION("nothing at all") { check_sound({}); }
    SECTION("parts of nothing") {
        report::Report report;
        report.parts.resize(2);
        report.parts[0].blocks = {report::Table{},      report::List{},      report::KeyFigures{}, report::Facts{},
                                  report::BarChart{},   report::PipeTree{},  report::Checklist{},  report::SignOff{},
                                  report::Derivation{}, report::Paragraph{}, report::Heading{},    report::PageBreak{}};
        check_sound(report);
    }
}

TEST_CASE("hostile content stays inside its frame") {
    SECTION("a chart of 300 rooms") {
        report::BarChart chart;
        chart.series = {"heat loss", "output"};
        for (int i = 0; i < 300; ++i) {
            chart.groups.push_back({"Room " + std::to_string(i), {i * 7.0, i * 6.0}, {}});
        }
        check_sound(report_of({chart}));
    }
    SECTION("bars beyond all measure") {
        const double most = std::numeric_limits<double>::max();
        check_sound(report_of({report::BarChart{"", "W", {"a"}, {{"x", {most}, {}}, {"y", {-most}, {}}}, 9, ""}}));
        check_sound(report_of({report::BarChart{"", "W", {"a"}, {{"x", {1e-300}, {}}}, 9, ""}}));
        check_sound(report_of({report::BarChart{"", "W", {"a"}, {{"x", {9e14}, {}}, {"y", {-9e14}, {}}}, 9, ""}}));
    }
    SECTION("a tree of 50 levels, and of 400") {
        check_sound(report_of({chain(50)}));
        check_sound(report_of({chain(400)}));
    }
    SECTION("a table row taller than a page") {
        report::Table table = plain_table(4);
        table.rows[1].cells[0].text = words(4000);
        check_sound(report_of({table}));
    }
    SECTION("a table of 90 columns") {
        report::Table table;
        report::Row row;
        for (int i = 0; i < 90; ++i) {
            table.columns.push_back({"head " + std::to_string(i), "kPa", report::Align::decimal, 1.0});
            row.cells.push_back({"1234.5", Verdict::keep});
        }
        table.rows.assign(5, row);
        check_sound(report_of({table}));
    }
    SECTION("a caution, a title and a head of many pages") {
        report::Table table = plain_table(5);
        table.columns[0].head = words(3000);
        report::Report report = report_of({report::Caution{"Hot", words(5000)}, table});
        report.title = words(900);
        check_sound(report);
    }
}
