// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/findings.hpp"
#include "loopfolio/yaml/tree.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Typed access to the values of a template's files. Each function reports every fault and returns what could be read.
namespace loopfolio::templates {

/// The name of a field in diagnostics, and where to report its faults.
struct At {
    yaml::Findings& findings;
    std::string path;

    [[nodiscard]] At child(std::string_view key) const;
    [[nodiscard]] At item(std::size_t index) const;
    void refuse(Place place, std::string value, std::string rule, std::string hint = {}) const;
};

/// Reports a node that is not a mapping, and unknown or duplicate keys. Returns whether it is a mapping.
bool check_keys(const yaml::Node& node, const At& at, const std::vector<std::string_view>& keys);

[[nodiscard]] const yaml::Node* value_of(const yaml::Node& mapping, std::string_view key);

/// A text of one line, of 1 to 300 characters, none of them invisible.
[[nodiscard]] std::optional<std::string> line_at(const yaml::Node& node, const At& at);
/// A text of up to 4,000 characters.
[[nodiscard]] std::optional<std::string> text_at(const yaml::Node& node, const At& at);
[[nodiscard]] std::vector<std::string> lines_at(const yaml::Node& node, const At& at);
/// One of `names`. Any other name is reported with the nearest of them. `noun` says what they are names of.
[[nodiscard]] std::optional<std::string> name_at(const yaml::Node& node, const At& at, std::string_view noun,
                                                 const std::vector<std::string_view>& names);
[[nodiscard]] std::optional<double> number_at(const yaml::Node& node, const At& at, double least, double most);

}   // namespace loopfolio::templates
