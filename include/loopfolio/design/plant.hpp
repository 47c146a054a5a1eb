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
};

/// Pure, as `design` is; with a trace, each writes how it came to its figures. Refuses what a relation cannot answer for.
[[nodiscard]] std::variant<Plant, std::vector<Refusal>> plan_plant(const job::Job& filled, const Design& design,
                                                                   Trace* trace = nullptr);

/// The worst verdict of a design and of its plant.
[[nodiscard]] Verdict worst(const Design& design, const Plant& plant);
/// Every verdict of the plant.
[[nodiscard]] std::vector<Finding> findings_of(const Plant& plant);

}  // namespace loopfolio::design
