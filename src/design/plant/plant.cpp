// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/plant.hpp"

namespace loopfolio::design {

std::variant<Plant, std::vector<Refusal>> plan_plant(const House& house, const Design& design,
                                                     std::optional<SeasonBands> bands, Trace* trace) {
    const auto& job = house.values;
    std::vector<Refusal> refusals;
    Plant out;
    out.water = plan_water(job, design, out.findings, refusals, trace);
    out.season = plan_season(job, design, out.water ? std::optional{out.water->content} : std::nullopt,
                             std::move(bands), trace);
    out.hot_water = plan_hot_water(job, design, out.findings, refusals, trace);
    // The hours of a part of a year say nothing of a year's hot water.
    if (out.hot_water && out.season && job.season->period.empty())
        find_hot_water_year(job, out.season->season, *out.hot_water, trace);
    out.sound = plan_sound(job, out.findings, trace);
    if (!refusals.empty()) return refusals;
    return out;
}

Findings plant_findings(const House& house, const Design& design) {
    std::vector<Refusal> refusals;
    Findings out;
    (void)plan_water(house.values, design, out, refusals);
    (void)plan_hot_water(house.values, design, out, refusals);
    (void)plan_sound(house.values, out);
    return refusals.empty() ? out : Findings{};
}

}  // namespace loopfolio::design
