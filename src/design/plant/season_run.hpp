// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/season.hpp"
#include "loopfolio/physics/compensation.hpp"

#include <optional>
#include <vector>

namespace loopfolio::design {

/// The emitters on the design day, as the weather compensation curve needs them.
/// One of them. Where pipes lose heat, its water is cooler than the heat source's: its inlet rises by `follows` for
/// each kelvin at the heat source, and is `inlet` where that is at `flow`.
struct CurveEmitter {
    physics::EmissionDesign emission;
    Temperature flow, inlet;
    double follows = 1.0;
    /// Flow temperature at the heat source that brings this temperature to the emitter, at the design's flow rates.
    [[nodiscard]] Temperature at_source(Temperature at_inlet) const { return flow + (at_inlet - inlet) / follows; }
    [[nodiscard]] Temperature at_emitter(Temperature at_source) const { return inlet + follows * (at_source - flow); }
};
struct CurveEmitters {
    std::vector<CurveEmitter> emitters;
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
