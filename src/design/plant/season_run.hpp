// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/season.hpp"
#include "loopfolio/physics/compensation.hpp"

#include <optional>
#include <vector>

namespace loopfolio::design {

/// One season, run through once.
struct SeasonRun {
    physics::Season season;
    physics::LoadLine line;
    std::vector<CompensationPoint> curve;
    std::vector<Power> least;    ///< by bin: least output of one unit there; 0 where it is not known
};

/// Emitters as a weather curve sees them, on the design day.
struct CurveEmitters {
    std::vector<physics::EmissionDesign> emitters;
    bool held_by_network = false;
    int changed = 0;
};

/// Without `flow` each emitter at the lowest flow temperature that meets its load, at most the design's; with it all at
/// that one, which their ratings then have to allow.
[[nodiscard]] CurveEmitters curve_emitters(const job::Job& job, const Design& design, std::optional<Temperature> flow = {});

/// Nothing where the maker's table cannot be used, or there is no load.
[[nodiscard]] std::optional<SeasonRun> run_season(const job::Job& job, const Design& design, std::optional<Temperature> flow = {});

/// Electricity of source, backup and standing by.
[[nodiscard]] inline Energy all_electricity(const physics::Season& s) {
    return s.source_electricity + s.backup_input + s.standby_electricity;
}

/// Fills the bands of `plan` by designing and running the season again for every range of the register.
void find_bands(const job::Job& job, SeasonPlan& plan);

void trace_season(Trace& trace, const job::Job& job, const Design& design, const SeasonRun& run, const SeasonPlan& plan);

}  // namespace loopfolio::design
