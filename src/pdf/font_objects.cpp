// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/font_objects.hpp"

#include "pdf/subset.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopfolio::pdf {
namespace {

/// Width of the upright stems in thousandths of the em; only a hint for readers without the font.
constexpr std::array<int, font_file_count> stems{80, 130, 80, 90, 160};

/// Six capitals that differ between subsets (ISO 32000-1, 9.6.4), taken from the FNV-1a hash of the bytes (Fowler,
/// Noll, Vo), so that the same pack always has the same ones.
std::string subset_name(std::string_view bytes, std::string_view name) {
    std::uint64_t hash = 14695981039346656037u;
    for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211u;
    std::string tag;
    for (int i = 0; i < 6; ++i, hash /= 26) tag += static_cast<char>('A' + hash % 26);
    return fmt::format("{}+{}", tag, name);
}

int thousandths(double value) { return static_cast<int>(std::lround(1000.0 * value)); }

std::string glyph_map(const std::vector<std::uint16_t>& ids) {
    std::string map(2, '\0');  // code 0 is not used
    for (const std::uint16_t id : ids) {
        map += static_cast<char>(id >> 8);
        map += static_cast<char>(id & 0xFF);
    }
    return map;
}

/// True if a byte of the code has a special meaning in a literal string (ISO 32000-1, 7.3.4.2).
bool needs_escape(std::size_t code) {
    constexpr std::string_view special = "()\\\r";
    return special.find(static_cast<char>(code >> 8)) != std::string_view::npos ||
           special.find(static_cast<char>(code & 0xFF)) != std::string_view::npos;
}

}  // namespace

DocumentFont::DocumentFont(const HaruDocument& document, const Fonts::Impl& fonts, FontFile file)
    : document_{document},
      font_{fonts.file(file)},
      file_{file},
      dictionary_{document.dictionary()},
      used_(1) {}

std::uint16_t DocumentFont::new_code(char32_t c, Glyph glyph) {
    while (needs_escape(used_.size())) used_.push_back({});
    const auto code = static_cast<std::uint16_t>(used_.size());
    used_.push_back({c, glyph});
    Page& page = pages_[c >> 8];
    if (!page) page = std::make_unique<Page::element_type>();
    (*page)[c & 0xFF] = code;
    return code;
}

std::string DocumentFont::to_unicode() const {
    constexpr std::size_t most_in_a_block = 100;
    std::vector<std::string> rows;
    for (std::size_t code = 1; code < used_.size(); ++code) {
        if (used_[code].character == 0) continue;
        rows.push_back(fmt::format("<{:04X}> <{:04X}>\n", code, static_cast<std::uint32_t>(used_[code].character)));
    }
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    for (std::size_t first = 0; first < rows.size(); first += most_in_a_block) {
        const std::size_t last = std::min(first + most_in_a_block, rows.size());
        map += fmt::format("{} beginbfchar\n", last - first);
        for (std::size_t row = first; row < last; ++row) map += rows[row];
        map += "endbfchar\n";
    }
    return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

HPDF_Array DocumentFont::widths() const {
    HPDF_Array each = document_.array(), all = document_.array();
    for (std::size_t code = 1; code < used_.size(); ++code) {
        HPDF_Array_AddNumber(each, used_[code].glyph.advance);
    }
    HPDF_Array_AddNumber(all, 1);
    HPDF_Array_Add(all, each);
    return all;
}

HPDF_Dict DocumentFont::descriptor(const std::string& name, const std::string& font_file) const {
    constexpr int symbolic = 1 << 2, italic = 1 << 6;
    hb_font_extents_t extents{};
    hb_font_get_h_extents(font_.font.get(), &extents);
    const double em = font_.units;
    HPDF_Dict made = document_.dictionary();
    HPDF_Dict_AddName(made, "Type", "FontDescriptor");
    HPDF_Dict_AddName(made, "FontName", name.c_str());
    HPDF_Dict_AddNumber(made, "Flags", symbolic | (font_.italic_angle != 0 ? italic : 0));
    HPDF_Dict_AddNumber(made, "ItalicAngle", font_.italic_angle);
    HPDF_Dict_AddNumber(made, "Ascent", thousandths(extents.ascender / em));
    HPDF_Dict_AddNumber(made, "Descent", thousandths(extents.descender / em));
    HPDF_Dict_AddNumber(made, "CapHeight", thousandths(font_.cap_height));
    HPDF_Dict_AddNumber(made, "StemV", stems[static_cast<std::size_t>(file_)]);
    HPDF_Array box = document_.array();
    for (const double edge : font_.box) HPDF_Array_AddNumber(box, thousandths(edge));
    HPDF_Dict_Add(made, "FontBBox", box);
    HPDF_Dict stream = document_.stream(font_file);
    HPDF_Dict_AddNumber(stream, "Length1", static_cast<HPDF_INT32>(font_file.size()));
    HPDF_Dict_Add(made, "FontFile2", stream);
    return made;
}

void DocumentFont::finish() {
    std::vector<std::uint16_t> glyphs;
    for (std::size_t code = 1; code < used_.size(); ++code) glyphs.push_back(used_[code].glyph.id);
    const Subset cut = subset(font_.face.get(), glyphs);
    const std::string name = subset_name(cut.bytes, font_.name);

    HPDF_Dict system = document_.dictionary();
    document_.set_text(system, "Registry", "Adobe");
    document_.set_text(system, "Ordering", "Identity");
    HPDF_Dict_AddNumber(system, "Supplement", 0);

    HPDF_Dict descendant = document_.dictionary();
    HPDF_Dict_AddName(descendant, "Type", "Font");
    HPDF_Dict_AddName(descendant, "Subtype", "CIDFontType2");
    HPDF_Dict_AddName(descendant, "BaseFont", name.c_str());
    HPDF_Dict_Add(descendant, "CIDSystemInfo", system);
    HPDF_Dict_Add(descendant, "FontDescriptor", descriptor(name, cut.bytes));
    HPDF_Dict_Add(descendant, "W", widths());
    HPDF_Dict_Add(descendant, "CIDToGIDMap", document_.stream(glyph_map(cut.ids)));

    HPDF_Array descendants = document_.array();
    HPDF_Array_Add(descendants, descendant);
    HPDF_Dict_AddName(dictionary_, "Type", "Font");
    HPDF_Dict_AddName(dictionary_, "Subtype", "Type0");
    HPDF_Dict_AddName(dictionary_, "BaseFont", name.c_str());
    HPDF_Dict_AddName(dictionary_, "Encoding", "Identity-H");
    HPDF_Dict_Add(dictionary_, "DescendantFonts", descendants);
    HPDF_Dict_Add(dictionary_, "ToUnicode", document_.stream(to_unicode()));
    document_.check("writing the fonts");
}

}  // namespace loopfolio::pdf
