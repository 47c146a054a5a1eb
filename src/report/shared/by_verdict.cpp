// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/by_verdict.hpp"

#include <algorithm>
#include <iterator>

namespace loopfolio::report {

Points points_with(Verdict verdict, const Context& context) {
    const auto& design = context.design;
    Points points;
    for (std::size_t i = 0; i < design.rooms.size(); ++i) {
        const auto& finding = design.rooms[i].finding;
        if (design.rooms[i].method != design::LossMethod::none && finding.verdict == verdict &&
            finding.check == design::Check::room_has_emitter) {
            points.bare_rooms.push_back(i);
        }
    }
    for (std::size_t i = 0; i < design.emitters.size(); ++i) {
        if (design.emitters[i].finding.verdict == verdict) points.emitters.push_back(i);
    }
    for (std::size_t i = 0; i < design.sections.size(); ++i) {
        if (design.sections[i].verdict == verdict) points.sections.push_back(i);
    }
    const auto add = [&](const std::optional<design::Finding>& finding) {
        if (finding && finding->verdict == verdict) points.plant.push_back(*finding);
    };
    add(design.duty.circulator);
    add(design.duty.source_capacity);
    add(design.duty.source_minimum_flow);
    add(design.duty.source_maximum_drop);
    if (design.separation) add(design.separation->pump);
    for (const auto& mixer : design.mixers) add(mixer.pump);
    for (const auto& finding : design::findings_of(context.plant)) add(finding);
    return points;
}

namespace {

Points pieces(const job::Job& job, const Points& points, bool existing) {
    Points out;
    std::ranges::copy_if(points.emitters, std::back_inserter(out.emitters),
                         [&](std::size_t i) { return job.emitters[i].existing == existing; });
    std::ranges::copy_if(points.sections, std::back_inserter(out.sections),
                         [&](std::size_t i) { return job.sections[i].existing == existing; });
    return out;
}

}   // namespace

Points there(const job::Job& job, const Points& points) { return pieces(job, points, true); }
Points fresh(const job::Job& job, const Points& points) { return pieces(job, points, false); }

std::optional<Temperature> flow_for_all(const design::Design& design) {
    std::optional<Temperature> highest;
    for (const auto& emitter : design.emitters) {
        if (emitter.load.si() <= 0.0) continue;
        if (!emitter.lowest_flow_temperature) return {};
        highest =
            std::max(highest.value_or(*emitter.lowest_flow_temperature), *emitter.lowest_flow_temperature);
    }
    return highest;
}

}   // namespace loopfolio::report
