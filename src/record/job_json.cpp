// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/conditions.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/job/keys/handover.hpp"
#include "loopfolio/job/keys/heat_source.hpp"
#include "loopfolio/job/keys/parties.hpp"
#include "loopfolio/job/keys/pipework.hpp"
#include "loopfolio/job/keys/plant.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json day_json(const std::optional<date::year_month_day>& day) { return day ? Json{date_text(*day)} : Json{}; }

Json identity_json(const job::Identity& identity) {
    Json out = keys_json(job::keys::identity, identity);
    out["design_date"] = date_text(identity.design_date);
    out["works_start"] = day_json(identity.works_start);
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

/// What was agreed and what is handed over; each part null where the job says nothing of it.
void put_handover(Json& out, const job::Handover& handover) {
    const auto put_part = [&](const char* name, const auto& keys, const auto& part) {
        out[name] = part ? keys_json(keys, *part) : Json{};
    };
    put_part("brief", job::keys::brief, handover.brief);
    if (handover.brief) out["brief"]["agreed_on"] = day_json(handover.brief->agreed_on);
    put_part("controls", job::keys::controls, handover.controls);
    put_part("water_treatment", job::keys::water_treatment, handover.treatment);
    if (handover.treatment) {
        out["water_treatment"]["cleaned_on"] = day_json(handover.treatment->cleaned_on);
        out["water_treatment"]["next_test"] = day_json(handover.treatment->next_test);
    }
    put_part("refrigerant", job::keys::refrigerant, handover.refrigerant);
    put_part("duty_holders", job::keys::duty_holders, handover.duties);
    out["residual_risks"] = Json::array();
    for (const auto& risk : handover.risks) out["residual_risks"].push_back(keys_json(job::keys::residual_risk, risk));
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
    put_handover(out, job.handover);
    return out;
}

}  // namespace loopfolio::record
