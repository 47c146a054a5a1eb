// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"
#include "design/states/operation.hpp"

#include "loopfolio/base/root.hpp"

#include <cmath>
#include <limits>

namespace loopfolio::design {

namespace {

constexpr double most_searched = 20.0;  // times the present load
// Largest difference between head and need that counts as equal.
constexpr Pressure most_apart = Pressure::from_si(100.0);

/// The section that reaches a limit first as the load grows. Flows grow in proportion to the load.
LoadCapacity by_sections(const Design& d, LoadLimit limit, CapacityLimit of) {
    LoadCapacity out{limit, std::numeric_limits<double>::infinity(), {}, -1};
    for (std::size_t i = 0; i < d.sections.size(); ++i) {
        const auto& s = d.sections[i];
        if (s.load <= Power{}) continue;
        const double factor = s.capacity[static_cast<std::size_t>(of)] / s.load;
        if (factor < out.factor) out = {limit, factor, {}, static_cast<int>(i)};
    }
    return out;
}

LoadCapacity by_emitters(const Design& d) {
    LoadCapacity out{LoadLimit::emitters, std::numeric_limits<double>::infinity(), {}, -1};
    for (std::size_t i = 0; i < d.rooms.size(); ++i) {
        const auto& r = d.rooms[i];
        if (r.load <= Power{} || r.emitters == 0) continue;
        if (r.output / r.load < out.factor) out = {LoadLimit::emitters, r.output / r.load, {}, static_cast<int>(i)};
    }
    return out;
}

/// Gives every heated room its load of the design times `factor`, heat-up and margin included.
void scale_loads(job::Job& job, const Design& d, double factor) {
    job.conditions.intermittent_margin = {};
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        job.rooms[i].heat_up = {};
        if (job.rooms[i].heated)
            job.rooms[i].heat_loss = Input<Power>::filled(factor * d.rooms[i].load, "common-practice");
    }
}

/// The load at which the pump gives exactly the head that is needed, found by repeating the design.
std::optional<LoadCapacity> by_circulator(const job::Job& job, const Design& d) {
    if (!describes_itself(job.circulator)) return {};
    job::Job scaled = job;
    const auto spare = [&](double factor) {
        scale_loads(scaled, d, factor);
        const auto result = design_values(scaled, nullptr, Remedies::left_out);
        const auto* again = std::get_if<Design>(&result);
        // At a very low flow the water may cool below a room's temperature, and no design is possible. The pump then
        // has head to spare.
        if (again == nullptr) return factor < 1.0 ? 1.0 : -1.0;
        // A pump gives no head beyond the last point of its curve.
        return (again->duty.available.value_or(Pressure{}) - again->duty.head).si();
    };
    if (spare(most_searched) > 0.0) return {};
    const auto root = find_root(spare, 0.01, most_searched, 1e-4);
    // The sign may also change where designs become possible or impossible, rather than where head and need meet. That
    // is not a capacity.
    if (!root || std::abs(spare(*root)) > most_apart.si()) return {};
    return LoadCapacity{LoadLimit::circulator, *root, {}, -1};
}

}  // namespace

std::vector<LoadCapacity> find_capacities(const job::Job& job, const Design& d) {
    std::vector<LoadCapacity> out{by_sections(d, LoadLimit::velocity_preferred, CapacityLimit::velocity_preferred),
                                  by_sections(d, LoadLimit::gradient_preferred, CapacityLimit::gradient_preferred),
                                  by_sections(d, LoadLimit::velocity, CapacityLimit::velocity)};
    if (const auto pump = by_circulator(job, d)) out.push_back(*pump);
    out.push_back(by_emitters(d));
    if (d.duty.capacity && d.duty.source_load > Power{}) {
        out.push_back({LoadLimit::source, *d.duty.capacity / d.duty.source_load, {}, -1});
    }
    std::erase_if(out, [](const LoadCapacity& c) { return c.factor == std::numeric_limits<double>::infinity(); });
    for (auto& c : out) c.load = c.factor * (c.limit == LoadLimit::source ? d.duty.source_load : d.duty.load);
    return out;
}

}  // namespace loopfolio::design
