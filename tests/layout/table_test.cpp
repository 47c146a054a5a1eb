// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/table.hpp"

#include "layout_support.hpp"

#include "support/catch.hpp"

#include <algorithm>
#include <sstream>

using namespace loopfolio;
using namespace loopfolio::layout;
using namespace loopfolio::tests;

namespace {

const FixedWidth measurer;

/// The numbers N of the rows `row N` on each page.
std::vector<std::vector<int>> rows_by_page(const Pages& pages) {
    std::vector<std::vector<int>> out;
    for (const Page& page : pages.pages) {
        out.emplace_back();
        for (const TextItem& item : texts(page, "row ")) out.back().push_back(std::stoi(item.text.substr(4)));
    }
    return out;
}

std::size_t page_of(const Pages& pages, std::string_view words) {
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        if (!texts(pages.pages[i], words).empty()) return i;
    }
    return 999;
}

double left_of(const Pages& pages, std::string_view text) {
    for (const Page& page : pages.pages) {
        for (const TextItem& item : texts(page, text)) {
            if (item.text == text) return item.baseline.x;
        }
    }
    return -1.0;
}

}  // namespace

TEST_CASE("every row is set once and in order, whatever the length") {
    for (int count = 0; count < 150; count += 7) {
        int next = 1;
        for (const auto& rows : rows_by_page(lay_out(report_of({plain_table(count)}), measurer))) {
            for (const int row : rows) CHECK(row == next++);
        }
        CHECK(next == count + 1);
    }
}

TEST_CASE("a table that goes on repeats its head and says so") {
    const Pages pages = lay_out(report_of({plain_table(100)}), measurer);
    REQUIRE(pages.pages.size() >= 3);
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        CHECK(texts(pages.pages[i], "Loss").size() == 1);
        CHECK(texts(pages.pages[i], "Rooms").size() == 1);
        CHECK(texts(pages.pages[i], "(continued)").size() == (i == 0 ? 0 : 1));
    }
}

TEST_CASE("no row stands alone at the foot or the head of a page") {
    for (int before = 0; before < 40; ++before) {
        report::Table table = plain_table(45);
        table.note = "Outputs from tables";
        const Pages pages = lay_out(
            report_of({report::List{std::vector<std::string>(static_cast<std::size_t>(before), "item"), false}, table}),
            measurer);
        INFO(before << " lines before");
        for (const auto& rows : rows_by_page(pages)) CHECK((rows.empty() || rows.size() >= 2));
        const auto last = rows_by_page(pages).back();
        CHECK(!last.empty());
        CHECK(page_of(pages, "Outputs") == pages.pages.size() - 1);
    }
}

TEST_CASE("a sum stays with the row above, a group head with the row below, a head with its table") {
    for (int before = 0; before < 40; ++before) {
        report::Table table = plain_table(30);
        table.rows[14] = {{{"group", {}}}, false, true};
        table.rows.push_back({{{"sum", {}}, {"9,999", {}}}, true, false});
        const Pages pages = lay_out(
            report_of({report::List{std::vector<std::string>(static_cast<std::size_t>(before), "item"), false},
                       report::Heading{2, "Heads"}, table}),
            measurer);
        INFO(before << " lines before");
        CHECK(page_of(pages, "sum") == page_of(pages, "row 30"));
        CHECK(page_of(pages, "group") == page_of(pages, "row 16"));
        CHECK(page_of(pages, "Heads") == page_of(pages, "row 2"));
    }
}

TEST_CASE("a row is split only where it is taller than a page") {
    report::Table table = plain_table(12);
    for (auto& row : table.rows) row.cells[0].text = "begin " + words(600) + " end";
    const Pages pages = lay_out(report_of({table}), measurer);
    for (const Page& page : pages.pages) CHECK(texts(page, "begin").size() == texts(page, " end").size());
    table.rows[3].cells[0].text = words(6000);
    const Pages more = lay_out(report_of({table}), measurer);
    CHECK(page_of(more, "w6000") > page_of(more, "w1 "));
}

TEST_CASE("figures stand on the decimal point") {
    report::Table table = plain_table(0);
    const char* figures[] = {"7", "12.5", "1,234.75", "\u22120.125", "<0.5", "3.5 kW"};
    for (const char* figure : figures) table.rows.push_back({{{"x", {}}, {figure, {}}}});
    table.rows.push_back({{{"x", {}}, {"\u2013", {}}}});
    const Pages pages = lay_out(report_of({table}), measurer);
    const double size = 9.0;
    const double point = left_of(pages, "7") + 0.5 * size;
    for (const std::string figure : figures) {
        INFO(figure);
        const Figure split = split_figure(figure);
        CHECK(left_of(pages, figure) + measurer.width(split.whole, Face::regular, size) == Approx(point).margin(1e-6));
    }
    CHECK(left_of(pages, "\u2013") + 0.5 * size == Approx(point).margin(1e-6));
}

TEST_CASE("where figures are split") {
    struct Row {
        const char* text;
        const char* whole;
        const char* rest;
    };
    const Row rows[] = {
        {"12.5", "12", ".5"},
        {"1,240", "1,240", ""},
        {"\u22123.25", "\u22123", ".25"},
        {"<0.5", "<0", ".5"},
        {"\u2264 3 kPa", "\u2264 3", " kPa"},
        {"none", "", ""},
        {"", "", ""},
        {"\u2013", "", ""},
    };
    for (const Row& row : rows) {
        CHECK(split_figure(row.text).whole == row.whole);
        CHECK(split_figure(row.text).rest == row.rest);
    }
}

TEST_CASE("columns take what they need, and spare room goes by weight") {
    const Setting setting{measurer};
    report::Table table = plain_table(3);
    TablePlan plan = measure_table(table, setting);
    REQUIRE(plan.columns.size() == 2);
    CHECK(plan.width == Approx(setting.width));
    CHECK(plan.columns[1].width == Approx(4 * 0.55 * 9.0));  // the bold head is the widest
    table.columns[0].weight = 0.0;
    CHECK(measure_table(table, setting).width < 0.5 * setting.width);  // no weight: only as wide as is easy to read
}

TEST_CASE("a table that is too wide gives way in steps") {
    const Setting setting{measurer};
    const auto plan_for = [&](int columns, const std::string& text) {
        report::Table table;
        for (int c = 0; c < columns; ++c) table.columns.push_back({"h", "", report::Align::left, 0.0});
        table.rows.push_back({std::vector<report::Cell>(static_cast<std::size_t>(columns), {text, {}})});
        return measure_table(table, setting);
    };
    const auto gap = [](const TablePlan& plan) { return plan.columns[1].left - plan.columns[0].width; };
    const TablePlan roomy = plan_for(6, "eleven char");  // 6 x 49.5 + 5 x 14
    CHECK(roomy.text.size == 9.0);
    CHECK(gap(roomy) == Approx(14.0));
    const TablePlan closer = plan_for(8, "eleven-char");  // 8 x 49.5 + 7 x 8
    CHECK(closer.text.size == 9.0);
    CHECK(gap(closer) == Approx(8.0));
    const TablePlan smaller = plan_for(9, "eleven0char");  // 9 x 44 + 8 x 7
    CHECK(smaller.text.size == 8.0);
    CHECK(gap(smaller) == Approx(7.0));
    const TablePlan wrapped = plan_for(3, words(30));  // long text wraps at full size
    CHECK(wrapped.text.size == 9.0);
    CHECK(wrapped.width == Approx(setting.width));
    const TablePlan broken = plan_for(12, "eleven0char");  // 12 x 44 > 471: words are broken
    CHECK(broken.width <= setting.width + 1e-6);
    CHECK(broken.columns[0].width < 44.0);
}

TEST_CASE("the words of a head are whole, whatever stands below them") {
    const std::vector<std::string> heads{"Element",       "Area",    "Exposed edge",   "B\u2032", "Insulation",
                                         "Ground \u03bb", "U-value", "Characteristic", "Of it"};
    const std::vector<std::string> units{
        "", "m\u00b2", "m", "m", "m\u00b2\u00b7K/W", "W/(m\u00b7K)", "W/(m\u00b2\u00b7K)", "m", "%"};
    struct Case {
        std::size_t letters, every;
    };  // one word of so many letters in every so many columns
    for (const auto& [letters, every] : {Case{5, 4}, Case{60, 4}, Case{400, 4}, Case{60, 1}, Case{400, 1}}) {
        for (std::size_t columns = 1; columns <= heads.size(); ++columns) {
            INFO(letters << " letters, " << columns << " columns");
            report::Table table;
            for (std::size_t c = 0; c < columns; ++c) {
                table.columns.push_back(
                    {heads[c], units[c], c == 0 ? report::Align::left : report::Align::decimal, 0.0});
            }
            report::Row row;
            for (std::size_t c = 0; c < columns; ++c)
                row.cells.push_back({c % every == 0 ? std::string(letters, 'x') : "0.843", {}});
            table.rows.assign(3, row);
            const Pages pages = lay_out(report_of({table}), measurer);
            for (std::size_t c = 0; c < columns; ++c) {
                std::istringstream words{heads[c] + " " + units[c]};
                for (std::string word; words >> word;) CHECK(page_of(pages, word) != 999);
            }
        }
    }
}

TEST_CASE("short columns stay whole and the longest wraps") {
    const Setting setting{measurer};
    report::Table table;
    table.columns = {{"Room", "", report::Align::left, 1.0}, {"Remark", "", report::Align::left, 1.0}};
    table.rows.push_back({{{"the dining room", {}}, {words(80), {}}}});
    const TablePlan plan = measure_table(table, setting);
    CHECK(plan.columns[0].width == Approx(15 * 4.5));
}

TEST_CASE("a verdict has its own shape and its word") {
    report::Table table = plain_table(0);
    for (const Verdict verdict : {Verdict::keep, Verdict::keep_noted, Verdict::change}) {
        table.rows.push_back({{{"", verdict}, {"1", {}}}});
    }
    const Pages pages = lay_out(report_of({table}), measurer);
    CHECK(texts(pages.pages[0], "keep").size() == 2);
    CHECK(texts(pages.pages[0], "keep, noted").size() == 1);
    CHECK(texts(pages.pages[0], "change").size() >= 1);
    const auto& items = pages.pages[0].items;
    const auto circles = std::count_if(items.begin(), items.end(),
                                       [](const Item& i) { return std::holds_alternative<CircleItem>(i); });
    CHECK(circles == 1);
}

TEST_CASE("where a third of the columns is blank, rows are high enough for a pen") {
    report::Table table = plain_table(2);
    table.columns.push_back({"Measured", "", report::Align::left, 0.0});
    const Page page = lay_out(report_of({table}), measurer).pages[0];
    const double step = texts(page, "row 2").front().baseline.y - texts(page, "row 1").front().baseline.y;
    CHECK(step >= 8.0 * 72.0 / 25.4);
    for (auto& row : table.rows) row.cells.push_back({"\u2013", {}});
    const Page printed = lay_out(report_of({table}), measurer).pages[0];
    CHECK(texts(printed, "row 2").front().baseline.y - texts(printed, "row 1").front().baseline.y < 0.9 * step);
}
