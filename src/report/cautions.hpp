// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/parts.hpp"

#include <vector>

namespace loopfolio::report {

/// The cautions that this job calls for, in order of harm: what can hurt, whom, what to do, who may do it.
[[nodiscard]] std::vector<Caution> household_cautions(const Context& context);
[[nodiscard]] std::vector<Caution> installer_cautions(const Context& context);

}   // namespace loopfolio::report
