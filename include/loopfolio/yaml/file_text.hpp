// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::yaml {

/// The bytes that some programs write before UTF-8 text.
inline constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

/// `text` cut to `most` characters, with an ellipsis where something was cut.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t most);

/// `text` cut to `most` characters, with invisible characters written as `<U+202E>`, so that it is safe to print.
[[nodiscard]] std::string printable(std::string_view text, std::size_t most);

/// True for control characters, line and paragraph separators, and marks that change the direction of text: a reader
/// cannot see them, and a page must not contain them.
[[nodiscard]] bool is_invisible(char32_t code);

/// The name of a code point: `U+202E`.
[[nodiscard]] std::string code_point_name(char32_t code);

/// Converts byte offsets within a line into places that count characters.
class LineIndex {
public:
    explicit LineIndex(std::string_view text);
    /// `line` and `byte_column` count from 0.
    [[nodiscard]] Place place(std::size_t line, std::size_t byte_column) const;
    /// The text from that offset to the end.
    [[nodiscard]] std::string_view from(std::size_t line, std::size_t byte_column) const;

private:
    std::string_view text_;
    std::vector<std::size_t> starts_;
};

struct TextFault {
    Place place;
    std::string rule;
    Hint hint = {};
};
/// The text with every carriage return that ends a line alone made a line feed (YAML 1.2, 5.4), so that each byte keeps
/// its position.
[[nodiscard]] std::string with_line_feeds(std::string_view text);

/// The first fault in the bytes of a file that would make it unreadable as text.
[[nodiscard]] std::optional<TextFault> find_text_fault(std::string_view text, std::size_t longest_line);

}  // namespace loopfolio::yaml
