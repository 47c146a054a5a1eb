// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/plant.hpp"

namespace loopfolio::job {

namespace {

void check_supply(const Mapping& m, const HotWater& s) {
    if (s.coil && s.plate)
        complain(m, "plate_ua_w_per_k", "stands beside `coil_ua_w_per_k`", "a store is heated by one of the two");
    if (!s.coil && !s.plate) demand(m, "coil_ua_w_per_k", "what heats the store must be known: a coil or a plate");
    if (s.stored.given() && s.source_flow.given() && s.source_flow.value <= s.stored.value) {
        complain(m, "source_flow_c", "must lie above `stored_c`",
                 "no coil brings a store up to the water that heats it");
    }
    if (s.hot_cycle.given() && s.stored.given() && s.hot_cycle.value < s.stored.value) {
        complain(m, "hot_cycle_c", "must not lie below `stored_c`",
                 "the hot cycle heats what is stored: state its temperature, or leave it out");
    }
    if (s.drawn.given() && s.stored.given() && s.stored.value < s.drawn.value) {
        complain(m, "stored_c", "must not lie below `drawn_c`", "water is mixed down to what is drawn");
    }
}

HotWater read_supply(const Mapping& m) {
    HotWater out;
    read_keys(m, keys::supply, out);
    if (m.node != nullptr) out.place = m.node->place;
    check_supply(m, out);
    return out;
}

}  // namespace

void read_hot_water(const Mapping& top, Draft& draft) {
    const auto m = open_child(top, "hot_water", group("hot_water"));
    if (!m) return;
    read_keys(*m, keys::hot_water, draft.job);
    if (draft.job.unvented_hot_water && !draft.job.hot_water_store) {
        complain(*m, "unvented", "needs `store: true`", "an unvented cylinder is a hot-water store");
    }
    const auto supply = open_child(*m, "supply", group("supply"));
    if (!supply) return;
    draft.job.hot_water = read_supply(*supply);
    if (!draft.job.hot_water_store) complain(*m, "supply", "needs `store: true`", "what is reckoned here is a store");
}

}  // namespace loopfolio::job
