// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"

#include "loopfolio/job/names.hpp"
#include "loopfolio/templates/texts.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json template_json(const study::TemplateOrigin& look) {
    Json out;
    out["name"] = look.name;
    out["built_in"] = look.files.empty();
    out["sha256"] = look.sha256;
    out["default_sha256"] = look.default_sha256;
    out["files"] = Json::array();
    for (const auto& file : look.files)
        out["files"].push_back({{"name", file.name}, {"sha256", file.sha256}, {"attached", file.attached}});
    return out;
}

Json origin_json(const study::Origin& origin) {
    Json out;
    out["program"] = origin.program;
    out["version"] = origin.version;
    out["job_file"] = origin.job_file;
    out["job_sha256"] = origin.job_sha256;
    out["files"] = Json::array();
    for (const auto& file : origin.files) out["files"].push_back({{"name", file.name}, {"sha256", file.sha256}});
    out["inputs_sha256"] = inputs_sha256(origin);
    out["template"] = origin.look ? template_json(*origin.look) : Json{};
    return out;
}

}  // namespace

Json derivations_json(const design::Trace& trace) {
    // A record reads the same whatever template its pack is printed by: it has the default's words, and beside them the
    // step's key, which is the same in every language.
    const auto words = [](const auto& kept) { return templates::default_words()(kept, {}); };
    Json out = Json::array();
    for (const auto& derivation : trace.derivations()) {
        Json steps = Json::array();
        for (const auto& step : derivation.steps) {
            steps.push_back({{"key", step.what.key},
                             {"what", words(step.what)},
                             {"formula", words(step.formula)},
                             {"result", words(step.result)},
                             {"source", step.source}});
        }
        out.push_back({{"subject", word(derivation.subject)}, {"id", derivation.id}, {"steps", std::move(steps)}});
    }
    return out;
}

Json register_json(const std::vector<study::Assumption>& inputs) {
    const auto effect = [](const std::optional<study::Effect>& e) {
        Json out;
        if (!e) return out;
        put(out, "source_load_change", e->source_load_change, unit::watt);
        out["verdicts_changed"] = e->verdicts_changed;
        return out;
    };
    Json out = Json::array();
    for (const auto& input : inputs) {
        Json line;
        line["what"] = input.what;
        line["subjects"] = input.subjects;
        line["value"] = input.value;
        line["range"] = input.range;
        line["basis"] = word(input.basis);
        line["source"] = input.source;
        line["source_is_key"] = input.is_key;
        line["needs_care"] = study::needs_care(input);
        line["at_low"] = effect(input.at_low);
        line["at_high"] = effect(input.at_high);
        out.push_back(std::move(line));
    }
    return out;
}

std::string check_json(const study::Study& study) {
    const auto& job = study.house.values;
    Json out;
    out["reference"] = job.identity.reference;
    out["revision"] = job.identity.revision;
    out["status"] = job::name_of(job::status_names(), job.identity.status);
    out["verdict"] = word(study.verdict);
    out["findings"] = findings_json(job, study.findings);
    out["flags"] = flags_json(job, study.design);
    return out.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string to_json(const study::Study& study) {
    const auto& job = study.house.values;
    Json out;
    out["record"] = "loopfolio design record";
    out["record_version"] = record_version;
    out["origin"] = origin_json(study.origin);
    out["verdict"] = word(study.verdict);
    out["findings"] = findings_json(job, study.findings);
    out["job"] = job_json(job);
    out["design"] = design_json(job, study.design);
    out["sizes"] = sizes_json(job, study.sizes);
    put_study(out, study);
    out["operation"] = operation_json(job, study.operation);
    out["plant"] = plant_json(job, study.plant);
    out["flags"] = flags_json(job, study.design);
    out["circumstances"] = Json::object();
    for (const auto& [name, holds] : study::circumstance_names) {
        out["circumstances"][std::string{name}] = study.circumstances.*holds;
    }
    out["register"] = register_json(study.inputs);
    out["derivations"] = derivations_json(study.trace);
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace loopfolio::record
