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

std::string_view table_of(std::string_view font, std::string_view tag) {
    constexpr std::size_t first = 12, record = 16;
    const std::size_t count = big_endian(font, 4, 2);
    for (std::size_t at = first; at < first + record * count && at + record <= font.size(); at += record) {
        if (font.substr(at, 4) != tag) continue;
        const std::size_t start = big_endian(font, at + 8, 4), length = big_endian(font, at + 12, 4);
        if (start > font.size() || length > font.size() - start) return {};
        return font.substr(start, length);
    }
    return {};
}

}  // namespace loopfolio::pdf
