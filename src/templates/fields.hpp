// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/mapping.hpp"

#include <string_view>
#include <vector>

/// The keys of a template's files are read as those of a job are; here are the short ways to write them down.
namespace loopfolio::templates {

using yaml::Field;
using yaml::Group;
using yaml::Mapping;
using yaml::Need;

inline constexpr double line_length = 300.0;
inline constexpr double text_length = 4000.0;

constexpr Field line(std::string_view key, Need need = Need::optional) {
    return {key, yaml::Form::text, need, 1.0, line_length};
}
constexpr Field text(std::string_view key) { return {key, yaml::Form::text, Need::optional, 1.0, text_length}; }
constexpr Field choice(std::string_view key, Need need = Need::optional) { return {key, yaml::Form::choice, need}; }
constexpr Field mapping(std::string_view key) { return {key, yaml::Form::mapping, Need::optional}; }
/// A list of names, or of texts, of at least so many.
constexpr Field names(std::string_view key, double least, Need need = Need::optional) {
    return {key, yaml::Form::texts, need, least, 100.0};
}
/// A list of mappings.
constexpr Field list(std::string_view key, double least, double most, Need need = Need::optional) {
    return {key, yaml::Form::list, need, least, most};
}
inline constexpr Need always = Need::always;

/// A line for each key that stands in `node`, whatever it is called: names and words of the reader's own.
[[nodiscard]] inline std::vector<Field> lines_there(const yaml::Node& node) {
    std::vector<Field> out;
    for (const auto& entry : node.entries) out.push_back(line(entry.key));
    return out;
}

}  // namespace loopfolio::templates
