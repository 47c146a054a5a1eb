// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout_support.hpp"

#include "layout/style.hpp"

#include "support/catch.hpp"

#include <set>

using namespace loopfolio;
using namespace loopfolio::layout;
using namespace loopfolio::tests;

namespace {

const FixedWidth measurer;

report::List lines(int count) { return {std::vector<std::string>(static_cast<std::size_t>(count), "item"), false}; }

/// The number of lines of the text w1, w2... on each page that has any.
std::vector<std::size_t> lines_by_page(const Pages& pages) {
    std::vector<std::size_t> out;
    for (const Page& page : pages.pages) {
        std::set<double> baselines;
        for (const TextItem& item : texts(page, "w")) {
            if (item.text.find_first_of("0123456789") == 1) baselines.insert(item.baseline.y);
        }
        if (!baselines.empty()) out.push_back(baselines.size());
    }
    return out;
}

}  // namespace

TEST_CASE("a paragraph leaves at least two lines on either side of a page break") {
    int broken = 0;
    for (int before = 0; before < 60; ++before) {
        for (const int length : {30, 60, 100, 140}) {
            const auto found = lines_by_page(
                lay_out(report_of({lines(before), report::Paragraph{words(length)}}), measurer));
            if (found.size() > 1) ++broken;
            for (const std::size_t count : found) CHECK((found.size() == 1 || count >= 2));
        }
    }
    CHECK(broken > 5);
}

TEST_CASE("a heading is never the last on its page") {
    for (int before = 0; before < 60; ++before) {
        const Pages pages = lay_out(report_of({lines(before), report::Heading{1, "Chapter"},
                                               report::Heading{2, "Section"}, report::Paragraph{words(60)}}),
                                    measurer);
        for (const Page& page : pages.pages) {
            CHECK((texts(page, "Chapter").empty() || !texts(page, "Section").empty()));
            CHECK((texts(page, "Section").empty() || !texts(page, "w1 ").empty()));
        }
    }
}

TEST_CASE("each part starts on a page of its own, the first below the title") {
    report::Report report = report_of({report::Paragraph{"one"}});
    report.parts.push_back({"Part 2: for the installer", "", {report::PageBreak{}, report::Paragraph{"two"}}});
    report.parts.push_back({"Part 3: for the assessor", "", {report::Paragraph{"three"}, report::PageBreak{}}});
    const Pages pages = lay_out(report, measurer);
    REQUIRE(pages.pages.size() == 4);  // a page break inside part 2, none after part 3
    CHECK(texts(pages.pages[0], "Larch Cottage").size() == 1);
    CHECK(texts(pages.pages[0], "Part 1").size() == 1);
    CHECK(texts(pages.pages[1], "Part 2").size() == 1);
    CHECK(texts(pages.pages[3], "Part 3").size() == 1);
}

TEST_CASE("pages say which they are, and who they belong to") {
    const Pages pages = lay_out(report_of({report::Paragraph{words(4000)}}), measurer);
    REQUIRE(pages.pages.size() > 3);
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        const Page& page = pages.pages[i];
        const auto number = texts(page, "page ");
        REQUIRE(number.size() == 1);
        CHECK(number[0].text == "page " + std::to_string(i + 1) + " of " + std::to_string(pages.pages.size()));
        CHECK(texts(page, "LC-0412, revision B").size() == 1);
        CHECK(texts(page, "14 May 2026").size() == 1);
        CHECK(texts(page, "Prepared for").size() == 1);
    }
}

TEST_CASE("the outline lists parts, chapters and sections with their places") {
    report::Report report = report_of({report::Heading{1, "Rooms"}, report::Heading{2, "Hall"},
                                       report::Heading{3, "Walls"}, report::PageBreak{}, report::Heading{1, "Pipes"}});
    report.parts.push_back({"Part 2", "", {report::Heading{2, "Early"}}});
    const Pages pages = lay_out(report, measurer);
    struct Row {
        const char* title;
        int level, page;
    };
    const Row rows[] = {{"Part 1: for the household", 0, 0},
                        {"Rooms", 1, 0},
                        {"Hall", 2, 0},
                        {"Pipes", 1, 1},
                        {"Part 2", 0, 2},
                        {"Early", 1, 2}};  // no level is skipped on the way down
    REQUIRE(pages.bookmarks.size() == std::size(rows));
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        CHECK(pages.bookmarks[i].title == rows[i].title);
        CHECK(pages.bookmarks[i].level == rows[i].level);
        CHECK(pages.bookmarks[i].page == rows[i].page);
        CHECK(texts(pages.pages[static_cast<std::size_t>(rows[i].page)], rows[i].title).front().baseline.y >
              pages.bookmarks[i].top);
    }
}

TEST_CASE("the file's properties come from the report") {
    report::Report report = report_of({});
    report.subject = "Heating design";
    report.year = 2026;
    report.month = 5;
    report.day = 14;
    const DocumentInfo info = lay_out(report, measurer).info;
    CHECK(info.title == "Larch Cottage");
    CHECK(info.author == "Fenwick and Hale");
    CHECK(info.subject == "Heating design");
    CHECK(info.creator == "loopfolio");
    CHECK(info.year * 10000 + info.month * 100 + info.day == 20260514);
    CHECK(info.language == "en-GB");
}

TEST_CASE("blanks are high enough for a pen") {
    const double millimetre = 72.0 / 25.4;
    const Pages pages = lay_out(
        report_of({report::Checklist{{{"tick a", "bar"}, {"tick b", "bar"}}}, report::SignOff{"", {"Installer"}}}),
        measurer);
    const auto ticks = texts(pages.pages[0], "tick");
    REQUIRE(ticks.size() == 2);
    CHECK(ticks[1].baseline.y - ticks[0].baseline.y >= 8.0 * millimetre);
    const double signer = texts(pages.pages[0], "Installer").front().baseline.y;
    CHECK(texts(pages.pages[0], "Signature").front().baseline.y - signer >= 11.0 * millimetre);
}

TEST_CASE("the same report gives the same pages") {
    const report::Report report = random_report(7);
    CHECK(dump(lay_out(report, measurer)) == dump(lay_out(report, measurer)));
}

TEST_CASE("a heading that asks for room opens a page where less is left, and only there") {
    for (const int above : {4, 36}) {  // the first page holds about thirty of these lines below the title
        const Pages pages = lay_out(report_of({lines(above), report::Heading{1, "Agreement", 350.0}, lines(3)}),
                                    measurer);
        std::size_t on = 0;
        double baseline = 0.0;
        for (std::size_t i = 0; i < pages.pages.size(); ++i) {
            for (const TextItem& item : texts(pages.pages[i], "Agreement")) {
                on = i;
                baseline = item.baseline.y;
            }
        }
        CAPTURE(above, on, baseline);
        CHECK(on == (above == 4 ? 0u : 1u));
        CHECK(baseline < style::a4.frame.bottom - 330.0);
    }
}
