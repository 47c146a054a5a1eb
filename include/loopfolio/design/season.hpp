// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/season.hpp"

#include <optional>

namespace loopfolio::design {

struct SeasonPlan {
    physics::Season season;
};

/// The season of a job that asks for one and states what it needs.
[[nodiscard]] std::optional<SeasonPlan> plan_season(const job::Job& filled, const Design& design, Trace* trace = nullptr);

}  // namespace loopfolio::design
