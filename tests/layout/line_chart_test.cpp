// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/label_places.hpp"
#include "layout/layout_support.hpp"
#include "layout/scale.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace loopfolio;
using namespace loopfolio::layout;
using report::LineChart;

namespace {

LineChart chart_of_two() {
    LineChart chart;
    chart.caption = "Head over flow";
    chart.x = {"flow", "L/min", true};
    chart.y = {"head", "kPa", true};
    LineChart::Series falling{"circulator", {}, LineChart::Dash::solid};
    LineChart::Series rising{"pipework", {}, LineChart::Dash::dashed};
    for (int i = 0; i <= 20; ++i) {
        falling.points.push_back({1.0 * i, 60.0 - 0.14 * i * i});
        rising.points.push_back({1.0 * i, 0.12 * i * i});
    }
    chart.series = {falling, rising};
    chart.marks = {{"duty", {15.2, 27.7}}, {"design", {12.0, 17.3}}};
    return chart;
}

std::vector<std::string> faults_of(const LineChart& chart) {
    const tests::FixedWidth measurer;
    const auto pages = lay_out(tests::report_of({chart}), measurer);
    return tests::faults(pages, measurer);
}

}  // namespace

TEST_CASE("ticks are round, few, and take in the whole range") {
    for (const double low : {-37.0, 0.0, 0.013}) {
        for (const double width : {0.0017, 0.3, 1.0, 8.6, 97.0, 12'345.0}) {
            const Scale s = scale_for(low, low + width, 8.0);
            CAPTURE(low, width, s.step);
            CHECK(s.low <= low + 1e-6 * width);
            CHECK(s.high >= low + width - 1e-6 * width);
            CHECK((s.high - s.low) / s.step <= 10.0 + 1e-9);
            const double mantissa = s.step / std::pow(10.0, std::floor(std::log10(s.step) + 1e-9));
            CHECK(std::min({std::abs(mantissa - 1.0), std::abs(mantissa - 2.0), std::abs(mantissa - 5.0)}) < 1e-9);
        }
    }
    CHECK(scale_for(3.0, 3.0, 5.0).high > 3.0);
}

TEST_CASE("lines are labelled directly, every series and mark once") {
    const tests::FixedWidth measurer;
    const auto pages = lay_out(tests::report_of({chart_of_two()}), measurer);
    for (const auto* label : {"circulator", "pipework", "duty", "design"}) {
        std::size_t found = 0;
        for (const auto& page : pages.pages) {
            for (const auto& t : tests::texts(page, label)) found += t.text == label ? 1 : 0;
        }
        CAPTURE(label);
        CHECK(found == 1);
    }
    CHECK(tests::faults(pages, measurer).empty());
}

TEST_CASE("labels find room beside what they name, off lines and each other") {
    const Box plot{0.0, 0.0, 300.0, 200.0};
    const Obstacles obstacles{{{{0.0, 100.0}, {300.0, 100.0}}}, {{150.0, 100.0}}, 2.5};
    const std::vector<LabelWish> wishes(4, {{{150.0, 100.0}}, 40.0, 10.0, 4.0, -1});
    const auto places = place_labels(plot, obstacles, wishes);
    REQUIRE(places.size() == 4);
    for (std::size_t i = 0; i < places.size(); ++i) {
        REQUIRE(places[i].has_value());
        const Box& box = places[i]->box;
        CHECK((box.left >= plot.left && box.right <= plot.right && box.top >= plot.top && box.bottom <= plot.bottom));
        CHECK((box.bottom <= 100.0 || box.top >= 100.0));
        for (std::size_t k = 0; k < i; ++k) {
            const Box& other = places[k]->box;
            CHECK((box.right <= other.left || box.left >= other.right || box.bottom <= other.top ||
                   box.top >= other.bottom));
        }
    }
}

TEST_CASE("a label stands nearer to its own mark than to any other") {
    const Obstacles obstacles{{}, {{100.0, 100.0}, {112.0, 108.0}, {124.0, 116.0}}, 2.5};
    std::vector<LabelWish> wishes;
    for (const Point& mark : obstacles.marks) wishes.push_back({{mark}, 60.0, 10.0, 5.0, -1});
    const auto places = place_labels({0.0, 0.0, 300.0, 200.0}, obstacles, wishes);
    for (std::size_t i = 0; i < places.size(); ++i) {
        REQUIRE(places[i].has_value());
        const auto off = [&](Point mark) {
            const Box& box = places[i]->box;
            return std::hypot(mark.x - std::clamp(mark.x, box.left, box.right),
                              mark.y - std::clamp(mark.y, box.top, box.bottom));
        };
        for (std::size_t k = 0; k < places.size(); ++k) {
            if (k != i) CHECK(off(obstacles.marks[k]) > off(obstacles.marks[i]));
        }
    }
}

TEST_CASE("a label for which the plot has no room is left out") {
    const std::vector<LabelWish> wishes(5, {{{20.0, 10.0}}, 40.0, 10.0, 4.0, -1});
    const auto places = place_labels({0.0, 0.0, 41.0, 30.0}, {}, wishes);
    const auto placed = std::count_if(places.begin(), places.end(),
                                      [](const auto& place) { return place.has_value(); });
    CHECK(placed >= 1);
    CHECK(placed <= 3);
}

TEST_CASE("a point that is no number parts a line, and a chart of marks alone is drawn") {
    auto chart = chart_of_two();
    const auto lines_in = [](const LineChart& drawn) {
        const Page page = lay_out(tests::report_of({drawn}), tests::FixedWidth{}).pages.front();
        return std::count_if(page.items.begin(), page.items.end(), [](const Item& item) {
            const auto* path = std::get_if<PathItem>(&item);
            return path != nullptr && !path->closed && path->points.size() > 2;
        });
    };
    CHECK(lines_in(chart) == 2);
    chart.series[0].points[9].y = std::numeric_limits<double>::quiet_NaN();
    CHECK(lines_in(chart) == 3);
    chart.series.clear();
    CHECK(lines_in(chart) == 0);
    const Page page = lay_out(tests::report_of({chart}), tests::FixedWidth{}).pages.front();
    CHECK(tests::texts(page, "duty").size() == 1);
    CHECK(tests::texts(page, "flow, L/min").size() == 1);
}

TEST_CASE("series of one dash differ in tone and width") {
    auto chart = chart_of_two();
    chart.series[1].dash = LineChart::Dash::solid;
    const Page page = lay_out(tests::report_of({chart}), tests::FixedWidth{}).pages.front();
    std::vector<PathItem> lines;
    for (const Item& item : page.items) {
        const auto* path = std::get_if<PathItem>(&item);
        if (path != nullptr && !path->closed && path->points.size() > 2) lines.push_back(*path);
    }
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].line_width > 1.3 * lines[1].line_width);
    CHECK(lines[0].stroke.red != lines[1].stroke.red);
}

TEST_CASE("charts with hardly anything in them, or far too much, are set without a fault") {
    auto chart = chart_of_two();
    SECTION("nothing at all") { chart.series.clear(); }
    SECTION("a series without points") { chart.series[0].points.clear(); }
    SECTION("one value") {
        for (auto& p : chart.series[0].points) p.y = 7.0;
        chart.series.resize(1);
    }
    SECTION("marks on top of each other") { chart.marks.assign(6, chart.marks.front()); }
    SECTION("what is no number") {
        chart.series[0].points[3].y = std::numeric_limits<double>::quiet_NaN();
        chart.marks[0].at.x = std::numeric_limits<double>::infinity();
    }
    SECTION("figures of many digits") {
        for (auto& series : chart.series) {
            for (auto& p : series.points) p = {p.x * 4e12, p.y * 1e12};
        }
        chart.marks.clear();
    }
    SECTION("far more than the plot can name") { chart.marks.assign(40, chart.marks.front()); }
    SECTION("very long labels") {
        for (auto& s : chart.series) s.label = std::string(300, 'w');
        chart.x.title = chart.y.title = std::string(400, 'x');
        chart.marks[0].label = "a label of very many words that goes on and on and will not end before the page does";
    }
    CHECK(faults_of(chart) == std::vector<std::string>{});
}
