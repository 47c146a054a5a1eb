// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/circumstances.hpp"

#include <algorithm>

namespace loopfolio::study {

namespace {

/// Whether pipes, emitters or a heat source are fitted or removed. A new heat source alone needs holes and ladders too.
bool opens_fabric(const job::Job& job, const design::Design& design) {
    const auto is_new = [](const auto& item) { return !item.existing; };
    const auto changes = [](const auto& result) { return result.verdict == Verdict::change; };
    const auto emitter_changes = [&](const auto& result) {
        return design.verdict_of(result.finding) == Verdict::change;
    };
    return job.heat_source || std::ranges::any_of(job.sections, is_new) || std::ranges::any_of(job.emitters, is_new) ||
           std::ranges::any_of(design.sections, changes) || std::ranges::any_of(design.emitters, emitter_changes);
}

/// Great Britain banned asbestos in 1999 (from memory). The era from 1996 to 2002 holds that year, so it counts as old.
/// A heated room without an era, by elements or by another survey, is of unknown age.
bool may_hold_asbestos(const job::Room& room) {
    return room.heated && (!room.fabric || room.fabric->era < reference::Era::from_2003);
}

void add_replaced(const job::HeatSource& source, Circumstances& out) {
    using enum job::Replaced;
    const bool gas_stated = source.replaces_gas_appliance || source.replaces == gas;
    out.appliance_unknown = !gas_stated && source.replaces == not_known;
    out.gas_appliance_replaced = gas_stated || out.appliance_unknown;
    out.lpg_appliance_replaced = source.replaces == lpg;
    out.oil_appliance_replaced = source.replaces == oil;
    out.solid_fuel_appliance_replaced = source.replaces == solid_fuel;
}

void add_hot_water(const job::Job& job, Circumstances& out) {
    out.unvented_store = job.unvented_hot_water;
    out.hot_water_store = job.hot_water_store || job.unvented_hot_water;
    out.vented_store = out.hot_water_store && !job.unvented_hot_water;
    out.hot_cycle = job.hot_water && job.hot_water->hot_cycles_a_year && job.hot_water->hot_cycles_a_year->value > 0.0;
    out.no_hot_cycle = !out.hot_cycle;
}

}  // namespace

Circumstances circumstances_of(const job::Job& values, const design::Design& design) {
    Circumstances out;
    out.new_heat_source = values.heat_source.has_value();
    out.electrical_work = values.heat_source || values.circulator;
    out.fabric_opened = opens_fabric(values, design);
    if (values.heat_source) {
        out.flammable_refrigerant = values.heat_source->flammable_refrigerant;
        add_replaced(*values.heat_source, out);
    }
    add_hot_water(values, out);
    out.old_lagging = values.old_lagging;
    out.asbestos_possible = values.old_lagging || std::ranges::any_of(values.rooms, may_hold_asbestos);
    out.ethylene_glycol = values.fluid.kind == job::FluidName::ethylene_glycol;
    out.propylene_glycol = values.fluid.kind == job::FluidName::propylene_glycol;
    return out;
}

}  // namespace loopfolio::study
