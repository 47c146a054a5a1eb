// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/schedules.hpp"

#include "report/blocks.hpp"
#include "report/labels.hpp"
#include "report/words.hpp"

#include <fmt/format.h>

#include <cmath>
#include <functional>

namespace loopfolio::report {

namespace {

using design::State;
using design::StateKind;

std::string_view state_label(StateKind kind) {
    switch (kind) {
        case StateKind::as_found: return "As found";
        case StateKind::balanced: return "Balanced";
        case StateKind::changed: return "Changed";
        case StateKind::mild_day: return "Milder day";
    }
    return "";
}

Column state_column(const State& state) { return Column{std::string{state_label(state.kind)}, {}, Align::right, 0.6}; }

/// The room that is worst off, and what it reaches.
std::string least_served(const Context& c, const State& s) {
    return s.least_served < 0 ? "" : name_of(c.job.rooms[static_cast<std::size_t>(s.least_served)]);
}

std::string room_reaches(const State& s) {
    return s.least_served < 0 ? "" : figure(s.rooms[static_cast<std::size_t>(s.least_served)].temperature, unit::celsius, 1);
}

std::string share_met(const State& s) {
    if (s.least_served < 0) return "";
    const auto& r = s.rooms[static_cast<std::size_t>(s.least_served)];
    return r.need > Power{} ? fixed(100.0 * (r.output / r.need), 0) : std::string{};
}

struct Line {
    std::string what;
    std::function<std::string(const State&)> figure;
};

std::vector<Line> lines(const Context& c) {
    std::vector<Line> out{
        {"Outdoor temperature, °C", [](const State& s) { return figure(s.outdoor, unit::celsius, 1); }},
        {"Flow round the emitters, L/min", [](const State& s) { return figure(s.flow, unit::litre_per_minute, 1); }},
        {"Head of the circulator, kPa", [](const State& s) { return figure(s.head, unit::kilopascal, 1); }},
        {"Water leaving the heat source, °C", [](const State& s) { return figure(s.source_flow, unit::celsius, 1); }},
        {"Drop at the heat source, K", [](const State& s) { return figure(s.source_drop, unit::kelvin, 1); }},
        {"Heat from the source, kW", [](const State& s) { return figure(s.heat, unit::kilowatt, 2); }},
        {"Least-served room", [&c](const State& s) { return least_served(c, s); }},
        {"It reaches, °C", [](const State& s) { return room_reaches(s); }},
        {"Share of its need met, %", [](const State& s) { return share_met(s); }},
        {"Highest velocity, m/s", [](const State& s) { return figure(s.highest_velocity, unit::metre_per_second, 2); }},
        {"In section", [&c](const State& s) { return s.fastest_section < 0 ? "" : c.job.sections[static_cast<std::size_t>(s.fastest_section)].id; }},
        {"Power that pumps give the water, W", [](const State& s) { return figure(s.pump_power, unit::watt, 1); }},
    };
    if (c.design.separation) {
        out.insert(out.begin() + 2, {"Flow on the source's side, L/min", [](const State& s) {
                                         return figure(s.source_side, unit::litre_per_minute, 1); }});
    }
    return out;
}

std::string changes_in_words(const Context& c) {
    const auto& changes = c.operation.changes;
    std::vector<std::string> parts;
    for (const auto& p : changes.pipes) {
        parts.push_back(c.job.sections[static_cast<std::size_t>(p.section)].id + " in " + std::string{p.to->label});
    }
    std::vector<std::string> emitters;
    for (const int e : changes.emitters) emitters.push_back(c.job.emitters[static_cast<std::size_t>(e)].id);
    if (!emitters.empty()) parts.push_back("emitters " + list_of(emitters, 8) + " at the rating needed");
    if (changes.circulator) parts.push_back("a circulator of " + text(c.operation.changed_head, unit::kilopascal, 1) + " at the duty flow");
    std::string out = parts.empty() ? "no change is asked for" : list_of(parts, 10);
    if (changes.set_head) out += ", with the circulator set to " + text(*changes.set_head, unit::kilopascal, 1);
    return out;
}

std::string warnings(const Context& c) {
    std::vector<std::string> capacity, least, curve, ice, backwards;
    for (const auto& s : c.operation.states) {
        const std::string name = "\u201c" + std::string{state_label(s.kind)} + "\u201d";
        if (s.source_at_capacity) capacity.push_back(name);
        if (s.below_minimum_flow) least.push_back(name);
        if (s.past_curve) curve.push_back(name);
        if (s.pump_backwards) backwards.push_back(name);
        if (s.would_freeze) ice.push_back(name);
    }
    std::string out;
    if (!capacity.empty()) out += " The heat source is at its capacity in " + list_of(capacity) + ".";
    if (!least.empty()) out += " The source gets less than its least flow in " + list_of(least) + ".";
    if (!curve.empty()) out += " A pump runs beyond the last point of its curve in " + list_of(curve) + ": the figures there are less certain.";
    if (!backwards.empty()) out += " Water is driven backwards through a pump in " + list_of(backwards) + ".";
    if (!ice.empty()) out += " Some water comes down to its freezing point in " + list_of(ice) + ": an emitter there gets next to nothing.";
    return out;
}

Table states_table(const Context& c) {
    Table table;
    table.caption = "Four states of the system";
    table.columns = {words_column("Figure", 1.4)};
    for (const auto& s : c.operation.states) table.columns.push_back(state_column(s));
    for (const auto& line : lines(c)) {
        Row row;
        row.cells.push_back({line.what, {}});
        for (const auto& s : c.operation.states) row.cells.push_back({line.figure(s), {}});
        table.rows.push_back(std::move(row));
    }
    table.note = std::string{"As found: every valve open as surveyed. Balanced: lockshields set so that the design flows are shared, the circulator as it is. Changed: "} +
                 changes_in_words(c) + "; balanced. Milder day: the same, with the flow temperature that just meets the "
                 "rooms." + warnings(c);
    return table;
}

Table rooms_table(const Context& c) {
    Table table;
    table.caption = "Room temperatures in those states, °C";
    table.compact = true;
    table.columns = {words_column("Room", 1.4), figure_column("Wanted", "°C")};
    for (const auto& s : c.operation.states) table.columns.push_back(Column{std::string{state_label(s.kind)}, "°C", Align::decimal, 0.4});
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        if (c.design.rooms[i].loss <= Power{} || c.design.rooms[i].emitters == 0) continue;
        Row row;
        row.cells.push_back({name_of(c.job.rooms[i]), {}});
        row.cells.push_back({figure(c.job.rooms[i].temperature.value, unit::celsius, 1), {}});
        for (const auto& s : c.operation.states) row.cells.push_back({figure(s.rooms[i].temperature, unit::celsius, 1), {}});
        table.rows.push_back(std::move(row));
    }
    table.note = "A room that is met stands at its wanted temperature: its thermostatic valve holds it. Rooms without an emitter are left out.";
    return table;
}

Table flows_table(const Context& c) {
    Table table;
    table.caption = "Flow that each emitter gets, L/min";
    table.compact = true;
    table.columns = {name_column("Id"), words_column("Room", 1.2), figure_column("Design", "L/min")};
    for (const auto& s : c.operation.states) {
        if (s.kind != StateKind::mild_day) table.columns.push_back(Column{std::string{state_label(s.kind)}, "L/min", Align::decimal, 0.4});
    }
    table.columns.push_back(Column{"Return, as found", "°C", Align::decimal, 0.4});
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        if (c.design.emitters[i].load <= Power{}) continue;
        Row row;
        row.cells.push_back({c.job.emitters[i].id, {}});
        row.cells.push_back({name_of(room_of(c, c.design.emitters[i])), {}});
        row.cells.push_back({figure(c.design.emitters[i].volume_flow, unit::litre_per_minute, 2), {}});
        for (const auto& s : c.operation.states) {
            if (s.kind != StateKind::mild_day) row.cells.push_back({figure(s.emitters[i].flow, unit::litre_per_minute, 2), {}});
        }
        row.cells.push_back({figure(c.operation.states.front().emitters[i].outlet, unit::celsius, 1), {}});
        table.rows.push_back(std::move(row));
    }
    return table;
}

LineChart::Series series_of(const std::vector<job::CurvePoint>& points, std::string label, LineChart::Dash dash) {
    LineChart::Series out{std::move(label), {}, dash};
    for (const auto& p : points) out.points.push_back({p.flow.in(unit::litre_per_minute), p.head.in(unit::kilopascal)});
    return out;
}

std::string curve_name(StateKind kind) {
    switch (kind) {
        case StateKind::as_found: return "as found";
        case StateKind::balanced: return "balanced";
        case StateKind::changed: return "changed";
        case StateKind::mild_day: return "milder day";
    }
    return "";
}

LineChart curves(const Context& c) {
    LineChart chart;
    chart.caption = "Where circulator and pipework meet";
    chart.x = {"flow round the emitters", "L/min", true};
    chart.y = {"head", "kPa", true};
    if (!c.operation.pump_curve.empty()) {
        chart.series.push_back(series_of(c.operation.pump_curve, "circulator", LineChart::Dash::solid));
    }
    constexpr LineChart::Dash dashes[] = {LineChart::Dash::dotted, LineChart::Dash::dashed, LineChart::Dash::solid};
    for (const auto& s : c.operation.states) {
        if (s.system_curve.size() < 2) continue;
        // Without a change the pipework is the balanced one, and only the circulator is set down.
        const bool same = s.kind == StateKind::changed && !c.operation.changes.any();
        if (!same) {
            chart.series.push_back(series_of(s.system_curve, "pipework, " + curve_name(s.kind), dashes[static_cast<std::size_t>(s.kind)]));
        }
        if (same && !c.operation.changes.set_head) continue;
        chart.marks.push_back({(same ? "set down" : curve_name(s.kind)) + ", " + text(s.flow, unit::litre_per_minute, 1),
                               {s.flow.in(unit::litre_per_minute), s.head.in(unit::kilopascal)}});
    }
    chart.marks.push_back({"design", {c.design.duty.volume_flow.in(unit::litre_per_minute), c.design.duty.head.in(unit::kilopascal)}});
    chart.alternative = "Head of the circulator falling with flow, head that the pipework needs rising with flow as found, balanced and "
                        "changed, the duty points where they meet, and the design duty. The table of states holds the same figures.";
    return chart;
}

}   // namespace

Blocks states_in_figures(const Context& c) {
    Blocks out;
    if (c.operation.states.empty()) {
        say(out, "Nothing asks for water, so nothing flows.");
        return out;
    }
    say(out, c.operation.pump_known
                 ? "The schedules above say what should flow. This is what will: the whole pipework solved as a network with the "
                   "circulator's curve, and each emitter and room in balance with the water that reaches it."
                 : "The schedules above say what should flow. This is what will: the whole pipework solved as a network, and each "
                   "emitter and room in balance with the water that reaches it. **No curve is stated for the circulator**, so it is "
                   "taken to give just the head of the design.");
    out.push_back(states_table(c));
    out.push_back(curves(c));
    out.push_back(rooms_table(c));
    out.push_back(flows_table(c));
    return out;
}

Table states_residuals(const Context& c) {
    Table table;
    table.caption = "How closely the four states are solved";
    table.compact = true;
    table.columns = {words_column("State"), figure_column("Rounds", ""), figure_column("Flow missing at a node", "kg/s"),
                     figure_column("Pressure missing along a pipe", "Pa"), figure_column("Heat missing", "share")};
    const auto small = [](double value) { return value == 0.0 ? std::string{"0"} : fmt::format("{:.1e}", std::abs(value)); };
    for (const auto& s : c.operation.states) {
        table.rows.push_back(row({std::string{state_label(s.kind)}, fixed(s.rounds, 0), small(s.continuity_residual.si()),
                                  small(s.pressure_residual.si()), small(s.energy_error)}));
    }
    table.note = "Rounds: of flows and temperatures in turn, until both stand still. 1.0e-09 is a thousand-millionth.";
    return table;
}

std::string if_nothing_is_changed(const Context& c) {
    if (c.operation.states.empty()) return "";
    const auto& s = c.operation.states.front();
    std::size_t missed = 0;
    for (std::size_t i = 0; i < s.rooms.size(); ++i) {
        if (c.design.rooms[i].emitters > 0 && s.rooms[i].need > Power{} &&
            s.rooms[i].temperature < c.job.rooms[i].temperature.value - TemperatureDifference::from_si(0.05)) ++missed;
    }
    if (missed == 0) {
        return "If nothing were changed, every room with a radiator would still be warm enough on the coldest design day.";
    }
    const auto worst = static_cast<std::size_t>(s.least_served);
    return "If nothing were changed, " + count_of(missed, "room", "rooms") + " would be too cool on the coldest design day: " +
           name_of(c.job.rooms[worst]) + " would reach only " + text(s.rooms[worst].temperature, unit::celsius, 1) + " instead of " +
           degrees(c.job.rooms[worst].temperature.value) + ".";
}

Table balancing_table(const Context& c) {
    const bool changed = c.operation.changes.any();
    const auto& balancing = changed ? c.operation.changed : c.operation.as_found;
    Table table;
    table.caption = "Balancing, in the order of the work";
    table.compact = true;
    table.columns = {name_column("No."), name_column("Id"), words_column("Room"), figure_column("Flow", "L/min"),
                     figure_column("Valve adds", "kPa"), figure_column("Kv", "m³/h"), figure_column("Return", "°C"),
                     figure_column("Drop", "K"), words_column("Measured drop", 0.6), words_column("Turns open", 0.6)};
    int number = 0;
    std::vector<std::string> out_of_reach;
    for (const auto& v : balancing.valves) {
        const auto i = static_cast<std::size_t>(v.emitter);
        if (v.out_of_reach) out_of_reach.push_back(c.job.emitters[i].id);
        table.rows.push_back(row({fixed(++number, 0), c.job.emitters[i].id, name_of(room_of(c, c.design.emitters[i])),
                                  figure(v.flow, unit::litre_per_minute, 2), figure(v.added, unit::kilopascal, 2),
                                  v.kv > 0.0 ? fixed(v.kv, 2) : std::string{"open"},
                                  figure(v.return_temperature, unit::celsius, 1), figure(v.drop, unit::kelvin, 1), "", ""}));
    }
    table.note = (changed ? std::string{"With the changes of the work list made. "} : std::string{}) +
                 "A valve that stays open is the index of its pump, and the circulator is set so that its index gets its flow (" +
                 text(balancing.head, unit::kilopascal, 1) + "). Kv is that of the lockshield or manifold valve alone. Return and drop are "
                 "what a contact thermometer on bare pipe reads at the design flow temperature with the room warm; on a milder day "
                 "balance to equal drops.";
    if (!c.design.mixers.empty()) {
        table.note += " Emitters beyond a mixing set get their flow from the set's own pump, and are balanced among themselves.";
    }
    if (!out_of_reach.empty()) table.note += " No pump here gives its flow to " + list_of(out_of_reach) + ".";
    return table;
}

}   // namespace loopfolio::report
