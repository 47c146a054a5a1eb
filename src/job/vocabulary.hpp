// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/unit.hpp"

#include <span>
#include <string_view>

namespace loopfolio::job {

enum class Form {
    number,     ///< a plain number, or a mapping with `value`, `basis`, `low`, `high`, `source`, `note`
    plain,      ///< a plain number and nothing else
    whole,      ///< a whole number
    text,       ///< `low` to `high` characters
    id,         ///< letters, digits, `.`, `_`, `-`
    choice,     ///< one name of a fixed set
    flag,       ///< `true` or `false`
    date,       ///< YYYY-MM-DD
    texts,      ///< a list of texts, or one text
    numbers,    ///< a list of plain numbers, or one
    mapping,
    list,       ///< a list of mappings
};

enum class Need {
    always,
    optional,
    depends,   ///< needed or refused by what stands beside it; the document says when
};

/// One key of the job file.
struct Field {
    std::string_view key;
    Form form{};
    Need need{};
    double low = 0.0;                ///< of a number, inclusive; of a text, characters; of a list, items
    double high = 0.0;
    std::string_view unit{};         ///< symbol; empty for a pure number
    std::string_view suffix{};       ///< what the key ends in for its unit
    std::string_view advice{};       ///< hint where the value is out of its range
};

/// The keys of one kind of mapping. `name` is what docs/job-file.md heads its table with.
struct Group {
    std::string_view name;
    std::span<const Field> fields;
};

/// Every group: the one vocabulary of the job file. The reader takes keys, ranges and units from
/// here, and a test holds docs/job-file.md and the skeleton to it.
[[nodiscard]] std::span<const Group> vocabulary();

/// The group with this name, which must exist.
[[nodiscard]] const Group& group(std::string_view name);

[[nodiscard]] const Field* find_field(const Group& group, std::string_view key);

}  // namespace loopfolio::job
