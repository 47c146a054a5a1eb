// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/templates/template.hpp"
#include "templates/catalogue.hpp"
#include "templates/fields.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>

/// The readers of a template's files. Each overrides what `out` already holds.
namespace loopfolio::templates {

inline constexpr yaml::FileKind template_kind{"a template file", "template files",
                                              "pack.yaml starts with `loopfolio_template: 1`"};

/// The bytes of a file in the folder of `pack.yaml`.
using Beside = std::function<std::optional<std::string>(const std::string& name)>;

void read_pack(const yaml::Node& root, yaml::Reading& reading, const Vocabulary& vocabulary, const Beside& beside,
               Template& out);

/// Cautions with ids that `out` has replace those; others are put before the closing one, which says what comes first.
void read_cautions(const yaml::Node& root, yaml::Reading& reading, const Vocabulary& vocabulary, Template& out);

/// Texts of `wording/NAME.yaml`, added to `words` by their numbers.
void read_wording(const yaml::Node& root, std::string_view name, const Catalogue& catalogue, yaml::Findings& findings,
                  std::map<std::size_t, Text>& words);

/// `wording/names.yaml`: other words for names, as they stand.
void read_names(const yaml::Node& root, yaml::Reading& reading, Template& out);

}  // namespace loopfolio::templates
