// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/finding.hpp"
#include "loopfolio/network/pipework.hpp"
#include "loopfolio/physics/fluid.hpp"

#include <span>

namespace loopfolio::network {

/// Everything that makes a description unusable; empty if it can be solved.
[[nodiscard]] Findings refusals_of(const Pipework& pipework, std::span<const physics::FluidState> fluid);

}  // namespace loopfolio::network
