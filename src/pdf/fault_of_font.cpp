// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/pdf/fonts.hpp"
#include "pdf/font_table.hpp"
#include "pdf/sfnt.hpp"
#include "pdf/subset.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <exception>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::pdf {
namespace {

constexpr std::array<std::string_view, 7> needed_tables{"head", "hhea", "hmtx", "maxp", "loca", "glyf", "cmap"};

std::string fault_of_kind(std::string_view bytes) {
    const std::string_view tag = bytes.substr(0, 4);
    if (tag == "OTTO") return "holds outlines of PostScript; only those of TrueType can be used";
    if (tag == "ttcf") return "is a collection of several; only a single font can be used";
    if (tag == "wOFF" || tag == "wOF2") return "is packed for the web; its TrueType original is needed";
    if (tag != std::string_view{"\0\1\0\0", 4} && tag != "true") return "is not a TrueType font";
    for (const std::string_view needed : needed_tables) {
        if (table_of(bytes, needed).empty()) return fmt::format("lacks the table \"{}\" or is cut off", needed);
    }
    return {};
}

constexpr std::size_t type_at = 8;  // fsType, by OpenType 1.9, "OS/2"

std::string fault_of_licence(std::string_view bytes) {
    constexpr std::size_t usage = 0xF, restricted = 0x2, no_subsetting = 0x100, bitmap_only = 0x200;
    const std::string_view metrics = table_of(bytes, "OS/2");
    if (metrics.size() < 10) return "does not say whether it may be embedded (table \"OS/2\")";
    const std::size_t type = big_endian(metrics, type_at, 2);
    if ((type & usage) == restricted) return "must not be embedded, by its licence (fsType)";
    if ((type & no_subsetting) != 0) return "must not be cut down to the characters used, by its licence (fsType)";
    if ((type & bitmap_only) != 0) return "may be embedded as bitmaps only, by its licence (fsType)";
    return {};
}

/// Faults of units, numbers of glyphs or metrics that cannot be right. Metrics tables that are too short would be
/// filled up with zeros, and all text would be printed on one spot.
std::string fault_of_metrics(std::string_view bytes) {
    // OpenType 1.9: the least that a table of its first version has.
    if (table_of(bytes, "head").size() < 54 || table_of(bytes, "hhea").size() < 36 ||
        table_of(bytes, "maxp").size() < 6) {
        return "is damaged: a table is cut short";
    }
    const std::size_t units = big_endian(table_of(bytes, "head"), 18, 2);
    const std::size_t glyphs = big_endian(table_of(bytes, "maxp"), 4, 2);
    const std::size_t advances = big_endian(table_of(bytes, "hhea"), 34, 2);
    if (glyphs == 0) return "has no glyphs";
    const bool sound = units >= 16 && units <= 16384 && advances > 0 && advances <= glyphs &&
                       table_of(bytes, "hmtx").size() >= 4 * advances + 2 * (glyphs - advances);
    return sound ? "" : "is damaged: its metrics do not fit together";
}

/// The table `loca` says where the outline of each glyph starts in `glyf`, and after the last where it ends.
std::string fault_of_outlines(std::string_view bytes) {
    const std::size_t format = big_endian(table_of(bytes, "head"), 50, 2);
    const std::size_t glyphs = big_endian(table_of(bytes, "maxp"), 4, 2);
    const std::string_view places = table_of(bytes, "loca");
    constexpr auto fault = "is damaged: its outlines do not fit together";
    const std::size_t width = format == 0 ? 2 : 4, step = format == 0 ? 2 : 1;
    if (format > 1 || places.size() < (glyphs + 1) * width) return fault;
    std::size_t before = 0;
    for (std::size_t i = 0; i <= glyphs; ++i) {
        const std::size_t place = big_endian(places, i * width, width) * step;
        if (place < before || place > table_of(bytes, "glyf").size()) return fault;
        before = place;
    }
    return {};
}

std::string fault_of_checksums(std::string_view bytes) {
    for (const std::string_view needed : needed_tables) {
        if (checksum_of(bytes, needed) != stated_checksum_of(bytes, needed))
            return fmt::format("is damaged: its table \"{}\" does not have the checksum that the file states", needed);
    }
    return {};
}

std::string fault_of_characters(const OpenFont& font) {
    std::vector<std::uint16_t> glyphs;
    for (char32_t c = U' '; c <= U'~'; ++c) {
        hb_codepoint_t glyph = 0;
        if (!hb_font_get_nominal_glyph(font.font.get(), c, &glyph) || glyph == 0 || glyph > 0xFFFF) {
            return fmt::format("has no glyph for \"{}\"", static_cast<char>(c));
        }
        glyphs.push_back(static_cast<std::uint16_t>(glyph));
    }
    const auto within = [](double height) { return height > -0.5 && height < 2.0; };  // em
    if (!(font.cap_height > 0.0) || !within(font.cap_height) || !within(font.descent)) {
        return "is damaged: its letters have no height";
    }
    (void)subset(font.face.get(), glyphs);
    return {};
}

}  // namespace

bool may_be_passed_on(std::string_view font) {
    constexpr std::size_t usage = 0xF;
    const std::string_view metrics = table_of(font, "OS/2");
    return metrics.size() >= type_at + 2 && (big_endian(metrics, type_at, 2) & usage) == 0;
}

std::string fault_of_font(std::string_view bytes) {
    for (const auto fault_of :
         {fault_of_kind, fault_of_licence, fault_of_metrics, fault_of_outlines, fault_of_checksums}) {
        if (std::string fault = fault_of(bytes); !fault.empty()) return fault;
    }
    try {
        return fault_of_characters(open_font(bytes, true));
    } catch (const std::exception& failure) {
        return fmt::format("is damaged: {}", failure.what());
    }
}

}  // namespace loopfolio::pdf
