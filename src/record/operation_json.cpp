// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

std::string_view word(design::StateKind kind) {
    switch (kind) {
        case design::StateKind::as_found: return "as_found";
        case design::StateKind::balanced: return "balanced";
        case design::StateKind::changed: return "changed";
        case design::StateKind::mild_day: return "mild_day";
    }
    return "";
}

std::string_view word(design::LoadLimit limit) {
    switch (limit) {
        case design::LoadLimit::velocity_preferred: return "velocity_preferred";
        case design::LoadLimit::gradient_preferred: return "gradient_preferred";
        case design::LoadLimit::velocity: return "velocity_limit";
        case design::LoadLimit::circulator: return "circulator";
        case design::LoadLimit::emitters: return "emitters";
        case design::LoadLimit::source: return "source";
    }
    return "";
}

Json curve_json(const std::vector<job::CurvePoint>& points) {
    Json out = Json::array();
    for (const auto& point : points) {
        Json line;
        put(line, "flow", point.flow, unit::litre_per_minute);
        put(line, "head", point.head, unit::kilopascal);
        out.push_back(std::move(line));
    }
    return out;
}

Json emitters_json(const job::Job& job, const design::State& state) {
    Json out = Json::array();
    for (std::size_t i = 0; i < state.emitters.size(); ++i) {
        Json line;
        line["id"] = job.emitters.at(i).id;
        put(line, "flow", state.emitters[i].flow, unit::litre_per_minute);
        put(line, "inlet", state.emitters[i].inlet, unit::celsius);
        put(line, "outlet", state.emitters[i].outlet, unit::celsius);
        put(line, "output", state.emitters[i].output, unit::watt);
        out.push_back(std::move(line));
    }
    return out;
}

Json rooms_json(const job::Job& job, const design::State& state) {
    Json out = Json::array();
    for (std::size_t i = 0; i < state.rooms.size(); ++i) {
        Json line;
        line["id"] = job.rooms.at(i).id;
        put(line, "temperature", state.rooms[i].temperature, unit::celsius);
        put(line, "need", state.rooms[i].need, unit::watt);
        put(line, "output", state.rooms[i].output, unit::watt);
        out.push_back(std::move(line));
    }
    return out;
}

Json sections_json(const job::Job& job, const design::State& state) {
    Json out = Json::array();
    for (std::size_t i = 0; i < state.section_flow.size(); ++i) {
        Json line;
        line["id"] = job.sections.at(i).id;
        put(line, "flow", state.section_flow[i], unit::litre_per_minute);
        put(line, "flow_pipe", state.pipes[i].flow, unit::litre_per_minute);
        put(line, "return_pipe", state.pipes[i].back, unit::litre_per_minute);
        line["reynolds"] = number(state.reynolds[i]);
        out.push_back(std::move(line));
    }
    return out;
}

Json mixers_json(const job::Job& job, const design::State& state) {
    Json out = Json::array();
    for (std::size_t i = 0; i < state.mixers.size(); ++i) {
        Json line;
        line["id"] = job.mixers.at(i).id;
        put(line, "drawn", state.mixers[i].drawn, unit::litre_per_minute);
        put(line, "sent", state.mixers[i].sent, unit::litre_per_minute);
        put(line, "mixed_in", state.mixers[i].mixed_in, unit::litre_per_minute);
        out.push_back(std::move(line));
    }
    return out;
}

Json state_json(const job::Job& job, const design::State& state) {
    Json out;
    out["state"] = word(state.kind);
    put(out, "outdoor", state.outdoor, unit::celsius);
    put(out, "source_flow", state.source_flow, unit::celsius);
    put(out, "source_drop", state.source_drop, unit::kelvin);
    put(out, "flow", state.flow, unit::litre_per_minute);
    put(out, "source_side", state.source_side, unit::litre_per_minute);
    put(out, "head", state.head, unit::kilopascal);
    put(out, "heat", state.heat, unit::watt);
    put(out, "pipe_loss", state.pipe_loss, unit::watt);
    put(out, "downward", state.downward, unit::watt);
    put(out, "through_separation", state.through_separation, unit::litre_per_minute);
    put(out, "pump_power", state.pump_power, unit::watt);
    put(out, "highest_velocity", state.highest_velocity, unit::metre_per_second);
    out["fastest_section"] = id_at(job.sections, state.fastest_section);
    out["least_served"] = id_at(job.rooms, state.least_served);
    out["source_at_capacity"] = state.source_at_capacity;
    out["below_minimum_flow"] = state.below_minimum_flow;
    out["above_maximum_drop"] = state.above_maximum_drop;
    out["pump_backwards"] = state.pump_backwards;
    out["would_freeze"] = state.would_freeze;
    out["past_curve"] = state.past_curve;
    out["rounds"] = state.rounds;
    put(out, "pressure_residual", state.pressure_residual, unit::pascal);
    put(out, "continuity_residual", state.continuity_residual, unit::kilogram_per_second);
    out["energy_error"] = number(state.energy_error);
    out["emitters"] = emitters_json(job, state);
    out["rooms"] = rooms_json(job, state);
    out["sections"] = sections_json(job, state);
    out["mixers"] = mixers_json(job, state);
    out["system_curve"] = curve_json(state.system_curve);
    return out;
}

Json balancing_json(const job::Job& job, const design::Balancing& balancing) {
    Json out;
    put(out, "head", balancing.head, unit::kilopascal);
    out["index_emitter"] = id_at(job.emitters, balancing.index_emitter);
    out["valves"] = Json::array();
    for (const auto& valve : balancing.valves) {
        Json line;
        line["emitter"] = id_at(job.emitters, valve.emitter);
        put(line, "flow", valve.flow, unit::litre_per_minute);
        put(line, "own", valve.own, unit::kilopascal);
        put(line, "added", valve.added, unit::kilopascal);
        line["kv_m3_per_h"] = number(valve.kv);
        put(line, "return_temperature", valve.return_temperature, unit::celsius);
        put(line, "drop", valve.drop, unit::kelvin);
        line["out_of_reach"] = valve.out_of_reach;
        out["valves"].push_back(std::move(line));
    }
    return out;
}

Json changes_json(const job::Job& job, const design::Operation& operation) {
    Json out;
    out["left"] = findings_json(job, operation.left);
    out["pipes"] = Json::array();
    for (const auto& change : operation.changes.pipes) {
        out["pipes"].push_back({{"section", id_at(job.sections, change.section)}, {"to", change.to->name}});
    }
    out["emitters"] = Json::array();
    for (const int emitter : operation.changes.emitters) out["emitters"].push_back(id_at(job.emitters, emitter));
    out["circulator"] = operation.changes.circulator;
    put(out, "head", operation.changed_head, unit::kilopascal);
    put(out, "set_head", operation.changes.set_head, unit::kilopascal);
    out["mixer_heads_kpa"] = Json::array();
    for (const auto& head : operation.changes.mixer_heads) {
        out["mixer_heads_kpa"].push_back(head ? number_in(*head, unit::kilopascal) : Json{});
    }
    return out;
}

Json joins_json(const job::Job& job, const design::Operation& operation) {
    Json out = Json::array();
    for (std::size_t i = 0; i < operation.joins.size(); ++i) {
        const auto& join = operation.joins[i];
        Json line;
        line["junction"] = join.junction;
        line["is_present"] = join.is_present;
        line["possible"] = join.possible;
        line["best"] = static_cast<int>(i) == operation.best_join;
        line["change"] = Json::array();
        for (const int section : join.change) line["change"].push_back(id_at(job.sections, section));
        put(line, "metres", join.metres, unit::metre);
        line["noted"] = join.noted;
        put(line, "head", join.head, unit::kilopascal);
        out.push_back(std::move(line));
    }
    return out;
}

Json kept_json(const job::Job& job, const design::Operation& operation) {
    Json out = Json::array();
    for (const auto& kept : operation.kept) {
        Json line;
        line["section"] = id_at(job.sections, kept.section);
        put(line, "velocity", kept.velocity, unit::metre_per_second);
        line["noise_margin"] = number(kept.noise_margin);
        put(line, "drop", kept.drop, unit::kelvin);
        put(line, "flow_temperature", kept.flow_temperature, unit::celsius);
        put(line, "total_flow", kept.total_flow, unit::litre_per_minute);
        line["minimum_flow_kept"] = kept.minimum_flow_kept ? Json(*kept.minimum_flow_kept) : Json{};
        line["maximum_drop_kept"] = kept.maximum_drop_kept ? Json(*kept.maximum_drop_kept) : Json{};
        line["load_share"] = number(kept.load_share);
        out.push_back(std::move(line));
    }
    return out;
}

Json capacities_json(const job::Job& job, const design::Operation& operation) {
    Json out = Json::array();
    for (const auto& capacity : operation.capacities) {
        Json line;
        line["limit"] = word(capacity.limit);
        line["factor"] = number(capacity.factor);
        put(line, "load", capacity.load, unit::kilowatt);
        line["where"] = capacity.limit == design::LoadLimit::emitters ? id_at(job.rooms, capacity.where)
                                                                      : id_at(job.sections, capacity.where);
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace

Json operation_json(const job::Job& job, const design::Operation& operation) {
    Json out;
    out["pump_known"] = operation.pump_known;
    out["states"] = Json::array();
    for (const auto& state : operation.states) out["states"].push_back(state_json(job, state));
    out["balancing_as_found"] = balancing_json(job, operation.as_found);
    out["balancing_changed"] = balancing_json(job, operation.changed);
    out["changes"] = changes_json(job, operation);
    out["pump_curve"] = curve_json(operation.pump_curve);
    out["joins"] = joins_json(job, operation);
    out["kept_pipes"] = kept_json(job, operation);
    out["capacities"] = capacities_json(job, operation);
    return out;
}

}  // namespace loopfolio::record
