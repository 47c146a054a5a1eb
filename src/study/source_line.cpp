// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/source_line.hpp"

#include "loopfolio/design/performance_table.hpp"

#include <algorithm>
#include <set>

namespace loopfolio::study {

namespace {

/// Outdoor temperature without load: the mean of the rooms' temperatures, weighted by their heat loss per kelvin.
double balance_with_outside(const job::Job& job, const design::Design& design) {
    const double outdoor = job.conditions.outdoor.value.celsius();
    double lost = 0.0, per_kelvin = 0.0;
    for (std::size_t i = 0; i < design.rooms.size(); ++i) {
        const double inside = job.rooms[i].temperature.value.celsius(), loss = design.rooms[i].loss.si();
        if (loss <= 0.0 || inside <= outdoor) continue;
        lost += loss;
        per_kelvin += loss / (inside - outdoor);
    }
    return per_kelvin > 0.0 ? outdoor + lost / per_kelvin : outdoor;
}

/// The table's outdoor temperatures and, where they lie between these, the temperatures of the design day and of no
/// load.
std::set<double> outdoors(const job::Job& job, double design_day, double none) {
    std::set<double> out;
    for (const auto& units : design::kinds_of(*job.heat_source)) {
        for (const auto& p : units.points) out.insert(p.outdoor.celsius());
    }
    const double coldest = *out.begin(), warmest = *out.rbegin();
    for (const double known : {design_day, none}) {
        if (known > coldest && known < warmest) out.insert(known);
    }
    return out;
}

std::optional<SourceLine::Point> crossing(const std::vector<SourceLine::Point>& points) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        const auto& before = points[i - 1];
        const auto& after = points[i];
        const double spare_before = (before.capacity - before.load).si(),
                     spare_after = (after.capacity - after.load).si();
        if ((spare_before < 0.0) == (spare_after < 0.0)) continue;
        const double share = spare_before / (spare_before - spare_after);
        const Power both = before.load + share * (after.load - before.load);
        return SourceLine::Point{before.outdoor + share * (after.outdoor - before.outdoor), both, both};
    }
    return std::nullopt;
}

}  // namespace

std::optional<SourceLine> source_line(const job::Job& job, const design::Design& design) {
    if (!job.heat_source) return std::nullopt;
    const double design_day = job.conditions.outdoor.value.celsius(), none = balance_with_outside(job, design);
    if (job.heat_source->performance.empty() || none <= design_day) return std::nullopt;
    SourceLine line;
    line.made = design.separation ? design.separation->source_leaving : design.flow;
    for (const double outdoor : outdoors(job, design_day, none)) {
        const auto capacity = design::capacity_by_table(*job.heat_source, Temperature::from_celsius(outdoor),
                                                        line.made);
        if (!capacity) continue;  // outside the table of another kind of unit
        const double share = std::max(0.0, (none - outdoor) / (none - design_day));
        line.points.push_back(
            {Temperature::from_celsius(outdoor), *capacity, share * (design.duty.source_load - design.duty.heat_up)});
    }
    if (line.points.size() < 2) return std::nullopt;
    line.balance = crossing(line.points);
    return line;
}

}  // namespace loopfolio::study
