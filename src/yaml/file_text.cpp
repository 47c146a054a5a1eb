// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/file_text.hpp"

#include "loopfolio/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace loopfolio::yaml {

std::string shortened(std::string_view text, std::size_t most) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        if (count == most) return std::string{text.substr(0, at)} + "\u2026";
        at += utf8::character_at(text, at).bytes;
    }
    return std::string{text};
}

std::string printable(std::string_view text, std::size_t most) {
    const std::string cut = shortened(text, most);
    std::string out;
    for (std::size_t at = 0; at < cut.size();) {
        const auto c = utf8::character_at(cut, at);
        const char32_t code = c.whole ? c.code
                                      : static_cast<unsigned char>(cut[at]);  // a stray byte is shown as what it is
        const bool hidden = code >= 0x80 && (!c.whole || is_invisible(code));
        if (hidden) out.append("<").append(code_point_name(code)).append(">");
        else out.append(cut, at, c.bytes);
        at += c.bytes;
    }
    return out;
}

bool is_invisible(char32_t code) {
    return code < 0x20 || (code >= 0x7f && code < 0xa0) || code == 0x2028 || code == 0x2029 ||
           (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069) || code == 0xfeff;
}

std::string code_point_name(char32_t code) {
    std::array<char, 8> digits{};
    const auto end =
        std::to_chars(digits.data(), digits.data() + digits.size(), static_cast<std::uint32_t>(code), 16).ptr;
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
    const std::size_t column = utf8::length(rest.substr(0, byte_column));
    return {static_cast<int>(line) + 1, static_cast<int>(column) + 1};
}

std::string_view LineIndex::from(std::size_t line, std::size_t byte_column) const {
    if (line >= starts_.size() || starts_[line] + byte_column >= text_.size()) return {};
    return text_.substr(starts_[line] + byte_column);
}

std::string with_line_feeds(std::string_view text) {
    std::string out{text};
    for (std::size_t at = 0; at < out.size(); ++at) {
        if (out[at] == '\r' && (at + 1 == out.size() || out[at + 1] != '\n')) out[at] = '\n';
    }
    return out;
}

std::optional<TextFault> find_text_fault(std::string_view text, std::size_t longest_line) {
    Place place{1, 1};
    std::size_t line_start = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto c = utf8::character_at(text, at);
        if (!c.whole || (c.code == 0 && at < 4)) {
            return TextFault{place, "is not UTF-8 text", "save the file as UTF-8"};
        }
        const bool layout = c.code == '\n' || c.code == '\r' || c.code == '\t';
        if (!layout && (c.code < 0x20 || c.code == 0x7f)) {
            return TextFault{place, "holds the control character " + code_point_name(c.code), "remove it"};
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
