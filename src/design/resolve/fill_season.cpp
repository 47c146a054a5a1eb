// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/fill.hpp"

namespace loopfolio::design {

void fill_season(job::Job& job) {
    if (!job.season) return;
    auto& s = *job.season;
    // The standard's base is one for all houses; sun, people and insulation move it (range: common practice, no source).
    if (!s.base.given()) {
        s.base = Input<Temperature>::filled(Temperature::from_celsius(16.0), "en-14825", Temperature::from_celsius(14.0),
                                            Temperature::from_celsius(17.0));
    }
    if (!s.cycling_factor.given()) s.cycling_factor = Input<double>::filled(0.9, "en-14825");
    if (s.lowest_flow.given() || !job.heat_source || job.heat_source->performance.empty()) return;
    const auto& points = job.heat_source->performance;
    const auto coldest = std::ranges::min_element(points, {}, &job::PerformancePoint::flow);
    const std::string& source = job.heat_source->performance_source;
    Temperature lowest = coldest->flow;   // that every kind of unit is known at
    for (const auto& units : job.heat_source->further) {
        if (!units.performance.empty()) lowest = std::max(lowest, std::ranges::min_element(units.performance, {}, &job::PerformancePoint::flow)->flow);
    }
    s.lowest_flow = Input<Temperature>::filled(lowest, source.empty() ? "common-practice" : source);
}

}  // namespace loopfolio::design
