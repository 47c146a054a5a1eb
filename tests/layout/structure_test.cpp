// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout_support.hpp"

#include "support/catch.hpp"

#include <algorithm>
#include <set>

using namespace loopfolio;
using namespace loopfolio::layout;
using namespace loopfolio::tests;

namespace {

const FixedWidth measurer;

int mark_of(const Item& item) {
    return std::visit([](const auto& one) { return one.mark; }, item);
}

/// A text without what line breaks and bold may change: spaces, no-break spaces and asterisks.
std::string bare(std::string text) {
    for (const std::string_view gone : {" ", "\n", "*", "\u00a0"}) {
        for (std::size_t at = 0; (at = text.find(gone, at)) != std::string::npos;) text.erase(at, gone.size());
    }
    return text;
}

/// The words of a report in the order in which its author wrote them; for drawings, the captions.
struct Written {
    std::string text;

    void add(const std::string& words) { text += bare(words); }
    void operator()(const report::Heading& b) { add(b.text); }
    void operator()(const report::Paragraph& b) { add(b.text); }
    void operator()(const report::List& b) {
        for (std::size_t i = 0; i < b.items.size(); ++i) {
            if (b.numbered && !bare(b.items[i] + "\u00a0").empty()) add(std::to_string(i + 1) + ".");
            add(b.items[i]);
        }
    }
    void operator()(const report::Caution& b) { add(b.title + b.text); }
    void operator()(const report::KeyFigures& b) {
        for (const auto& figure : b.figures) add(figure.value + figure.caption);
    }
    void operator()(const report::Table& b) {
        add(b.caption);
        for (const auto& column : b.columns) add(column.head + column.unit);
        for (const auto& row : b.rows) {
            const std::size_t printed = row.group_head ? std::min<std::size_t>(b.columns.size(), 1) : b.columns.size();
            for (std::size_t c = 0; c < std::min(row.cells.size(), printed); ++c) {
                const auto& cell = row.cells[c];
                add(cell.text.empty() && cell.verdict ? std::string{word(*cell.verdict)} : cell.text);
            }
        }
        add(b.note);
    }
    void operator()(const report::Facts& b) {
        for (const auto& fact : b.facts) add(fact.term + fact.text);
    }
    void operator()(const report::BarChart& b) { add(b.caption); }
    void operator()(const report::LineChart& b) { add(b.caption); }
    void operator()(const report::RangeChart& b) { add(b.caption); }
    void operator()(const report::PipeTree& b) { add(b.caption); }
    void operator()(const report::VerdictKey&) {
        add("keep – within every limit keep, noted – inside the hard limits, past a preferred one "
            "change – breaks a hard limit");
    }
    void operator()(const report::Contents&) {}
    void operator()(const report::Checklist& b) {
        for (const auto& item : b.items) add(item.text + item.blank);
    }
    void operator()(const report::SignOff& b) {
        add(b.statement);
        for (const auto& signer : b.signers) add(signer + "Name Signature Date");
    }
    void operator()(const report::Derivation& b) {
        add(b.title);
        for (std::size_t i = 0; i < b.steps.size(); ++i) {
            const auto& step = b.steps[i];
            add(std::to_string(i + 1) + step.what + step.formula + step.result + step.source);
        }
    }
    void operator()(const report::PageBreak&) {}
    void operator()(const report::Space&) {}
};

std::string written_in(const report::Report& report) {
    Written written;
    written.add(report.author + report.title + report.subtitle + report.header_left + report.header_right);
    for (const auto& part : report.parts) {
        written.add(part.title + part.subtitle);
        for (const auto& block : part.blocks) std::visit(written, block);
    }
    return written.text;
}

std::vector<std::string> words_by_element(const Pages& pages) {
    std::vector<std::string> words(pages.structure.size());
    for (const Page& page : pages.pages) {
        for (const Item& item : page.items) {
            const auto* text = std::get_if<TextItem>(&item);
            if (text != nullptr && text->mark >= 0) words.at(static_cast<std::size_t>(text->mark)) += bare(text->text);
        }
    }
    return words;
}

/// The words that someone reads who follows the structure: the items of an element, then its children.
void read(const Pages& pages, const std::vector<std::string>& words, int element, std::string& out) {
    const auto own = static_cast<std::size_t>(element);
    if (pages.structure[own].role != Role::figure) out += words[own];
    for (std::size_t i = own + 1; i < pages.structure.size(); ++i) {
        if (pages.structure[i].parent == element) read(pages, words, static_cast<int>(i), out);
    }
}

std::string read_in(const Pages& pages) {
    std::string out;
    read(pages, words_by_element(pages), 0, out);
    return out;
}

/// Text that belongs to no element, except text outside the frame and the repeated heads at the top of a page.
std::vector<std::string> unread(const Pages& pages) {
    constexpr double frame_top = 60.0, first_frame_top = 0.0, frame_bottom = 841.890 - 70.0;
    std::vector<std::string> out;
    for (std::size_t p = 0; p < pages.pages.size(); ++p) {
        double opens = 1e9;
        for (const TextItem& item : texts(pages.pages[p])) {
            if (item.mark >= 0) opens = std::min(opens, item.baseline.y);
        }
        for (const TextItem& item : texts(pages.pages[p])) {
            const double y = item.baseline.y;
            const bool furniture = y < (p == 0 ? first_frame_top : frame_top) || y > frame_bottom;
            const bool again = p > 0 && y < opens;
            if (item.mark < 0 && !furniture && !again) out.push_back(item.text);
        }
    }
    return out;
}

int heading_level(Role role) {
    switch (role) {
        case Role::h1: return 1;
        case Role::h2: return 2;
        case Role::h3: return 3;
        case Role::h4: return 4;
        default: return 0;
    }
}

bool may_hold(Role parent, Role child) {
    switch (child) {
        case Role::document: return false;
        case Role::part: return parent == Role::document;
        case Role::list_item: return parent == Role::list;
        case Role::list_label:
        case Role::list_body: return parent == Role::list_item;
        case Role::row: return parent == Role::table;
        case Role::head_cell:
        case Role::cell: return parent == Role::row;
        case Role::caption: return parent == Role::table || parent == Role::figure || parent == Role::list;
        case Role::figure: return parent == Role::part || parent == Role::cell || parent == Role::p;
        case Role::p: return parent == Role::document || parent == Role::part || parent == Role::list_body;
        default: return parent == Role::part || (parent == Role::document && child == Role::h1);
    }
}

/// Checks the rules of the structure types (ISO 32000-1, 14.8.4) and of ISO 14289-1, 7.4 and 7.5.
std::vector<std::string> faults_of_structure(const Pages& pages) {
    std::vector<std::string> out;
    const auto& all = pages.structure;
    const auto fault = [&](std::size_t i, const char* what) { out.push_back(std::to_string(i) + ": " + what); };
    if (all.empty() || all[0].role != Role::document || all[0].parent != -1) return {"no document first"};
    std::vector<int> columns(all.size(), 0), row_width(all.size(), 0);
    int level = 0;
    for (std::size_t i = 1; i < all.size(); ++i) {
        if (all[i].parent < 0 || static_cast<std::size_t>(all[i].parent) >= i) return {"a parent after its child"};
        const auto parent = static_cast<std::size_t>(all[i].parent);
        if (!may_hold(all[parent].role, all[i].role)) fault(i, "in the wrong element");
        if ((all[i].role == Role::figure) == all[i].alternative.empty()) fault(i, "only a figure is told in words");
        if (const int own = heading_level(all[i].role); own > 0) {
            if (own > level + 1) fault(i, "a heading skips a level");
            level = own;
        }
        const bool head = all[i].role == Role::head_cell;
        if (head || all[i].role == Role::cell) columns[parent] += all[i].columns;
        if (head != (all[i].scope == Element::Scope::column)) fault(i, "a head cell heads its column");
    }
    for (std::size_t i = 1; i < all.size(); ++i) {
        if (all[i].role != Role::row) continue;
        int& width = row_width[static_cast<std::size_t>(all[i].parent)];
        if (width != 0 && width != columns[i]) fault(i, "a row of another width");
        width = columns[i];
    }
    return out;
}

/// Elements with nothing on paper, or with another page than that of their first item.
std::vector<std::string> faults_of_pages(const Pages& pages) {
    std::vector<int> first(pages.structure.size(), -1);
    for (std::size_t p = pages.pages.size(); p-- > 0;) {
        for (const Item& item : pages.pages[p].items) {
            for (int e = mark_of(item); e >= 0; e = pages.structure.at(static_cast<std::size_t>(e)).parent) {
                first[static_cast<std::size_t>(e)] = static_cast<int>(p);
            }
        }
    }
    std::vector<std::string> out;
    for (std::size_t i = 1; i < first.size(); ++i) {
        const Element& element = pages.structure[i];
        const bool empty_cell = first[i] < 0 && (element.role == Role::cell || element.role == Role::head_cell);
        const int expected = empty_cell ? first[static_cast<std::size_t>(element.parent)] : first[i];
        if (element.page != expected) out.push_back(std::to_string(i));
    }
    return out;
}

report::Report without_contents(report::Report report) {
    for (auto& part : report.parts) {
        std::erase_if(part.blocks, [](const report::Block& b) { return std::holds_alternative<report::Contents>(b); });
    }
    return report;
}

std::vector<Role> roles_of(const Pages& pages) {
    std::vector<Role> out;
    for (const Element& element : pages.structure) out.push_back(element.role);
    return out;
}

}  // namespace

TEST_CASE("whoever follows the structure reads the report in order, and all of it") {
    for (unsigned number = 0; number < 25; ++number) {
        INFO("report " << number);
        const report::Report report = random_report(number);
        const Pages pages = lay_out(report, measurer);
        CHECK(unread(pages) == std::vector<std::string>{});
        CHECK(faults_of_structure(pages) == std::vector<std::string>{});
        CHECK(faults_of_pages(pages) == std::vector<std::string>{});
        const report::Report plain = without_contents(report);
        CHECK(read_in(lay_out(plain, measurer)) == written_in(plain));
    }
}

TEST_CASE("the reader of words sees what it is there to see") {
    Pages pages = lay_out(report_of({report::Paragraph{"heat flows"}, plain_table(60)}), measurer);
    const std::string right = read_in(pages);
    REQUIRE(unread(pages).empty());
    for (Page& page : pages.pages) {
        for (Item& item : page.items) {
            auto* text = std::get_if<TextItem>(&item);
            if (text != nullptr && text->text == "heat flows") text->mark = -1;
        }
    }
    CHECK(unread(pages) == std::vector<std::string>{"heat flows"});
    CHECK(read_in(pages) != right);
    pages.structure[3].parent = 90;
    CHECK_FALSE(faults_of_structure(pages).empty());
}

TEST_CASE("a table is told by rows, with the heads of its columns") {
    report::Table table = plain_table(2);
    table.rows.insert(table.rows.begin(), {{{"Ground floor", {}}}, false, true});
    table.rows[1].cells[1].verdict = Verdict::change;  // its symbol adds to its text
    table.rows[2].cells = {{"", Verdict::keep}};       // its word is printed, and the next cell is empty
    const Pages pages = lay_out(report_of({table}), measurer);
    const auto roles = roles_of(pages);
    const std::vector<Role> expected{Role::table,  Role::caption, Role::row,  Role::head_cell, Role::head_cell,
                                     Role::row,    Role::cell,    Role::row,  Role::cell,      Role::cell,
                                     Role::figure, Role::row,     Role::cell, Role::cell};
    const auto at = std::search(roles.begin(), roles.end(), expected.begin(), expected.end());
    REQUIRE(at != roles.end());
    const auto first = static_cast<std::size_t>(at - roles.begin());
    CHECK(pages.structure[first + 6].columns == 2);
    CHECK(pages.structure[first + 10].alternative == "change");
}

TEST_CASE("a head that is set again is read once") {
    const Pages pages = lay_out(report_of({plain_table(150)}), measurer);
    REQUIRE(pages.pages.size() > 2);
    for (std::size_t p = 0; p < pages.pages.size(); ++p) {
        for (const auto* head : {"Room", "Loss", "W"}) {
            int heads = 0;
            for (const TextItem& item : texts(pages.pages[p], head)) {
                if (item.text != head) continue;
                ++heads;
                CHECK((item.mark >= 0) == (p == 0));
            }
            CHECK(heads == 1);
        }
    }
}

TEST_CASE("a drawing is one figure, whatever pages it takes, and told in words") {
    report::BarChart chart;
    chart.caption = "Rooms";
    chart.series = {"heat loss"};
    chart.alternative = "Bars for ninety rooms.";
    for (int i = 0; i < 90; ++i) chart.groups.push_back({"Room " + std::to_string(i), {1.0 * i}, {}});
    const Pages pages = lay_out(report_of({chart}), measurer);
    REQUIRE(pages.pages.size() > 1);
    const auto figure = std::ranges::find(pages.structure, Role::figure, &Element::role);
    REQUIRE(figure != pages.structure.end());
    CHECK(figure->alternative == "Bars for ninety rooms.");
    CHECK(std::ranges::count(pages.structure, Role::figure, &Element::role) == 1);
    std::set<std::size_t> on;
    for (std::size_t p = 0; p < pages.pages.size(); ++p) {
        for (const Item& item : pages.pages[p].items) {
            if (mark_of(item) == figure - pages.structure.begin()) on.insert(p);
        }
    }
    CHECK(on.size() == pages.pages.size());
}

TEST_CASE("headings go down a level at a time, whatever their look") {
    const Pages pages = lay_out(
        report_of({report::Heading{3, "small"}, report::Heading{1, "chapter"}, report::Heading{3, "small"},
                   report::Heading{2, "section"}, report::Heading{3, "small"}}),
        measurer);
    std::vector<int> levels;
    for (const Element& element : pages.structure) {
        if (heading_level(element.role) > 0) levels.push_back(heading_level(element.role));
    }
    CHECK(levels == std::vector<int>{1, 1, 2, 2, 3, 3, 4});  // title, part, then the five
}

TEST_CASE("an entry of the contents is one element with its number and its link") {
    report::Report report = report_of({report::Contents{}, report::Heading{1, "   "}, report::Heading{2, "Section"},
                                       report::Heading{1, "First chapter"}, report::Paragraph{words(900)},
                                       report::Heading{1, "Second chapter"}});
    const Pages pages = lay_out(report, measurer);
    const auto words = words_by_element(pages);
    std::vector<std::string> entries;
    for (const Link& link : pages.pages[0].links) {
        REQUIRE(link.mark >= 0);
        CHECK(pages.structure[static_cast<std::size_t>(link.mark)].role == Role::list_body);
        entries.push_back(words[static_cast<std::size_t>(link.mark)]);
    }
    const std::string last = std::to_string(pages.bookmarks.back().page + 1);
    CHECK(last != "1");
    CHECK(entries == std::vector<std::string>{"Part1:forthehousehold1", "Firstchapter1", "Secondchapter" + last});
}
