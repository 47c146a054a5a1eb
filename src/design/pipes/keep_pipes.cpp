// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/states/operation.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace {

/// The flow temperature at which every emitter of the main side still gives its present output, or its load where that
/// is less, with this temperature drop.
std::optional<Temperature> flow_temperature_at(const job::Job& job, const Design& d, TemperatureDifference drop) {
    std::optional<Temperature> highest;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        const auto& r = d.emitters[i];
        if (r.load <= Power{} || r.mixer >= 0 || r.on_loop) continue;
        const physics::EmitterRating rating{job.emitters[i].output_at_50k.value, job.emitters[i].exponent.value};
        const auto room = job.rooms[static_cast<std::size_t>(r.room)].temperature.value;
        const auto lowest = physics::lowest_flow_temperature(rating, std::min(r.load, r.output), drop, room);
        if (!lowest) return {};
        highest = highest ? std::max(*highest, *lowest) : *lowest;
    }
    // Emitters with a margin may need a lower flow temperature than the house has: the present one then stays.
    if (highest) highest = std::max(*highest, d.flow);
    return highest;
}

}  // namespace

std::vector<KeptPipe> keep_pipes(const job::Job& job, const Design& d) {
    std::vector<KeptPipe> out;
    for (std::size_t i = 0; i < d.sections.size(); ++i) {
        const auto& r = d.sections[i];
        if (r.verdict == Verdict::keep) continue;
        KeptPipe k;
        k.section = static_cast<int>(i);
        k.velocity = r.hydraulic.velocity;
        k.noise_margin = job.sections[i].velocity_limit.value / k.velocity - 1.0;
        const auto limit = r.verdict == Verdict::change ? CapacityLimit::velocity : r.governing;
        k.load_share = r.capacity[static_cast<std::size_t>(limit)] / r.load;
        k.drop = r.drop_to_keep;
        if (k.drop) {
            k.flow_temperature = flow_temperature_at(job, d, *k.drop);
            k.total_flow = (d.drop / *k.drop) * d.duty.volume_flow;
            if (job.heat_source && job.heat_source->minimum_flow) {
                k.minimum_flow_kept = k.total_flow >= job.heat_source->minimum_flow->value;
            }
            if (job.heat_source && job.heat_source->maximum_drop) {
                k.maximum_drop_kept = *k.drop <= job.heat_source->maximum_drop->value;
            }
        }
        out.push_back(k);
    }
    return out;
}

}  // namespace loopfolio::design
