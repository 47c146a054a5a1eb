// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/season.hpp"
#include "loopfolio/physics/compensation.hpp"

#include <optional>
#include <vector>

namespace loopfolio::design {

/// The emitters on the design day, as the weather compensation curve needs them.
struct CurveEmitters {
    std::vector<physics::EmissionDesign> emitters;
    bool held_by_network = false;
    int changed = 0;
};

/// Without `flow`, each emitter is at the lowest flow temperature that meets its load, at most the design's. With it,
/// all are at that temperature, which is then possible only if their ratings are large enough.
[[nodiscard]] CurveEmitters curve_emitters(const job::Job& job, const Design& design,
                                           std::optional<Temperature> flow = {});

void trace_season(Trace& trace, const job::Job& job, const Design& design, const SeasonRun& run,
                  const SeasonPlan& plan);

}  // namespace loopfolio::design
