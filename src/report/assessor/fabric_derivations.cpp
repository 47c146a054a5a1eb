// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/assessor_blocks.hpp"

#include "loopfolio/reference/fabric.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/fabrics.hpp"

#include <map>
#include <tuple>

namespace loopfolio::report {

namespace {

using namespace texts::fabrics;

/// Rooms whose rate comes from the same figures, and the index of the fabric, which other groups may share.
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

/// The floor's U-value stands for all that lies under it.
auto rate_key(const job::Room& room, UValue floor) {
    return std::make_tuple(fabric_key(room), room.floor_area.value, room.ceiling_height.value, room.air_changes.value,
                           room.temperature.value, floor);
}

std::vector<Group> rate_groups(const Context& c) {
    std::map<decltype(rate_key(c.job.rooms[0], {})), std::size_t> known;
    std::map<decltype(fabric_key(c.job.rooms[0])), std::size_t> fabrics;
    std::vector<Group> groups;
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& room = c.job.rooms[i];
        const auto& by_area = c.design.rooms[i].by_area;
        if (!room.fabric || !by_area || by_area->stated_rate) continue;
        const auto [at, added] = known.try_emplace(rate_key(room, by_area->floor_u_value), groups.size());
        if (added) groups.push_back({i, {}, fabrics.try_emplace(fabric_key(room), fabrics.size()).first->second});
        groups[at->second].rooms.push_back(i);
    }
    return groups;
}

std::string fabric_words(const Context& c, const job::Fabric& f) {
    const auto named = [&](const auto& names, auto value) { return c.named(reference::label_of(names, value)); };
    std::vector<std::string> parts{named(reference::era_names(), f.era),
                                   c.words(wall_of_sides{.count = static_cast<std::size_t>(f.outside_walls),
                                                         .wall = named(reference::wall_names(), f.wall)}),
                                   named(reference::glazing_names(), f.glazing)};
    if (f.roof != reference::RoofKind::none) parts.push_back(named(reference::roof_names(), f.roof));
    if (f.floor != reference::FloorKind::none) parts.push_back(named(reference::floor_names(), f.floor));
    std::string out;
    for (const auto& part : parts) out = out.empty() ? part : c.words(parts_joined{.before = out, .part = part});
    return out;
}

constexpr const char* u_unit = "W/(m²·K)";

Column u_column(std::string head) { return figure_column(std::move(head), u_unit); }

std::string u_text(UValue value) { return figure(value, unit::watt_per_square_metre_kelvin, 2); }

std::string label_of_fabric(std::size_t index) { return "F" + fixed(static_cast<double>(index + 1), 0); }

Row fabric_row(const Context& c, const Group& group) {
    const auto& f = *c.job.rooms[group.first].fabric;
    const bool roof = f.roof != reference::RoofKind::none;
    return row({label_of_fabric(group.fabric), fabric_words(c, f), u_text(f.wall_u_value.value),
                u_text(f.glazing_u_value.value), roof ? u_text(f.roof_u_value.value) : "\u2013",
                u_text(f.thermal_bridge.value)});
}

Table fabric_table(const Context& c, const std::vector<Group>& groups) {
    Table table;
    table.caption = c.words(fabrics_caption{});
    table.compact = true;
    table.columns = {name_column(c.words(column_fabric{})), words_column(c.words(column_description{})),
                     u_column(c.words(column_wall{})),      u_column(c.words(column_glazing{})),
                     u_column(c.words(column_roof{})),      u_column(c.words(column_bridges{}))};
    for (const auto& group : groups) {
        if (group.fabric != table.rows.size()) continue;  // a fabric is shown where it is first used
        table.rows.push_back(fabric_row(c, group));
    }
    table.note = c.words(fabrics_note{});
    return table;
}

Row terms_row(const Context& c, const Group& group) {
    const auto& room = c.job.rooms[group.first];
    const auto& a = *c.design.rooms[group.first].by_area;
    std::vector<std::string> names;
    for (const std::size_t i : group.rooms) names.push_back(name_of(c.job.rooms[i]));
    return row({list_of(c.words, names, 6), label_of_fabric(group.fabric),
                figure(room.floor_area.value, unit::square_metre, 1), figure(room.air_changes.value, unit::per_hour, 2),
                figure(room.ceiling_height.value, unit::metre, 2), u_text(a.walls), u_text(a.glazing), u_text(a.roof),
                u_text(a.floor), u_text(a.bridges), u_text(a.ventilation), u_text(a.per_kelvin),
                figure(room.temperature.value - c.job.conditions.outdoor.value, unit::kelvin, 1),
                figure(a.rate, unit::watt_per_square_metre, 1)});
}

Table terms_table(const Context& c, const std::vector<Group>& groups) {
    Table table;
    table.caption = c.words(terms_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_rooms{})),
                     name_column(c.words(column_fabric{})),
                     figure_column(c.words(column_area{}), "m²"),
                     figure_column(c.words(column_air_changes{}), "1/h"),
                     figure_column(c.words(column_height{}), "m"),
                     u_column(c.words(column_walls{})),
                     u_column(c.words(column_glazing{})),
                     u_column(c.words(column_roof{})),
                     u_column(c.words(column_floor{})),
                     u_column(c.words(column_bridges{})),
                     u_column(c.words(column_air{})),
                     u_column(c.words(column_sum{})),
                     figure_column("Δθ", "K"),
                     figure_column(c.words(column_rate{}), "W/m²")};
    for (const auto& group : groups) table.rows.push_back(terms_row(c, group));
    table.note = c.words(terms_note{});
    return table;
}

/// What the room's own size does to its rate: beside that of a room of one fixed size.
Table sizes_table(const Context& c) {
    Table table;
    table.caption = c.words(sizes_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_room{})), figure_column(c.words(column_area{}), "m²"),
                     figure_column(c.words(column_rate{}), "W/m²"), figure_column(c.words(column_fixed_rate{}), "W/m²"),
                     figure_column(c.words(column_own_over_fixed{}), "%")};
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& by_area = c.design.rooms[i].by_area;
        if (!by_area || by_area->stated_rate) continue;
        table.rows.push_back(
            row({name_of(c.job.rooms[i]), figure(c.job.rooms[i].floor_area.value, unit::square_metre, 1),
                 figure(by_area->rate, unit::watt_per_square_metre, 1),
                 figure(by_area->fixed_rate, unit::watt_per_square_metre, 1),
                 figure(c.study.totals.rooms[i].size_effect, unit::percent, 0)}));
    }
    table.note = c.words(sizes_note{});
    return table;
}

}  // namespace

Blocks fabric_derivations(const Context& c) {
    Blocks out;
    const auto groups = rate_groups(c);
    if (groups.empty()) {
        say(out, c.words(no_default_rate{}));
        return out;
    }
    const auto& room = reference::reference_room();
    say(out, c.words(rate_explained{.glazing = text(room.glazing_share_of_floor, unit::percent, 0),
                                    .area = text(room.floor_area, unit::square_metre, 0),
                                    .source = source_title(room.source)}));
    out.push_back(fabric_table(c, groups));
    out.push_back(terms_table(c, groups));
    out.push_back(sizes_table(c));
    return out;
}

namespace {

std::string room_named(const Context& c, const std::string& id) {
    for (const auto& room : c.job.rooms) {
        if (room.id == id) return name_of(room);
    }
    return id;
}

Row element_row(const Context& c, const job::Element& element, Power loss) {
    const std::string kind = label(c, element.kind);
    return row({capital(element.name.empty() ? kind : c.words(element_named{.name = element.name, .kind = kind})),
                element.beyond == job::Beyond::room ? room_named(c, element.beyond_room) : label(c, element.beyond),
                figure(element.area.value, unit::square_metre, 2), u_text(element.u_value.value),
                figure(loss, unit::watt, 0)});
}

}  // namespace

Blocks element_losses(const Context& c) {
    Table table;
    table.caption = c.words(elements_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_element{})), words_column(c.words(column_beyond{}), 0.8),
                     figure_column(c.words(column_area{}), "m²"), figure_column("U", u_unit),
                     figure_column(c.words(column_loss{}), "W")};
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& by_elements = c.design.rooms[i].by_elements;
        if (!by_elements) continue;
        const auto& room = c.job.rooms[i];
        table.rows.push_back(group_row(name_of(room)));
        for (std::size_t e = 0; e < room.elements.size(); ++e) {
            table.rows.push_back(element_row(c, room.elements[e], by_elements->elements.at(e)));
        }
        table.rows.push_back(row({c.words(ventilation{}), label(c, job::Beyond::outside), "", "",
                                  figure(by_elements->ventilation, unit::watt, 0)}));
        table.rows.push_back(sum_row({c.words(elements_sum{}), "", "", "", figure(by_elements->loss, unit::watt, 0)}));
    }
    Blocks out;
    if (table.rows.empty()) return out;
    table.note = c.words(elements_note{});
    out.push_back(std::move(table));
    return out;
}

Blocks methods_side_by_side(const Context& c) {
    Table table;
    table.caption = c.words(methods_caption{});
    table.columns = {words_column(c.words(column_room{})), figure_column(c.words(column_by_area{}), "W"),
                     figure_column(c.words(column_by_elements{}), "W"), figure_column(c.words(column_ratio{}), "%"),
                     name_column(c.words(column_adopted{}))};
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        const auto& result = c.design.rooms[i];
        if (!result.by_area || !result.by_elements) continue;
        const Power elements = result.by_elements->loss;
        table.rows.push_back(
            row({name_of(c.job.rooms[i]), figure(result.by_area->loss, unit::watt, 0), figure(elements, unit::watt, 0),
                 figure(c.study.totals.rooms[i].methods_apart, unit::percent, 0), label(c, result.method)}));
    }
    Blocks out;
    if (table.rows.empty()) say(out, c.words(no_room_by_both{}));
    else out.push_back(std::move(table));
    return out;
}

}  // namespace loopfolio::report
