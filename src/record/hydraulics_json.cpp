// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/heat_source.hpp"
#include "loopfolio/job/keys/pipework.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json quadratic_json(const std::optional<job::QuadraticCurve>& curve) {
    if (!curve) return {};
    Json out;
    put(out, "shutoff", curve->shutoff, unit::kilopascal);
    out["linear_pa_s_per_m3"] = number(curve->linear);
    out["square_pa_s2_per_m6"] = number(curve->square);
    return out;
}

Json separation_json(const std::optional<job::Separation>& separation) {
    if (!separation) return {};
    Json out = keys_json(job::keys::separation, *separation);
    out["source_circulator"] = circulator_json(separation->source_pump);
    return out;
}

}  // namespace

Json circulator_json(const std::optional<job::Circulator>& circulator) {
    if (!circulator) return {};
    Json out = keys_json(job::keys::circulator, *circulator);
    out["curve"] = Json::array();
    for (const auto& point : circulator->curve) {
        Json line;
        put(line, "flow", point.flow, unit::litre_per_minute);
        put(line, "head", point.head, unit::kilopascal);
        out["curve"].push_back(std::move(line));
    }
    out["quadratic"] = quadratic_json(circulator->quadratic);
    put(out, "set_head", circulator->set_head, unit::kilopascal);
    put(out, "set_flow", circulator->set_flow, unit::litre_per_minute);
    return out;
}

Json performance_json(const std::vector<job::PerformancePoint>& table, const std::string& source) {
    if (table.empty()) return {};
    Json points = Json::array();
    for (const auto& p : table) {
        Json line;
        put(line, "outdoor", p.outdoor, unit::celsius);
        put(line, "flow", p.flow, unit::celsius);
        put(line, "capacity", p.capacity, unit::kilowatt);
        put(line, "least", p.least, unit::kilowatt);
        line["ratio"] = number(p.performance);
        points.push_back(std::move(line));
    }
    return {{"source", source}, {"points", std::move(points)}};
}

Json further_units_json(const std::vector<job::FurtherUnits>& further) {
    Json out = Json::array();
    for (const auto& units : further) {
        Json line = keys_json(job::keys::further_units, units);
        line["performance"] = performance_json(units.performance, units.performance_source);
        out.push_back(std::move(line));
    }
    return out;
}

void put_hydraulics(Json& out, const job::Job& job) {
    out["further_circulators"] = Json::array();
    for (const auto& further : job.further_circulators) {
        Json line = circulator_json(further.pump);
        put_keys(line, job::keys::further_circulator, further);
        line["pipe"] = job::name_of(job::pipe_of_pair_names(), further.in_return);
        out["further_circulators"].push_back(std::move(line));
    }
    out["mixers"] = Json::array();
    for (const auto& mixer : job.mixers) {
        Json line = keys_json(job::keys::mixer, mixer);
        line["circulator"] = circulator_json(mixer.pump);
        out["mixers"].push_back(std::move(line));
    }
    out["separation"] = separation_json(job.separation);
}

}  // namespace loopfolio::record
