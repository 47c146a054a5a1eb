// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/field.hpp"

#include <vector>

namespace loopfolio::templates {

/// The keys of a template's pack.yaml: first those of the file itself, then those of each mapping in it, by the name of
/// its key; those of `logo` and `marks` are called `a picture`.
[[nodiscard]] std::vector<yaml::Group> fields_of_pack();

}  // namespace loopfolio::templates
