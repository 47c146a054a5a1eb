// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/conditions.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/job/keys/heat_source.hpp"
#include "loopfolio/job/keys/parties.hpp"
#include "loopfolio/job/keys/pipework.hpp"
#include "loopfolio/job/keys/plant.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json identity_json(const job::Identity& identity) {
    Json out = keys_json(job::keys::identity, identity);
    out["design_date"] = date_text(identity.design_date);
    out["works_start"] = identity.works_start ? Json{date_text(*identity.works_start)} : Json{};
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
        Json line = keys_json(job::keys::emitter, emitter);
        put_keys(line, job::keys::emitter_more, emitter);
        put_keys(line, job::keys::loop, emitter);
        put_rating(line, emitter);
        line["fittings"] = fittings_json(emitter.fittings);
        out.push_back(std::move(line));
    }
    return out;
}

Json sections_json(const std::vector<job::Section>& sections) {
    Json out = Json::array();
    for (const auto& section : sections) {
        Json line = keys_json(job::keys::section, section);
        line["fittings"] = fittings_json(section.fittings);
        out.push_back(std::move(line));
    }
    return out;
}

Json ruled_out_json(const std::vector<job::RuledOut>& entries) {
    Json out = Json::array();
    for (const auto& entry : entries) {
        Json line = keys_json(job::keys::ruled_out, entry);
        line["date"] = date_text(entry.date);
        out.push_back(std::move(line));
    }
    return out;
}

Json heat_source_json(const std::optional<job::HeatSource>& source) {
    if (!source) return {};
    Json out = keys_json(job::keys::heat_source, *source);
    out["performance"] = performance_json(source->performance, source->performance_source);
    out["further_units"] = further_units_json(source->further);
    out["running"] = keys_json(job::keys::running, *source);
    put_keys(out, job::keys::heat_source_cautions, *source);
    return out;
}

}  // namespace

Json job_json(const job::Job& job) {
    Json out;
    out["identity"] = identity_json(job.identity);
    out["firm"] = keys_json(job::keys::firm, job.firm);
    out["designer"] = keys_json(job::keys::designer, job.designer);
    out["household"] = keys_json(job::keys::household, job.household);
    out["property"] = keys_json(job::keys::property, job.property);
    put_keys(out, job::keys::top, job);
    out["cautions_ruled_out"] = ruled_out_json(job.cautions_ruled_out);
    out["plain_values"] = word(job.plain_values);
    out["conditions"] = keys_json(job::keys::conditions, job.conditions);
    out["fluid"] = keys_json(job::keys::fluid, job.fluid);
    out["rooms"] = rooms_of_job(job);
    out["emitters"] = emitters_json(job.emitters);
    out["sections"] = sections_json(job.sections);
    out["heat_source"] = heat_source_json(job.heat_source);
    out["circulator"] = circulator_json(job.circulator);
    put_hydraulics(out, job);
    put_plant(out, job);
    put_keys(out, job::keys::hot_water, job);
    return out;
}

}  // namespace loopfolio::record
