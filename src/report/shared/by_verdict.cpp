// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/by_verdict.hpp"

#include "report/shared/finding_words.hpp"

#include <algorithm>
#include <iterator>

namespace loopfolio::report {

Points points_with(Verdict verdict, const Context& context) {
    const auto& design = context.design;
    Points points;
    for (std::size_t i = 0; i < design.sections.size(); ++i) {
        if (design.sections[i].verdict == verdict) points.sections.push_back(i);  // one for all its checks
    }
    for (const auto& finding : context.study.findings) {
        if (finding.verdict != verdict) continue;
        const auto index = static_cast<std::size_t>(finding.index);
        if (finding.check == design::Check::room_has_emitter) points.bare_rooms.push_back(index);
        else if (finding.check == design::Check::emitter_output && finding.subject == design::Subject::emitter)
            points.emitters.push_back(index);
        else if (!in_lists_of_pieces(finding.check)) points.plant.push_back(finding);
    }
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

}  // namespace

Points there(const job::Job& job, const Points& points) { return pieces(job, points, true); }
Points fresh(const job::Job& job, const Points& points) { return pieces(job, points, false); }

}  // namespace loopfolio::report
