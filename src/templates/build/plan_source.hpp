// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"

#include <filesystem>
#include <string>

namespace loopfolio::templates {

/// C++ that defines `default_plan()`: what the default template's pack.yaml and cautions.yaml state, as the ordinary
/// reader reads them. What is wrong with them is added to `said`.
[[nodiscard]] std::string plan_source(const std::filesystem::path& pack, const std::filesystem::path& cautions,
                                      Diagnostics& said);

/// The bytes of a file; throws std::runtime_error if it cannot be read.
[[nodiscard]] std::string contents(const std::filesystem::path& path);

}  // namespace loopfolio::templates
