// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/file_text.hpp"

#include <algorithm>
#include <charconv>
#include <array>

namespace loopfolio::yaml {

namespace {

std::size_t bytes_of(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xc2 && first < 0xe0) return 2;
    if (first >= 0xe0 && first < 0xf0) return 3;
    if (first >= 0xf0 && first < 0xf5) return 4;
    return 0;
}

}  // namespace

Character character_at(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    const std::size_t bytes = bytes_of(first);
    if (bytes <= 1) return {first, bytes};
    if (at + bytes > text.size()) return {first, 0};
    constexpr std::array<unsigned, 5> first_bits{0, 0x7f, 0x1f, 0x0f, 0x07};
    char32_t code = first & first_bits[bytes];
    for (std::size_t i = 1; i < bytes; ++i) {
        const auto next = static_cast<unsigned char>(text[at + i]);
        if ((next & 0xc0u) != 0x80u) return {first, 0};
        code = (code << 6) | (next & 0x3fu);
    }
    constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    const bool surrogate = code >= 0xd800 && code < 0xe000;
    if (code < least[bytes] || code > 0x10ffff || surrogate) return {first, 0};
    return {code, bytes};
}

std::size_t length_in_characters(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        at += std::max<std::size_t>(1, character_at(text, at).bytes);
    }
    return count;
}

std::string shortened(std::string_view text, std::size_t most) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        if (count == most) return std::string{text.substr(0, at)} + "\u2026";
        at += std::max<std::size_t>(1, character_at(text, at).bytes);
    }
    return std::string{text};
}

std::string printable(std::string_view text, std::size_t most) {
    const std::string cut = shortened(text, most);
    std::string out;
    for (std::size_t at = 0; at < cut.size();) {
        const Character c = character_at(cut, at);
        const std::size_t bytes = std::max<std::size_t>(1, c.bytes);
        const bool hidden = c.code >= 0x80 && (c.bytes == 0 || is_invisible(c.code));
        if (hidden) out.append("<").append(code_point_name(c.code)).append(">");
        else out.append(cut, at, bytes);
        at += bytes;
    }
    return out;
}

bool is_invisible(char32_t code) {
    return code < 0x20 || (code >= 0x7f && code < 0xa0) || code == 0x2028 || code == 0x2029 ||
           (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069) || code == 0xfeff;
}

std::string code_point_name(char32_t code) {
    std::array<char, 8> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(),
                                   static_cast<std::uint32_t>(code), 16).ptr;
    std::string hex(digits.data(), end);
    std::transform(hex.begin(), hex.end(), hex.begin(),
                   [](char c) { return c >= 'a' ? static_cast<char>(c - 'a' + 'A') : c; });
    return "U+" + std::string(hex.size() < 4 ? 4 - hex.size() : 0, '0') + hex;
}

LineIndex::LineIndex(std::string_view text) : text_{text}, starts_{0} {
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == '\n') starts_.push_back(at + 1);
    }
}

Place LineIndex::place(std::size_t line, std::size_t byte_column) const {
    line = std::min(line, starts_.size() - 1);
    const std::string_view rest = text_.substr(starts_[line]);
    const std::size_t column = length_in_characters(rest.substr(0, byte_column));
    return {static_cast<int>(line) + 1, static_cast<int>(column) + 1};
}

std::string_view LineIndex::from(std::size_t line, std::size_t byte_column) const {
    if (line >= starts_.size() || starts_[line] + byte_column >= text_.size()) return {};
    return text_.substr(starts_[line] + byte_column);
}

std::optional<TextFault> find_text_fault(std::string_view text, std::size_t longest_line) {
    Place place{1, 1};
    std::size_t line_start = 0;
    for (std::size_t at = 0; at < text.size();) {
        const Character c = character_at(text, at);
        if (c.bytes == 0 || (c.code == 0 && at < 4)) {
            return TextFault{place, "is not UTF-8 text", "save the file as UTF-8"};
        }
        const bool layout = c.code == '\n' || c.code == '\r' || c.code == '\t';
        if (!layout && (c.code < 0x20 || c.code == 0x7f)) {
            return TextFault{place, "holds the control character " + code_point_name(c.code),
                             "remove it"};
        }
        at += c.bytes;
        ++place.column;
        if (c.code == '\n') {
            place = {place.line + 1, 1};
            line_start = at;
        } else if (at - line_start > longest_line) {
            return TextFault{{place.line, 1},
                             "has a line of more than " + std::to_string(longest_line) + " bytes",
                             "break the line"};
        }
    }
    return std::nullopt;
}

}  // namespace loopfolio::yaml
