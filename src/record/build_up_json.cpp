// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

constexpr const auto& conductivity = unit::watt_per_metre_kelvin;

Json fasteners_json(const std::optional<job::Fasteners>& fasteners) {
    if (!fasteners) return {};
    Json out;
    out["material"] = fasteners->material;
    put(out, "conductivity", fasteners->conductivity, conductivity);
    put(out, "section", fasteners->section, unit::square_millimetre);
    put(out, "number", fasteners->per_square_metre, unit::per_square_metre);
    put(out, "depth", fasteners->depth, unit::millimetre);
    return out;
}

Json layer_json(const job::Layer& layer) {
    Json out;
    out["material"] = layer.material;
    out["air"] = layer.air;
    put(out, "thickness", layer.thickness, unit::millimetre);
    put(out, "conductivity", layer.conductivity, conductivity);
    put(out, "resistance", layer.resistance, unit::square_metre_kelvin_per_watt);
    out["bridge"] = Json{};
    if (layer.bridge) {
        Json bridge;
        bridge["material"] = layer.bridge->material;
        put(bridge, "conductivity", layer.bridge->conductivity, conductivity);
        put(bridge, "share", layer.bridge->share, unit::percent);
        out["bridge"] = std::move(bridge);
    }
    out["air_gap_level"] = layer.air_gap_level;
    out["fasteners"] = fasteners_json(layer.fasteners);
    return out;
}

void put_temperatures(Json& out, const job::RatingTemperatures& at) {
    put(out, "flow", at.flow, unit::celsius);
    put(out, "return", at.return_, unit::celsius);
    put(out, "room", at.air, unit::celsius);
}

Json fan_json(const std::optional<job::Fan>& fan) {
    if (!fan) return {};
    Json out;
    put_temperatures(out, fan->at);
    out["speeds"] = Json::array();
    for (const auto& s : fan->speeds) {
        Json line{{"speed", number(s.speed)}};
        put(line, "output", s.output, unit::watt);
        out["speeds"].push_back(std::move(line));
    }
    out["speed"] = number(fan->speed);
    return out;
}

Json floor_json(const std::optional<job::HeatedFloor>& floor) {
    if (!floor) return {};
    Json out;
    put(out, "area", floor->area, unit::square_metre);
    put(out, "pitch", floor->pitch, unit::millimetre);
    out["covering"] = floor->covering;
    put(out, "covering", floor->covering_resistance, unit::square_metre_kelvin_per_watt);
    put(out, "screed", floor->screed_cover, unit::millimetre);
    put(out, "screed", floor->screed, conductivity);
    put(out, "pipe_outside", floor->pipe_outside, unit::millimetre);
    out["zone"] = floor->zone;
    put(out, "leads", floor->leads, unit::metre);
    put(out, "below", floor->below, unit::square_metre_kelvin_per_watt);
    put(out, "below", floor->below_temperature, unit::celsius);
    return out;
}

}   // namespace

void put_build_up(Json& out, const job::Element& element) {
    out["layers"] = Json::array();
    for (const auto& layer : element.layers) out["layers"].push_back(layer_json(layer));
    out["slab"] = out["space"] = Json{};
    if (element.slab) {
        Json slab;
        put(slab, "perimeter", element.slab->perimeter, unit::metre);
        put(slab, "insulation", element.slab->insulation, unit::square_metre_kelvin_per_watt);
        slab["ground"] = element.slab->ground.kind;
        put(slab, "ground", element.slab->ground.conductivity, conductivity);
        out["slab"] = std::move(slab);
    }
    if (element.space) {
        Json space;
        put(space, "to_rooms", element.space->to_rooms, unit::watt_per_kelvin);
        put(space, "to_outside", element.space->to_outside, unit::watt_per_kelvin);
        out["space"] = std::move(space);
    }
}

Json ventilation_json(const std::optional<job::MechanicalVentilation>& ventilation) {
    if (!ventilation) return {};
    Json out;
    put(out, "supply", ventilation->supply, unit::per_hour);
    put(out, "recovery", ventilation->recovery, unit::percent);
    put(out, "infiltration", ventilation->infiltration, unit::per_hour);
    return out;
}

void put_rating(Json& out, const job::Emitter& e) {
    put(out, "rating", e.rating, unit::watt);
    out["rated_at"] = out["by_piece"] = Json{};
    if (e.rated_at) {
        Json at;
        put_temperatures(at, e.rated_at->at);
        put(at, "output", e.rated_at->output, unit::watt);
        out["rated_at"] = std::move(at);
    }
    out["fan"] = fan_json(e.fan);
    if (e.by_piece) {
        Json piece{{"sections", e.by_piece->sections}};
        put(piece, "output", e.by_piece->output, unit::watt);
        out["by_piece"] = std::move(piece);
    }
    out["floor"] = floor_json(e.floor);
    out["deratings"] = Json::array();
    for (const auto& d : e.deratings) {
        Json line{{"name", d.name}};
        put(line, "factor", d.factor, unit::number);
        out["deratings"].push_back(std::move(line));
    }
}

}   // namespace loopfolio::record
