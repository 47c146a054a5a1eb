// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/season.hpp"
#include "loopfolio/physics/compensation.hpp"

#include <optional>
#include <vector>

namespace loopfolio::design {

/// Emitters as a weather curve sees them, on the design day.
struct CurveEmitters {
    std::vector<physics::EmissionDesign> emitters;
    bool held_by_network = false;
    int changed = 0;
};

/// Without `flow` each emitter at the lowest flow temperature that meets its load, at most the design's; with it all at
/// that one, which their ratings then have to allow.
[[nodiscard]] CurveEmitters curve_emitters(const job::Job& job, const Design& design, std::optional<Temperature> flow = {});

void trace_season(Trace& trace, const job::Job& job, const Design& design, const SeasonRun& run, const SeasonPlan& plan);

}  // namespace loopfolio::design
