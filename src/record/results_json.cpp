// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

/// The finding at a place in the design's list, or null.
Json finding_at(const design::Design& design, design::FindingId id) {
    return id ? finding_json(design.at(id)) : Json{};
}

std::string_view word(design::CapacityLimit limit) {
    switch (limit) {
        case design::CapacityLimit::velocity_preferred: return "velocity_preferred";
        case design::CapacityLimit::gradient_preferred: return "gradient_preferred";
        case design::CapacityLimit::velocity: return "velocity_limit";
    }
    return "";
}

std::string_view word(physics::FluidKind kind) {
    switch (kind) {
        case physics::FluidKind::water: return "water";
        case physics::FluidKind::propylene_glycol: return "propylene_glycol";
        case physics::FluidKind::ethylene_glycol: return "ethylene_glycol";
    }
    return "";
}

std::string_view name_of(physics::Regime regime) {
    switch (regime) {
        case physics::Regime::still: return "still";
        case physics::Regime::laminar: return "laminar";
        case physics::Regime::transition: return "transition";
        case physics::Regime::turbulent: return "turbulent";
    }
    return "";
}

std::string_view word(design::Caveat caveat) {
    switch (caveat) {
        case design::Caveat::transition_flow: return "transition_flow";
        case design::Caveat::still_section: return "still_section";
        case design::Caveat::methods_differ: return "methods_differ";
        case design::Caveat::rating_far_off: return "rating_far_off";
        case design::Caveat::curve_exceeded: return "curve_exceeded";
        case design::Caveat::low_excess: return "low_excess";
        case design::Caveat::loft_not_stated: return "loft_not_stated";
        case design::Caveat::void_not_stated: return "void_not_stated";
        case design::Caveat::unusual_rate: return "unusual_rate";
        case design::Caveat::limits_apart: return "limits_apart";
        case design::Caveat::floor_too_warm: return "floor_too_warm";
        case design::Caveat::loop_too_long: return "loop_too_long";
        case design::Caveat::piece_far_off: return "piece_far_off";
        case design::Caveat::outside_table: return "outside_table";
        case design::Caveat::capacity_unlike_table: return "capacity_unlike_table";
        case design::Caveat::flow_far_off: return "flow_far_off";
        case design::Caveat::unusual_outdoor: return "unusual_outdoor";
        case design::Caveat::unusual_room: return "unusual_room";
        case design::Caveat::emitter_longer_than_room: return "emitter_longer_than_room";
        case design::Caveat::performance_rises: return "performance_rises";
        case design::Caveat::nominal_capacity: return "nominal_capacity";
        case design::Caveat::same_name: return "same_name";
        case design::Caveat::pipework_far_off: return "pipework_far_off";
    }
    return "";
}

Json node_at(const design::Design& design, int index) {
    if (index < 0 || static_cast<std::size_t>(index) >= design.nodes.size()) return {};
    return design.nodes[static_cast<std::size_t>(index)];
}

Json fluid_json(const design::Design& design) {
    Json out;
    out["kind"] = word(design.fluid.kind);
    put(out, "mass_fraction", design.fluid.mass_fraction, unit::percent);
    put(out, "density", design.state.density, unit::kilogram_per_cubic_metre);
    put(out, "specific_heat", design.state.specific_heat, unit::joule_per_kilogram_kelvin);
    put(out, "viscosity", design.state.viscosity, unit::millipascal_second);
    put(out, "freezing", design.freezing, unit::celsius);
    return out;
}

Json floor_json(const std::optional<design::FloorResult>& floor) {
    if (!floor) return {};
    Json out;
    put(out, "transfer", floor->transfer, unit::watt_per_square_metre_kelvin);
    put(out, "flux", floor->flux, unit::watt_per_square_metre);
    put(out, "surface", floor->surface, unit::celsius);
    put(out, "warmest", floor->warmest, unit::celsius);
    put(out, "surface_limit", floor->surface_limit, unit::celsius);
    const auto& limit = floor->limit;
    put(out, "limit_flux", limit ? std::optional{limit->flux} : std::nullopt, unit::watt_per_square_metre);
    put(out, "limit_water_excess", limit ? std::optional{limit->water_excess} : std::nullopt, unit::kelvin);
    put(out, "loop", floor->loop, unit::metre);
    return out;
}

Json emitter_results(const job::Job& job, const design::Design& design) {
    Json out = Json::array();
    for (std::size_t i = 0; i < design.emitters.size(); ++i) {
        const auto& emitter = design.emitters[i];
        Json line;
        line["id"] = job.emitters.at(i).id;
        line["room"] = id_at(job.rooms, emitter.room);
        put(line, "load", emitter.load, unit::watt);
        put(line, "downward", emitter.downward, unit::watt);
        line["floor"] = floor_json(emitter.floor);
        put(line, "inlet", emitter.inlet, unit::celsius);
        put(line, "drop", emitter.drop, unit::kelvin);
        line["on_loop"] = emitter.on_loop;
        line["mixer"] = id_at(job.mixers, emitter.mixer);
        put(line, "excess", emitter.excess, unit::kelvin);
        put(line, "factor", emitter.factor, unit::number);
        put(line, "output", emitter.output, unit::watt);
        put(line, "flow", emitter.flow, unit::kilogram_per_second);
        put(line, "flow", emitter.volume_flow, unit::litre_per_minute);
        put(line, "return_temperature", emitter.return_temperature, unit::celsius);
        put(line, "lowest_flow_temperature", emitter.lowest_flow_temperature, unit::celsius);
        put(line, "needed_at_50k", emitter.needed_at_50k, unit::watt);
        put(line, "rating_to_buy", emitter.rating_to_buy, unit::watt);
        put(line, "loss_factor", emitter.loss_factor, unit::number);
        put(line, "pressure_drop", emitter.pressure_drop, unit::kilopascal);
        put(line, "circuit", emitter.circuit, unit::kilopascal);
        line["finding"] = finding_at(design, emitter.finding);
        out.push_back(std::move(line));
    }
    return out;
}

Json hydraulic_json(const design::SectionResult& section) {
    Json out;
    put(out, "velocity", section.hydraulic.velocity, unit::metre_per_second);
    put(out, "reynolds", section.hydraulic.reynolds, unit::number);
    out["regime"] = name_of(section.hydraulic.regime);
    put(out, "friction_factor", section.hydraulic.friction_factor, unit::number);
    put(out, "gradient", section.hydraulic.gradient, unit::pascal_per_metre);
    put(out, "dynamic_pressure", section.hydraulic.dynamic_pressure, unit::pascal);
    put(out, "fitting_loss_factor", section.fitting_loss_factor, unit::number);
    put(out, "insert_loss_factor", section.insert_loss_factor, unit::number);
    put(out, "friction", section.friction, unit::kilopascal);
    put(out, "fittings", section.fittings, unit::kilopascal);
    put(out, "pressure_drop", section.pressure_drop, unit::kilopascal);
    return out;
}

Json capacity_json(const design::SectionResult& section) {
    using Limit = design::CapacityLimit;
    Json out;
    for (const Limit limit : {Limit::velocity_preferred, Limit::gradient_preferred, Limit::velocity}) {
        put(out, word(limit), section.capacity[static_cast<std::size_t>(limit)], unit::kilowatt);
    }
    out["governing"] = word(section.governing);
    return out;
}

std::string_view word(design::IndexPipes pipes) {
    switch (pipes) {
        case design::IndexPipes::both: return "both";
        case design::IndexPipes::flow: return "flow";
        case design::IndexPipes::return_: return "return";
    }
    return "";
}

Json pipe_json(const design::PipeResult& pipe) {
    Json out;
    put(out, "flow", pipe.flow, unit::kilogram_per_second);
    put(out, "flow", pipe.volume_flow, unit::litre_per_minute);
    put(out, "friction", pipe.friction, unit::kilopascal);
    put(out, "fittings", pipe.fittings, unit::kilopascal);
    put(out, "pressure_drop", pipe.pressure_drop, unit::kilopascal);
    return out;
}

Json section_results(const job::Job& job, const design::Design& design) {
    Json out = Json::array();
    for (std::size_t i = 0; i < design.sections.size(); ++i) {
        const auto& section = design.sections[i];
        Json line;
        line["id"] = job.sections.at(i).id;
        line["upstream"] = node_at(design, section.upstream);
        line["downstream"] = node_at(design, section.downstream);
        line["pipes"] = section.pipes;
        put(line, "load", section.load, unit::watt);
        put(line, "flow", section.flow, unit::kilogram_per_second);
        put(line, "flow", section.volume_flow, unit::litre_per_minute);
        line["hydraulic"] = hydraulic_json(section);
        line["flow_pipe"] = pipe_json(section.flow_pipe);
        line["return_pipe"] = pipe_json(section.return_pipe);
        line["head_share"] = number(section.head_share);
        line["capacity"] = capacity_json(section);
        line["next_size"] = section.next_size ? Json(section.next_size->name) : Json{};
        put(line, "drop_to_keep", section.drop_to_keep, unit::kelvin);
        line["size_for_limit"] = section.size_for_limit ? Json(section.size_for_limit->name) : Json{};
        put(line, "drop_to_limit", section.drop_to_limit, unit::kelvin);
        line["on_index_circuit"] = section.on_index_circuit;
        line["velocity"] = finding_at(design, section.velocity);
        line["gradient"] = finding_at(design, section.gradient);
        line["verdict"] = loopfolio::word(section.verdict);
        out.push_back(std::move(line));
    }
    return out;
}

Json duty_json(const job::Job& job, const design::Design& design) {
    const auto& duty = design.duty;
    Json out;
    put(out, "load", duty.load, unit::watt);
    put(out, "heat_up", design.duty.heat_up, unit::watt);
    put(out, "downward", design.duty.downward, unit::watt);
    put(out, "source_load", duty.source_load, unit::watt);
    put(out, "carried", duty.carried, unit::watt);
    put(out, "flow", duty.flow, unit::kilogram_per_second);
    put(out, "flow", duty.volume_flow, unit::litre_per_minute);
    put(out, "flow", duty.volume_flow, unit::cubic_metre_per_hour);
    put(out, "back", duty.back, unit::celsius);
    out["index_emitter"] = id_at(job.emitters, duty.index_emitter);
    out["index_sections"] = Json::array();
    for (const int index : duty.index_sections) out["index_sections"].push_back(id_at(job.sections, index));
    out["index_legs"] = Json::array();
    for (const auto& leg : duty.index_legs) {
        Json line;
        line["section"] = id_at(job.sections, leg.section);
        line["pipes"] = word(leg.pipes);
        put(line, "pressure_drop", leg.pressure_drop, unit::kilopascal);
        out["index_legs"].push_back(std::move(line));
    }
    put(out, "sections", duty.sections, unit::kilopascal);
    put(out, "emitter", duty.emitter, unit::kilopascal);
    put(out, "source", duty.source, unit::kilopascal);
    put(out, "left_over", duty.left_over, unit::kilopascal);
    out["heaviest_section"] = id_at(job.sections, duty.heaviest_section);
    put(out, "heaviest_drop", duty.heaviest_drop, unit::kilopascal);
    put(out, "head", duty.head, unit::kilopascal);
    put(out, "available", duty.available, unit::kilopascal);
    out["circulator"] = finding_at(design, duty.circulator);
    out["usual_circulator"] = finding_at(design, duty.usual_circulator);
    out["capacity_by_table"] = duty.capacity_by_table;
    out["source_capacity"] = finding_at(design, duty.source_capacity);
    out["source_minimum_flow"] = finding_at(design, duty.source_minimum_flow);
    out["source_maximum_drop"] = finding_at(design, duty.source_maximum_drop);
    out["performance"] = Json{};
    if (duty.performance) {
        out["performance"] = {{"at_flow", number(duty.performance->at_flow)},
                              {"at_source", number(duty.performance->at_source)}};
    }
    return out;
}

Json mixer_results(const job::Job& job, const design::Design& design) {
    Json out = Json::array();
    for (std::size_t i = 0; i < design.mixers.size(); ++i) {
        const auto& mixer = design.mixers[i];
        Json line;
        line["id"] = job.mixers.at(i).id;
        put(line, "flow", mixer.flow, unit::celsius);
        put(line, "return", mixer.return_, unit::celsius);
        put(line, "drawn", mixer.drawn, unit::litre_per_minute);
        put(line, "sent", mixer.sent, unit::litre_per_minute);
        put(line, "head", mixer.head, unit::kilopascal);
        put(line, "available", mixer.available, unit::kilopascal);
        line["pump"] = finding_at(design, mixer.pump);
        out.push_back(std::move(line));
    }
    return out;
}

Json separation_results(const design::Design& design) {
    const auto& separation = design.separation;
    if (!separation) return {};
    Json out;
    put(out, "source_flow", separation->source_flow, unit::litre_per_minute);
    put(out, "emitter_flow", separation->emitter_flow, unit::litre_per_minute);
    put(out, "source_leaving", separation->source_leaving, unit::celsius);
    put(out, "source_entering", separation->source_entering, unit::celsius);
    put(out, "lift", separation->lift, unit::kelvin);
    put(out, "if_mixed", separation->if_mixed, unit::celsius);
    out["effectiveness"] = separation->effectiveness ? number(*separation->effectiveness) : Json{};
    out["transfer_units"] = separation->transfer_units ? number(*separation->transfer_units) : Json{};
    put(out, "head", separation->head, unit::kilopascal);
    put(out, "available", separation->available, unit::kilopascal);
    out["pump"] = finding_at(design, separation->pump);
    return out;
}

}  // namespace

Json finding_json(const design::Finding& finding) {
    const auto row = design::row_of(finding.check);
    Json out;
    out["check"] = row.name;
    out["verdict"] = word(finding.verdict);
    out["figure"] = number(row.shown.value(finding.figure));
    out["limit"] = number(row.shown.value(finding.limit));
    out["margin"] = finding.margin ? number(*finding.margin) : Json{};
    out["to_spare"] = number(finding.to_spare());
    out["unit"] = row.shown.symbol;
    return out;
}

Json findings_json(const job::Job& job, const design::Findings& findings) {
    Json out = Json::array();
    for (const auto& finding : findings) {
        Json line;
        line["subject"] = word(finding.subject);
        line["id"] = id_of(job, finding.subject, finding.index);
        line.update(finding_json(finding));
        out.push_back(std::move(line));
    }
    return out;
}

Json id_of(const job::Job& job, design::Subject subject, int index) {
    using design::Subject;
    switch (subject) {
        case Subject::room: return id_at(job.rooms, index);
        case Subject::emitter: return id_at(job.emitters, index);
        case Subject::section: return id_at(job.sections, index);
        case Subject::mixer: return id_at(job.mixers, index);
        case Subject::circulator:
        case Subject::plant:
        case Subject::heat_source:
        case Subject::separation:
        case Subject::system_water:
        case Subject::hot_water:
        case Subject::sound: return {};
    }
    return {};
}

Json flags_json(const job::Job& job, const design::Design& design) {
    Json out = Json::array();
    for (const auto& flag : design.flags) {
        out.push_back({{"caveat", word(flag.caveat)},
                       {"subject", word(flag.subject)},
                       {"id", id_of(job, flag.subject, flag.index)},
                       {"figure", number(flag.figure)}});
    }
    return out;
}

Json design_json(const job::Job& job, const design::Design& design) {
    Json out;
    out["verdict"] = loopfolio::word(design.verdict);
    put(out, "flow", design.flow, unit::celsius);
    put(out, "return", design.return_, unit::celsius);
    put(out, "mean", design.mean, unit::celsius);
    put(out, "drop", design.drop, unit::kelvin);
    out["fluid"] = fluid_json(design);
    out["source_node"] = node_at(design, design.source_node);
    out["tree"] = design.tree;
    out["air"] = air_results(job, design);
    out["rooms"] = room_results(job, design);
    out["emitters"] = emitter_results(job, design);
    out["sections"] = section_results(job, design);
    out["mixers"] = mixer_results(job, design);
    out["separation"] = separation_results(design);
    put(out, "pipe_loss", design.pipe_loss, unit::watt);
    put(out, "metre_of_water", design.metre_of_water, unit::kilopascal);
    out["duty"] = duty_json(job, design);
    return out;
}

}  // namespace loopfolio::record
