// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/archive.hpp"
#include "pdf/pdf_support.hpp"
#include "support/catch.hpp"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>

using namespace loopfolio;
using tests::PdfFile;
using tests::pages_of;
using tests::text_item;
using tests::ContainsSubstring;
using Catch::Matchers::StartsWith;

// The whole file is checked by tests/pdf/archive/check.sh, also on the samples that are written here.

namespace {

const std::vector<pdf::Attachment> attachments{
    {"job.yaml", "application/yaml", "Source", "rooms: []\n# Tŷ\r\n", "The job file"},
    {"Ŵyn (1).json", "application/json", "Data", std::string{"{\0}", 3}, ""},
    {"empty.txt", "text/plain", "Supplement", "", "Nothing <&> in it"}};

layout::Pages described() {
    auto pages = pages_of({{text_item("one", {40, 40})}});
    pages.info = {"<Tŷ & \"Llŷr\">", "A. Surveyor", "Dyluniad", "loopfolio 1", 2026, 3, 9, "cy"};
    return pages;
}

/// Elements of every kind, each followed by its children.
std::vector<layout::Element> elements() {
    using layout::Role;
    std::vector<layout::Element> made{tests::element(Role::document, -1),
                                      tests::element(Role::h1, 0),
                                      tests::element(Role::part, 0),
                                      tests::element(Role::figure, 2, "a ring (of \\ Ŵyn)"),
                                      tests::element(Role::figure, 2, "two colours"),
                                      tests::element(Role::caption, 4),
                                      tests::element(Role::h2, 2),
                                      tests::element(Role::list, 2),
                                      tests::element(Role::list_item, 7),
                                      tests::element(Role::list_label, 8),
                                      tests::element(Role::list_body, 8),
                                      tests::element(Role::table, 2),
                                      tests::element(Role::row, 11),
                                      tests::element(Role::head_cell, 12),
                                      tests::element(Role::row, 11),
                                      tests::element(Role::cell, 14),
                                      tests::element(Role::cell, 14),
                                      tests::element(Role::note, 2),
                                      tests::element(Role::p, 0),
                                      tests::element(Role::h3, 2),
                                      tests::element(Role::h4, 2),
                                      tests::element(Role::note, 2)};
    made[13].scope = layout::Element::Scope::column;
    made[13].columns = 2;
    return made;
}

layout::CircleItem ring(int mark) {
    layout::CircleItem circle;
    circle.centre = {200, 300};
    circle.radius = 20.0;
    circle.filled = true;
    circle.fill = {0.2, 0.5, 0.5};
    circle.mark = mark;
    return circle;
}

layout::PathItem rule() {
    layout::PathItem line;
    line.points = {{50, 400}, {300, 400}, {300, 450}};
    line.line_width = 0.5;
    line.dashes = {3.0, 2.0};
    return line;
}

/// Every kind of item, every font file, every kind of element, and words that are difficult in metadata.
layout::Pages everything() {
    std::vector<layout::Item> items{ring(3), rule(), layout::ImageItem{{300, 500, 400, 550}, 0, 4}};
    double y = 40.0;
    for (const auto face : {layout::Face::regular, layout::Face::bold, layout::Face::italic}) {
        const char* text = "0123456789\u2007\u2011 ✓ Łódź Ελένη Жуков (\\)\u00A0%";
        items.push_back(tests::marked(text_item(text, {40, y += 30}, face), 1));
    }
    for (const int mark : {5, 6, 9, 10, 13, 15, 16, 17, 18, 19, 20, 21}) {
        items.push_back(tests::marked(text_item("element", {60, 400.0 + 15.0 * mark}), mark));
    }
    auto pages = pages_of({items, items});
    pages.structure = elements();
    pages.images = {std::make_shared<Image>(Image{2, 1, {255, 0, 0, 0, 0, 255}})};
    pages.info = {"<Tŷ & ]]> \x01\xFF \U0001F600", "Ŵ", "", "\"x'", 2026, 12, 31, "en-GB"};
    pages.bookmarks = {{"Ŵyn & (more)", 0, 0, 50.0}, {"<below>", 1, 1, 60.0}};
    for (layout::Page& page : pages.pages) {
        page.links = {{{40.0, 50.0, 200.0, 70.0}, 1, 60.0, 10},
                      {{40.0, 80.0, 200.0, 90.0}, 0, 60.0, 10},
                      {{40.0, 80.0, 200.0, 90.0}, 0, 60.0, 18}};
    }
    return pages;
}

/// The first and the second identifier in the trailer, in hexadecimal digits.
std::pair<std::string, std::string> identifiers(const std::string& file) {
    static const std::regex both{"/ID *\\[ *<([0-9A-F]{32})> *<([0-9A-F]{32})> *\\]"};
    std::smatch found;
    const std::string end = file.substr(file.rfind("/XRef"));
    REQUIRE(std::regex_search(end, found, both));
    return {found[1], found[2]};
}

}  // namespace

TEST_CASE("the description as XMP says what the document's properties say") {
    const PdfFile file{described()};
    const std::string metadata = file.read_with("pdfinfo -meta").text;
    // Names and forms: ISO 19005-3, 6.6.4; ISO 14289-1, clause 5; ISO 16684-1, 8.3 and 8.4.
    for (const char* part :
         {"<pdfaid:part>3</pdfaid:part>", "<pdfaid:conformance>A</pdfaid:conformance>",
          "<pdfuaid:part>1</pdfuaid:part>", "<rdf:li xml:lang=\"x-default\">&lt;Tŷ &amp; \"Llŷr\"&gt;</rdf:li>",
          "<dc:creator><rdf:Seq><rdf:li>A. Surveyor</rdf:li></rdf:Seq></dc:creator>",
          "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">Dyluniad</rdf:li></rdf:Alt>",
          "<dc:language><rdf:Bag><rdf:li>cy</rdf:li></rdf:Bag></dc:language>",
          "<xmp:CreatorTool>loopfolio 1</xmp:CreatorTool>", "<xmp:CreateDate>2026-03-09T00:00:00Z</xmp:CreateDate>"}) {
        CHECK_THAT(metadata, ContainsSubstring(part));
    }
    const std::string info = file.read_with("pdfinfo -rawdates").text;
    CHECK_THAT(info, ContainsSubstring("<Tŷ & \"Llŷr\">") && ContainsSubstring("D:20260309000000Z"));
}

TEST_CASE("attached files come out as they went in") {
    const PdfFile file{described(), attachments};
    for (const pdf::Attachment& attachment : attachments) {
        CAPTURE(attachment.name);
        CHECK(file.read_with("qpdf --show-attachment='" + attachment.name + "'").text == attachment.bytes);
    }
    const std::string list = file.read_with("qpdf --list-attachments --verbose").text;
    for (const char* part : {"job.yaml -> ", "Ŵyn (1).json -> ", "description: The job file",
                             "mime type: application/yaml", "mime type: application/json"}) {
        CHECK_THAT(list, ContainsSubstring(part));
    }
    const std::string objects = file.read_with("mutool show", "grep").text;
    for (const char* part :
         {"/AF[", "/AFRelationship/Source", "/AFRelationship/Data", "/Size 3", "/ModDate(D:20260309000000Z)"}) {
        CHECK_THAT(objects, ContainsSubstring(part));
    }
    CHECK_THAT(file.read_with("pdfdetach -list").text, StartsWith("3 embedded files"));
}

TEST_CASE("an attachment that PDF/A would not have is refused by name") {
    struct Row {
        pdf::Attachment attachment;
        const char* why;
    };
    const Row rows[]{{{"", "text/plain", "Data", "", ""}, "its name is empty"},
                     {{"/a", "text/plain", "Data", "", ""}, "\"/a\" cannot be attached"},
                     {{"a/../../b", "text/plain", "Data", "", ""}, "leads out of the folder"},
                     {{"a//b", "text/plain", "Data", "", ""}, "\"a//b\" cannot be attached"},
                     {{"./a", "text/plain", "Data", "", ""}, "\"./a\" cannot be attached"},
                     {{"a/", "text/plain", "Data", "", ""}, "\"a/\" cannot be attached"},
                     {{"a", "text", "Data", "", ""}, "\"text\" is no media type"},
                     {{"a", "text/plain", "Cousin", "", ""}, "\"Cousin\" is no relationship"}};
    for (const Row& row : rows) {
        CHECK_THROWS_WITH(pdf::write_pdf(described(), tests::fonts(), {&row.attachment, 1}),
                          ContainsSubstring(row.why));
    }
    const std::vector<pdf::Attachment> twice{attachments[0], attachments[0]};
    CHECK_THROWS_WITH(pdf::write_pdf(described(), tests::fonts(), twice), ContainsSubstring("another has its name"));
}

TEST_CASE("a file says where it comes from, and any program can read it") {
    const pdf::Provenance provenance{"issued", std::string(64, 'a'), std::string(64, 'b')};
    const std::string file = pdf::write_pdf(described(), tests::fonts(), attachments, provenance);
    CHECK(pdf::provenance_of(file) == provenance);
    CHECK(file.find("<loopfolio:recordSHA256>" + provenance.record_sha256 + "</loopfolio:recordSHA256>") !=
          std::string::npos);
    CHECK_FALSE(pdf::provenance_of(pdf::write_pdf(described(), tests::fonts(), attachments)));
    for (const std::string_view other :
         {"", "%PDF-1.7", "<?xpacket begin=", "<loopfolio:status>issued</loopfolio:status>"})
        CHECK_FALSE(pdf::provenance_of(other));
}

TEST_CASE("an attachment keeps its folder, and says its size and its MD5") {
    const std::string bytes = "outdoor_c,hours\n-3,20\n";
    const pdf::Attachment attachment{"weather/hours.csv", "text/csv", "Source", bytes, ""};
    const tests::TemporaryFile file{pdf::write_pdf(described(), tests::fonts(), {&attachment, 1}), ".pdf"};
    CHECK_THAT(tests::run_command("pdfdetach -list " + file.path()).text, ContainsSubstring("weather/hours.csv"));
    // qpdf writes the digest that the file states; md5sum finds it anew.
    const tests::TemporaryFile plain{bytes};
    const std::string digest = tests::run_command("md5sum " + plain.path()).text.substr(0, 32);
    const std::string told = tests::run_command("qpdf --list-attachments --verbose " + file.path()).text;
    CHECK_THAT(told, ContainsSubstring("checksum: " + digest));
    CHECK_THAT(tests::run_command("mutool show " + file.path() + " grep").text,
               ContainsSubstring("/Size " + std::to_string(bytes.size())) && ContainsSubstring("/CheckSum"));
}

TEST_CASE("the file's identifier is the digest of its content") {
    std::string file = pdf::write_pdf(described(), tests::fonts(), attachments);
    const auto [first, second] = identifiers(file);
    CHECK(first == second);
    for (int i = 0; i < 2; ++i) file.replace(file.rfind(first), first.size(), first.size(), '0');
    // By md5sum, which writes lower-case digits; so grep has to ignore case.
    const tests::TemporaryFile emptied{file};
    CHECK(tests::run_command("md5sum " + emptied.path() + " | grep -i ^" + first).status == 0);
}

TEST_CASE("the colour profile is one of RGB, and the same every time") {
    const std::string profile = pdf::srgb_profile();
    CHECK(profile == pdf::srgb_profile());
    // ICC.1:2004-10, table 13: version, class, colour space, date and signature in the header.
    CHECK(profile.substr(8, 2) == "\x04\x20");
    CHECK(profile.substr(12, 8) == "mntrRGB ");
    CHECK(profile.substr(24, 12) == std::string{"\x07\xD4\0\1\0\1\0\0\0\0\0\0", 12});
    CHECK(profile.substr(36, 4) == "acsp");
}

TEST_CASE("samples for the validator", "[.samples]") {
    const char* folder = std::getenv("LOOPFOLIO_SAMPLES");
    REQUIRE(folder != nullptr);
    const auto write = [&](const char* name, const std::string& bytes) {
        std::ofstream{std::filesystem::path{folder} / name, std::ios::binary} << bytes;
    };
    write("everything.pdf", pdf::write_pdf(everything(), tests::fonts(), attachments,
                                           {"draft", std::string(64, 'a'), std::string(64, 'b')}));
    auto least = pages_of({{}});
    least.info.title = "x";
    write("least.pdf", pdf::write_pdf(least, tests::fonts()));
}
