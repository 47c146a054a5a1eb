// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/pdf_support.hpp"
#include "support/catch.hpp"
#include "support/comma_locale.hpp"

#include <thread>

using namespace loopfolio;
using tests::PdfFile;
using tests::pages_of;
using tests::text_item;
using tests::ContainsSubstring;

namespace {

layout::Pages pack(int page_count) {
    std::vector<std::vector<layout::Item>> pages;
    for (int i = 0; i < page_count; ++i) {
        layout::CircleItem circle;
        circle.centre = {100.25, 200.5};
        circle.radius = 12.3;
        circle.line_width = 0.75;
        pages.push_back({text_item("Page " + std::to_string(i) + ": Δ ≤ 1.5 ✓", {40.1, 60.7}), circle});
    }
    layout::Pages made = pages_of(pages);
    made.info = {"Dyluniad Tŷ Llŷr", "A. (Test) Surveyor", "Design pack", "loopfolio", 2026, 3, 14, "en-GB"};
    made.bookmarks = {{"Part 1 (household)", 0, 0, 50.0},
                      {"Ystafell Ŵyn", 1, 1, 60.0},
                      {"Bath", 1, 1, 300.0},
                      {"Deeper", 2, 2, 0.0},
                      {"Part 2", 0, 3, 50.0}};
    return made;
}

}  // namespace

TEST_CASE("the file is sound to an independent checker") {
    const auto said = PdfFile{pack(5)}.read_with("qpdf --check");
    INFO(said.text);
    CHECK(said.status == 0);
    CHECK_THAT(said.text,
               ContainsSubstring("No syntax or stream encoding errors found") && !ContainsSubstring("WARNING"));
}

TEST_CASE("readers draw it without a complaint") {
    const PdfFile file{pack(5)};
    const auto poppler = file.read_with("pdftoppm -r 20 -png", "> /dev/null");
    CHECK(poppler.status == 0);
    CHECK(poppler.text == "");
    const auto mupdf = file.read_with("mutool draw -q -F stext", "1-5");
    CHECK(mupdf.status == 0);
    CHECK_THAT(mupdf.text, !ContainsSubstring("error:"));
}

TEST_CASE("page count, title and their like") {
    const std::string info = PdfFile{pack(7)}.read_with("pdfinfo -rawdates").text;
    for (const char* line :
         {"Pages:           7\n", "Title:           Dyluniad Tŷ Llŷr\n", "Author:          A. (Test) Surveyor\n",
          "Subject:         Design pack\n", "Creator:         loopfolio\n", "CreationDate:    D:20260314000000Z",
          "Page size:       595.276 x 841.89 pts (A4)\n", "PDF version:     1.7\n"}) {
        CHECK_THAT(info, ContainsSubstring(line));
    }
    CHECK_THAT(info, !ContainsSubstring("ModDate"));
    CHECK_THAT(PdfFile{pack(4)}.read_with("mutool show", "trailer/Root").text, ContainsSubstring("/Lang (en-GB)"));
}

TEST_CASE("bookmarks form a tree and lead to their place") {
    const auto lines = tests::lines_of(PdfFile{pack(5)}.read_with("mutool show", "outline").text);
    struct Row {
        const char *title, *place;
    };
    // MuPDF counts pages from 1 and y from the top, and indents by one tab for each level.
    const Row rows[]{{"\t\"Part 1 (household)\"", "#page=1&zoom=100,0,50"},
                     {"\t\t\"Ystafell Ŵyn\"", "#page=2&zoom=100,0,60"},
                     {"\t\t\"Bath\"", "#page=2&zoom=100,0,300"},
                     {"\t\t\t\"Deeper\"", "#page=3&zoom=100,0,0"},
                     {"\t\"Part 2\"", "#page=4&zoom=100,0,50"}};
    REQUIRE(lines.size() == std::size(rows));
    for (std::size_t i = 0; i < lines.size(); ++i) {
        CHECK_THAT(lines[i], ContainsSubstring(rows[i].title) && ContainsSubstring(rows[i].place));
    }
}

TEST_CASE("links cover their area and lead to their place") {
    auto pages = pack(4);
    pages.structure = {tests::element(layout::Role::document, -1)};
    pages.pages[0].links = {{{40.0, 50.0, 240.5, 62.25}, 2, 300.0, 0}, {{40.0, 70.0, 240.5, 82.0}, 1, 0.0, 0}};
    const PdfFile file{pages};
    // MuPDF gives the area as left, top, right and bottom from the top left of the page.
    const tests::MupdfScript script{R"(
        for (var page = 0; page < 2; ++page) {
            pdf.loadPage(page).getLinks().forEach(function (link) {
                print(page, area(link).map(function (x) { return x.toFixed(2); }).join(" "), target(link));
            });
        })"};
    const std::string said = script.read(file);
    CHECK_THAT(said, ContainsSubstring("0 40.00 50.00 240.50 62.25 #page=3&zoom=100,0,300\n"
                                       "0 40.00 70.00 240.50 82.00 #page=2&zoom=100,0,0\n"));
    CHECK_THAT(said, !ContainsSubstring("\n1 "));
    pages.pages[2].links = {{{0.0, 0.0, 9.0, 9.0}, 4, 0.0, 0}};
    CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()), ContainsSubstring("a link leads to a page"));
    pages.pages[2].links = {{{0.0, 0.0, 9.0, 9.0}, 3, 0.0, -1}};
    CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()),
                      ContainsSubstring("belongs to an element that is not there"));
}

TEST_CASE("the same pages give the same bytes") {
    const auto pages = pack(6);
    const std::string first = pdf::write_pdf(pages, tests::fonts());
    SECTION("again, and with fonts opened anew") {
        CHECK(pdf::write_pdf(pages, tests::fonts()) == first);
        CHECK(pdf::write_pdf(pages, pdf::Fonts{}) == first);
    }
    SECTION("where the locale writes a decimal comma") {
        const tests::CommaLocale comma;
        CHECK(pdf::write_pdf(pages, tests::fonts()) == first);
    }
    SECTION("in several threads that share the fonts") {
        std::vector<std::string> results(4);
        std::vector<std::thread> threads;
        const pdf::Fonts shared;
        for (std::string& result : results) {
            threads.emplace_back([&] { result = pdf::write_pdf(pages, shared); });
        }
        for (std::thread& thread : threads) thread.join();
        for (const std::string& result : results) CHECK(result == first);
    }
}

TEST_CASE("what the library refuses becomes an exception with its code") {
    auto pages = pack(4);
    SECTION("a day that is not in the calendar") {
        pages.info.month = 2;
        pages.info.day = 30;
        CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()), ContainsSubstring("the creation date is not a date") &&
                                                                     ContainsSubstring("libharu code 0x10"));
    }
    SECTION("a page of no size") {
        pages.pages[1].width = 0.5;
        CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()),
                          ContainsSubstring("a page is smaller or larger") && ContainsSubstring("libharu code 0x10"));
    }
    SECTION("a title beyond all bounds") {
        pages.info.title.assign(70'000, 'x');
        CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()), ContainsSubstring("longer than a PDF may hold"));
    }
    SECTION("a bookmark to a page that is not there") {
        pages.bookmarks[0].page = 4;
        CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()), ContainsSubstring("Part 1 (household)"));
    }
}
