// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/sfnt.hpp"

namespace loopfolio::pdf {

std::size_t big_endian(std::string_view bytes, std::size_t at, std::size_t length) {
    std::size_t value = 0;
    for (std::size_t i = at; i < at + length; ++i) {
        value = value << 8 | (i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U);
    }
    return value;
}

namespace {

/// The record of a table in the table directory; empty if there is none.
std::string_view record_of(std::string_view font, std::string_view tag) {
    constexpr std::size_t first = 12, length = 16;
    const std::size_t count = big_endian(font, 4, 2);
    for (std::size_t at = first; at < first + length * count && at + length <= font.size(); at += length) {
        if (font.substr(at, 4) == tag) return font.substr(at, length);
    }
    return {};
}

}  // namespace

std::string_view table_of(std::string_view font, std::string_view tag) {
    const std::string_view record = record_of(font, tag);
    const std::size_t start = big_endian(record, 8, 4), length = big_endian(record, 12, 4);
    if (record.empty() || start > font.size() || length > font.size() - start) return {};
    return font.substr(start, length);
}

std::uint32_t checksum_of(std::string_view font, std::string_view tag) {
    constexpr std::size_t adjustment = 8;
    const std::string_view table = table_of(font, tag);
    std::uint32_t sum = 0;
    for (std::size_t at = 0; at < table.size(); at += 4) {
        if (tag == "head" && at == adjustment) continue;
        sum += static_cast<std::uint32_t>(big_endian(table, at, 4));
    }
    return sum;
}

std::uint32_t stated_checksum_of(std::string_view font, std::string_view tag) {
    return static_cast<std::uint32_t>(big_endian(record_of(font, tag), 4, 4));
}

}  // namespace loopfolio::pdf
