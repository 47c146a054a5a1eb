// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/hot_water.hpp"
#include "loopfolio/design/season.hpp"
#include "loopfolio/design/sound.hpp"
#include "loopfolio/design/system_water.hpp"

/// The parts of a design beyond rooms, emitters and pipes. Each is present only where the job describes it.
namespace loopfolio::design {

struct Plant {
    std::optional<SeasonPlan> season;
    std::optional<WaterPlan> water;
    std::optional<HotWaterPlan> hot_water;
    std::optional<SoundPlan> sound;
    Findings findings;  ///< of system water, hot water and sound; their plans refer to positions in this list

    [[nodiscard]] const Finding& at(FindingId id) const { return findings.at(static_cast<std::size_t>(id.at)); }
};

/// A pure function, as `design` is. With a trace, each part writes how it came to its figures. Refuses inputs outside
/// the range of a formula.
[[nodiscard]] std::variant<Plant, std::vector<Refusal>> plan_plant(const House& house, const Design& design,
                                                                   std::optional<SeasonBands> bands = {},
                                                                   Trace* trace = nullptr);

/// Only the findings of the plant, for comparing the verdicts of many designs. Empty where the plan is refused.
[[nodiscard]] Findings plant_findings(const House& house, const Design& design);

}  // namespace loopfolio::design
