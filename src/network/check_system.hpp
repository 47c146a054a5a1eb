// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/thermal.hpp"

namespace loopfolio::network {

/// Everything that makes a system unusable for heat. The flow solution checks its pipework.
[[nodiscard]] Findings refusals_of(const System& system, std::span<const MassFlow> flow, SpecificHeat cp);

/// The same checks as far as they are possible before the first flow solution. Link indices are checked.
[[nodiscard]] Findings refusals_of(const System& system);

}  // namespace loopfolio::network
