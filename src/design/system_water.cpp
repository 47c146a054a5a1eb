// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/system_water.hpp"

namespace loopfolio::design {

std::optional<WaterPlan> plan_water(const job::Job&, const Design&, Trace*) { return {}; }

}  // namespace loopfolio::design
