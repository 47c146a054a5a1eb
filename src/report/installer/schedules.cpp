// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/schedules.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/schedules.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

using namespace texts::schedules;

constexpr std::string_view dash = "\u2013";

/// The number of cells before the column of allowances, in a schedule that has one.
constexpr std::ptrdiff_t before_allowance = 6;

Row with_allowance(const Context& c, Row row, Power allowance) {
    if (c.design.duty.heat_up > Power{}) {
        row.cells.insert(row.cells.begin() + before_allowance, Cell{figure(allowance, unit::watt, 0), {}});
    }
    return row;
}

Row room_row(const Context& c, std::size_t i) {
    const auto& room = c.job.rooms[i];
    const auto& result = c.design.rooms[i];
    const auto& total = c.study.totals.rooms[i];
    const auto loss_of = [](const auto& method) {
        return method ? figure(method->loss, unit::watt, 0) : std::string{dash};
    };
    return with_allowance(
        c,
        row(c,
            {name_of(room), figure(room.floor_area.value, unit::square_metre, 1),
             figure(room.temperature.value, unit::celsius, 0), loss_of(result.by_area), loss_of(result.by_elements),
             figure(result.loss, unit::watt, 0), figure(total.rate, unit::watt_per_square_metre, 0),
             figure(result.output, unit::watt, 0), figure(total.surplus, unit::watt, 0)},
            c.design.verdict_of(result.finding)),
        result.heat_up);
}

std::vector<std::string> storeys(const job::Job& job) {
    std::vector<std::string> out;
    for (const auto& room : job.rooms) {
        if (room.heated && std::find(out.begin(), out.end(), room.storey) == out.end()) out.push_back(room.storey);
    }
    return out;
}

Row room_sum(const Context& c) {
    const auto& sum = c.study.totals.heated;
    return with_allowance(c,
                          sum_row({c.words(rooms_sum{}), figure(sum.floor_area, unit::square_metre, 1), "", "", "",
                                   figure(sum.loss, unit::watt, 0),
                                   sum.rate ? figure(*sum.rate, unit::watt_per_square_metre, 0) : std::string{},
                                   figure(sum.output, unit::watt, 0), figure(sum.surplus, unit::watt, 0)}),
                          sum.heat_up);
}

std::string note_on_rooms(const Context& c) {
    std::string out = c.words(rooms_note{.load = text(c.design.duty.source_load, unit::watt, 0)});
    if (c.design.duty.heat_up > Power{}) out += " " + c.words(rooms_heat_up{});
    std::vector<std::string> unheated;
    for (const auto& room : c.job.rooms) {
        if (!room.heated) unheated.push_back(name_of(room));
    }
    if (!unheated.empty()) out += " " + c.words(rooms_not_heated{.rooms = list_of(c.words, unheated)});
    return out;
}

std::vector<Column> room_columns(const Context& c) {
    std::vector<Column> columns{words_column(c.words(column_room{})),
                                figure_column(c.words(column_area{}), "m²"),
                                figure_column(c.words(column_inside{}), "°C"),
                                figure_column(c.words(column_by_area{}), "W"),
                                figure_column(c.words(column_by_elements{}), "W"),
                                figure_column(c.words(column_adopted{}), "W"),
                                figure_column(c.words(column_rate{}), "W/m²"),
                                figure_column(c.words(column_output{}), "W"),
                                figure_column(c.words(column_surplus{}), "W"),
                                name_column(c.words(column_verdict{}))};
    if (c.design.duty.heat_up > Power{}) {
        columns.insert(columns.begin() + before_allowance, figure_column(c.words(column_heat_up{}), "W"));
    }
    return columns;
}

}  // namespace

Blocks room_schedule(const Context& c) {
    Blocks out;
    const auto groups = storeys(c.job);
    if (groups.empty()) {
        say(out, c.words(no_rooms{}));
        return out;
    }
    Table table;
    table.caption = c.words(rooms_caption{});
    table.compact = true;
    table.columns = room_columns(c);
    for (const auto& storey : groups) {
        if (groups.size() > 1)
            table.rows.push_back(group_row(storey.empty() ? c.words(other_rooms{}) : capital(storey)));
        for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
            if (c.job.rooms[i].heated && c.job.rooms[i].storey == storey) table.rows.push_back(room_row(c, i));
        }
    }
    table.rows.push_back(room_sum(c));
    table.note = note_on_rooms(c);
    out.push_back(std::move(table));
    return out;
}

namespace {

std::vector<Column> emitter_columns(const Context& c) {
    return {name_column(c.words(column_id{})),
            words_column(c.words(column_room{})),
            name_column(c.words(column_kind{})),
            figure_column(c.words(column_rated{}), "W"),
            figure_column(c.words(column_load{}), "W"),
            figure_column(c.words(column_output{}), "W"),
            figure_column(c.words(column_flow{}), "L/min"),
            figure_column(c.words(column_return{}), "°C"),
            figure_column(c.words(column_lowest_flow{}), "°C"),
            figure_column(c.words(column_needed{}), "W"),
            name_column(c.words(column_verdict{}))};
}

Row emitter_row(const Context& c, std::size_t i) {
    const auto& emitter = c.job.emitters[i];
    const auto& result = c.design.emitters[i];
    const std::string kind = short_kind(c, emitter);
    return row(c,
               {emitter.id, name_of(room_of(c, result)), emitter.existing ? kind : c.words(new_emitter{.kind = kind}),
                figure(emitter.output_at_50k.value, unit::watt, 0), figure(result.load, unit::watt, 0),
                figure(result.output, unit::watt, 0), figure(result.volume_flow, unit::litre_per_minute, 2),
                figure(result.return_temperature, unit::celsius, 1),
                figure(result.lowest_flow_temperature, unit::celsius, 1), figure(result.needed_at_50k, unit::watt, 0)},
               c.design.verdict_of(result.finding));
}

}  // namespace

Blocks emitter_schedule(const Context& c) {
    Blocks out;
    if (c.job.emitters.empty()) {
        say(out, c.words(no_emitters{}));
        return out;
    }
    Table table;
    table.caption = c.words(emitters_caption{});
    table.compact = true;
    table.columns = emitter_columns(c);
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) table.rows.push_back(emitter_row(c, i));
    table.note = c.words(emitters_note{});
    out.push_back(std::move(table));
    return out;
}

namespace {

std::vector<Column> section_columns(const Context& c) {
    return {name_column(c.words(column_id{})),
            words_column(c.words(column_way{})),
            name_column(c.words(column_pipe{})),
            figure_column(c.words(column_length{}), "m"),
            figure_column(c.words(column_load{}), "kW"),
            figure_column(c.words(column_flow{}), "L/min"),
            figure_column(c.words(column_velocity{}), "m/s"),
            figure_column(c.words(column_gradient{}), "Pa/m"),
            figure_column(c.words(column_drop{}), "kPa"),
            name_column(c.words(column_verdict{}))};
}

Row section_row(const Context& c, std::size_t i) {
    const auto& section = c.job.sections[i];
    const auto& result = c.design.sections[i];
    std::string way = node_label(c, result.upstream) + " → " + node_label(c, result.downstream);
    if (!section.where.empty()) way += " (" + section.where + ")";
    const std::string pipe = pipe_label(c, section.pipe);
    return row(c,
               {section.id, way, section.existing ? pipe : c.words(new_pipe{.pipe = pipe}),
                figure(section.length.value, unit::metre, 1), figure(result.load, unit::kilowatt, 2),
                figure(result.volume_flow, unit::litre_per_minute, 1),
                figure(result.hydraulic.velocity, unit::metre_per_second, 2),
                figure(result.hydraulic.gradient, unit::pascal_per_metre, 0),
                figure(result.pressure_drop, unit::kilopascal, 2)},
               result.verdict);
}

std::string note_on_sections(const Context& c) {
    const auto& conditions = c.job.conditions;
    const std::string preferred = velocities(c, c.study.totals.velocity_preferred);
    const std::string gradient = text(conditions.gradient_preferred.value, unit::pascal_per_metre, 0);
    const std::string limit = velocities(c, c.study.totals.velocity_limit);
    if (c.design.tree) return c.words(sections_note{.preferred = preferred, .gradient = gradient, .limit = limit});
    std::string out = c.words(sections_note_single_pipes{.preferred = preferred, .gradient = gradient, .limit = limit});
    if (!c.design.mixers.empty())
        out += " " + c.words(sections_note_mixing{.drop = text(c.design.drop, unit::kelvin, 1)});
    return out;
}

}  // namespace

Blocks section_schedule(const Context& c) {
    Table table;
    table.caption = c.words(sections_caption{});
    table.compact = true;
    table.columns = section_columns(c);
    for (std::size_t i = 0; i < c.job.sections.size(); ++i) table.rows.push_back(section_row(c, i));
    table.note = note_on_sections(c);
    return {std::move(table)};
}

namespace {

std::vector<Column> capacity_columns(const Context& c) {
    return {name_column(c.words(column_id{})),
            words_column(c.words(column_pipe{})),
            figure_column(c.words(column_load{}), "kW"),
            figure_column(c.words(column_preferred_velocity{}), "kW"),
            figure_column(c.words(column_preferred_gradient{}), "kW"),
            figure_column(c.words(column_velocity_limit{}), "kW"),
            name_column(c.words(column_governed_by{})),
            words_column(c.words(column_next_size{})),
            figure_column(c.words(column_drop_to_limit{}), "K"),
            figure_column(c.words(column_drop_to_keep{}), "K"),
            name_column(c.words(column_verdict{}))};
}

/// The size within the preferred values and, if a smaller one is within the limit, that one too.
std::string next_sizes(const Context& c, std::size_t i) {
    const auto& result = c.study.remedies[i];
    if (c.design.sections[i].verdict == Verdict::keep) return {};
    const auto* limit = result.size_for_limit;
    if (result.next_size == nullptr) {
        return limit == nullptr ? c.words(no_size{}) : c.words(size_for_limit{.limit = c.named(limit->label)});
    }
    std::string keep = c.named(result.next_size->label);
    if (limit == nullptr || limit == result.next_size) return keep;
    return c.words(sizes_both{.keep = std::move(keep), .limit = c.named(limit->label)});
}

Row capacity_row(const Context& c, std::size_t i) {
    using Limit = design::CapacityLimit;
    const auto& result = c.design.sections[i];
    const auto capacity = [&](Limit limit) {
        return figure(result.capacity[static_cast<std::size_t>(limit)], unit::kilowatt, 2);
    };
    std::string drop, drop_for_limit;
    if (result.verdict != Verdict::keep) drop = figure(c.study.remedies[i].drop_to_keep, unit::kelvin, 1);
    if (result.verdict == Verdict::change) drop_for_limit = figure(c.study.remedies[i].drop_to_limit, unit::kelvin, 1);
    return row(c,
               {c.job.sections[i].id, pipe_label(c, c.job.sections[i].pipe), figure(result.load, unit::kilowatt, 2),
                capacity(Limit::velocity_preferred), capacity(Limit::gradient_preferred), capacity(Limit::velocity),
                label(c, result.governing), next_sizes(c, i), drop_for_limit, drop},
               result.verdict);
}

}  // namespace

Blocks capacity_schedule(const Context& c) {
    Table table;
    table.caption = c.words(capacity_caption{.drop = text(c.design.drop, unit::kelvin, 1)});
    table.compact = true;
    table.columns = capacity_columns(c);
    for (std::size_t i = 0; i < c.job.sections.size(); ++i) table.rows.push_back(capacity_row(c, i));
    table.note = c.words(capacity_note{});
    return {std::move(table)};
}

}  // namespace loopfolio::report
