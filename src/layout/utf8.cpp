// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "layout/utf8.hpp"

namespace loopfolio::layout {

namespace {

constexpr char32_t broken = 0xFFFD;
constexpr char32_t zero_width_joiner = 0x200D;

struct Range {
    char32_t first, last;
};

// The blocks of combining marks in the Unicode code charts, variation selectors and skin tones.
constexpr Range combining[] = {
    {0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x064B, 0x065F}, {0x1AB0, 0x1AFF},
    {0x1DC0, 0x1DFF}, {0x200D, 0x200D}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F},
    {0x1F3FB, 0x1F3FF},
};

bool combines(char32_t letter) {
    if (letter < combining[0].first) return false;
    for (const auto& range : combining) {
        if (letter >= range.first && letter <= range.last) return true;
    }
    return false;
}

std::size_t sequence_length(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead < 0xE0) return 2;
    if (lead >= 0xE0 && lead < 0xF0) return 3;
    if (lead >= 0xF0 && lead < 0xF5) return 4;
    return 0;
}

}  // namespace

char32_t code_point(std::string_view text, std::size_t at, std::size_t& next) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const std::size_t length = sequence_length(byte(at));
    next = at + 1;
    if (length == 1) return byte(at);
    if (length == 0 || at + length > text.size()) return broken;
    char32_t value = byte(at) & (0xFFu >> (length + 1));
    for (std::size_t i = at + 1; i < at + length; ++i) {
        if ((byte(i) & 0xC0u) != 0x80u) return broken;
        value = (value << 6) | (byte(i) & 0x3Fu);
    }
    next = at + length;
    return value;
}

std::size_t letter_end(std::string_view text, std::size_t at) {
    std::size_t end = 0;
    char32_t last = code_point(text, at, end);
    while (end < text.size()) {
        std::size_t next = 0;
        const char32_t letter = code_point(text, end, next);
        if (!combines(letter) && last != zero_width_joiner) break;
        last = letter;
        end = next;
    }
    return end;
}

}  // namespace loopfolio::layout
