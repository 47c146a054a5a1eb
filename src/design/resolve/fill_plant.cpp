// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/fill.hpp"
#include "design/resolve/fill_keys.hpp"
#include "loopfolio/job/keys/plant.hpp"

namespace loopfolio::design {

namespace {

/// The same water heats the hot water cylinder, so its flow temperature counts too.
Temperature hottest(const job::Job& job) {
    Temperature out = job.conditions.flow.value;
    if (job.hot_water && job.hot_water->source_flow.given()) out = std::max(out, job.hot_water->source_flow.value);
    return out;
}

}  // namespace

void fill_system_water(job::Job& job) {
    if (!job.system_water) return;
    auto& w = *job.system_water;
    fill_keys(job::keys::system_water, w);
    fill(w.highest_temperature, {hottest(job), "common-practice"});
}

void fill_hot_water(job::Job& job) {
    if (job.hot_water) fill_keys(job::keys::supply, *job.hot_water);
}

}  // namespace loopfolio::design
