// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/plant.hpp"

namespace loopfolio::job {

namespace {

/// Checks the order of the pressures: precharge below cold fill below safety valve.
void check_pressures(const Mapping& m, const SystemWater& w) {
    if (!w.safety_valve.given()) return;
    const Pressure valve = w.safety_valve.value;
    if (w.cold_fill && w.cold_fill->value >= valve) {
        complain(m, "cold_fill_bar", "must lie below `safety_valve_bar`",
                 "the valve would lift before the system is warm");
    }
    if (w.precharge && w.precharge->value >= valve) {
        complain(m, "precharge_bar", "must lie below `safety_valve_bar`",
                 "the vessel takes water only above its pre-charge: check the two pressures");
    }
    if (w.precharge && w.cold_fill && w.cold_fill->value < w.precharge->value) {
        complain(m, "cold_fill_bar", "must not lie below `precharge_bar`", "the vessel would hold no water when cold");
    }
}

SystemWater read_one(const Mapping& m) {
    SystemWater out;
    read_keys(m, keys::system_water, out);
    if (m.node != nullptr) out.place = m.node->place;
    check_pressures(m, out);
    return out;
}

}  // namespace

void read_system_water(const Mapping& top, Draft& draft) {
    const auto m = open_child(top, "system_water", group("system_water"));
    if (!m) return;
    draft.job.system_water = read_one(*m);
    if (draft.job.system_water->antifreeze_valves && draft.job.fluid.kind != FluidName::water) {
        complain(*m, "antifreeze_valves", "stands beside glycol", "valves let plain water out: choose one of the two");
    }
}

}  // namespace loopfolio::job
