// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

#include <array>

namespace loopfolio::job {

namespace {

using reference::Named;

constexpr std::array<Named<ElementKind>, 7> element_kinds{{
    {ElementKind::wall, "wall", "wall"},
    {ElementKind::window, "window", "window"},
    {ElementKind::door, "door", "door"},
    {ElementKind::roof, "roof", "roof"},
    {ElementKind::floor, "floor", "floor"},
    {ElementKind::ceiling, "ceiling", "ceiling"},
    {ElementKind::party_wall, "party_wall", "party wall"},
}};
constexpr std::array<Named<Beyond>, 4> beyond_names{{
    {Beyond::outside, "outside", "outside"},
    {Beyond::unheated, "unheated", "an unheated space"},
    {Beyond::room, "room", "another room"},
    {Beyond::ground, "ground", "the ground"},
}};

Fabric read_fabric(const Mapping& m) {
    Fabric out;
    out.era = choice_at(m, "era", "era", reference::era_names()).value_or(out.era);
    out.wall = choice_at(m, "wall", "wall", reference::wall_names()).value_or(out.wall);
    out.glazing = choice_at(m, "glazing", "glazing", reference::glazing_names()).value_or(out.glazing);
    out.roof = choice_at(m, "roof", "roof", reference::roof_names()).value_or(out.roof);
    out.floor = choice_at(m, "floor", "floor", reference::floor_names()).value_or(out.floor);
    out.outside_walls = whole_at(m, "outside_walls").value_or(0);
    if (out.outside_walls > 0) {
        demand(m, "wall", "the room has outside walls");
        demand(m, "glazing", "the room has outside walls");
    }
    out.wall_u_value = input_at(m, "wall_u_value_w_per_m2k", unit::watt_per_square_metre_kelvin);
    out.roof_u_value = input_at(m, "roof_u_value_w_per_m2k", unit::watt_per_square_metre_kelvin);
    out.glazing_u_value = input_at(m, "glazing_u_value_w_per_m2k", unit::watt_per_square_metre_kelvin);
    out.floor_insulation = input_at(m, "floor_insulation_m2k_per_w", unit::square_metre_kelvin_per_watt);
    out.ground.kind = ground_at(m);
    if (has(m, "ground") && out.floor != reference::FloorKind::ground)
        complain(m, "ground", "is read only with `floor: ground`");
    out.thermal_bridge = input_at(m, "thermal_bridge_w_per_m2k", unit::watt_per_square_metre_kelvin);
    return out;
}

/// What an element's `beyond` asks for and rules out.
void check_beyond(const Mapping& m, Beyond beyond) {
    if (beyond == Beyond::room) demand(m, "room", "the element is towards another room");
    else if (has(m, "room")) complain(m, "room", "is read only with `beyond: room`");
    if (beyond != Beyond::unheated && has(m, "beyond_temperature_c")) {
        complain(m, "beyond_temperature_c", "is read only with `beyond: unheated`");
    }
    const bool takes_factor = beyond == Beyond::unheated || beyond == Beyond::ground;
    if (!takes_factor && has(m, "factor")) {
        complain(m, "factor", "is read only with `beyond: unheated` or `beyond: ground`");
    }
    if (takes_factor && has(m, "factor") && has(m, "beyond_temperature_c")) {
        complain(m, "factor", "says the same as `beyond_temperature_c`", "keep one of the two");
    }
    if (!has(m, "space")) return;
    if (beyond != Beyond::unheated) complain(m, "space", "is read only with `beyond: unheated`");
    for (const std::string_view key : {"factor", "beyond_temperature_c"}) {
        if (has(m, key)) complain(m, key, "says the same as `space`", "keep one of the two");
    }
}

std::optional<UnheatedSpace> read_space(const Mapping& m) {
    const auto s = open_child(m, "space", group("space"));
    if (!s) return {};
    UnheatedSpace out{input_at(*s, "to_rooms_w_per_k", unit::watt_per_kelvin),
                      input_at(*s, "to_outside_w_per_k", unit::watt_per_kelvin)};
    if (out.to_rooms.given() && out.to_outside.given() && out.to_rooms.value + out.to_outside.value <= HeatLossCoefficient{}) {
        complain(m, "space", "must lose heat or take it: one of the two above 0");
    }
    return out;
}

Element read_element(const Mapping& m) {
    Element out;
    out.name = text_at(m, "name");
    out.kind = choice_at(m, "kind", "element", std::span<const Named<ElementKind>>{element_kinds})
                   .value_or(ElementKind::wall);
    out.area = input_at(m, "area_m2", unit::square_metre);
    const auto beyond = choice_at(m, "beyond", "side", std::span<const Named<Beyond>>{beyond_names});
    out.beyond = beyond.value_or(Beyond::outside);
    out.beyond_room = id_at(m, "room");
    out.beyond_temperature = if_given(input_at(m, "beyond_temperature_c", unit::celsius));
    out.factor = input_at(m, "factor", unit::number);
    out.space = read_space(m);
    if (beyond || !has(m, "beyond")) {
        check_beyond(m, out.beyond);
        read_build_up(m, out);
    }
    return out;
}

std::optional<MechanicalVentilation> read_ventilation(const Mapping& m) {
    const auto v = open_child(m, "mechanical_ventilation", group("mechanical_ventilation"));
    if (!v) return {};
    if (has(m, "air_changes_per_hour")) {
        complain(m, "air_changes_per_hour", "stands beside `mechanical_ventilation`, which gives it", "keep one of the two");
    }
    return MechanicalVentilation{input_at(*v, "supply_per_hour", unit::per_hour),
                                 input_at(*v, "recovery_percent", unit::percent),
                                 input_at(*v, "infiltration_per_hour", unit::per_hour)};
}

Room read_basics(const Mapping& m) {
    Room out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    out.id = id_at(m, "id");
    out.name = text_at(m, "name");
    out.storey = text_at(m, "storey");
    std::vector<std::string_view> uses;
    for (const auto& use : reference::room_uses()) uses.push_back(use.name);
    if (const auto use = choice_at(m, "use", "use", uses)) out.use = reference::room_uses()[*use].use;
    out.heated = flag_at(m, "heated", true);
    out.floor_area = input_at(m, "floor_area_m2", unit::square_metre);
    out.ceiling_height = input_at(m, "ceiling_height_m", unit::metre);
    out.temperature = input_at(m, "temperature_c", unit::celsius);
    out.air_changes = input_at(m, "air_changes_per_hour", unit::per_hour);
    out.ventilation = read_ventilation(m);
    out.heat_up = input_at(m, "heat_up_w_per_m2", unit::watt_per_square_metre);
    return out;
}

void read_heat_loss(const Mapping& m, Room& room, std::vector<Mapping>& elements) {
    if (const auto fabric = open_child(m, "fabric", group("fabric"))) room.fabric = read_fabric(*fabric);
    room.heat_loss_rate = if_given(input_at(m, "heat_loss_rate_w_per_m2", unit::watt_per_square_metre));
    elements = open_items(m, "elements", group("elements"));
    for (const auto& element : elements) room.elements.push_back(read_element(element));
    room.element_thermal_bridge =
        input_at(m, "thermal_bridge_w_per_m2k", unit::watt_per_square_metre_kelvin);
    room.heat_loss = if_given(input_at(m, "heat_loss_w", unit::watt));
    if (has(m, "thermal_bridge_w_per_m2k") && !has(m, "elements")) {
        complain(m, "thermal_bridge_w_per_m2k", "is read only with `elements`",
                 has(m, "fabric") ? "move it under `fabric`" : "");
    }
    const bool has_way = has(m, "fabric") || has(m, "heat_loss_rate_w_per_m2") || has(m, "elements") ||
                         has(m, "heat_loss_w");
    if (room.heated && m.node != nullptr && !has_way) {
        complain(m, "", "there is no way to find its heat loss", "add `fabric`, `elements`, "
                 "`heat_loss_rate_w_per_m2` or `heat_loss_w`, or write `heated: false`");
    }
}

}  // namespace

void read_rooms(const Mapping& top, Draft& draft) {
    draft.rooms = open_items(top, "rooms", group("rooms"), "room");
    for (const auto& m : draft.rooms) {
        Room room = read_basics(m);
        read_heat_loss(m, room, draft.elements.emplace_back());
        if (room.ventilation && !room.ventilation->infiltration.given() && !draft.job.conditions.leakage_at_50_pa.given()) {
            complain(m, "mechanical_ventilation", "says nothing of leaks", "add `infiltration_per_hour` here or "
                     "`leakage_at_50_pa_per_hour` under `conditions`");
        }
        draft.job.rooms.push_back(std::move(room));
    }
}

}  // namespace loopfolio::job
