// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/elements.hpp"
#include "loopfolio/job/keys/rooms.hpp"

namespace loopfolio::job {

namespace {

Fabric read_fabric(const Mapping& m) {
    Fabric out;
    read_keys(m, keys::fabric, out);
    if (out.outside_walls > 0) {
        demand(m, "wall", "the room has outside walls");
        demand(m, "glazing", "the room has outside walls");
    }
    out.ground.kind = ground_at(m);
    const bool suspended = out.floor == reference::FloorKind::suspended;
    if (has(m, "ground") && out.floor != reference::FloorKind::ground && !suspended) {
        complain(m, "ground", "is read only with `floor: ground` or `floor: suspended`",
                 "leave it out, or state that `floor`");
    }
    out.under = read_void(m);
    if (has(m, "void") && !suspended)
        complain(m, "void", "is read only with `floor: suspended`", "leave it out, or state that `floor`");
    return out;
}

/// Checks the keys that an element needs, or must not have, for the side it faces.
void check_beyond(const Mapping& m, Beyond beyond) {
    if (beyond == Beyond::room) demand(m, "room", "the element is towards another room");
    else if (has(m, "room"))
        complain(m, "room", "is read only with `beyond: room`", "leave it out, or state that `beyond`");
    if (beyond != Beyond::unheated && has(m, "beyond_temperature_c")) {
        complain(m, "beyond_temperature_c", "is read only with `beyond: unheated`",
                 "leave it out, or state that `beyond`");
    }
    const bool takes_factor = beyond == Beyond::unheated || beyond == Beyond::ground;
    if (!takes_factor && has(m, "factor")) {
        complain(m, "factor", "is read only with `beyond: unheated` or `beyond: ground`",
                 "leave it out, or state what lies beyond");
    }
    if (takes_factor && has(m, "factor") && has(m, "beyond_temperature_c")) {
        complain(m, "factor", "says the same as `beyond_temperature_c`", "keep one of the two");
    }
    if (!has(m, "space")) return;
    if (beyond != Beyond::unheated)
        complain(m, "space", "is read only with `beyond: unheated`", "leave it out, or state that `beyond`");
    for (const std::string_view key : {"factor", "beyond_temperature_c"}) {
        if (has(m, key)) complain(m, key, "says the same as `space`", "keep one of the two");
    }
}

std::optional<UnheatedSpace> read_space(const Mapping& m) {
    const auto s = open_child(m, "space", group("space"));
    if (!s) return {};
    UnheatedSpace out;
    read_keys(*s, keys::space, out);
    if (out.to_rooms.given() && out.to_outside.given() &&
        out.to_rooms.value + out.to_outside.value <= HeatLossCoefficient{}) {
        complain(m, "space", "must lose heat or take it: one of the two above 0",
                 "state the rate to the rooms, the rate to outside, or both");
    }
    return out;
}

Element read_element(const Mapping& m) {
    Element out;
    read_keys(m, keys::element, out);
    read_keys(m, keys::element_beyond, out);
    const auto beyond = choice_at(m, "beyond", "side", beyond_names());
    out.beyond = beyond.value_or(Beyond::outside);
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
        complain(m, "air_changes_per_hour", "stands beside `mechanical_ventilation`, which gives it",
                 "keep one of the two");
    }
    MechanicalVentilation out;
    read_keys(*v, keys::mechanical_ventilation, out);
    return out;
}

Room read_basics(const Mapping& m) {
    Room out;
    out.place = m.node != nullptr ? m.node->place : Place{};
    read_keys(m, keys::room, out);
    read_keys(m, keys::room_by_rate, out);
    read_keys(m, keys::room_by_elements, out);
    read_keys(m, keys::room_by_survey, out);
    std::vector<std::string_view> uses;
    for (const auto& use : reference::room_uses()) uses.push_back(use.name);
    if (const auto use = choice_at(m, "use", "use", uses)) out.use = reference::room_uses()[*use].use;
    out.ventilation = read_ventilation(m);
    return out;
}

void read_heat_loss(const Mapping& m, Room& room, std::vector<Mapping>& elements) {
    if (const auto fabric = open_child(m, "fabric", group("fabric"))) room.fabric = read_fabric(*fabric);
    elements = open_items(m, "elements", group("elements"));
    for (const auto& element : elements) room.elements.push_back(read_element(element));
    if (has(m, "thermal_bridge_w_per_m2k") && !has(m, "elements")) {
        complain(
            m, "thermal_bridge_w_per_m2k", "is read only with `elements`",
            has(m, "fabric") ? Hint{"move it under `fabric`"} : Hint{"leave it out, or list the room's `elements`"});
    }
    const bool has_way = has(m, "fabric") || has(m, "heat_loss_rate_w_per_m2") || has(m, "elements") ||
                         has(m, "heat_loss_w");
    if (room.heated && m.node != nullptr && !has_way) {
        complain(m, "", "there is no way to find its heat loss",
                 "add `fabric`, `elements`, "
                 "`heat_loss_rate_w_per_m2` or `heat_loss_w`, or write `heated: false`");
    }
}

/// Checks the keys of a room's air against one another and against the conditions.
void check_air(const Mapping& m, const Room& room, const Conditions& conditions) {
    const bool standard = conditions.air_by == reference::AirBy::en_12831_2017;
    if (!standard && room.ventilation && !room.ventilation->infiltration.given() &&
        !conditions.leakage_at_50_pa.given()) {
        complain(m, "mechanical_ventilation", "says nothing of leaks",
                 "add `infiltration_per_hour` here or "
                 "`leakage_at_50_pa_per_hour` under `conditions`");
    }
    const bool flue = room.flue != reference::Flue::none;
    if (has(m, "flue_air_m3_per_h") && !flue)
        complain(m, "flue_air_m3_per_h", "is read only with a `flue`", "leave it out, or state the `flue`");
    if (flue && !standard) {
        complain(m, "flue", "is read only with `air_changes_by: en_12831_2017`",
                 "the replaced tables count it in the room's air changes: state those, or leave it out");
    }
    if (has(m, "minimum_air_changes_per_hour") && (!standard || has(m, "air_changes_per_hour"))) {
        complain(m, "minimum_air_changes_per_hour", "counts only where the standard gives the room's air changes",
                 "leave it out, or leave out `air_changes_per_hour` and `air_changes_by`");
    }
}

/// A room that is designed for less than its use asks for may stay cold for whoever lives there next.
void ask_about_temperature(const Mapping& m, const Room& room) {
    const auto usual = Temperature::from_celsius(reference::defaults_for(room.use).temperature_c);
    const bool explained = !room.temperature.source.empty();
    if (!room.heated || !room.temperature.given() || room.temperature.value >= usual || explained) return;
    warn(m, "temperature_c", "lies under the " + in_celsius(usual) + " of a room of this use",
         "keep it where the household has agreed to it, and say so in its source");
}

/// A leakage test counts only in rooms that leave their air to the standard.
void ask_about_test(const Draft& draft) {
    const auto& c = draft.job.conditions;
    if (!draft.conditions || c.air_by != reference::AirBy::en_12831_2017) return;
    std::size_t stated = 0, heated = 0;
    for (const auto& room : draft.job.rooms) {
        if (!room.heated) continue;
        ++heated;
        const bool leaks = room.ventilation && room.ventilation->infiltration.given();
        if (room.air_changes.given() || leaks) ++stated;
    }
    if (stated == 0) return;
    for (const std::string_view key : {"leakage_at_50_pa_per_hour", "air_permeability_at_50_pa_m3_per_h_m2"}) {
        if (!has(*draft.conditions, key)) continue;
        warn(*draft.conditions, key,
             stated == heated ? "counts for nothing: every heated room states its own air changes"
                              : "counts for no room that states its own air changes, as " + std::to_string(stated) +
                                    " of " + std::to_string(heated) + " do",
             "leave out `air_changes_per_hour` where the test is to count");
    }
}

}  // namespace

void read_rooms(const Mapping& top, Draft& draft) {
    draft.rooms = open_items(top, "rooms", group("rooms"), "room");
    for (const auto& m : draft.rooms) {
        Room room = read_basics(m);
        read_heat_loss(m, room, draft.elements.emplace_back());
        check_air(m, room, draft.job.conditions);
        if (has(m, "use")) ask_about_temperature(m, room);
        draft.job.rooms.push_back(std::move(room));
    }
    ask_about_test(draft);
}

}  // namespace loopfolio::job
