// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/pdf_support.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <iterator>
#include <regex>

using namespace loopfolio;
using layout::Face;
using tests::PdfFile;
using tests::pages_of;
using tests::text_item;

// Poppler and MuPDF read the text back; they share no code with the writer.

namespace {

/// Household names, places and formulas in the scripts that the pack must be able to print.
const std::vector<std::string> samples{"Llŷr a Ŵyn, Tŷ'r Afon, ŵ ŷ Ŵ Ŷ",
                                       "Wąchała Łódź żółć, GĘŚLĄ JAŹŃ",
                                       "Αθήνα: Ελένη Παπαδοπούλου, ΐ ΰ",
                                       "Příliš žluťoučký kůň úpěl ďábelské ódy",
                                       "București ș ț Ș Ț, Timișoara",
                                       "Σ ζ = 2 × 1.5; Δp ≤ 30 ≥ 5 ≈ m² m³ ½ → N·s − x",
                                       "Жуков, Київ, Ĳssel, ðþ ÅÆØ, İıŞş, ⅓",
                                       "ticks ✓ and ✗ mixed ■ with ● other ▲ shapes ☐",
                                       "(brackets) \\ back [square] {curly} <angle> % / # ~"};

const std::array<std::string, 3> table_words{"Tŷ'r-Afon", "(30×28)", "≤35°C"};

std::string decoded(std::string xml) {
    static const std::pair<const char*, const char*> entities[]{{"&lt;", "<"},   {"&gt;", ">"},  {"&quot;", "\""},
                                                                {"&apos;", "'"}, {"&#39;", "'"}, {"&amp;", "&"}};
    for (const auto& [entity, character] : entities) {
        xml = std::regex_replace(xml, std::regex{entity}, character);
    }
    return xml;
}

/// Converts character references such as &#x177; to UTF-8; other text is unchanged.
std::string utf8_of(const std::string& reference) {
    if (!reference.starts_with("&#x")) return decoded(reference);
    const auto c = static_cast<unsigned>(std::stoul(reference.substr(3), nullptr, 16));
    if (c < 0x80) return {static_cast<char>(c)};
    if (c < 0x800) return {static_cast<char>(0xC0 | c >> 6), static_cast<char>(0x80 | (c & 0x3F))};
    return {static_cast<char>(0xE0 | c >> 12), static_cast<char>(0x80 | (c >> 6 & 0x3F)),
            static_cast<char>(0x80 | (c & 0x3F))};
}

/// Every character on the page as MuPDF finds it in the file, without guessed spaces.
std::string characters_by_mupdf(const PdfFile& file, int page) {
    const tests::TemporaryFile stext;
    const std::string as_it_is = "-F stext -O preserve-whitespace,preserve-ligatures,inhibit-spaces";
    const std::string convert = "mutool convert " + as_it_is + " -o " + stext.path();
    const auto said = file.read_with(convert, std::to_string(page));
    INFO(said.text);
    REQUIRE(said.status == 0);
    std::ifstream in{stext.path()};
    const std::string xml{std::istreambuf_iterator<char>{in}, {}};
    static const std::regex one{"<char [^>]* c=\"([^\"]*)\"/>"};
    std::string out;
    for (std::sregex_iterator i{xml.begin(), xml.end(), one}, end; i != end; ++i) out += utf8_of((*i)[1]);
    return out;
}

std::string one_line(const std::string& text) {
    const auto lines = tests::lines_of(text);
    return lines.empty() ? "" : lines[0];
}

struct Word {
    double left, right;
    std::string text;
};

std::vector<Word> words_by_poppler(const PdfFile& file) {
    const std::string xml = file.read_with("pdftotext -bbox", "-").text;
    static const std::regex one{
        "<word xMin=\"([0-9.]+)\" yMin=\"[0-9.]+\" xMax=\"([0-9.]+)\" "
        "yMax=\"[0-9.]+\">([^<]*)</word>"};
    std::vector<Word> words;
    for (std::sregex_iterator i{xml.begin(), xml.end(), one}, end; i != end; ++i) {
        words.push_back({std::stod((*i)[1]), std::stod((*i)[2]), decoded((*i)[3])});
    }
    return words;
}

}  // namespace

TEST_CASE("text copies out as the characters that were set, in every face") {
    for (const Face face : {Face::regular, Face::bold, Face::italic}) {
        std::vector<std::vector<layout::Item>> pages;
        for (const std::string& sample : samples) pages.push_back({text_item(sample, {40.0, 100.0}, face)});
        const PdfFile file{pages_of(pages)};
        for (std::size_t i = 0; i < samples.size(); ++i) {
            const int page = static_cast<int>(i) + 1;
            CAPTURE(samples[i]);
            CHECK(characters_by_mupdf(file, page) == samples[i]);
            const std::string only = "-raw -f " + std::to_string(page) + " -l " + std::to_string(page);
            CHECK(one_line(file.read_with("pdftotext " + only, "-").text) == samples[i]);
        }
    }
}

TEST_CASE("special spaces and hyphens are kept, marks are composed, the invisible is dropped") {
    struct Row {
        std::string text, read;
    };
    const Row rows[]{{"45\u00A0°C", "45\u00A0°C"},
                     {"1\u2009000\u202Fm", "1\u2009000\u202Fm"},
                     {"\u20075.0", "\u20075.0"},
                     {"low\u2011loss", "low\u2011loss"},
                     {"cafe\u0301 w\u0302 s\u0326", "caf\u00E9 \u0175 \u0219"},
                     {"under\u00ADfloor\u200B", "underfloor"}};
    std::vector<std::vector<layout::Item>> pages;
    for (const Row& row : rows) pages.push_back({text_item(row.text, {40.0, 100.0})});
    const PdfFile file{pages_of(pages)};
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        CAPTURE(rows[i].text);
        CHECK(characters_by_mupdf(file, static_cast<int>(i) + 1) == rows[i].read);
    }
}

TEST_CASE("many different characters in one font all come back") {
    // More than 256, and more than 100, which is the most that one block of a ToUnicode map may hold.
    std::vector<layout::Item> items;
    std::string all;
    for (char32_t c = 0xC0; c < 0x240; ++c) {
        const std::string utf8{static_cast<char>(0xC0 | c >> 6), static_cast<char>(0x80 | (c & 0x3F))};
        if (!tests::fonts().unprintable(utf8).empty()) continue;
        items.push_back(text_item(utf8, {40.0 + 10.0 * (c % 32), 40.0 + 20.0 * (c / 32)}));
        all += utf8;
    }
    REQUIRE(items.size() > 300);
    CHECK(characters_by_mupdf(PdfFile{pages_of({items})}, 1) == all);
}

TEST_CASE("a text is as wide on the page as layout was told") {
    const std::vector<std::string> words{"Temperature", "1,234,567.89", "ŴŷŁódź", "WAVE\u2713AWAY\u2192",
                                         "iiiiiiiiiiiiiiii"};
    for (const Face face : {Face::regular, Face::bold, Face::italic}) {
        std::vector<layout::Item> items;
        for (std::size_t i = 0; i < words.size(); ++i) {
            items.push_back(text_item(words[i], {50.0, 100.0 + 40.0 * static_cast<double>(i)}, face, 17.5));
        }
        const auto found = words_by_poppler(PdfFile{pages_of({items})});
        REQUIRE(found.size() == words.size());
        for (std::size_t i = 0; i < words.size(); ++i) {
            CAPTURE(words[i]);
            CHECK(found[i].text == words[i]);
            CHECK(found[i].left == Approx(50.0).margin(0.005));
            CHECK(found[i].right - found[i].left == Approx(tests::fonts().width(words[i], face, 17.5)).margin(0.002));
        }
    }
}

TEST_CASE("both readers find every word of a full page, and no other") {
    // Three columns of 60 rows, in changing faces and sizes as in a schedule.
    std::vector<layout::Item> items;
    std::vector<std::string> set;
    for (int row = 0; row < 60; ++row) {
        for (int column = 0; column < 3; ++column) {
            const auto face = static_cast<Face>((row + column) % 3);
            const std::vector<std::string> words{"R" + std::to_string(row),
                                                 table_words[static_cast<std::size_t>(column)],
                                                 std::to_string(row * 7.25).substr(0, 5)};
            items.push_back(text_item(words[0] + " " + words[1] + " " + words[2],
                                      {40.0 + 180.0 * column, 40.0 + 12.5 * row}, face, 7.0 + row % 3));
            set.insert(set.end(), words.begin(), words.end());
        }
    }
    std::sort(set.begin(), set.end());
    const PdfFile file{pages_of({items})};
    std::vector<std::string> poppler;
    for (const Word& word : words_by_poppler(file)) poppler.push_back(word.text);
    std::sort(poppler.begin(), poppler.end());
    CHECK(poppler == set);
    const tests::TemporaryFile text;
    CHECK(file.read_with("mutool draw -q -F text -o " + text.path(), "1").status == 0);
    std::ifstream in{text.path()};
    std::vector<std::string> mupdf{std::istream_iterator<std::string>{in}, {}};
    std::sort(mupdf.begin(), mupdf.end());
    CHECK(mupdf == set);
}

TEST_CASE("fonts are embedded, cut down and readable") {
    const PdfFile file{pages_of({{text_item("regular ✓", {40, 40}), text_item("bold ✓", {40, 60}, Face::bold),
                                  text_item("italic", {40, 80}, Face::italic)}})};
    const auto lines = tests::lines_of(file.read_with("pdffonts").text);
    REQUIRE(lines.size() == 2 + 5);
    static const std::regex row{
        "[A-Z]{6}\\+(Lato-(Regular|Bold|Italic)|DejaVuSans(-Bold)?) "
        "+CID TrueType +Identity-H +yes yes yes .*"};
    for (std::size_t i = 2; i < lines.size(); ++i) {
        CAPTURE(lines[i]);
        CHECK(std::regex_match(lines[i], row));
    }
    // A page with each face in full would take about 3 MB.
    CHECK(pdf::write_pdf(pages_of({{text_item("regular ✓", {40, 40})}}), tests::fonts()).size() < 12'000);
}

TEST_CASE("a character that no font holds is named") {
    const auto pages = pages_of({{text_item("smile \U0001F600", {40, 40})}});
    CHECK_THROWS_WITH(pdf::write_pdf(pages, tests::fonts()),
                      tests::ContainsSubstring("U+1F600") && tests::ContainsSubstring("smile"));
}
