// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <algorithm>

namespace loopfolio::report {

namespace {

constexpr std::string_view dash = "\u2013";

Row room_row(const Context& c, std::size_t i) {
    const auto& room = c.job.rooms[i];
    const auto& result = c.design.rooms[i];
    const auto loss_of = [](const auto& method) {
        return method ? figure(method->loss, unit::watt, 0) : std::string{dash};
    };
    return row({name_of(room), figure(room.floor_area.value, unit::square_metre, 1),
                figure(room.temperature.value, unit::celsius, 0), loss_of(result.by_area),
                loss_of(result.by_elements), figure(result.loss, unit::watt, 0),
                figure(result.loss / room.floor_area.value, unit::watt_per_square_metre, 0),
                figure(result.output, unit::watt, 0), figure(result.output - result.loss, unit::watt, 0)},
               result.finding.verdict);
}

std::vector<std::string> storeys(const job::Job& job) {
    std::vector<std::string> out;
    for (const auto& room : job.rooms) {
        if (room.heated && std::find(out.begin(), out.end(), room.storey) == out.end())
            out.push_back(room.storey);
    }
    return out;
}

Row room_sum(const Context& c) {
    Area area;
    Power loss, output;
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        if (!c.job.rooms[i].heated) continue;
        area += c.job.rooms[i].floor_area.value;
        loss += c.design.rooms[i].loss;
        output += c.design.rooms[i].output;
    }
    return sum_row({"Sum", figure(area, unit::square_metre, 1), "", "", "", figure(loss, unit::watt, 0),
                    area.si() > 0.0 ? figure(loss / area, unit::watt_per_square_metre, 0) : std::string{},
                    figure(output, unit::watt, 0), figure(output - loss, unit::watt, 0)});
}

std::string rooms_note(const Context& c) {
    std::string out =
        "Adopted: the other survey's figure where one is given, else by elements, else by area. Surplus: "
        "output less heat loss; below zero the room falls short. Heat leaving the house, which the heat "
        "source must make: " +
        text(c.design.duty.source_load, unit::watt, 0) +
        ". Heat that only moves between rooms is in the sum but not in that figure.";
    std::vector<std::string> unheated;
    for (const auto& room : c.job.rooms) {
        if (!room.heated) unheated.push_back(name_of(room));
    }
    if (!unheated.empty()) out += " Not heated: " + list_of(unheated) + ".";
    return out;
}

}   // namespace

Blocks room_schedule(const Context& c) {
    Blocks out;
    const auto groups = storeys(c.job);
    if (groups.empty()) {
        say(out, "The job has no heated room.");
        return out;
    }
    Table table;
    table.caption = "Rooms on the design day";
    table.compact = true;
    table.columns = {
        words_column("Room"),          figure_column("Area", "m²"),       figure_column("Inside", "°C"),
        figure_column("By area", "W"), figure_column("By elements", "W"), figure_column("Adopted", "W"),
        figure_column("Rate", "W/m²"), figure_column("Output", "W"),      figure_column("Surplus", "W"),
        name_column("Verdict")};
    for (const auto& storey : groups) {
        if (groups.size() > 1)
            table.rows.push_back(group_row(storey.empty() ? "Other rooms" : capital(storey)));
        for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
            if (c.job.rooms[i].heated && c.job.rooms[i].storey == storey)
                table.rows.push_back(room_row(c, i));
        }
    }
    table.rows.push_back(room_sum(c));
    table.note = rooms_note(c);
    out.push_back(std::move(table));
    return out;
}

Blocks emitter_schedule(const Context& c) {
    Blocks out;
    if (c.job.emitters.empty()) {
        say(out, "The job has no emitter, so there is nothing to balance.");
        return out;
    }
    Table table;
    table.caption = "Emitters at the design temperatures";
    table.compact = true;
    table.columns = {name_column("Id"),
                     words_column("Room"),
                     name_column("Kind"),
                     figure_column("Rated, 50 K", "W"),
                     figure_column("Load", "W"),
                     figure_column("Output", "W"),
                     figure_column("Flow", "L/min"),
                     figure_column("Return", "°C"),
                     figure_column("Lowest flow temp.", "°C"),
                     figure_column("Needed, 50 K", "W"),
                     name_column("Verdict")};
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        const auto& emitter = c.job.emitters[i];
        const auto& result = c.design.emitters[i];
        table.rows.push_back(row(
            {emitter.id, name_of(room_of(c, result)), short_kind(emitter) + (emitter.existing ? "" : ", new"),
             figure(emitter.output_at_50k.value, unit::watt, 0), figure(result.load, unit::watt, 0),
             figure(result.output, unit::watt, 0), figure(result.volume_flow, unit::litre_per_minute, 2),
             figure(result.return_temperature, unit::celsius, 1),
             figure(result.lowest_flow_temperature, unit::celsius, 1),
             figure(result.needed_at_50k, unit::watt, 0)},
            result.finding.verdict));
    }
    table.note =
        "Load: the emitter's share of the room's heat loss, by rating. Output: at the design flow and return "
        "temperatures. Flow: what carries the load at the design drop. Return: what comes back at that flow. "
        "Lowest flow temp.: the flow temperature at which the load is still met. Needed: the rating that would "
        "just do; a dash: none found.";
    out.push_back(std::move(table));
    return out;
}

namespace {

Row section_row(const Context& c, std::size_t i) {
    const auto& section = c.job.sections[i];
    const auto& result = c.design.sections[i];
    std::string way = node_label(c, result.upstream) + " → " + node_label(c, result.downstream);
    if (!section.where.empty()) way += " (" + section.where + ")";
    return row({section.id, way, pipe_label(section.pipe) + (section.existing ? "" : ", new"),
                figure(section.length.value, unit::metre, 1), figure(result.load, unit::kilowatt, 2),
                figure(result.volume_flow, unit::litre_per_minute, 1),
                figure(result.hydraulic.velocity, unit::metre_per_second, 2),
                figure(result.hydraulic.gradient, unit::pascal_per_metre, 0),
                figure(result.pressure_drop, unit::kilopascal, 2)},
               result.verdict);
}

}   // namespace

Blocks section_schedule(const Context& c) {
    const auto& conditions = c.job.conditions;
    Table table;
    table.caption = "Sections, in the direction of flow";
    table.compact = true;
    table.columns = {name_column("Id"),
                     words_column("From → to"),
                     name_column("Pipe"),
                     figure_column("Length", "m"),
                     figure_column("Load", "kW"),
                     figure_column("Flow", "L/min"),
                     figure_column("Velocity", "m/s"),
                     figure_column("Gradient", "Pa/m"),
                     figure_column("Drop", "kPa"),
                     name_column("Verdict")};
    for (std::size_t i = 0; i < c.job.sections.size(); ++i) table.rows.push_back(section_row(c, i));
    table.note = std::string{"Length: one way. Drop: flow and return pipe"} + (c.design.tree ? "" : ", or the one pipe where they run apart") +
                 ", fittings included. Preferred: " +
                 text(conditions.velocity_preferred.value, unit::metre_per_second, 2) + " and " +
                 text(conditions.gradient_preferred.value, unit::pascal_per_metre, 0) +
                 ". Limit: " + text(conditions.velocity_limit.value, unit::metre_per_second, 2) + ".";
    return {std::move(table)};
}

Blocks capacity_schedule(const Context& c) {
    using Limit = design::CapacityLimit;
    Table table;
    table.caption =
        "What each section can carry at the design drop of " + text(c.design.drop, unit::kelvin, 1);
    table.compact = true;
    table.columns = {name_column("Id"),
                     words_column("Pipe"),
                     figure_column("Load", "kW"),
                     figure_column("Preferred velocity", "kW"),
                     figure_column("Preferred gradient", "kW"),
                     figure_column("Velocity limit", "kW"),
                     name_column("Governed by"),
                     words_column("Next size to keep"),
                     figure_column("Drop to keep", "K"),
                     name_column("Verdict")};
    for (std::size_t i = 0; i < c.job.sections.size(); ++i) {
        const auto& result = c.design.sections[i];
        const auto capacity = [&](Limit limit) {
            return figure(result.capacity[static_cast<std::size_t>(limit)], unit::kilowatt, 2);
        };
        const bool kept = result.verdict == Verdict::keep;
        table.rows.push_back(row(
            {c.job.sections[i].id, pipe_label(c.job.sections[i].pipe), figure(result.load, unit::kilowatt, 2),
             capacity(Limit::velocity_preferred), capacity(Limit::gradient_preferred),
             capacity(Limit::velocity), std::string{label(result.governing)},
             kept ? "" : std::string{result.next_size != nullptr ? result.next_size->label : "none"},
             kept ? std::string{} : figure(result.drop_to_keep, unit::kelvin, 1)},
            result.verdict));
    }
    table.note =
        "Next size and drop are named where the section is not kept outright; either one alone would do for "
        "that section. A wider drop lowers the output of every emitter: run the design again before choosing "
        "it.";
    return {std::move(table)};
}

}   // namespace loopfolio::report
