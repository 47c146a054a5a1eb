// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/findings.hpp"
#include "loopfolio/yaml/tree.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Wording as a file gives it: `key: text with {figures}`, or for a text that depends on a count
/// `key: {0: none, 1: one room, other: "{count} rooms"}`.
namespace loopfolio::templates {

inline constexpr yaml::FileKind wording_kind{"a wording file", "wording files",
                                             "a wording file states texts as `key: words`"};

/// Words, or the name of a figure.
struct RawPiece {
    bool is_figure = false;
    std::string text;
};

struct RawForm {
    std::optional<std::size_t> count;  ///< nothing: all other counts
    Place place;
    std::vector<RawPiece> pieces;
};

struct RawText {
    std::string key;
    Place place;
    std::vector<RawForm> forms;  ///< the form for every other count last
};

/// The pieces of `words`: `{name}` is a figure; `{{` and `}}` stand for braces. Reports a fault and returns nothing.
[[nodiscard]] std::optional<std::vector<RawPiece>> pieces_of(std::string_view words, Place place,
                                                             const std::string& key, yaml::Findings& findings);

/// All texts of a file. Faults are reported; the texts without a fault are returned.
[[nodiscard]] std::vector<RawText> wording_of(const yaml::Node& root, yaml::Findings& findings);

/// The names of a text's figures, each once, in order of appearance. They include `count` if a form contains it.
[[nodiscard]] std::vector<std::string> figures_of(const RawText& text);

}  // namespace loopfolio::templates
