// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loopfolio::yaml {

struct Entry;

/// A value of the file with its place. It owns the values inside it, which are at most `deepest_nesting` levels deep.
struct Node {
    enum class Kind { null, scalar, list, mapping };
    Kind kind = Kind::null;
    Place place;
    std::string text;         ///< of a scalar
    bool quoted = false;      ///< a scalar in quotes or in block form: text, never a number
    std::vector<Node> items;  ///< of a list
    std::vector<Entry>
        entries;  ///< of a mapping, in file order; a key may still be there twice. Of a table, its first line
};

struct Entry {
    std::string key;
    Place place;
    Node value;
};

inline constexpr std::size_t deepest_nesting = 64;
inline constexpr std::size_t most_nodes = 200'000;
inline constexpr std::size_t longest_line_bytes = 20'000;

/// The tree. `fault` says why where `root` could not be read.
struct ParsedTree {
    bool ok = false;
    Node root;
    Diagnostic fault;
};

/// The names of a kind of file in messages.
struct FileKind {
    std::string_view one;        ///< `a job file`
    std::string_view many;       ///< `job files`
    std::string_view start;      ///< how such a file starts, as a hint for an empty one
    std::string_view head = {};  ///< the same of a table, where such a file may be one
};

/// Parses the text of a file into a tree. Rejects everything except one YAML document of plain mappings, lists and
/// scalars: anchors, aliases, tags and keys that are not text. `number` is set in every place: see Place::file.
[[nodiscard]] ParsedTree parse_tree(std::string_view text, std::string_view file, const FileKind& kind, int number = 0);

inline constexpr std::size_t most_table_rows = 20'000;

/// A table of comma-separated values (RFC 4180) as a list of mappings: its first line names the keys, each further one
/// is a mapping of the cells that are not empty. Semicolon or tab may part the cells where the first line has them.
/// Lines without a word in them and lines that start with `#` are left out; a text does not go over the end of its
/// line, which is a line feed, a carriage return or both. The names of the columns stand in the root's `entries`,
/// without values.
[[nodiscard]] ParsedTree parse_table(std::string_view text, std::string_view file, const FileKind& kind,
                                     int number = 0);

/// The place of what a path such as `rooms[2].temperature_c` names below `root`, or of the innermost value on the way
/// to it that is there.
[[nodiscard]] Place place_at_path(const Node& root, std::string_view path);

/// The entry of a mapping with this key, or nullptr. If there are two, the first.
[[nodiscard]] const Entry* find_entry(const Node& mapping, std::string_view key);

}  // namespace loopfolio::yaml
