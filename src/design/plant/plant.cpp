// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/plant.hpp"

namespace loopfolio::design {

std::variant<Plant, std::vector<Refusal>> plan_plant(const job::Job& filled, const Design& design, Trace* trace) {
    std::vector<Refusal> refusals;
    Plant out;
    out.water = plan_water(filled, design, refusals, trace);
    out.season = plan_season(filled, design, out.water ? std::optional{out.water->content} : std::nullopt, trace);
    out.hot_water = plan_hot_water(filled, design, refusals, trace);
    if (out.hot_water && out.season) find_hot_water_year(filled, out.season->season, *out.hot_water, trace);
    out.sound = plan_sound(filled, design, trace);
    if (!refusals.empty()) return refusals;
    return out;
}

std::vector<Finding> findings_of(const Plant& plant) {
    std::vector<Finding> out;
    const auto add = [&](const std::optional<Finding>& finding) {
        if (finding) out.push_back(*finding);
    };
    if (plant.water) {
        add(plant.water->vessel_size);
        add(plant.water->valve_margin);
        add(plant.water->frost);
        add(plant.water->open_volume);
    }
    if (plant.hot_water) {
        add(plant.hot_water->store);
        add(plant.hot_water->coil);
    }
    if (plant.sound) add(plant.sound->limit);
    return out;
}

Verdict worst(const Design& design, const Plant& plant) {
    Verdict out = design.verdict;
    for (const auto& finding : findings_of(plant)) out = worse(out, finding.verdict);
    return out;
}

}  // namespace loopfolio::design
