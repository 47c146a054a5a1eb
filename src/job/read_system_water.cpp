// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/fields.hpp"
#include "job/plant_fields.hpp"

namespace loopfolio::job {

namespace {

/// Pressures have an order: precharge below cold fill below safety valve.
void check_pressures(const Mapping& m, const SystemWater& w) {
    if (!w.safety_valve.given()) return;
    const Pressure valve = w.safety_valve.value;
    if (w.cold_fill && w.cold_fill->value >= valve) {
        complain(m, "cold_fill_bar", "must lie below `safety_valve_bar`", "the valve would lift before the system is warm");
    }
    if (w.precharge && w.precharge->value >= valve) {
        complain(m, "precharge_bar", "must lie below `safety_valve_bar`");
    }
    if (w.precharge && w.cold_fill && w.cold_fill->value < w.precharge->value) {
        complain(m, "cold_fill_bar", "must not lie below `precharge_bar`", "the vessel would hold no water when cold");
    }
}

SystemWater read_one(const Mapping& m) {
    SystemWater out;
    out.height = input_at(m, "height_m", unit::metre);
    out.safety_valve = input_at(m, "safety_valve_bar", unit::bar);
    out.vessel = if_given(input_at(m, "vessel_l", unit::litre));
    out.precharge = if_given(input_at(m, "precharge_bar", unit::bar));
    out.cold_fill = if_given(input_at(m, "cold_fill_bar", unit::bar));
    out.fill_temperature = input_at(m, "fill_temperature_c", unit::celsius);
    out.highest_temperature = input_at(m, "highest_temperature_c", unit::celsius);
    out.source_content = if_given(input_at(m, "source_content_l", unit::litre));
    out.other_content = if_given(input_at(m, "other_content_l", unit::litre));
    out.content_of_rating = input_at(m, "content_of_rating_l_per_kw", unit::litre_per_kilowatt);
    out.inhibitor_dose = if_given(input_at(m, "inhibitor_dose_percent", unit::percent));
    out.frost = if_given(input_at(m, "frost_c", unit::celsius));
    out.antifreeze_valves = flag_at(m, "antifreeze_valves", false);
    out.defrost_heat = if_given(input_at(m, "defrost_heat_kwh", unit::kilowatt_hour));
    out.defrost_fall = input_at(m, "defrost_fall_k", unit::kelvin);
    out.least_volume = if_given(input_at(m, "least_volume_l", unit::litre));
    out.always_open = if_given(input_at(m, "always_open_l", unit::litre));
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
