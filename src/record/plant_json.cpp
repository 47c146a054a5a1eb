// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/plant.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

/// The finding at a place in the plant's list, or null.
Json finding_at(const design::Plant& plant, design::FindingId id) { return id ? finding_json(plant.at(id)) : Json{}; }

Json pressures_json(const physics::VesselPressures& p) {
    Json out;
    put(out, "reserve", p.reserve, unit::litre);
    put(out, "fill", p.fill, unit::bar);
    put(out, "highest_fill", p.highest_fill, unit::bar);
    put(out, "final", p.final, unit::bar);
    put(out, "allowed", p.allowed, unit::bar);
    put(out, "valve_margin", p.valve_margin, unit::bar);
    return out;
}

Json water_json(const design::Plant& plant) {
    const auto& w = *plant.water;
    Json out;
    put(out, "sections", w.sections, unit::litre);
    put(out, "emitters", w.emitters, unit::litre);
    put(out, "source", w.source, unit::litre);
    put(out, "separation", w.separation, unit::litre);
    put(out, "other", w.other, unit::litre);
    put(out, "content", w.content, unit::litre);
    out["emitters_by_rating"] = w.emitters_by_rating;
    put(out, "fill", w.fill, unit::celsius);
    put(out, "highest", w.highest, unit::celsius);
    put(out, "expansion", w.expansion, unit::percent);
    put(out, "table_expansion", w.table_expansion, unit::percent);
    put(out, "precharge", w.precharge, unit::bar);
    put(out, "expansion", w.vessel.expansion, unit::litre);
    put(out, "reserve", w.vessel.reserve, unit::litre);
    put(out, "least_vessel", w.vessel.least, unit::litre);
    put(out, "next_vessel", w.next_vessel, unit::litre);
    put(out, "second_opinion", w.second_opinion, unit::litre);
    out["pressures"] = w.pressures ? pressures_json(*w.pressures) : Json{};
    out["vessel_size"] = finding_at(plant, w.vessel_size);
    out["valve_margin"] = finding_at(plant, w.valve_margin);
    put(out, "glycol", w.glycol, unit::litre);
    out["frost"] = finding_at(plant, w.frost);
    put(out, "inhibitor", w.inhibitor, unit::litre);
    put(out, "open_needed", w.open_needed, unit::litre);
    put(out, "for_defrost", w.for_defrost, unit::litre);
    out["open_volume"] = finding_at(plant, w.open_volume);
    return out;
}

Json reheat_json(const physics::Reheat& r) {
    Json out;
    put(out, "time", r.time, unit::minute);
    put(out, "by_capacity", r.by_capacity, unit::minute);
    put(out, "by_transfer", r.by_transfer, unit::minute);
    put(out, "heat", r.heat, unit::kilowatt_hour);
    put(out, "turns", r.turns, unit::celsius);
    put(out, "least", r.least, unit::kilowatt);
    return out;
}

Json hot_cycle_json(const physics::PasteurisationUse& use) {
    Json out;
    put(out, "by_source", use.by_source, unit::kilowatt_hour);
    put(out, "by_immersion", use.by_immersion, unit::kilowatt_hour);
    put(out, "electricity_a_year", use.electricity_a_year, unit::kilowatt_hour);
    return out;
}

Json hot_water_json(const design::Plant& plant) {
    const auto& h = *plant.hot_water;
    Json out;
    put(out, "drawn", h.drawn, unit::kilowatt_hour);
    put(out, "store_needed", h.store_needed, unit::litre);
    out["store"] = finding_at(plant, h.store);
    put(out, "capacity", h.capacity, unit::kilowatt);
    out["capacity_by_table"] = h.by_table;
    put(out, "transfer", h.transfer, unit::watt_per_kelvin);
    out["reheat"] = h.reheat ? reheat_json(*h.reheat) : Json{};
    out["unreachable"] = h.unreachable;
    put(out, "flow_for_capacity", h.flow_for_capacity, unit::celsius);
    out["coil"] = finding_at(plant, h.coil);
    put(out, "standing_loss", h.standing_loss, unit::kilowatt_hour);
    put(out, "hours_a_day", h.hours_a_day, unit::hour);
    put(out, "load_with_hot_water", h.load_with_hot_water, unit::kilowatt);
    put(out, "heat_a_year", h.heat_a_year, unit::kilowatt_hour);
    put(out, "electricity_a_year", h.electricity_a_year, unit::kilowatt_hour);
    out["needs_immersion"] = h.needs_immersion;
    out["hot_cycle"] = h.hot_cycle ? hot_cycle_json(*h.hot_cycle) : Json{};
    return out;
}

Json sound_json(const design::Plant& plant) {
    const auto& s = *plant.sound;
    Json out;
    out["directivity"] = number(s.directivity);
    put(out, "at_distance", s.at_distance, unit::decibel);
    put(out, "level", s.level, unit::decibel);
    put(out, "with_background", s.with_background, unit::decibel);
    put(out, "far_enough", s.far_enough, unit::metre);
    out["rule"] = Json{};
    if (s.rule) {
        out["rule"]["edition"] = s.rule->edition->key;
        put(out["rule"], "limit", s.rule->limit, unit::decibel);
        put(out["rule"], "background", s.rule->background, unit::decibel);
        put(out["rule"], "figure", s.rule->figure, unit::decibel);
    }
    out["by_rule"] = finding_at(plant, s.by_rule);
    out["limit"] = finding_at(plant, s.limit);
    return out;
}

}  // namespace

void put_plant(Json& out, const job::Job& job) {
    out["season"] = job.season ? season_input_json(*job.season) : Json{};
    out["system_water"] = keys_json(job::keys::system_water, job.system_water);
    out["hot_water_supply"] = keys_json(job::keys::supply, job.hot_water);
    out["sound"] = keys_json(job::keys::sound, job.sound);
}

Json plant_json(const job::Job& job, const design::Plant& plant) {
    Json out;
    out["season"] = plant.season ? season_json(job, *plant.season) : Json{};
    out["system_water"] = plant.water ? water_json(plant) : Json{};
    out["hot_water"] = plant.hot_water ? hot_water_json(plant) : Json{};
    out["sound"] = plant.sound ? sound_json(plant) : Json{};
    return out;
}

}  // namespace loopfolio::record
