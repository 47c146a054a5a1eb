// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/hot_water.hpp"
#include "loopfolio/design/season.hpp"
#include "loopfolio/design/sound.hpp"
#include "loopfolio/design/system_water.hpp"

/// What a design leads to beyond rooms, emitters and pipes. Each is there only where the job asks for it.
namespace loopfolio::design {

struct Plant {
    std::optional<SeasonPlan> season;
    std::optional<WaterPlan> water;
    std::optional<HotWaterPlan> hot_water;
    std::optional<SoundPlan> sound;
    Findings findings;           ///< of system water, hot water and sound; their plans name places in it

    [[nodiscard]] const Finding& at(FindingId id) const { return findings.at(static_cast<std::size_t>(id.at)); }
};

/// Pure, as `design` is; with a trace, each writes how it came to its figures. Refuses what a relation cannot answer for.
[[nodiscard]] std::variant<Plant, std::vector<Refusal>> plan_plant(const House& house, const Design& design,
                                                                   std::optional<SeasonBands> bands = {}, Trace* trace = nullptr);

/// Only what is checked beside the heating, for many designs of which verdicts are compared. Empty where one is refused.
[[nodiscard]] Findings plant_findings(const House& house, const Design& design);

}  // namespace loopfolio::design
