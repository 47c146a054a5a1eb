// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/build_up.hpp"

#include "design/resolve/derive.hpp"

namespace loopfolio::study {

namespace {

BuildUp build_up_of(const job::Job& job, const job::Room& room, const job::Element& element,
                    const std::optional<physics::Transmittance>& layered) {
    BuildUp out;
    if (layered) {
        const auto flow = design::heat_flow(element.kind);
        const auto surfaces = reference::surface_resistances(flow, element.beyond == job::Beyond::outside);
        out.inside = surfaces.inside;
        out.beyond = surfaces.beyond;
        // `value()` is safe here: a layer without a resistance would have left the whole element without a U-value.
        for (const auto& layer : element.layers) out.layers.push_back(design::resistance_of(layer, flow).value());
        out.correction_share = physics::correction_share(*layered);
        out.correction_counts = out.correction_share >= physics::least_correction;
    }
    if (element.slab) out.characteristic = 2.0 * element.area.value / element.slab->perimeter.value;
    if (element.space) {
        const auto inside = room.temperature.value;
        out.space = inside - element.factor.value * (inside - job.conditions.outdoor.value);
    }
    return out;
}

}  // namespace

std::vector<std::vector<BuildUp>> build_ups_of(const design::House& house, const design::Design& design) {
    const auto& job = house.values;
    std::vector<std::vector<BuildUp>> out(job.rooms.size());
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        if (!design.rooms[i].by_elements) continue;
        const auto& elements = job.rooms[i].elements;
        for (std::size_t e = 0; e < elements.size(); ++e) {
            out[i].push_back(build_up_of(job, job.rooms[i], elements[e], design.rooms[i].by_elements->layered[e]));
        }
    }
    return out;
}

}  // namespace loopfolio::study
