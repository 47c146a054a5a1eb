// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string_view>
#include <vector>

namespace loopfolio::report {

/// What a caution of a template may depend on.
[[nodiscard]] std::vector<std::string_view> caution_conditions();

/// The cautions that this job calls for, in order of harm: what can hurt, whom, what to do, who may do it.
[[nodiscard]] std::vector<Caution> household_cautions(const Context& context);
[[nodiscard]] std::vector<Caution> installer_cautions(const Context& context);

/// Keys of the sources that these cautions rest on.
[[nodiscard]] std::vector<std::string> caution_sources(const Context& context);

}   // namespace loopfolio::report
