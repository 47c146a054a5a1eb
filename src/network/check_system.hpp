// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/thermal.hpp"

namespace loopfolio::network {

/// Everything that makes a system unusable for heat; its pipework is judged by the flow solution.
[[nodiscard]] Findings refusals_of(const System& system, std::span<const MassFlow> flow, SpecificHeat cp);

/// The same without flows: what can be said before the first flow solution. Link indices are checked.
[[nodiscard]] Findings refusals_of(const System& system);

}  // namespace loopfolio::network
