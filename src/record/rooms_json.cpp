// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "record/parts.hpp"

#include "loopfolio/reference/fabric.hpp"

namespace loopfolio::record {

namespace {

template <class E>
std::string_view name_of(std::span<const reference::Named<E>> names, E value) {
    for (const auto& n : names) {
        if (n.value == value) return n.name;
    }
    return {};
}

std::string_view word(job::ElementKind kind) {
    switch (kind) {
        case job::ElementKind::wall: return "wall";
        case job::ElementKind::window: return "window";
        case job::ElementKind::door: return "door";
        case job::ElementKind::roof: return "roof";
        case job::ElementKind::floor: return "floor";
        case job::ElementKind::ceiling: return "ceiling";
        case job::ElementKind::party_wall: return "party_wall";
    }
    return "";
}

std::string_view word(job::Beyond beyond) {
    switch (beyond) {
        case job::Beyond::outside: return "outside";
        case job::Beyond::unheated: return "unheated";
        case job::Beyond::room: return "room";
        case job::Beyond::ground: return "ground";
    }
    return "";
}

Json fabric_json(const std::optional<job::Fabric>& fabric) {
    if (!fabric) return {};
    Json out;
    out["era"] = name_of(reference::era_names(), fabric->era);
    out["wall"] = name_of(reference::wall_names(), fabric->wall);
    out["glazing"] = name_of(reference::glazing_names(), fabric->glazing);
    out["roof"] = name_of(reference::roof_names(), fabric->roof);
    out["floor"] = name_of(reference::floor_names(), fabric->floor);
    out["outside_walls"] = fabric->outside_walls;
    put(out, "wall_u_value", fabric->wall_u_value, unit::watt_per_square_metre_kelvin);
    put(out, "roof_u_value", fabric->roof_u_value, unit::watt_per_square_metre_kelvin);
    put(out, "glazing_u_value", fabric->glazing_u_value, unit::watt_per_square_metre_kelvin);
    put(out, "floor_insulation", fabric->floor_insulation, unit::square_metre_kelvin_per_watt);
    out["ground"] = fabric->ground.kind;
    put(out, "ground", fabric->ground.conductivity, unit::watt_per_metre_kelvin);
    put(out, "thermal_bridge", fabric->thermal_bridge, unit::watt_per_square_metre_kelvin);
    return out;
}

Json element_json(const job::Element& element) {
    Json out;
    out["name"] = element.name;
    out["kind"] = word(element.kind);
    put(out, "area", element.area, unit::square_metre);
    put(out, "u_value", element.u_value, unit::watt_per_square_metre_kelvin);
    out["beyond"] = word(element.beyond);
    out["beyond_room"] = element.beyond_room;
    put(out, "beyond_temperature", element.beyond_temperature, unit::celsius);
    put(out, "factor", element.factor, unit::number);
    put_build_up(out, element);
    return out;
}

}   // namespace

Json rooms_of_job(const job::Job& job) {
    Json out = Json::array();
    for (const auto& room : job.rooms) {
        Json line;
        line["id"] = room.id;
        line["name"] = room.name;
        line["storey"] = room.storey;
        line["use"] = reference::defaults_for(room.use).name;
        line["heated"] = room.heated;
        put(line, "floor_area", room.floor_area, unit::square_metre);
        put(line, "ceiling_height", room.ceiling_height, unit::metre);
        put(line, "temperature", room.temperature, unit::celsius);
        put(line, "air_changes", room.air_changes, unit::per_hour);
        put(line, "heat_up", room.heat_up, unit::watt_per_square_metre);
        line["ventilation"] = ventilation_json(room.ventilation);
        line["fabric"] = fabric_json(room.fabric);
        put(line, "heat_loss_rate", room.heat_loss_rate, unit::watt_per_square_metre);
        line["elements"] = Json::array();
        for (const auto& element : room.elements) line["elements"].push_back(element_json(element));
        put(line, "element_thermal_bridge", room.element_thermal_bridge, unit::watt_per_square_metre_kelvin);
        put(line, "heat_loss", room.heat_loss, unit::watt);
        out.push_back(std::move(line));
    }
    return out;
}

}   // namespace loopfolio::record
