// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/fill.hpp"
#include "design/resolve/fill_keys.hpp"
#include "loopfolio/job/keys/season.hpp"

namespace loopfolio::design {

void fill_season(job::Job& job) {
    if (!job.season) return;
    auto& s = *job.season;
    fill_keys(job::keys::season, s);
    if (s.lowest_flow.given() || !job.heat_source || job.heat_source->performance.empty()) return;
    const auto& points = job.heat_source->performance;
    const auto coldest = std::ranges::min_element(points, {}, &job::PerformancePoint::flow);
    const std::string& source = job.heat_source->performance_source;
    Temperature lowest = coldest->flow;  // the lowest flow temperature for which every kind of unit has a value
    for (const auto& units : job.heat_source->further) {
        if (!units.performance.empty())
            lowest = std::max(lowest,
                              std::ranges::min_element(units.performance, {}, &job::PerformancePoint::flow)->flow);
    }
    s.lowest_flow = Input<Temperature>::filled(lowest, source.empty() ? "common-practice" : source);
}

}  // namespace loopfolio::design
