// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/build_ups.hpp"

#include "loopfolio/reference/materials.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"
#include "texts/build_ups.hpp"

#include <set>

namespace loopfolio::report {

namespace {

using namespace texts::build_ups;

constexpr const char* r_unit = "m²·K/W";

std::string watts(Power power) { return figure(power, unit::watt, 0); }

/// The name that the job gives the element, such as `bay window`, or the label of its kind if it has none.
std::string element_name(const Context& c, const job::Element& e) {
    return capital(e.name.empty() ? label(c, e.kind) : e.name);
}

std::string material_name(const Context& c, const std::string& name) {
    const auto* material = reference::find_material(name);
    return material != nullptr ? capital(c.named(material->label)) : std::string{};
}

}  // namespace

Table whole_house(const Context& c) {
    const auto& totals = c.study.totals;
    const auto& duty = c.design.duty;
    Table table;
    table.caption = c.words(house_caption{});
    table.columns = {words_column(c.words(column_part{})), figure_column(c.words(column_heat{}), "W")};
    table.rows.push_back(row({c.words(house_rooms{}), watts(totals.losses)}));
    table.rows.push_back(row({c.words(house_inner{}), watts(totals.between_rooms)}));
    table.rows.push_back(row({c.words(house_air{}), watts(totals.air_not_at_once)}));
    table.rows.push_back(row({c.words(house_leaves{}), watts(totals.leaving)}));
    const auto add = [&](Power part, std::string what) {
        if (part > Power{}) table.rows.push_back(row({std::move(what), watts(part)}));
    };
    add(duty.heat_up,
        c.job.conditions.intermittent_margin.given() ? c.words(house_margin{}) : c.words(house_heat_up{}));
    add(duty.downward, c.words(house_downward{}));
    add(c.design.pipe_loss, c.words(house_pipes{}));
    table.rows.push_back(sum_row({c.words(house_source{}), watts(duty.source_load)}));
    table.note = c.words(house_note{});
    if (duty.downward > Power{}) table.note += " " + c.words(house_note_floors{});
    return table;
}

namespace {

std::string layer_name(const Context& c, const job::Layer& layer) {
    if (layer.air) return c.words(air_layer{});
    if (layer.resistance) return c.words(layer_by_resistance{});
    return layer.material.empty() ? c.words(layer_by_conductivity{}) : material_name(c, layer.material);
}

std::string material_or_conductivity(const Context& c, const std::string& material, Conductivity conductivity) {
    if (!material.empty()) return material_name(c, material);
    return c.words(bridge_of_conductivity{.conductivity = text(conductivity, unit::watt_per_metre_kelvin, 2)});
}

std::string fastener_words(const Context& c, const job::Fasteners& f) {
    std::string number = trimmed(f.per_square_metre.value, 1);
    std::string section = text(f.section.value, unit::square_millimetre, 1);
    std::string material = material_or_conductivity(c, f.material, f.conductivity.value);
    if (!f.depth)
        return c.words(fasteners_through{
            .number = std::move(number), .section = std::move(section), .material = std::move(material)});
    return c.words(fasteners_into{.number = std::move(number),
                                  .section = std::move(section),
                                  .material = std::move(material),
                                  .depth = text(f.depth->value, unit::millimetre, 0)});
}

/// What distinguishes a bridged layer from a plain one: a second material, gaps or fasteners.
std::string bridge_words(const Context& c, const job::Layer& layer) {
    std::string out;
    const auto add = [&](std::string part) {
        out = out.empty() ? std::move(part) : c.words(parts_joined{.before = out, .part = std::move(part)});
    };
    if (layer.bridge) {
        const auto& b = *layer.bridge;
        add(c.words(bridged_by{.material = material_or_conductivity(c, b.material, b.conductivity.value),
                               .share = text(b.share.value, unit::percent, 1)}));
    }
    if (layer.air_gap_level > 0) add(c.words(air_gaps{.level = fixed(layer.air_gap_level, 0)}));
    if (layer.fasteners) add(fastener_words(c, *layer.fasteners));
    return out;
}

Row layer_row(const Context& c, const job::Layer& layer, ThermalResistance resistance) {
    const bool solid = !layer.air && !layer.resistance;
    return row({layer_name(c, layer), layer.resistance ? "" : figure(layer.thickness.value, unit::millimetre, 1),
                solid ? figure(layer.conductivity.value, unit::watt_per_metre_kelvin, 3) : "",
                figure(resistance, unit::square_metre_kelvin_per_watt, 3), bridge_words(c, layer)});
}

void add_build_up(Table& table, const Context& c, const job::Element& e, const physics::Transmittance& t,
                  const study::BuildUp& build_up, std::string head) {
    const auto surface = [](ThermalResistance r) { return figure(r, unit::square_metre_kelvin_per_watt, 3); };
    table.rows.push_back(group_row(std::move(head)));
    table.rows.push_back(row({c.words(inside_surface{}), "", "", surface(build_up.inside)}));
    for (std::size_t i = 0; i < e.layers.size(); ++i)
        table.rows.push_back(layer_row(c, e.layers[i], build_up.layers[i]));
    table.rows.push_back(row({c.words(far_surface{}), "", "", surface(build_up.beyond)}));
    if (const double share = build_up.correction_share; share > 0.0) {
        table.rows.push_back(
            row({c.words(corrections{.correction = figure(t.corrections.gaps + t.corrections.fasteners,
                                                          unit::watt_per_square_metre_kelvin, 4),
                                     .share = text(share, unit::percent, 1)}),
                 "", "", "", build_up.correction_counts ? std::string{} : c.words(corrections_small{})}));
    }
    std::string limits;
    if (t.error_bound > 0.0) {
        limits = c.words(layers_limits{
            .lower = surface(t.lower), .upper = surface(t.upper), .error = text(t.error_bound, unit::percent, 1)});
    }
    table.rows.push_back(sum_row({c.words(layers_sum{.u = figure(t.u_value, unit::watt_per_square_metre_kelvin, 3)}),
                                  "", "", surface(t.total), std::move(limits)}));
}

/// Calls `visit(room, element, index)` for every element of a heated room.
template <class F>
void each_element(const Context& c, F&& visit) {
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        if (!c.design.rooms[i].by_elements) continue;
        for (std::size_t e = 0; e < c.job.rooms[i].elements.size(); ++e) visit(i, c.job.rooms[i].elements[e], e);
    }
}

std::string of_room(const Context& c, std::size_t room, const job::Element& e) {
    return c.words(element_of_room{.room = name_of(c.job.rooms[room]), .element = element_name(c, e)});
}

/// A build-up that several elements share is listed once, with the names of all of them.
Table layers_table(const Context& c) {
    Table table;
    table.caption = c.words(layers_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_layer{}), 1.6), figure_column(c.words(column_thickness{}), "mm"),
                     figure_column("λ", "W/(m·K)"), figure_column("R", r_unit),
                     words_column(c.words(column_bridge{}), 1.4)};
    bool corrected = false;
    std::vector<Table> shown;
    std::vector<std::vector<std::string>> owners;
    each_element(c, [&](std::size_t room, const job::Element& e, std::size_t index) {
        const auto& layered = c.design.rooms[room].by_elements->layered.at(index);
        if (!layered) return;
        const auto& build_up = c.study.build_ups[room][index];
        corrected = corrected || build_up.correction_share > 0.0;
        Table one;
        add_build_up(one, c, e, *layered, build_up, {});
        std::size_t at = 0;
        const auto same = [&](const Table& t) {
            if (t.rows.size() != one.rows.size()) return false;
            for (std::size_t r = 0; r < t.rows.size(); ++r) {
                for (std::size_t k = 0; k < t.rows[r].cells.size() && k < one.rows[r].cells.size(); ++k) {
                    if (t.rows[r].cells[k].text != one.rows[r].cells[k].text) return false;
                }
            }
            return true;
        };
        while (at < shown.size() && !same(shown[at])) ++at;
        if (at == shown.size()) {
            shown.push_back(std::move(one));
            owners.emplace_back();
        }
        owners[at].push_back(of_room(c, room, e));
    });
    for (std::size_t i = 0; i < shown.size(); ++i) {
        shown[i].rows.front().cells.front().text = list_of(c.words, owners[i], 6);
        for (auto& r : shown[i].rows) table.rows.push_back(std::move(r));
    }
    table.note = c.words(layers_note{}) + " " +
                 (corrected ? c.words(layers_corrected{}) : c.words(layers_not_corrected{}));
    return table;
}

Table slabs_table(const Context& c) {
    Table table;
    table.caption = c.words(slabs_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_element{})),
                     figure_column(c.words(column_area{}), "m²"),
                     figure_column(c.words(column_edge{}), "m"),
                     figure_column("B′", "m"),
                     figure_column(c.words(column_insulation{}), r_unit),
                     figure_column(c.words(column_ground{}), "W/(m·K)"),
                     figure_column("U", "W/(m²·K)")};
    bool assumed = false, suspended = false;
    each_element(c, [&](std::size_t room, const job::Element& e, std::size_t at) {
        if (!e.slab) return;
        suspended = suspended || e.slab->under;
        assumed = assumed || e.slab->ground.kind.empty();
        const Length characteristic = *c.study.build_ups[room][at].characteristic;
        table.rows.push_back(
            row({of_room(c, room, e), figure(e.area.value, unit::square_metre, 2),
                 figure(e.slab->perimeter.value, unit::metre, 2), figure(characteristic, unit::metre, 2),
                 figure(e.slab->insulation.value, unit::square_metre_kelvin_per_watt, 2),
                 figure(e.slab->ground.conductivity.value, unit::watt_per_metre_kelvin, 1),
                 figure(e.u_value.value, unit::watt_per_square_metre_kelvin, 3)}));
    });
    table.note = c.words(slabs_note{});
    if (assumed) table.note += " " + c.words(slabs_note_assumed{});
    if (suspended) table.note += " " + c.words(slabs_note_suspended{});
    return table;
}

Table spaces_table(const Context& c) {
    Table table;
    table.caption = c.words(spaces_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_element{})), figure_column(c.words(column_to_rooms{}), "W/K"),
                     figure_column(c.words(column_to_outside{}), "W/K"), figure_column(c.words(column_share{}), ""),
                     figure_column(c.words(column_space{}), "°C")};
    each_element(c, [&](std::size_t room, const job::Element& e, std::size_t at) {
        if (!e.space) return;
        const Temperature there = *c.study.build_ups[room][at].space;
        table.rows.push_back(row({of_room(c, room, e), figure(e.space->to_rooms.value, unit::watt_per_kelvin, 1),
                                  figure(e.space->to_outside.value, unit::watt_per_kelvin, 1), fixed(e.factor.value, 2),
                                  figure(there, unit::celsius, 1)}));
    });
    table.note = c.words(spaces_note{});
    return table;
}

Table air_table(const Context& c) {
    Table table;
    table.caption = c.words(air_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_room{})), figure_column(c.words(column_leaks{}), "1/h"),
                     figure_column(c.words(column_fans{}), "1/h"), figure_column(c.words(column_recovered{}), "%"),
                     figure_column(c.words(column_warmed{}), "1/h")};
    for (const auto& room : c.job.rooms) {
        // The air of a room by the standard has a table of its own.
        if (!room.heated || !room.ventilation || room.house_air.given()) continue;
        const auto& v = *room.ventilation;
        table.rows.push_back(row({name_of(room), figure(v.infiltration.value, unit::per_hour, 2),
                                  figure(v.supply.value, unit::per_hour, 2), figure(v.recovery.value, unit::percent, 0),
                                  figure(room.air_changes.value, unit::per_hour, 2)}));
    }
    table.note = c.words(air_note{});
    const auto& conditions = c.job.conditions;
    if (conditions.leakage_divisor.given()) {
        table.note = c.words(air_note_leakage{.note = table.note,
                                              .rate = text(conditions.leakage_at_50_pa.value, unit::per_hour, 1),
                                              .divisor = fixed(conditions.leakage_divisor.value, 0)});
    }
    return table;
}

}  // namespace

Blocks build_ups(const Context& c) {
    Blocks out;
    for (auto* make : {layers_table, slabs_table, spaces_table, air_table}) {
        if (auto table = make(c); !table.rows.empty()) out.push_back(std::move(table));
    }
    return out;
}

}  // namespace loopfolio::report
