// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/hot_water.hpp"

namespace loopfolio::design {

std::optional<HotWaterPlan> plan_hot_water(const job::Job&, const Design&, Trace*) { return {}; }

}  // namespace loopfolio::design
