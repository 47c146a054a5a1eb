// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/fields.hpp"
#include "job/plant_fields.hpp"

namespace loopfolio::job {

namespace {

void check_supply(const Mapping& m, const HotWater& s) {
    if (s.coil && s.plate) complain(m, "plate_ua_w_per_k", "stands beside `coil_ua_w_per_k`", "a store is heated by one of the two");
    if (!s.coil && !s.plate) demand(m, "coil_ua_w_per_k", "what heats the store must be known: a coil or a plate");
    if (s.stored.given() && s.source_flow.given() && s.source_flow.value <= s.stored.value) {
        complain(m, "source_flow_c", "must lie above `stored_c`", "no coil brings a store up to the water that heats it");
    }
    if (s.hot_cycle.given() && s.stored.given() && s.hot_cycle.value < s.stored.value) {
        complain(m, "hot_cycle_c", "must not lie below `stored_c`");
    }
    if (s.drawn.given() && s.stored.given() && s.stored.value < s.drawn.value) {
        complain(m, "stored_c", "must not lie below `drawn_c`", "water is mixed down to what is drawn");
    }
}

HotWater read_supply(const Mapping& m) {
    HotWater out;
    out.persons = input_at(m, "persons", unit::number);
    out.each = input_at(m, "each_l", unit::litre);
    out.drawn = input_at(m, "drawn_c", unit::celsius);
    out.cold = input_at(m, "cold_c", unit::celsius);
    out.store = input_at(m, "store_l", unit::litre);
    out.stored = input_at(m, "stored_c", unit::celsius);
    out.usable = input_at(m, "usable_percent", unit::percent);
    out.coil = if_given(input_at(m, "coil_ua_w_per_k", unit::watt_per_kelvin));
    out.plate = if_given(input_at(m, "plate_ua_w_per_k", unit::watt_per_kelvin));
    out.source_flow = input_at(m, "source_flow_c", unit::celsius);
    out.source_capacity = if_given(input_at(m, "source_capacity_kw", unit::kilowatt));
    out.standing_loss = if_given(input_at(m, "standing_loss_kwh", unit::kilowatt_hour));
    out.immersion = if_given(input_at(m, "immersion_kw", unit::kilowatt));
    out.hot_cycles_a_year = if_given(input_at(m, "hot_cycles_a_year", unit::number));
    out.hot_cycle = input_at(m, "hot_cycle_c", unit::celsius);
    if (m.node != nullptr) out.place = m.node->place;
    check_supply(m, out);
    return out;
}

}  // namespace

void read_hot_water(const Mapping& top, Draft& draft) {
    const auto m = open_child(top, "hot_water", group("hot_water"));
    if (!m) return;
    draft.job.hot_water_store = flag_at(*m, "store", false);
    draft.job.unvented_hot_water = flag_at(*m, "unvented", false);
    if (draft.job.unvented_hot_water && !draft.job.hot_water_store) {
        complain(*m, "unvented", "needs `store: true`", "an unvented cylinder is a hot-water store");
    }
    const auto supply = open_child(*m, "supply", group("supply"));
    if (!supply) return;
    draft.job.hot_water = read_supply(*supply);
    if (!draft.job.hot_water_store) complain(*m, "supply", "needs `store: true`", "what is reckoned here is a store");
}

}  // namespace loopfolio::job
