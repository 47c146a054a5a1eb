// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/keys/elements.hpp"
#include "loopfolio/job/keys/emitters.hpp"
#include "loopfolio/job/keys/rooms.hpp"
#include "record/keys_json.hpp"
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

Json layer_json(const job::Layer& layer) {
    Json out = keys_json(job::keys::layer, layer);
    out["air"] = layer.air;
    out["bridge"] = keys_json(job::keys::bridge, layer.bridge);
    out["fasteners"] = keys_json(job::keys::fasteners, layer.fasteners);
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

}  // namespace

void put_build_up(Json& out, const job::Element& element) {
    out["layers"] = Json::array();
    for (const auto& layer : element.layers) out["layers"].push_back(layer_json(layer));
    out["slab"] = keys_json(job::keys::slab, element.slab);
    if (element.slab) {
        put_ground(out["slab"], element.slab->ground);
        out["slab"]["void"] = keys_json(job::keys::floor_void, element.slab->under);
    }
    out["space"] = keys_json(job::keys::space, element.space);
}

void put_ground(Json& out, const job::Ground& ground) {
    out["ground"] = ground.kind;
    put_keys(out, job::keys::ground, ground);
}

void put_rating(Json& out, const job::Emitter& e) {
    out["rated_at"] = keys_json(job::keys::rated_at, e.rated_at);
    if (e.rated_at) put_temperatures(out["rated_at"], e.rated_at->at);
    out["fan"] = fan_json(e.fan);
    out["by_piece"] = keys_json(job::keys::by_piece, e.by_piece);
    out["floor"] = keys_json(job::keys::heated_floor, e.floor);
    out["deratings"] = Json::array();
    for (const auto& d : e.deratings) {
        Json line{{"name", d.name}};
        put_keys(line, job::keys::derating, d);
        out["deratings"].push_back(std::move(line));
    }
}

}  // namespace loopfolio::record
