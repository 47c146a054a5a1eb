// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/evidence.hpp"

#include "loopfolio/reference/fabric.hpp"
#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <map>
#include <tuple>

namespace loopfolio::report {

namespace {

/// Rooms whose rate comes from the same figures, and the fabric that they share with other such groups.
struct Group {
    std::size_t first = 0;
    std::vector<std::size_t> rooms;
    std::size_t fabric = 0;
};

auto fabric_key(const job::Room& room) {
    const auto& f = *room.fabric;
    return std::make_tuple(f.era, f.wall, f.glazing, f.roof, f.floor, f.outside_walls, f.wall_u_value.value,
                           f.roof_u_value.value, f.glazing_u_value.value, f.floor_insulation.value,
                           f.thermal_bridge.value);
}

auto rate_key(const job::Room& room) {
    return std::make_tuple(fabric_key(room), room.ceiling_height.value, room.air_changes.value,
                           room.temperature.value);
}

std::vector<Group> rate_groups(const Context& c) {
    std::map<decltype(rate_key(c.job.rooms[0])), std::size_t> known;
    std::map<decltype(fabric_key(c.job.rooms[0])), std::size_t> fabrics;
    std::vector<Group> groups;
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& room = c.job.rooms[i];
        const auto& by_area = c.design.rooms[i].by_area;
        if (!room.fabric || !by_area || by_area->stated_rate) continue;
        const auto [at, added] = known.try_emplace(rate_key(room), groups.size());
        if (added)
            groups.push_back({i, {}, fabrics.try_emplace(fabric_key(room), fabrics.size()).first->second});
        groups[at->second].rooms.push_back(i);
    }
    return groups;
}

std::string fabric_words(const job::Fabric& f) {
    std::vector<std::string> parts{
        std::string{reference::label_of(reference::era_names(), f.era)},
        std::string{reference::label_of(reference::wall_names(), f.wall)} + ", " +
            count_of(static_cast<std::size_t>(f.outside_walls), "outside wall", "outside walls"),
        std::string{reference::label_of(reference::glazing_names(), f.glazing)}};
    if (f.roof != reference::RoofKind::none) {
        parts.emplace_back(reference::label_of(reference::roof_names(), f.roof));
    }
    if (f.floor != reference::FloorKind::none) {
        parts.emplace_back(reference::label_of(reference::floor_names(), f.floor));
    }
    std::string out;
    for (const auto& part : parts) out += (out.empty() ? "" : "; ") + part;
    return out;
}

std::string label_of_fabric(std::size_t index) { return "F" + fixed(static_cast<double>(index + 1), 0); }

Table fabric_table(const Context& c, const std::vector<Group>& groups) {
    Table table;
    table.caption = "Fabrics and the U-values taken for them";
    table.compact = true;
    constexpr const char* u = "W/(m²·K)";
    table.columns = {name_column("Fabric"),       words_column("What it is"), figure_column("Wall", u),
                     figure_column("Glazing", u), figure_column("Roof", u),   figure_column("Floor", u),
                     figure_column("Bridges", u)};
    for (const auto& group : groups) {
        if (group.fabric != table.rows.size()) continue;   // a fabric is shown where it is first used
        const auto& f = *c.job.rooms[group.first].fabric;
        const auto& a = *c.design.rooms[group.first].by_area;
        const auto u_of = [](UValue v) { return figure(v, unit::watt_per_square_metre_kelvin, 2); };
        const bool roof = f.roof != reference::RoofKind::none;
        const bool floor = f.floor != reference::FloorKind::none;
        table.rows.push_back(row({label_of_fabric(group.fabric), fabric_words(f), u_of(f.wall_u_value.value),
                                  u_of(f.glazing_u_value.value), roof ? u_of(f.roof_u_value.value) : "\u2013",
                                  floor ? u_of(a.floor_u_value) : "\u2013", u_of(f.thermal_bridge.value)}));
    }
    table.note =
        "Floor: by BS EN ISO 13370 for the reference room where it lies on the ground. Sources of the "
        "U-values stand in the register.";
    return table;
}

Table terms_table(const Context& c, const std::vector<Group>& groups) {
    Table table;
    table.caption = "The rate, term by term, for each square metre of floor";
    table.compact = true;
    constexpr const char* u = "W/(m²·K)";
    table.columns = {
        words_column("Rooms"),        name_column("Fabric"),     figure_column("Air changes", "1/h"),
        figure_column("Height", "m"), figure_column("Walls", u), figure_column("Glazing", u),
        figure_column("Roof", u),     figure_column("Floor", u), figure_column("Bridges", u),
        figure_column("Air", u),      figure_column("Sum", u),   figure_column("Δθ", "K"),
        figure_column("Rate", "W/m²")};
    for (const auto& group : groups) {
        const auto& room = c.job.rooms[group.first];
        const auto& a = *c.design.rooms[group.first].by_area;
        std::vector<std::string> names;
        for (const std::size_t i : group.rooms) names.push_back(name_of(c.job.rooms[i]));
        const auto term = [](UValue v) { return figure(v, unit::watt_per_square_metre_kelvin, 2); };
        table.rows.push_back(
            row({list_of(names, 6), label_of_fabric(group.fabric),
                 figure(room.air_changes.value, unit::per_hour, 2),
                 figure(room.ceiling_height.value, unit::metre, 2), term(a.walls), term(a.glazing),
                 term(a.roof), term(a.floor), term(a.bridges), term(a.ventilation), term(a.per_kelvin),
                 figure(room.temperature.value - c.job.conditions.outdoor.value, unit::kelvin, 1),
                 figure(a.rate, unit::watt_per_square_metre, 1)}));
    }
    table.note =
        "Sum × Δθ = rate, Δθ from inside to outside; rate × floor area of the room = heat loss by area.";
    return table;
}

}   // namespace

Blocks fabric_derivations(const Context& c) {
    Blocks out;
    const auto groups = rate_groups(c);
    if (groups.empty()) {
        say(out,
            "No room uses a default rate: each heat loss comes from elements, from a rate that the firm "
            "states, or from another survey.");
        return out;
    }
    const auto& reference_room = reference::reference_room();
    say(out, "A default rate is the heat loss of a reference room of " +
                 text(reference_room.floor_area, unit::square_metre, 0) +
                 ", square, with this fabric and the room's own ceiling height and air changes; one side "
                 "lies outside for each outside wall, and glazing takes " +
                 text(reference_room.glazing_share_of_floor, unit::percent, 0) +
                 " of the floor area. A room of another shape or with more glass loses more or less: survey "
                 "it by elements where it matters. Source of the reference room: " +
                 source_title(reference_room.source) + ".");
    out.push_back(fabric_table(c, groups));
    out.push_back(terms_table(c, groups));
    return out;
}

namespace {

std::string room_named(const Context& c, const std::string& id) {
    for (const auto& room : c.job.rooms) {
        if (room.id == id) return name_of(room);
    }
    return id;
}

}   // namespace

Blocks element_losses(const Context& c) {
    Table table;
    table.caption = "Heat loss by elements";
    table.compact = true;
    table.columns = {words_column("Element"), words_column("Beyond", 0.8), figure_column("Area", "m²"),
                     figure_column("U", "W/(m²·K)"), figure_column("Loss", "W")};
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& by_elements = c.design.rooms[i].by_elements;
        if (!by_elements) continue;
        const auto& room = c.job.rooms[i];
        table.rows.push_back(group_row(name_of(room)));
        for (std::size_t e = 0; e < room.elements.size(); ++e) {
            const auto& element = room.elements[e];
            const std::string kind{label(element.kind)};
            table.rows.push_back(
                row({capital(element.name.empty() ? kind : element.name + ", " + kind),
                     element.beyond == job::Beyond::room ? room_named(c, element.beyond_room)
                                                         : std::string{label(element.beyond)},
                     figure(element.area.value, unit::square_metre, 2),
                     figure(element.u_value.value, unit::watt_per_square_metre_kelvin, 2),
                     figure(by_elements->elements.at(e), unit::watt, 0)}));
        }
        table.rows.push_back(
            row({"Ventilation", "outside", "", "", figure(by_elements->ventilation, unit::watt, 0)}));
        table.rows.push_back(sum_row({"Sum", "", "", "", figure(by_elements->loss, unit::watt, 0)}));
    }
    Blocks out;
    if (table.rows.empty()) return out;
    table.note =
        "The allowance for thermal bridges is added to the U-value of elements to outside and unheated "
        "spaces. Heat that a warmer neighbour would give is not counted.";
    out.push_back(std::move(table));
    return out;
}

Blocks methods_side_by_side(const Context& c) {
    Table table;
    table.caption = "Both methods side by side";
    table.columns = {words_column("Room"), figure_column("By area", "W"), figure_column("By elements", "W"),
                     figure_column("Area over elements", "%"), name_column("Adopted")};
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& result = c.design.rooms[i];
        if (!result.by_area || !result.by_elements) continue;
        const Power elements = result.by_elements->loss;
        table.rows.push_back(
            row({name_of(c.job.rooms[i]), figure(result.by_area->loss, unit::watt, 0),
                 figure(elements, unit::watt, 0),
                 elements.si() > 0.0 ? fixed(100.0 * (result.by_area->loss / elements - 1.0), 0) : "\u2013",
                 std::string{label(result.method)}}));
    }
    Blocks out;
    if (table.rows.empty())
        say(out, "No room was surveyed by both methods, so they are not set side by side.");
    else out.push_back(std::move(table));
    return out;
}

}   // namespace loopfolio::report
