// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/season.hpp"

namespace loopfolio::design {

std::optional<SeasonPlan> plan_season(const job::Job&, const Design&, Trace*) { return {}; }

}  // namespace loopfolio::design
