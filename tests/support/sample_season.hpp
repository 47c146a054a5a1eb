// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "support/sample_design.hpp"

#include <utility>

namespace loopfolio::tests {

/// The sample with an invented manufacturer's table from -15 to 20 °C, a season, prices and other flow temperatures.
inline job::Job with_season(job::Job job, double coldest_row = -15.0) {
    auto& source = *job.heat_source;
    for (const double outdoor : {coldest_row, 0.0, 20.0}) {
        for (const double flow : {30.0, 60.0}) {
            const double warmth = outdoor + 15.0, heat = flow - 30.0;
            source.performance.push_back({outdoor * unit::celsius,
                                          flow * unit::celsius,
                                          (5.0 + 0.15 * warmth - 0.02 * heat) * unit::kilowatt,
                                          2.6 + 0.08 * warmth - 0.03 * heat,
                                          {},
                                          {}});
        }
    }
    source.performance_source = "maker's **sheet**";
    source.least_output = measured(3.0 * unit::kilowatt);
    source.backup = measured(2.0 * unit::kilowatt);
    source.least_run = measured(10.0 * unit::minute);
    source.allowed_swing = measured(5.0 * unit::kelvin);
    job.season.emplace();
    job.season->climate = "average";
    job.season->compare_flows = {40.0 * unit::celsius, 55.0 * unit::celsius};
    job.season->standby = measured(10.0 * unit::watt);
    job.season->price = assumed(0.3, 0.25, 0.35);
    job.season->currency = "GBP";
    job.season->carbon = assumed(0.15, 0.1, 0.2);
    return job;
}

}  // namespace loopfolio::tests
