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
    LabelPlaces places{plot};
    places.avoid_line({{0.0, 100.0}, {300.0, 100.0}});
    std::vector<Box> taken;
    for (int i = 0; i < 6; ++i) {
        const auto at = places.best({{150.0, 100.0}}, 40.0, 10.0, 4.0);
        CHECK(at.box.left >= plot.left);
        CHECK(at.box.right <= plot.right);
        CHECK(at.box.top >= plot.top);
        CHECK(at.box.bottom <= plot.bottom);
        for (const auto& other : taken) {
            const bool apart = at.box.right <= other.left || at.box.left >= other.right || at.box.bottom <= other.top ||
                               at.box.top >= other.bottom;
            CHECK(apart);
        }
        CHECK((at.box.bottom <= 100.0 || at.box.top >= 100.0));
        taken.push_back(at.box);
        places.avoid(at.box);
    }
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
    SECTION("very long labels") {
        for (auto& s : chart.series) s.label = std::string(300, 'w');
        chart.x.title = chart.y.title = std::string(400, 'x');
        chart.marks[0].label = "a label of very many words that goes on and on and will not end before the page does";
    }
    CHECK(faults_of(chart) == std::vector<std::string>{});
}
