// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/embedded.hpp"
#include "pdf/pdf_support.hpp"
#include "pdf/sfnt.hpp"
#include "support/catch.hpp"
#include "support/verification.hpp"

#include <hb.h>

#include <memory>
#include <random>
#include <utility>

using namespace loopfolio;
using layout::Face;
using pdf::FontFile;
using pdf::fault_of_font;
using tests::ContainsSubstring;

// Fonts given by the caller. The tests use the compiled-in font files, unchanged and damaged.

namespace {

std::string lato() { return std::string{pdf::bytes_of(FontFile::regular)}; }

std::size_t place_of(const std::string& font, std::string_view table) {
    return static_cast<std::size_t>(pdf::table_of(font, table).data() - font.data());
}

/// The font with two bytes of a table set.
std::string with(std::string font, std::string_view table, std::size_t at, unsigned value) {
    const std::size_t place = place_of(font, table) + at;
    font[place] = static_cast<char>(value >> 8);
    font[place + 1] = static_cast<char>(value & 0xFF);
    return font;
}

/// The font with the checksums that its tables have now, so that what else is wrong with them comes to light.
std::string with_right_checksums(std::string font) {
    const std::size_t count = pdf::big_endian(font, 4, 2);
    for (std::size_t i = 0, at = 12; i < count && at + 16 <= font.size(); ++i, at += 16) {
        const std::uint32_t sum = pdf::checksum_of(font, std::string_view{font}.substr(at, 4));
        for (std::size_t k = 0; k < 4; ++k) font[at + 4 + k] = static_cast<char>(sum >> (24 - 8 * k) & 0xFF);
    }
    return font;
}

/// The numbers of the glyphs that the ten figures have with a feature of the font, as a table of the font holds them.
std::string figures_with(const std::string& font, hb_tag_t feature) {
    const std::unique_ptr<hb_blob_t, decltype(&hb_blob_destroy)> blob{
        hb_blob_create(font.data(), static_cast<unsigned>(font.size()), HB_MEMORY_MODE_READONLY, nullptr, nullptr),
        hb_blob_destroy};
    const std::unique_ptr<hb_face_t, decltype(&hb_face_destroy)> face{hb_face_create(blob.get(), 0), hb_face_destroy};
    const std::unique_ptr<hb_font_t, decltype(&hb_font_destroy)> sized{hb_font_create(face.get()), hb_font_destroy};
    const std::unique_ptr<hb_buffer_t, decltype(&hb_buffer_destroy)> buffer{hb_buffer_create(), hb_buffer_destroy};
    hb_buffer_add_utf8(buffer.get(), "0123456789", -1, 0, -1);
    hb_buffer_guess_segment_properties(buffer.get());
    const hb_feature_t asked{feature, 1, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END};
    hb_shape(sized.get(), buffer.get(), &asked, 1);
    unsigned count = 0;
    const hb_glyph_info_t* found = hb_buffer_get_glyph_infos(buffer.get(), &count);
    REQUIRE(count == 10);
    std::string out;
    for (unsigned i = 0; i < count; ++i) {
        out += {static_cast<char>(found[i].codepoint >> 8), static_cast<char>(found[i].codepoint & 0xFF)};
    }
    return out;
}

/// Lato with its proportional figures in place of its tabular ones, as pnum of its GSUB table sets them. The numbers of
/// the glyphs are asked of HarfBuzz, as those of Lato 2.0 (Debian 12) and 2.015 (Debian 13) differ.
std::string with_proportional_figures() {
    std::string font = lato();
    const std::string tabular = figures_with(font, HB_TAG('t', 'n', 'u', 'm'));
    const std::string proportional = figures_with(font, HB_TAG('p', 'n', 'u', 'm'));
    REQUIRE(tabular != proportional);
    const std::size_t start = place_of(font, "cmap"), end = start + pdf::table_of(font, "cmap").size();
    int replaced = 0;
    for (std::size_t at = start; (at = font.find(tabular, at)) < end; ++replaced) {
        font.replace(at, proportional.size(), proportional);
    }
    REQUIRE(replaced > 0);
    return with_right_checksums(std::move(font));
}

}  // namespace

TEST_CASE("a given font prints in its face, the others stay") {
    const pdf::Fonts given{pdf::FontBytes{"", pdf::bytes_of(FontFile::fallback), ""}};
    const std::string_view text = "Radiators 45";
    CHECK(given.width(text, Face::regular, 10.0) == tests::fonts().width(text, Face::regular, 10.0));
    CHECK(given.width(text, Face::italic, 10.0) == tests::fonts().width(text, Face::italic, 10.0));
    tests::Verification v{{"advance of H and height of capitals of a given font", "hmtx and OS/2 of DejaVu Sans 2.37",
                           tests::Certainty::read, "em"}};
    v.check(1540.0 / 2048.0, given.width("H", Face::bold, 1.0), 0.00051);
    v.check(1493.0 / 2048.0, given.cap_height(Face::bold), 0.001);
    auto pages = tests::pages_of({{tests::text_item("Bold Łódź ✓", {40, 40}, Face::bold)}});
    const tests::TemporaryFile file{pdf::write_pdf(pages, given), ".pdf"};
    CHECK_THAT(tests::run_command("pdffonts " + file.path()).text,
               ContainsSubstring("+DejaVuSans ") && !ContainsSubstring("Lato"));
    CHECK_THAT(tests::run_command("pdftotext " + file.path() + " -").text, ContainsSubstring("Bold Łódź ✓"));
}

TEST_CASE("figures of a given font stand in columns") {
    // Its feature tnum replaces the proportional figures by the tabular ones, which are 1160 of 2000 units wide.
    const std::string font = with_proportional_figures();
    const pdf::Fonts given{pdf::FontBytes{font, "", ""}};
    for (const char* figure : {"0", "1", "4", "7"}) {
        CHECK(given.width(figure, Face::regular, 1.0) == Approx(1160.0 / 2000.0).margin(0.00051));
    }
    SECTION("also where it keeps none for tables: the widest advance is that of all") {
        std::string plain = font;
        plain.replace(place_of(plain, "GSUB"), 2, 2, '\xFF');  // a version that does not exist
        const pdf::Fonts widened{pdf::FontBytes{plain, "", ""}};
        const double zero = widened.width("0", Face::regular, 1.0);
        CHECK(zero == Approx(1316.0 / 2000.0).margin(0.00051));  // its zero, in hmtx
        CHECK(widened.width("1", Face::regular, 1.0) == zero);
    }
}

TEST_CASE("a font that cannot be printed with is told why") {
    const auto tagged = [](std::string_view tag) { return std::string{tag} + lato().substr(4); };
    const std::string cut = lato().substr(0, lato().size() / 2);
    const std::pair<std::string, const char*> rows[]{
        {"", "is not a TrueType font"},
        {"%PDF-1.7", "is not a TrueType font"},
        {tagged("OTTO"), "outlines of PostScript"},
        {tagged("ttcf"), "a collection"},
        {tagged("wOF2"), "packed for the web"},
        {cut, "or is cut off"},
        {with(lato(), "OS/2", 8, 0x0002), "must not be embedded"},
        {with(lato(), "OS/2", 8, 0x0104), "must not be cut down"},
        {with(lato(), "OS/2", 8, 0x0200), "as bitmaps only"},
        {with(lato(), "head", 18, 0), "its metrics do not fit together"},
        {with(lato(), "hhea", 34, 0xFFFF), "its metrics do not fit together"},
        {with(lato(), "maxp", 4, 0), "has no glyphs"},
        {with(lato(), "head", 50, 7), "its outlines do not fit together"},
        {with(lato(), "loca", 4, 0xFFFF), "its outlines do not fit together"},
        {with(lato(), "glyf", 2, 0x1234), "its table \"glyf\" does not have the checksum"},
        {with(lato(), "cmap", 2, 0), "its table \"cmap\" does not have the checksum"},
        {with_right_checksums(with(lato(), "cmap", 2, 0)), "has no glyph for \" \""}};
    for (const auto& [bytes, why] : rows) {
        CAPTURE(why);
        CHECK_THAT(fault_of_font(bytes), ContainsSubstring(why));
        if (!bytes.empty()) {
            CHECK_THROWS_WITH((pdf::Fonts{pdf::FontBytes{"", "", bytes}}),
                              ContainsSubstring("the font for italic") && ContainsSubstring(why));
        }
    }
}

TEST_CASE("a table that is cut short is told, whatever its checksum") {
    for (const std::string_view table : {"head", "hhea", "maxp", "hmtx", "loca", "glyf", "cmap"}) {
        std::string font = lato();
        for (std::size_t at = 12; at < 12 + 16 * pdf::big_endian(font, 4, 2); at += 16) {
            if (font.substr(at, 4) != table) continue;
            font.replace(at + 12, 4, std::string("\0\0\0\4", 4));  // four bytes are left of it
        }
        CAPTURE(table);
        CHECK(pdf::table_of(font, table).size() == 4);
        CHECK_FALSE(fault_of_font(font).empty());
        CHECK_FALSE(fault_of_font(with_right_checksums(font)).empty());
    }
}

TEST_CASE("a font is passed on whole only where its licence says so") {
    CHECK(pdf::may_be_passed_on(with(lato(), "OS/2", 8, 0x0000)));
    for (const unsigned type : {0x0002U, 0x0004U, 0x0008U})
        CHECK_FALSE(pdf::may_be_passed_on(with(lato(), "OS/2", 8, type)));
    CHECK_FALSE(pdf::may_be_passed_on("no font"));
}

TEST_CASE("a font that may be embedded is taken") {
    // OpenType 1.9, "OS/2": 0 installable, 4 preview and print, 8 editable.
    for (const unsigned type : {0x0000U, 0x0004U, 0x0008U}) CHECK(fault_of_font(with(lato(), "OS/2", 8, type)) == "");
    for (const FontFile file : {FontFile::bold, FontFile::italic, FontFile::fallback, FontFile::fallback_bold}) {
        CHECK(fault_of_font(pdf::bytes_of(file)) == "");
    }
}

TEST_CASE("whatever the bytes of a font are, it is refused or printed with") {
    std::mt19937 random{7};
    const auto pages = tests::pages_of({{tests::text_item("Łódź 0123", {40, 40})}});
    for (int i = 0; i < 120; ++i) {
        std::string font = lato();
        if (i % 3 == 0) font.resize(random() % font.size());
        const std::size_t among = i % 3 == 1 ? 600 : font.size();  // most of the directory, or anywhere
        for (int flip = 0; flip < 8 && i % 3 != 0; ++flip) font[random() % among] ^= static_cast<char>(random());
        if (i % 2 == 0) font = with_right_checksums(std::move(font));  // so that the bytes themselves are read
        INFO("font " << i);
        if (!fault_of_font(font).empty()) continue;
        try {
            CHECK_FALSE(pdf::write_pdf(pages, pdf::Fonts{pdf::FontBytes{font, "", ""}}).empty());
        } catch (const std::runtime_error& refused) {
            CHECK(std::string{refused.what()} != "");
        }
    }
}
