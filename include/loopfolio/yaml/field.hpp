// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>

/// What a file may contain under a key. Every kind of file that is read uses this vocabulary and reports mistakes the
/// same way.
namespace loopfolio::yaml {

enum class Form {
    number,   ///< a plain number, or a mapping with `value`, `basis`, `low`, `high`, `source`, `note`
    plain,    ///< a plain number and nothing else
    whole,    ///< a whole number
    text,     ///< `low` to `high` characters
    id,       ///< letters, digits, `.`, `_`, `-`
    choice,   ///< one name of a fixed set
    flag,     ///< `true` or `false`
    date,     ///< YYYY-MM-DD
    texts,    ///< a list of texts, or one text
    numbers,  ///< a list of plain numbers, or one
    mapping,
    list,  ///< a list of mappings
};

enum class Need {
    always,
    optional,
    depends,  ///< needed or refused by what stands beside it; the document says when
};

/// One key of a file.
struct Field {
    std::string_view key{};
    Form form{};
    Need need{};
    double low = 0.0;  ///< of a number, inclusive; of a text, characters; of a list, items
    double high = 0.0;
    std::string_view unit{};      ///< symbol; empty for a pure number
    std::string_view suffix{};    ///< what the key ends in for its unit
    std::string_view advice{};    ///< hint where a number is out of its range, or a text is missing
    std::string_view left_out{};  ///< for the document: what holds without the key
    std::string_view meaning{};   ///< for the document
};

/// The keys of one kind of mapping.
struct Group {
    std::string_view name;  ///< what a message and the document call it
    std::span<const Field> fields;
};

/// The field with this key, or nullptr.
[[nodiscard]] const Field* find_field(const Group& group, std::string_view key);

}  // namespace loopfolio::yaml
