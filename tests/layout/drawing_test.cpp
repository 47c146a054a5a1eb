// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/tree.hpp"

#include "layout_support.hpp"

#include "support/catch.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

using namespace loopfolio;
using namespace loopfolio::layout;
using namespace loopfolio::tests;

namespace {

const FixedWidth measurer;

report::PipeTree tree_of(const std::vector<int>& parents) {
    report::PipeTree tree;
    tree.caption = "Pipework";
    for (std::size_t i = 0; i < parents.size(); ++i) {
        report::PipeTree::Node node;
        node.label = "N" + std::to_string(i) + ".";
        node.parent = parents[i];
        node.pipe_label = "P" + std::to_string(i) + ".";
        tree.nodes.push_back(node);
    }
    return tree;
}

/// Twelve emitters, each on a tee of one main, as in a semi-detached house.
std::vector<int> house() {
    std::vector<int> parents{-1};
    int main = 0;
    for (int i = 0; i < 12; ++i) {
        parents.push_back(main);
        main = static_cast<int>(parents.size()) - 1;
        parents.push_back(main);
    }
    return parents;
}

std::vector<PathItem> dashed(const Page& page) {
    std::vector<PathItem> out;
    for (const Item& item : page.items) {
        const auto* path = std::get_if<PathItem>(&item);
        if (path != nullptr && !path->dashes.empty()) out.push_back(*path);
    }
    return out;
}

}  // namespace

TEST_CASE("a tree needs few columns, however long its main is") {
    const TreeShape main = shape_of(tree_of(house()));
    CHECK(main.columns == 1);
    std::vector<int> forked{-1};
    for (int i = 1; i < 127; ++i) forked.push_back((i - 1) / 2);
    CHECK(shape_of(tree_of(forked)).columns <= 6);  // log2 of its 64 ends
}

TEST_CASE("every node has its place in the tree, also one whose parent is not before it") {
    const TreeShape shape = shape_of(tree_of({-1, 0, 1, 1, 9, -3, 6}));
    std::vector<int> seen(7, 0);
    for (const auto& node : shape.nodes) {
        for (const int branch : node.branches) ++seen[static_cast<std::size_t>(branch)];
        if (node.main >= 0) ++seen[static_cast<std::size_t>(node.main)];
    }
    CHECK(seen == std::vector<int>{0, 1, 1, 1, 1, 1, 1});
}

TEST_CASE("a house is drawn on one page with every label once") {
    const report::PipeTree tree = tree_of(house());
    const Pages pages = lay_out(report_of({report::PageBreak{}, tree}), measurer);
    REQUIRE(pages.pages.size() == 2);
    for (std::size_t i = 0; i < tree.nodes.size(); ++i) {
        INFO(i);
        CHECK(texts(pages.pages[1], "N" + std::to_string(i) + ".").size() == 1);
        if (i > 0) CHECK(texts(pages.pages[1], "P" + std::to_string(i) + ".").size() == 1);
    }
    for (const TextItem& item : texts(pages.pages[1])) CHECK(item.size >= 6.5);
}

TEST_CASE("a tree that goes on says where its pipes come from") {
    std::vector<int> parents{-1};
    for (int i = 0; i < 120; ++i) parents.push_back(i);
    const Pages pages = lay_out(report_of({tree_of(parents)}), measurer);
    REQUIRE(pages.pages.size() > 2);
    for (std::size_t i = 1; i < pages.pages.size(); ++i) {
        CHECK(texts(pages.pages[i], "(continued)").size() == 1);
        CHECK(texts(pages.pages[i], "from above: N").size() == 1);
    }
}

TEST_CASE("new pipes are dashed, the index circuit is named and on a ground of its own") {
    report::PipeTree tree = tree_of({-1, 0, 1, 1});
    const auto plain = lay_out(report_of({tree}), measurer).pages[0];
    CHECK(dashed(plain).empty());
    CHECK(texts(plain, "index circuit").empty());
    tree.nodes[2].existing = false;
    tree.nodes[1].on_index_circuit = tree.nodes[2].on_index_circuit = true;
    const auto marked = lay_out(report_of({tree}), measurer).pages[0];
    CHECK(dashed(marked).size() == 2);                  // the pipe, and its line in the legend
    CHECK(texts(marked, "index circuit").size() == 2);  // at the emitter, and in the legend
    CHECK(texts(marked, "new pipe").size() == 1);
}

TEST_CASE("bars are as long as their values, from a common zero") {
    report::BarChart chart;
    chart.unit = "W";
    chart.series = {"heat loss", "output"};
    chart.groups = {{"Hall", {400.0, 800.0}, {}}, {"Attic", {-200.0, std::numeric_limits<double>::quiet_NaN()}, {}}};
    const Pages pages = lay_out(report_of({report::PageBreak{}, chart}), measurer);
    std::vector<Box> bars;
    for (const Item& item : pages.pages[1].items) {
        const auto* path = std::get_if<PathItem>(&item);
        if (path == nullptr || !path->filled || path->fill.red > 0.99) continue;
        bars.push_back({path->points[0].x, path->points[0].y, path->points[2].x, path->points[2].y});
    }
    REQUIRE(bars.size() == 3);
    const double zero = bars[0].left, per_watt = (bars[0].right - zero) / 400.0;
    CHECK(bars[1].right - zero == Approx(800.0 * per_watt).margin(0.5));
    CHECK(bars[2].right == Approx(zero));
    CHECK(zero - bars[2].left == Approx(200.0 * per_watt));
    CHECK(texts(pages.pages[1], "\u2212200").size() == 2);  // at the bar, and at the axis
    CHECK(texts(pages.pages[1], "800").size() == 2);
}

TEST_CASE("series are named at their first bars, and above the chart where they have no room there") {
    report::BarChart chart;
    chart.series = {"heat lost", "heat given"};
    chart.groups = {{"Hall", {400.0, std::numeric_limits<double>::quiet_NaN()}, {}},
                    {"Study", {700.0, 900.0}, {}},
                    {"Attic", {100.0, 80.0}, {}}};
    const auto swatches = [](const Page& page) {
        return std::count_if(page.items.begin(), page.items.end(), [](const Item& item) {
            const auto* path = std::get_if<PathItem>(&item);
            return path != nullptr && path->closed && path->filled && path->fill.red < 0.99 &&
                   path->points[2].x - path->points[0].x < 16.5 && path->points[2].x - path->points[0].x > 15.0;
        });
    };
    Page page = lay_out(report_of({report::PageBreak{}, chart}), measurer).pages[1];
    for (const auto& [name, value] : {std::pair{"heat lost", "700"}, std::pair{"heat given", "900"}}) {
        REQUIRE(texts(page, name).size() == 1);
        const TextItem label = texts(page, name)[0];
        const auto beside = texts(page, value);  // at the bar, and perhaps at the axis
        CHECK(std::any_of(beside.begin(), beside.end(), [&](const TextItem& item) {
            return item.baseline.y == Approx(label.baseline.y) && item.baseline.x < label.baseline.x;
        }));
    }
    CHECK(swatches(page) == 0);
    chart.series[1] = std::string(100, 'x');
    page = lay_out(report_of({report::PageBreak{}, chart}), measurer).pages[1];
    CHECK(swatches(page) == 2);
    CHECK(texts(page, "heat lost").size() == 1);
}

TEST_CASE("the end of a ring names where its pipe goes on, with two bars and no sign") {
    report::PipeTree tree = tree_of({-1, 0, 1, 1});
    tree.nodes[2].kind = report::PipeTree::Node::Kind::joint;
    tree.nodes[2].label = "on to J5";
    const auto count = [&](const report::PipeTree& drawn, auto is) {
        const Page page = lay_out(report_of({report::PageBreak{}, drawn}), measurer).pages[1];
        return std::count_if(page.items.begin(), page.items.end(), is);
    };
    const auto bar = [](const Item& item) {
        const auto* path = std::get_if<PathItem>(&item);
        return path != nullptr && path->points.size() == 2 && path->points[0].x == path->points[1].x &&
               std::abs(path->points[1].y - path->points[0].y - 9.0) < 1e-9;
    };
    const auto circle = [](const Item& item) { return std::holds_alternative<CircleItem>(item); };
    CHECK(count(tree, bar) == 2);
    auto open_end = tree;
    open_end.nodes[2].kind = report::PipeTree::Node::Kind::junction;
    CHECK(count(open_end, bar) == 0);
    CHECK(count(open_end, circle) == count(tree, circle) + 1);
    const Page page = lay_out(report_of({report::PageBreak{}, tree}), measurer).pages[1];
    CHECK(texts(page, "on to J5").size() == 1);
}

TEST_CASE("a one-pipe loop of twelve emitters is drawn whole, every label once") {
    report::PipeTree tree = tree_of({-1});
    int last = 0;
    const auto add = [&](int parent, const std::string& label, report::PipeTree::Node::Kind kind) {
        auto node = tree.nodes.front();
        node.label = label;
        node.kind = kind;
        node.parent = parent;
        node.detail = kind == report::PipeTree::Node::Kind::emitter ? "500\u00a0W · 2.4\u00a0L/min" : "";
        node.pipe_label = "22\u00a0mm copper · 4.2\u00a0kW";
        node.verdict = Verdict::keep;
        tree.nodes.push_back(node);
        return static_cast<int>(tree.nodes.size()) - 1;
    };
    using Kind = report::PipeTree::Node::Kind;
    for (int i = 1; i <= 12; ++i) {
        const std::string number = std::to_string(i);
        last = add(last, "K" + number + "a.", Kind::junction);
        add(last, "W" + number + ".", Kind::emitter);
        last = add(last, "K" + number + "b.", Kind::junction);
    }
    add(last, "back to the heat source", Kind::joint);
    const Pages pages = lay_out(report_of({report::PageBreak{}, tree}), measurer);
    CHECK(faults(pages, measurer) == std::vector<std::string>{});
    std::string all;
    for (const Page& page : pages.pages) all += words_of(page);
    for (const auto& node : tree.nodes) {
        if (node.parent < 0) continue;
        INFO(node.label);
        const auto first = all.find("\n" + node.label + "\n");
        REQUIRE(first != std::string::npos);
        CHECK(all.find("\n" + node.label + "\n", first + 1) == std::string::npos);
    }
}

TEST_CASE("a long chart goes on with its axis and series") {
    report::BarChart chart;
    chart.caption = "Rooms";
    chart.series = {"heat loss"};
    for (int i = 0; i < 90; ++i) chart.groups.push_back({"Room " + std::to_string(i), {1.0 * i}, {}});
    const Pages pages = lay_out(report_of({chart}), measurer);
    REQUIRE(pages.pages.size() > 1);
    for (const Page& page : pages.pages) CHECK(texts(page, "heat loss").size() == 1);
}
