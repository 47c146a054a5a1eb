// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/style.hpp"
#include "layout_support.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace loopfolio;
using namespace loopfolio::layout;
using namespace loopfolio::tests;
using report::RangeChart;

namespace {

const FixedWidth measurer;
constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

RangeChart chart_of(std::vector<RangeChart::Row> rows) {
    return {"What moves the heat loss",
            "W",
            "change of the heat loss",
            "at the low end",
            "at the high end",
            std::move(rows),
            0,
            "The walls move it most."};
}

/// The page of a chart that is alone on it, so that everything drawn there belongs to the chart.
Page page_of(const RangeChart& chart) { return lay_out(report_of({report::PageBreak{}, chart}), measurer).pages.at(1); }

struct Bar {
    Box box;
    bool solid = false;
};

std::vector<Bar> bars_on(const Page& page) {
    std::vector<Bar> bars;
    for (const Item& item : page.items) {
        const auto* path = std::get_if<PathItem>(&item);
        if (path == nullptr || !path->filled) continue;
        const bool solid = path->fill == style::accent;
        if (!solid && !(path->fill == style::glow)) continue;
        bars.push_back({{path->points[0].x, path->points[0].y, path->points[2].x, path->points[2].y}, solid});
    }
    return bars;
}

/// The centre of a tick's figure. The axis is above the bars, so the first text with that figure is the tick's.
double tick_at(const Page& page, const std::string& figure) {
    for (const TextItem& item : texts(page, figure)) {
        if (item.text == figure) return item.baseline.x + item.width / 2.0;
    }
    FAIL("no tick " << figure);
    return 0.0;
}

TextItem only(const Page& page, const std::string& words) {
    const auto found = texts(page, words);
    REQUIRE(found.size() == 1);
    return found.front();
}

/// The faults of all pages, including words over bars.
std::vector<std::string> faults_of(const RangeChart& chart) {
    constexpr double touching = 0.5;
    const Pages pages = lay_out(report_of({chart}), measurer);
    auto found = faults(pages, measurer);
    for (const Page& page : pages.pages) {
        const auto bars = bars_on(page);
        for (const TextItem& item : texts(page)) {
            const double top = item.baseline.y - 0.72 * item.size, bottom = item.baseline.y + 0.2 * item.size;
            const auto covers = [&](const Bar& bar) {
                return item.baseline.x + item.width > bar.box.left + touching &&
                       item.baseline.x < bar.box.right - touching && bottom > bar.box.top + touching &&
                       top < bar.box.bottom - touching;
            };
            if (std::any_of(bars.begin(), bars.end(), covers)) found.push_back("over a bar: " + item.text);
        }
    }
    return found;
}

RangeChart many(int rows) {
    RangeChart chart = chart_of({});
    for (int i = 0; i < rows; ++i) {
        const double sign = i % 3 == 0 ? -1.0 : 1.0, other = i % 4 == 0 ? 1.0 : -1.0;
        const std::string number = std::to_string(i);
        const std::string label = "Input " + number + (i % 5 == 0 ? " with " + words(12) : "");
        chart.rows.push_back({label, number, number + ".5", sign * (20.0 + 31.0 * i), other * (9.0 + 17.0 * i)});
    }
    return chart;
}

}  // namespace

TEST_CASE("bars of ranges reach as far as the scale says, from zero, to the side of their sign") {
    const Page page = page_of(
        chart_of({{"Walls", "1.4", "2.1", -640.0, 580.0}, {"Outside", "-5", "-1", 260.0, -255.0}}));
    const double zero = tick_at(page, "0"), per_unit = (tick_at(page, "+400") - zero) / 400.0;
    CHECK(tick_at(page, "\u2212600") == Approx(zero - 600.0 * per_unit));
    const auto bars = bars_on(page);
    REQUIRE(bars.size() == 4);
    const double values[] = {-640.0, 580.0, 260.0, -255.0};
    for (std::size_t i = 0; i < bars.size(); ++i) {
        CAPTURE(i);
        const double tip = zero + values[i] * per_unit;
        CHECK(bars[i].box.left == Approx(std::min(zero, tip)).margin(0.5));  // margin of half an outline
        CHECK(bars[i].box.right == Approx(std::max(zero, tip)).margin(0.5));
        CHECK(bars[i].solid == (i % 2 == 1));  // solid for the high end
    }
    CHECK(bars[0].box.top == Approx(bars[1].box.top).margin(0.5));  // on one line
}

TEST_CASE("beyond each bar stand the input's value and the signed change") {
    const Page page = page_of(chart_of({{"Walls", "1.4", "2.1", -640.0, 580.0}}));
    const auto bars = bars_on(page);
    const TextItem low = only(page, "1.4 → \u2212640"), high = only(page, "2.1 → +580");
    CHECK(low.baseline.x + low.width < bars.at(0).box.left);
    CHECK(high.baseline.x > bars.at(1).box.right);
    CHECK(texts(page, "change of the heat loss, W").size() == 1);
}

TEST_CASE("the input that moves the figure most comes first") {
    const Page page = page_of(chart_of({{"Small", "1", "2", -10.0, 10.0},
                                        {"None", "1", "2", unknown, 0.0},
                                        {"One side", "1", "2", 150.0, 160.0},
                                        {"Both sides", "1", "2", 90.0, -80.0}}));
    double last = 0.0;
    for (const auto* label : {"Both sides", "One side", "Small", "None"}) {
        const double y = only(page, label).baseline.y;
        CHECK(y > last);
        last = y;
    }
}

TEST_CASE("two bars to the same side lie one below the other") {
    for (const double sign : {-1.0, 1.0}) {
        const Page page = page_of(chart_of({{"Loft", "100", "300", sign * 180.0, sign * 40.0}}));
        const auto bars = bars_on(page);
        REQUIRE(bars.size() == 2);
        CHECK(bars[0].box.bottom <= bars[1].box.top);
        CHECK_FALSE(bars[0].solid);
        const double near[] = {sign > 0.0 ? bars[0].box.left : bars[0].box.right,
                               sign > 0.0 ? bars[1].box.left : bars[1].box.right};
        CHECK(near[0] == Approx(near[1]).margin(0.5));
    }
}

TEST_CASE("a change of nothing, or none that is known, has words but no bar") {
    const Page page = page_of(chart_of({{"Curtains", "none", "lined", unknown, -12.0},
                                        {"Boiler", "old", "new", 0.0, 90.0},
                                        {"Fuel", "a", "b", 0.0, 0.0},
                                        {"Wind", "", "", unknown, unknown}}));
    CHECK(bars_on(page).size() == 2);
    const double zero = tick_at(page, "0");
    CHECK(only(page, "none → –").baseline.x > zero);  // the side that the bar leaves free
    const auto left_of_zero = [&](const TextItem& item) { return item.baseline.x + item.width < zero; };
    CHECK(left_of_zero(only(page, "old → 0")));
    CHECK(left_of_zero(only(page, "a → 0")));
    CHECK(only(page, "b → 0").baseline.x > zero);
    CHECK(texts(page, "–").size() == 1);
}

TEST_CASE("the ends are named once, at the first bar of each") {
    const Page page = page_of(chart_of({{"Boiler", "old", "new", unknown, 900.0},
                                        {"Walls", "1.4", "2.1", -640.0, 50.0},
                                        {"Floor", "1", "2", -30.0, 50.0}}));
    const TextItem low = only(page, "at the low end"), high = only(page, "at the high end");
    const auto stands_above = [](const TextItem& name, const TextItem& value) {
        return name.baseline.y < value.baseline.y && value.baseline.y - name.baseline.y < 12.0;
    };
    CHECK(stands_above(high, only(page, "new → +900")));
    CHECK(stands_above(low, only(page, "1.4 → \u2212640")));
}

TEST_CASE("a chart of ranges that goes on names its ends and its axis again") {
    const Pages pages = lay_out(report_of({many(90)}), measurer);
    REQUIRE(pages.pages.size() > 2);
    for (std::size_t p = 0; p < pages.pages.size(); ++p) {
        CAPTURE(p);
        for (const auto* words : {"at the low end", "at the high end", "change of the heat loss, W"}) {
            CHECK(texts(pages.pages[p], words).size() == 1);
        }
        CHECK(texts(pages.pages[p], "(continued)").size() == (p == 0 ? 0 : 1));
    }
    const auto figures = std::count_if(pages.structure.begin(), pages.structure.end(),
                                       [](const Element& e) { return e.role == Role::figure; });
    CHECK(figures == 1);
}

TEST_CASE("a chart of a normal number of inputs stays on its page") {
    CHECK(lay_out(report_of({report::PageBreak{}, many(25)}), measurer).pages.size() == 2);
}

TEST_CASE("charts of ranges are set without a fault, whatever is in them") {
    RangeChart chart = many(12);
    SECTION("any number of rows") {
        for (int rows = 0; rows <= 25; ++rows) CHECK(faults_of(many(rows)) == std::vector<std::string>{});
    }
    SECTION("all to one side") {
        for (auto& row : chart.rows) row.at_low = std::abs(row.at_low), row.at_high = std::abs(row.at_high);
    }
    SECTION("all to the other") {
        for (auto& row : chart.rows) row.at_low = -std::abs(row.at_low), row.at_high = -std::abs(row.at_high);
    }
    SECTION("equal ends") {
        for (auto& row : chart.rows) row.at_high = row.at_low;
    }
    SECTION("nothing moves") {
        for (auto& row : chart.rows) row.at_low = row.at_high = 0.0;
    }
    SECTION("nothing is known") {
        for (auto& row : chart.rows) row.at_low = row.at_high = unknown;
    }
    SECTION("one giant among dwarfs") { chart.rows[3].at_low = -4e9; }
    SECTION("beyond all measure") {
        const double most = std::numeric_limits<double>::max();
        chart.decimals = 9;
        chart.rows[0].at_low = 9.9e14, chart.rows[0].at_high = -9.9e14;
        chart.rows[1].at_low = most, chart.rows[1].at_high = -std::numeric_limits<double>::infinity();
    }
    SECTION("below all measure") {
        chart.decimals = 9;
        for (auto& row : chart.rows) row.at_low *= 1e-9, row.at_high *= 1e-320;
    }
    SECTION("words without end") {
        chart.axis = chart.unit = chart.low_name = chart.high_name = words(200);
        for (auto& row : chart.rows) row.label = row.low_label = row.high_label = words(80);
    }
    SECTION("words without a space") {
        chart.axis = chart.unit = chart.low_name = chart.high_name = std::string(300, 'w');
        for (auto& row : chart.rows) row.label = row.low_label = row.high_label = std::string(200, 'x');
    }
    SECTION("no words") {
        chart.axis = chart.unit = chart.low_name = chart.high_name = chart.caption = "";
        for (auto& row : chart.rows) row.label = row.low_label = row.high_label = "";
    }
    CHECK(faults_of(chart) == std::vector<std::string>{});
}

TEST_CASE("a long label takes two lines, a long value gives way to the change") {
    RangeChart chart = chart_of({{words(40), words(40), "2", -123.0, 7.0}});
    const Page page = page_of(chart);
    const auto cut = texts(page, "…");
    REQUIRE(cut.size() == 2);
    CHECK(texts(page, "… → \u2212123").size() == 1);
    const double right = bars_on(page).at(0).box.left;
    const auto column = texts(page, "w");
    CHECK(std::count_if(column.begin(), column.end(), [&](const TextItem& item) {
              return item.text.front() == 'w' && item.size > 8.0 && item.baseline.x + item.width < right;
          }) == 2);
}

TEST_CASE("figures that would crowd out the bars are printed to fewer decimals") {
    RangeChart chart = chart_of({{words(40), "1", "2", -9e14, 9e14}, {"Small", "1", "2", -1.0, 0.5}});
    chart.decimals = 9;
    const Page page = page_of(chart);
    CHECK(texts(page, "2 → +900,000,000,000,000").size() == 1);
    CHECK(texts(page, ".000000000").empty());
    CHECK(bars_on(page).at(1).box.right - bars_on(page).at(0).box.left > 60.0);
}
