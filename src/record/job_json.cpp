// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

/// Kv of a valve is a plain number in the job, in m3/h.
constexpr NumberUnit kv{1.0, "m³/h", "_m3_per_h"};

std::string_view word(job::Carries carries) {
    switch (carries) {
        case job::Carries::both: return "both";
        case job::Carries::flow: return "flow";
        case job::Carries::return_: return "return";
        case job::Carries::loop: return "loop";
    }
    return "";
}

std::string_view word(job::FluidName kind) {
    switch (kind) {
        case job::FluidName::water: return "water";
        case job::FluidName::propylene_glycol: return "propylene_glycol";
        case job::FluidName::ethylene_glycol: return "ethylene_glycol";
    }
    return "";
}

std::string date_text(const date::year_month_day& day) {
    const auto padded = [](unsigned value, std::size_t width) {
        std::string digits = std::to_string(value);
        return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
    };
    return padded(static_cast<unsigned>(static_cast<int>(day.year())), 4) + "-" +
           padded(static_cast<unsigned>(day.month()), 2) + "-" + padded(static_cast<unsigned>(day.day()), 2);
}

Json identity_json(const job::Job& job) {
    Json out;
    out["reference"] = job.identity.reference;
    out["revision"] = job.identity.revision;
    out["design_date"] = date_text(job.identity.design_date);
    out["supersedes"] = job.identity.supersedes;
    return out;
}

Json conditions_json(const job::Conditions& conditions) {
    Json out;
    put(out, "outdoor", conditions.outdoor, unit::celsius);
    put(out, "flow", conditions.flow, unit::celsius);
    put(out, "drop", conditions.drop, unit::kelvin);
    put(out, "velocity_preferred", conditions.velocity_preferred, unit::metre_per_second);
    put(out, "velocity_limit", conditions.velocity_limit, unit::metre_per_second);
    put(out, "gradient_preferred", conditions.gradient_preferred, unit::pascal_per_metre);
    put(out, "mild_day", conditions.mild_day, unit::celsius);
    put(out, "height_above_station", conditions.height_above_station, unit::metre);
    put(out, "lapse", conditions.lapse, unit::kelvin_per_100_metres);
    put(out, "station_outdoor", conditions.station_outdoor, unit::celsius);
    put(out, "leakage_at_50_pa", conditions.leakage_at_50_pa, unit::per_hour);
    put(out, "leakage_divisor", conditions.leakage_divisor, unit::number);
    put(out, "heat_up", conditions.heat_up, unit::watt_per_square_metre);
    put(out, "intermittent_margin", conditions.intermittent_margin, unit::percent);
    return out;
}

Json fluid_json(const job::FluidChoice& fluid) {
    Json out;
    out["kind"] = word(fluid.kind);
    put(out, "concentration", fluid.concentration, unit::percent);
    out["concentration_basis"] = fluid.basis == job::ConcentrationBasis::mass ? "mass" : "volume";
    return out;
}

Json fittings_json(const std::vector<job::FittingCount>& fittings) {
    Json out = Json::array();
    for (const auto& fitting : fittings) {
        Json line{{"kind", fitting.kind}, {"count", fitting.count}};
        if (fitting.kind == "other") line["zeta"] = number(fitting.zeta);
        out.push_back(std::move(line));
    }
    return out;
}

Json emitters_json(const std::vector<job::Emitter>& emitters) {
    Json out = Json::array();
    for (const auto& emitter : emitters) {
        Json line;
        line["id"] = emitter.id;
        line["name"] = emitter.name;
        line["room"] = emitter.room;
        line["at"] = emitter.at;
        line["return_at"] = emitter.return_at;
        line["kind"] = emitter.kind;
        line["model"] = emitter.model;
        put(line, "output_at_50k", emitter.output_at_50k, unit::watt);
        put(line, "exponent", emitter.exponent, unit::number);
        put(line, "length", emitter.length, unit::millimetre);
        put(line, "height", emitter.height, unit::millimetre);
        put(line, "drop", emitter.drop, unit::kelvin);
        put(line, "valves_kv", emitter.valves_kv, kv);
        put_rating(line, emitter);
        line["loop_pipe"] = emitter.loop_pipe;
        put(line, "loop_length", emitter.loop_length, unit::metre);
        line["fittings"] = fittings_json(emitter.fittings);
        line["connection"] = emitter.connection;
        line["existing"] = emitter.existing;
        out.push_back(std::move(line));
    }
    return out;
}

Json sections_json(const std::vector<job::Section>& sections) {
    Json out = Json::array();
    for (const auto& section : sections) {
        Json line;
        line["id"] = section.id;
        line["from"] = section.from;
        line["to"] = section.to;
        line["carries"] = word(section.carries);
        line["pipe"] = section.pipe;
        put(line, "bore", section.bore, unit::millimetre);
        put(line, "insert_bore", section.insert_bore, unit::millimetre);
        put(line, "roughness", section.roughness, unit::millimetre);
        put(line, "length", section.length, unit::metre);
        put(line, "heat_loss", section.heat_loss, unit::watt_per_metre_kelvin);
        put(line, "surroundings", section.surroundings, unit::celsius);
        line["closed"] = section.closed;
        line["fittings"] = fittings_json(section.fittings);
        line["existing"] = section.existing;
        line["where"] = section.where;
        out.push_back(std::move(line));
    }
    return out;
}

Json heat_source_json(const std::optional<job::HeatSource>& source) {
    if (!source) return {};
    Json out;
    out["name"] = source->name;
    out["model"] = source->model;
    out["at"] = source->at;
    out["return_at"] = source->return_at;
    out["could_join_at"] = source->could_join_at;
    put(out, "capacity", source->capacity, unit::kilowatt);
    put(out, "minimum_flow", source->minimum_flow, unit::litre_per_minute);
    put(out, "maximum_drop", source->maximum_drop, unit::kelvin);
    put(out, "pressure_drop", source->pressure_drop, unit::kilopascal);
    put(out, "pressure_drop_flow", source->pressure_drop_flow, unit::litre_per_minute);
    out["performance"] = performance_json(source->performance, source->performance_source);
    out["further_units"] = further_units_json(source->further);
    out["running"] = running_json(*source);
    out["flammable_refrigerant"] = source->flammable_refrigerant;
    out["replaces_gas_appliance"] = source->replaces_gas_appliance;
    return out;
}

}   // namespace

Json job_json(const job::Job& job) {
    Json out;
    out["identity"] = identity_json(job);
    out["firm"] = {{"name", job.firm.name},
                   {"address", job.firm.address},
                   {"telephone", job.firm.telephone},
                   {"email", job.firm.email},
                   {"registration", job.firm.registration}};
    out["designer"] = {{"name", job.designer.name}, {"role", job.designer.role}};
    out["household"] = {{"name", job.household.name}, {"contact", job.household.contact}};
    out["property"] = {{"address", job.property.address}, {"description", job.property.description}};
    out["survey_notes"] = job.survey_notes;
    out["plain_values"] = loopfolio::word(job.plain_values);
    out["conditions"] = conditions_json(job.conditions);
    out["fluid"] = fluid_json(job.fluid);
    out["rooms"] = rooms_of_job(job);
    out["emitters"] = emitters_json(job.emitters);
    out["sections"] = sections_json(job.sections);
    out["heat_source"] = heat_source_json(job.heat_source);
    out["circulator"] = circulator_json(job.circulator);
    put_hydraulics(out, job);
    put_plant(out, job);
    out["unvented_hot_water"] = job.unvented_hot_water;
    out["hot_water_store"] = job.hot_water_store;
    out["old_lagging"] = job.old_lagging;
    return out;
}

}   // namespace loopfolio::record
