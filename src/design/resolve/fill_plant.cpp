// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/resolve/fill.hpp"

namespace loopfolio::design {

namespace {

template <class Q>
void fill(Input<Q>& input, Q value, std::string_view source, std::optional<Q> low = {}, std::optional<Q> high = {}) {
    if (!input.given()) input = Input<Q>::filled(value, std::string{source}, low, high);
}

Temperature celsius(double value) { return Temperature::from_celsius(value); }

/// The same water heats the store, so its flow counts too.
Temperature hottest(const job::Job& job) {
    Temperature out = job.conditions.flow.value;
    if (job.hot_water && job.hot_water->source_flow.given()) out = std::max(out, job.hot_water->source_flow.value);
    return out;
}

}  // namespace

void fill_system_water(job::Job& job) {
    if (!job.system_water) return;
    auto& w = *job.system_water;
    fill(w.fill_temperature, celsius(10.0), "en-12828");
    fill(w.highest_temperature, hottest(job), "common-practice");
    // Panels hold 3 to 6 litres for each kilowatt at 50 K, columns and old castings 10 or more.
    fill(w.content_of_rating, 5.0, "common-practice", std::optional{3.0}, std::optional{10.0});
    fill(w.defrost_fall, 5.0 * unit::kelvin, "common-practice", std::optional{3.0 * unit::kelvin}, std::optional{8.0 * unit::kelvin});
}

void fill_hot_water(job::Job& job) {
    if (!job.hot_water) return;
    auto& h = *job.hot_water;
    const auto litres = [](double value) { return value * unit::litre; };
    fill(h.each, litres(50.0), "common-practice", std::optional{litres(35.0)}, std::optional{litres(80.0)});
    fill(h.drawn, celsius(40.0), "common-practice");
    fill(h.cold, celsius(10.0), "common-practice", std::optional{celsius(5.0)}, std::optional{celsius(15.0)});
    fill(h.stored, celsius(50.0), "common-practice");
    fill(h.usable, 0.8, "common-practice", std::optional{0.7}, std::optional{0.9});
    fill(h.hot_cycle, celsius(60.0), "hse-hsg274");
}

}  // namespace loopfolio::design
