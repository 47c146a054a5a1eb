// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

namespace loopfolio::record {

namespace {

std::string_view word(design::LossMethod method) {
    switch (method) {
        case design::LossMethod::none: return "none";
        case design::LossMethod::area: return "area";
        case design::LossMethod::elements: return "elements";
        case design::LossMethod::other_survey: return "other_survey";
    }
    return "";
}

Json area_json(const std::optional<design::AreaMethod>& area) {
    if (!area) return {};
    constexpr auto u = unit::watt_per_square_metre_kelvin;
    Json out;
    out["stated_rate"] = area->stated_rate;
    put(out, "walls", area->walls, u);
    put(out, "glazing", area->glazing, u);
    put(out, "roof", area->roof, u);
    put(out, "floor", area->floor, u);
    put(out, "bridges", area->bridges, u);
    put(out, "ventilation", area->ventilation, u);
    put(out, "floor_u_value", area->floor_u_value, u);
    put(out, "per_kelvin", area->per_kelvin, u);
    put(out, "rate", area->rate, unit::watt_per_square_metre);
    put(out, "fixed_rate", area->fixed_rate, unit::watt_per_square_metre);
    put(out, "loss", area->loss, unit::watt);
    return out;
}

Json layered_json(const std::optional<physics::Transmittance>& layered) {
    if (!layered) return {};
    Json out;
    put(out, "upper", layered->upper, unit::square_metre_kelvin_per_watt);
    put(out, "lower", layered->lower, unit::square_metre_kelvin_per_watt);
    put(out, "total", layered->total, unit::square_metre_kelvin_per_watt);
    put(out, "u_value", layered->u_value, unit::watt_per_square_metre_kelvin);
    put(out, "error_bound", layered->error_bound, unit::number);
    put(out, "gaps", layered->corrections.gaps, unit::watt_per_square_metre_kelvin);
    put(out, "fasteners", layered->corrections.fasteners, unit::watt_per_square_metre_kelvin);
    return out;
}

Json elements_json(const std::optional<design::ElementMethod>& elements) {
    if (!elements) return {};
    Json out;
    out["elements_w"] = Json::array();
    for (const Power loss : elements->elements) out["elements_w"].push_back(number_in(loss, unit::watt));
    put(out, "outside", elements->outside, unit::watt_per_kelvin);
    put(out, "to_outside", elements->to_outside, unit::watt);
    put(out, "to_rooms", elements->to_rooms, unit::watt);
    put(out, "ventilation", elements->ventilation, unit::watt);
    put(out, "loss", elements->loss, unit::watt);
    out["layered"] = Json::array();
    for (const auto& layered : elements->layered) out["layered"].push_back(layered_json(layered));
    return out;
}

}  // namespace

Json air_results(const job::Job& job, const design::Design& design) {
    constexpr const auto& flow = unit::cubic_metre_per_hour;
    const auto& house = design.air;
    Json out;
    put(out, "envelope", house.zone.envelope, unit::square_metre);
    put(out, "volume", house.volume, unit::cubic_metre);
    put(out, "permeability", house.zone.permeability, unit::cubic_metre_per_hour_square_metre);
    out["volume_flow_factor"] = number(house.zone.volume_flow_factor);
    out["facade_factor"] = number(house.zone.facade_factor);
    out["direction_factor"] = number(house.direction_factor);
    out["house_share"] = number(house.house_share);
    out["adjustment"] = number(house.air.adjustment);
    put(out, "leakage", house.air.leakage, flow);
    put(out, "drawn_in", house.air.drawn_in, flow);
    put(out, "through_envelope", house.air.through_envelope, flow);
    out["rooms"] = Json::array();
    for (std::size_t i = 0; i < house.rooms.size(); ++i) {
        const auto& room = house.rooms[i];
        if (!room.in_zone) continue;
        Json line{{"id", job.rooms.at(i).id}, {"by_standard", room.by_standard}};
        put(line, "envelope", room.envelope, unit::square_metre);
        put(line, "leakage", room.leakage, flow);
        put(line, "windward", room.through_envelope, flow);
        put(line, "minimum", room.minimum, flow);
        put(line, "technical", room.technical, flow);
        put(line, "outdoor", room.outdoor, flow);
        put(line, "outdoor_in_house", room.outdoor_in_house, flow);
        out["rooms"].push_back(std::move(line));
    }
    return out;
}

Json room_results(const job::Job& job, const design::Design& design) {
    Json out = Json::array();
    for (std::size_t i = 0; i < design.rooms.size(); ++i) {
        const auto& room = design.rooms[i];
        Json line;
        line["id"] = job.rooms.at(i).id;
        line["method"] = word(room.method);
        line["by_area"] = area_json(room.by_area);
        line["by_elements"] = elements_json(room.by_elements);
        put(line, "loss", room.loss, unit::watt);
        put(line, "air_not_at_once", room.air_not_at_once, unit::watt);
        put(line, "loss_to_outside", room.loss_to_outside, unit::watt);
        put(line, "heat_up", room.heat_up, unit::watt);
        put(line, "load", room.load, unit::watt);
        put(line, "output", room.output, unit::watt);
        line["emitters"] = room.emitters;
        put(line, "reached", room.reached, unit::celsius);
        line["reached_alone"] = room.reached_alone;
        line["finding"] = room.finding ? finding_json(design.at(room.finding)) : Json{};
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace loopfolio::record
