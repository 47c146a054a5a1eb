// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/pdf_support.hpp"
#include "support/catch.hpp"

using namespace loopfolio;
using layout::Role;
using tests::PdfFile;
using tests::element;
using tests::marked;
using tests::pages_of;
using tests::text_item;
using tests::ContainsSubstring;

// Poppler reads the structure back: its pdfinfo prints elements with their text and properties.

namespace {

layout::PathItem rule() {
    layout::PathItem item;
    item.points = {{40, 100}, {200, 100}};
    item.line_width = 1.0;
    return item;
}

std::string structure(const layout::Pages& pages) { return PdfFile{pages}.read_with("pdfinfo -struct-text").text; }

/// A document of one paragraph, to which the items with mark 1 belong.
layout::Pages paragraph(std::vector<std::vector<layout::Item>> items) {
    auto pages = pages_of(std::move(items));
    pages.structure = {element(Role::document, -1), element(Role::p, 0)};
    return pages;
}

layout::TextItem after(const layout::TextItem& item, const std::string& text, double gap) {
    return marked(text_item(text, {item.baseline.x + item.width + gap, item.baseline.y}, layout::Face::bold), 1);
}

}  // namespace

TEST_CASE("elements are read in the order of the structure, whatever the order on the page") {
    auto pages = pages_of({{marked(text_item("cell", {40, 90}), 6), marked(text_item("head", {40, 60}), 4), rule(),
                            text_item("furniture", {40, 20}), marked(text_item("title", {40, 40}), 1)},
                           {marked(text_item("note", {40, 40}), 7)}});
    pages.structure = {element(Role::document, -1), element(Role::h1, 0),        element(Role::table, 0),
                       element(Role::row, 2),       element(Role::head_cell, 3), element(Role::row, 2),
                       element(Role::cell, 5),      element(Role::note, 0)};
    pages.structure[4].scope = layout::Element::Scope::column;
    pages.structure[6].columns = 3;
    CHECK(structure(pages) ==
          "Document\n"
          "  H1 (block)\n    \"title\"\n"
          "  Table (block)\n"
          "    TR\n      TH:\n         /Scope /Column\n        \"head\"\n"
          "    TR\n      TD:\n         /ColSpan 3\n        \"cell\"\n"
          "  Note <note 000007> (inline)\n    \"note\"\n");
}

TEST_CASE("an element goes on over artifacts, other elements and pages") {
    const auto text = [](const char* words, double y) { return marked(text_item(words, {40, y}), 1); };
    const auto pages = paragraph({{text("one", 40), text("two", 52), rule(), text("three", 64)}, {text("four", 40)}});
    CHECK(structure(pages) == "Document\n  P (block)\n    \"one two \"\n    \"three \"\n    \"four\"\n");
}

TEST_CASE("words that are set apart are read apart, and one word is read as one") {
    const auto first = marked(text_item("Keep the", {40, 40}), 1);
    SECTION("a gap on the line") {
        CHECK_THAT(structure(paragraph({{first, after(first, "valve", 2.5)}})),
                   ContainsSubstring("\"Keep the valve\""));
    }
    SECTION("no gap on the line") {
        CHECK_THAT(structure(paragraph({{first, after(first, "rmostat", 0.0)}})),
                   ContainsSubstring("\"Keep thermostat\""));
    }
    SECTION("a line that ends within a word") {
        const auto half = marked(text_item("low-", {40, 40}), 1), rest = marked(text_item("loss", {40, 52}), 1);
        CHECK_THAT(structure(paragraph({{half, rest}})), ContainsSubstring("\"low-loss\""));
    }
}

TEST_CASE("a list tells how it counts") {
    struct Row {
        const char *label, *numbering;
    };
    for (const Row& row :
         {Row{"1.", "/ListNumbering /Decimal"}, Row{"", "/ListNumbering /Disc"}, Row{"Reference", nullptr}}) {
        CAPTURE(row.label);
        layout::CircleItem bullet;
        bullet.radius = 2.0;
        bullet.filled = true;
        bullet.mark = 3;
        auto pages = pages_of(
            {{marked(text_item(row.label, {40, 40}), 3), bullet, marked(text_item("body", {60, 40}), 4)}});
        pages.structure = {element(Role::document, -1), element(Role::list, 0), element(Role::list_item, 1),
                           element(Role::list_label, 2), element(Role::list_body, 2)};
        const std::string read = structure(pages);
        CHECK_THAT(read, ContainsSubstring("LBody (block)\n        \"body\""));
        if (row.numbering != nullptr) CHECK_THAT(read, ContainsSubstring(row.numbering));
        else CHECK_THAT(read, !ContainsSubstring("ListNumbering"));
    }
}

TEST_CASE("a figure is told in words and has the box of what is drawn") {
    auto line = rule();
    line.mark = 1;
    auto pages = pages_of({{line}});
    pages.structure = {element(Role::document, -1), element(Role::figure, 0, "Tŷ (new) \\ ring")};
    const std::string objects = PdfFile{pages}.read_with("mutool show", "grep").text;
    // Half the line's width is added around it, and the result is in whole points; 841.89 is the height of the page.
    CHECK_THAT(objects, ContainsSubstring("/O/Layout/BBox[39 741 201 743]"));
    std::string alternative = "FEFF";  // UTF-16
    for (const char16_t c : std::u16string_view{u"Tŷ (new) \\ ring"}) {
        char digits[5];
        std::snprintf(digits, sizeof digits, "%04X", static_cast<unsigned>(c));
        alternative += digits;
    }
    CHECK_THAT(objects, ContainsSubstring("/Alt<" + alternative + ">", Catch::CaseSensitive::No));
}

TEST_CASE("a link is an element with its area, told by its text") {
    auto pages = paragraph({{marked(text_item("Radiators", {40, 40}), 1), marked(text_item("12", {200, 40}), 1)}, {}});
    pages.pages[0].links = {{{40, 30, 220, 45}, 1, 50.0, 1}};
    const PdfFile file{pages};
    CHECK_THAT(file.read_with("pdfinfo -struct-text").text,
               ContainsSubstring("P (block)\n    Link (inline)\n      \"Radiators 12\"\n      Object "));
    const std::string objects = file.read_with("mutool show", "grep").text;
    // Pages have the keys 0 and 1 in the parent tree.
    CHECK_THAT(objects, ContainsSubstring("/Contents(Radiators 12)") && ContainsSubstring("/StructParent 2"));
}

TEST_CASE("thousands of elements make a sound file") {
    constexpr int count = 9000;  // more than two object streams can hold
    constexpr int on_a_page = 100;
    layout::Pages pages = pages_of(std::vector<std::vector<layout::Item>>(count / on_a_page));
    pages.structure = {element(Role::document, -1)};
    for (int i = 0; i < count; ++i) {
        const int page = i / on_a_page;
        pages.structure.push_back(element(Role::p, 0));
        pages.structure.back().page = page;
        pages.pages[static_cast<std::size_t>(page)].items.push_back(
            marked(text_item(std::to_string(i + 1), {40, 40}), i + 1));
    }
    const PdfFile file{pages};
    const auto said = file.read_with("qpdf --check");
    INFO(said.text);
    CHECK(said.status == 0);
    // The tree without its text, with which pdfinfo would take minutes.
    const std::string tree = file.read_with("pdfinfo -struct").text;
    int found = 0;
    for (std::size_t at = 0; (at = tree.find("P (block)", at)) != std::string::npos; ++at) ++found;
    CHECK(found == count);
}

TEST_CASE("a structure that is no tree, and what belongs to none of it, are refused") {
    auto pages = paragraph({{marked(text_item("one", {40, 40}), 1)}});
    SECTION("a parent behind its child") { pages.structure[1].parent = 1; }
    SECTION("two roots") { pages.structure[1].parent = -1; }
    SECTION("a mark beyond the structure") { pages.structure.pop_back(); }
    CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()),
                      ContainsSubstring("is no tree") || ContainsSubstring("an element that is not there"));
}
