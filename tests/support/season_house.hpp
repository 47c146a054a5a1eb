// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/physics/emitter.hpp"
#include "support/csv.hpp"
#include "support/small_job.hpp"

/// A house of one room whose season can be calculated by hand.
namespace loopfolio::tests {

/// The invented heat source of tests/reference/plant.py. Its minimum output, if it has one, is a share of its capacity.
inline void give_source(job::Job& job, double least_share) {
    auto& source = *job.heat_source;
    source.performance.clear();
    const auto table = read_csv("season_source.csv");
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        const Power capacity = unit::watt(table.number(i, "capacity_w"));
        source.performance.push_back({unit::celsius(table.number(i, "outdoor_c")),
                                      unit::celsius(table.number(i, "flow_c")),
                                      capacity,
                                      table.number(i, "performance"),
                                      {},
                                      {}});
        if (least_share > 0.0) source.performance.back().least = least_share * capacity;
    }
}

struct SeasonHouse {
    double load = 6000.0, outdoor = -10.0, flow = 45.0, back = 40.0, room = 21.0, exponent = 1.3, least_share = 0.3;
};

/// One room, with one emitter that is exactly large enough at the flow and return temperatures.
inline job::Job season_house(const SeasonHouse& h = {}) {
    auto job = bare_job(h.flow, h.flow - h.back);
    job.conditions.outdoor = measured(unit::celsius(h.outdoor));
    job.rooms.push_back(stated_room("room", h.load, h.room));
    const double factor = *physics::output_factor(unit::celsius(h.flow), unit::celsius(h.back), unit::celsius(h.room),
                                                  h.exponent);
    job.emitters.push_back(panel("E", "room", "A", h.load / factor, h.exponent));
    job.sections.push_back(section("S", "HS", "A", "copper_28", 10.0));
    give_source(job, h.least_share);
    job.heat_source->backup = measured(unit::kilowatt(50.0));
    job.season.emplace();
    job.season->climate = "average";
    return job;
}

}  // namespace loopfolio::tests
