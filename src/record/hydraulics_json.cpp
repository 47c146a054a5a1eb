// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

std::string_view word(job::PumpMode mode) {
    switch (mode) {
        case job::PumpMode::constant_speed: return "constant_speed";
        case job::PumpMode::constant_pressure: return "constant_pressure";
        case job::PumpMode::proportional_pressure: return "proportional_pressure";
    }
    return "";
}

std::string_view word(job::SeparationKind kind) {
    switch (kind) {
        case job::SeparationKind::header: return "header";
        case job::SeparationKind::close_tees: return "close_tees";
        case job::SeparationKind::buffer_two: return "buffer_two";
        case job::SeparationKind::buffer_four: return "buffer_four";
        case job::SeparationKind::plate: return "plate";
        case job::SeparationKind::volumiser: return "volumiser";
    }
    return "";
}

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
    Json out;
    out["kind"] = word(separation->kind);
    put(out, "source_flow", separation->source_flow, unit::litre_per_minute);
    out["source_circulator"] = circulator_json(separation->source_pump);
    put(out, "volume", separation->volume, unit::litre);
    put(out, "plate_ua", separation->plate_ua, unit::watt_per_kelvin);
    put(out, "pressure_drop", separation->pressure_drop, unit::kilopascal);
    put(out, "pressure_drop_flow", separation->pressure_drop_flow, unit::litre_per_minute);
    return out;
}

}   // namespace

Json circulator_json(const std::optional<job::Circulator>& circulator) {
    if (!circulator) return {};
    Json out;
    out["name"] = circulator->name;
    out["mode"] = word(circulator->mode);
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
    out["basis"] = loopfolio::word(circulator->basis);
    out["source"] = circulator->source;
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
        Json line{{"name", units.name}, {"model", units.model}, {"number", units.number}};
        put(line, "least_output", units.least_output, unit::kilowatt);
        put(line, "power_level", units.power_level, unit::decibel);
        line["performance"] = performance_json(units.performance, units.performance_source);
        out.push_back(std::move(line));
    }
    return out;
}

void put_hydraulics(Json& out, const job::Job& job) {
    out["further_circulators"] = Json::array();
    for (const auto& further : job.further_circulators) {
        Json line = circulator_json(further.pump);
        line["in"] = further.in;
        line["towards"] = further.towards;
        line["pipe"] = further.in_return ? "return" : "flow";
        out["further_circulators"].push_back(std::move(line));
    }
    out["mixers"] = Json::array();
    for (const auto& mixer : job.mixers) {
        Json line;
        line["id"] = mixer.id;
        line["from"] = mixer.from;
        line["to"] = mixer.to;
        put(line, "flow", mixer.flow, unit::celsius);
        put(line, "drop", mixer.drop, unit::kelvin);
        line["circulator"] = circulator_json(mixer.pump);
        out["mixers"].push_back(std::move(line));
    }
    out["separation"] = separation_json(job.separation);
}

}   // namespace loopfolio::record
