// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string>
#include <vector>

/// The circulator and the heat source in plain words.
namespace loopfolio::report {

[[nodiscard]] Blocks plant_changes(const Context& context, const std::vector<design::Finding>& findings);
[[nodiscard]] std::string plant_note(const Context& context, const design::Finding& finding);
[[nodiscard]] std::string plant_keep(const Context& context, const design::Finding& finding);

}   // namespace loopfolio::report
