// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string_view>
#include <vector>

namespace loopfolio::report {

/// The conditions on which a template may print a caution.
[[nodiscard]] std::vector<std::string_view> caution_conditions();

/// The cautions that this job calls for, in order of harm: what can hurt, whom, what to do, who may do it.
[[nodiscard]] std::vector<Caution> household_cautions(const Context& context);
[[nodiscard]] std::vector<Caution> installer_cautions(const Context& context);

/// The cautions that the job rules out, with who said so, when and why. Empty where it rules out none.
[[nodiscard]] Blocks cautions_ruled_out(const Context& context);

/// Keys of the sources on which these cautions are based.
[[nodiscard]] std::vector<std::string> caution_sources(const Context& context);

}  // namespace loopfolio::report
