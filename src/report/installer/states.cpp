// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/installer/schedules.hpp"

#include "report/shared/blocks.hpp"
#include "report/shared/finding_words.hpp"
#include "report/shared/names.hpp"
#include "report/shared/phrases.hpp"
#include "texts/states.hpp"
#include "texts/summary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace loopfolio::report {

namespace {

using namespace texts::states;
using design::State;
using design::StateKind;

std::string state_label(const Context& c, StateKind kind) {
    switch (kind) {
        case StateKind::as_found: return c.words(state_as_found{});
        case StateKind::balanced: return c.words(state_balanced{});
        case StateKind::changed: return c.words(state_changed{});
        case StateKind::mild_day: return c.words(state_milder_day{});
    }
    return "";
}

Column state_column(const Context& c, const State& state) {
    return Column{state_label(c, state.kind), {}, Align::right, 0.6};
}

Column state_figures(const Context& c, const State& state, std::string unit) {
    return Column{state_label(c, state.kind), std::move(unit), Align::decimal, 0.4};
}

/// The name of the room that is furthest below its temperature. The next two functions give the temperature that it
/// reaches and the share of its need that it gets.
std::string least_served(const Context& c, const State& s) {
    return s.least_served < 0 ? "" : name_of(c.job.rooms[static_cast<std::size_t>(s.least_served)]);
}

std::string reached(const State& s) {
    if (s.least_served < 0) return "";
    return figure(s.rooms[static_cast<std::size_t>(s.least_served)].temperature, unit::celsius, 1);
}

std::string share_met(const Context& c, const State& s) {
    const auto share = c.study.totals.share_served.at(static_cast<std::size_t>(&s - c.operation.states.data()));
    return share ? figure(*share, unit::percent, 0) : std::string{};
}

struct Line {
    std::string what;
    std::function<std::string(const State&)> figure;
};

std::string section_id(const Context& c, int section) {
    return section < 0 ? "" : c.job.sections[static_cast<std::size_t>(section)].id;
}

std::vector<Line> lines(const Context& c) {
    const auto& words = c.words;
    std::vector<Line> out{
        {words(outdoor_temperature{}), [](const State& s) { return figure(s.outdoor, unit::celsius, 1); }},
        {words(flow_round_emitters{}), [](const State& s) { return figure(s.flow, unit::litre_per_minute, 1); }},
        {words(circulator_head{}), [](const State& s) { return figure(s.head, unit::kilopascal, 1); }},
        {words(leaving_source{}), [](const State& s) { return figure(s.source_flow, unit::celsius, 1); }},
        {words(drop_at_source{}), [](const State& s) { return figure(s.source_drop, unit::kelvin, 1); }},
        {words(heat_from_source{}), [](const State& s) { return figure(s.heat, unit::kilowatt, 2); }},
        {words(least_served_room{}), [&c](const State& s) { return least_served(c, s); }},
        {words(room_reaches{}), [](const State& s) { return reached(s); }},
        {words(share_of_need{}), [&c](const State& s) { return share_met(c, s); }},
        {words(highest_velocity{}),
         [](const State& s) { return figure(s.highest_velocity, unit::metre_per_second, 2); }},
        {words(in_section{}), [&c](const State& s) { return section_id(c, s.fastest_section); }},
        {words(pump_power{}), [](const State& s) { return figure(s.pump_power, unit::watt, 1); }},
    };
    if (c.design.separation) {
        out.insert(out.begin() + 2, {words(flow_source_side{}),
                                     [](const State& s) { return figure(s.source_side, unit::litre_per_minute, 1); }});
    }
    return out;
}

std::string changes_in_words(const Context& c) {
    const auto& changes = c.operation.changes;
    std::vector<std::string> parts;
    for (const auto& p : changes.pipes) {
        parts.push_back(c.words(change_pipe{.section = section_id(c, p.section), .pipe = c.named(p.to->label)}));
    }
    std::vector<std::string> ids;
    for (const int e : changes.emitters) ids.push_back(c.job.emitters[static_cast<std::size_t>(e)].id);
    if (!ids.empty()) parts.push_back(c.words(change_emitters{.emitters = list_of(c.words, ids, 8)}));
    if (changes.circulator) {
        parts.push_back(c.words(change_circulator{.head = text(c.operation.changed_head, unit::kilopascal, 1)}));
    }
    const std::string out = parts.empty() ? c.words(change_none{}) : list_of(c.words, parts, 10);
    if (!changes.set_head) return out;
    return c.words(changes_and_head{.changes = out, .head = text(*changes.set_head, unit::kilopascal, 1)});
}

/// The warnings that apply, each after a space.
std::string warnings(const Context& c) {
    std::vector<std::string> capacity, least, drop, curve, ice, backwards;
    for (const auto& s : c.operation.states) {
        const std::string name = c.words(state_quoted{.state = state_label(c, s.kind)});
        if (s.source_at_capacity) capacity.push_back(name);
        if (s.below_minimum_flow) least.push_back(name);
        if (s.above_maximum_drop) drop.push_back(name);
        if (s.past_curve) curve.push_back(name);
        if (s.pump_backwards) backwards.push_back(name);
        if (s.would_freeze) ice.push_back(name);
    }
    std::string out;
    if (!capacity.empty()) out += " " + c.words(source_at_capacity{.states = list_of(c.words, capacity)});
    if (!least.empty()) out += " " + c.words(below_least_flow{.states = list_of(c.words, least)});
    if (!drop.empty()) {
        out += " " + c.words(above_most_drop{.limit = text(c.job.heat_source->maximum_drop->value, unit::kelvin, 1),
                                             .states = list_of(c.words, drop)});
    }
    if (!curve.empty()) out += " " + c.words(past_curve{.states = list_of(c.words, curve)});
    if (!backwards.empty()) out += " " + c.words(driven_backwards{.states = list_of(c.words, backwards)});
    if (!ice.empty()) out += " " + c.words(would_freeze{.states = list_of(c.words, ice)});
    return out;
}

Table states_table(const Context& c) {
    Table table;
    table.caption = c.words(states_caption{});
    table.columns = {words_column(c.words(column_figure{}), 1.4)};
    for (const auto& s : c.operation.states) table.columns.push_back(state_column(c, s));
    for (const auto& line : lines(c)) {
        Row row;
        row.cells.push_back({line.what, {}});
        for (const auto& s : c.operation.states) row.cells.push_back({line.figure(s), {}});
        table.rows.push_back(std::move(row));
    }
    table.note = c.words(states_note{.changes = changes_in_words(c)}) + warnings(c);
    return table;
}

Table rooms_table(const Context& c) {
    Table table;
    table.caption = c.words(rooms_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_room{}), 1.4), figure_column(c.words(column_wanted{}), "°C")};
    for (const auto& s : c.operation.states) table.columns.push_back(state_figures(c, s, "°C"));
    for (std::size_t i = 0; i < c.job.rooms.size(); ++i) {
        if (c.design.rooms[i].loss <= Power{} || c.design.rooms[i].emitters == 0) continue;
        Row row;
        row.cells.push_back({name_of(c.job.rooms[i]), {}});
        row.cells.push_back({figure(c.job.rooms[i].temperature.value, unit::celsius, 1), {}});
        for (const auto& s : c.operation.states) {
            row.cells.push_back({figure(s.rooms[i].temperature, unit::celsius, 1), {}});
        }
        table.rows.push_back(std::move(row));
    }
    table.note = c.words(rooms_note{});
    return table;
}

Table flows_table(const Context& c) {
    Table table;
    table.caption = c.words(flows_caption{});
    table.compact = true;
    table.columns = {name_column(c.words(column_id{})), words_column(c.words(column_room{}), 1.2),
                     figure_column(c.words(column_design{}), "L/min")};
    for (const auto& s : c.operation.states) {
        if (s.kind != StateKind::mild_day) table.columns.push_back(state_figures(c, s, "L/min"));
    }
    table.columns.push_back(Column{c.words(column_return_as_found{}), "°C", Align::decimal, 0.4});
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        if (c.design.emitters[i].load <= Power{}) continue;
        Row row;
        row.cells.push_back({c.job.emitters[i].id, {}});
        row.cells.push_back({name_of(room_of(c, c.design.emitters[i])), {}});
        row.cells.push_back({figure(c.design.emitters[i].volume_flow, unit::litre_per_minute, 2), {}});
        for (const auto& s : c.operation.states) {
            if (s.kind == StateKind::mild_day) continue;
            row.cells.push_back({figure(s.emitters[i].flow, unit::litre_per_minute, 2), {}});
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

std::string curve_name(const Context& c, StateKind kind) {
    switch (kind) {
        case StateKind::as_found: return c.words(curve_as_found{});
        case StateKind::balanced: return c.words(curve_balanced{});
        case StateKind::changed: return c.words(curve_changed{});
        case StateKind::mild_day: return c.words(curve_milder_day{});
    }
    return "";
}

LineChart curves(const Context& c) {
    LineChart chart;
    chart.caption = c.words(curves_caption{});
    chart.x = {c.words(curves_flow{}), "L/min", true};
    chart.y = {c.words(curves_head{}), "kPa", true};
    if (!c.operation.pump_curve.empty()) {
        chart.series.push_back(series_of(c.operation.pump_curve, c.words(curves_circulator{}), LineChart::Dash::solid));
    }
    constexpr LineChart::Dash dashes[] = {LineChart::Dash::dotted, LineChart::Dash::dashed, LineChart::Dash::solid};
    for (const auto& s : c.operation.states) {
        if (s.system_curve.size() < 2) continue;
        // Without changes it is the balanced pipework, and only the pump is set lower
        const bool same = s.kind == StateKind::changed && !c.operation.changes.any();
        if (!same) {
            chart.series.push_back(series_of(s.system_curve, c.words(curves_pipework{.state = curve_name(c, s.kind)}),
                                             dashes[static_cast<std::size_t>(s.kind)]));
        }
        if (same && !c.operation.changes.set_head) continue;
        chart.marks.push_back({c.words(curves_duty{.state = same ? c.words(curves_set_down{}) : curve_name(c, s.kind),
                                                   .flow = text(s.flow, unit::litre_per_minute, 1)}),
                               {s.flow.in(unit::litre_per_minute), s.head.in(unit::kilopascal)}});
    }
    const auto& duty = c.design.duty;
    chart.marks.push_back(
        {c.words(curves_design{}), {duty.volume_flow.in(unit::litre_per_minute), duty.head.in(unit::kilopascal)}});
    chart.alternative = c.words(curves_alternative{});
    return chart;
}

}  // namespace

Blocks states_in_figures(const Context& c) {
    Blocks out;
    if (c.operation.states.empty()) {
        say(out, c.words(nothing_flows{}));
        return out;
    }
    say(out, c.operation.pump_known ? c.words(explained{}) : c.words(explained_without_curve{}));
    out.push_back(states_table(c));
    out.push_back(curves(c));
    out.push_back(rooms_table(c));
    out.push_back(flows_table(c));
    return out;
}

Table states_residuals(const Context& c) {
    Table table;
    table.caption = c.words(residuals_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_state{})), figure_column(c.words(column_rounds{}), ""),
                     figure_column(c.words(column_flow_missing{}), "kg/s"),
                     figure_column(c.words(column_pressure_missing{}), "Pa"),
                     figure_column(c.words(column_heat_missing{}), c.words(unit_share{}))};
    const auto small = [](double value) {
        return value == 0.0 ? std::string{"0"} : fmt::format("{:.1e}", std::abs(value));
    };
    for (const auto& s : c.operation.states) {
        table.rows.push_back(row({state_label(c, s.kind), fixed(s.rounds, 0), small(s.continuity_residual.si()),
                                  small(s.pressure_residual.si()), small(s.energy_error)}));
    }
    table.note = c.words(residuals_note{});
    return table;
}

namespace {

/// The number of rooms with emitters that miss their temperature by more than rounding hides.
std::size_t rooms_missed(const Context& c, const State& s) {
    std::size_t missed = 0;
    for (std::size_t i = 0; i < s.rooms.size(); ++i) {
        if (c.design.rooms[i].emitters > 0 && s.rooms[i].need > Power{} &&
            s.rooms[i].temperature < c.job.rooms[i].temperature.value - TemperatureDifference::from_si(0.05))
            ++missed;
    }
    return missed;
}

/// The number of rooms whose emitters are too small at the flow that the design gives them.
std::size_t rooms_short(const Context& c) {
    std::vector<int> rooms;
    for (const auto& e : c.design.emitters) {
        if (c.design.verdict_of(e.finding) == Verdict::change) rooms.push_back(e.room);
    }
    std::ranges::sort(rooms);
    return static_cast<std::size_t>(std::unique(rooms.begin(), rooms.end()) - rooms.begin());
}

/// The room that is furthest below its temperature in a state, in the words of the text `Text`.
template <class Text>
std::string missed_in_words(const Context& c, const State& s, std::size_t missed) {
    const auto worst = static_cast<std::size_t>(s.least_served);
    return c.words(Text{.count = missed,
                        .room = name_of(c.job.rooms[worst]),
                        .reached = text(s.rooms[worst].temperature, unit::celsius, 1),
                        .wanted = degrees(c.job.rooms[worst].temperature.value)});
}

/// What has to change and is left as it is in the state with the changes, in words.
std::vector<std::string> left_as_it_is(const Context& c) {
    std::vector<std::string> out;
    std::size_t bare = 0;
    for (const auto& f : c.operation.left) {
        if (f.check == design::Check::room_has_emitter) ++bare;
        if (in_lists_of_pieces(f.check)) continue;
        std::string thing = words_of(c, f).listed;
        if (std::ranges::find(out, thing) == out.end()) out.push_back(std::move(thing));
    }
    if (bare > 0) out.push_back(c.words(texts::summary::bare_rooms{.count = bare}));
    return out;
}

}  // namespace

std::string if_nothing_is_changed(const Context& c) {
    if (c.operation.states.empty()) return "";
    const auto& found = c.operation.states.front();
    const std::size_t missed = rooms_missed(c, found), small = rooms_short(c);
    std::string out = missed == 0 ? c.words(unchanged_warm{})
                                  : missed_in_words<unchanged_cool>(c, found, missed) + " " + c.words(room_alone{});
    // As found, pump and valves often let more water flow than the design does, and emitters then give more heat.
    if (small > missed) out += " " + c.words(unchanged_but_small{.count = small});
    const auto balanced = std::ranges::find(c.operation.states, StateKind::balanced, &State::kind);
    if (balanced != c.operation.states.end()) {
        const std::size_t left = rooms_missed(c, *balanced);
        if (left < missed) out += " " + c.words(balancing_helps{.count = left});
    }
    return out;
}

std::string if_all_is_changed(const Context& c) {
    const auto changed = std::ranges::find(c.operation.states, StateKind::changed, &State::kind);
    if (changed == c.operation.states.end()) return "";
    const std::size_t missed = rooms_missed(c, *changed);
    if (missed == 0) return "";
    std::string out = c.operation.changes.any() ? missed_in_words<changed_cool>(c, *changed, missed)
                                                : missed_in_words<set_cool>(c, *changed, missed);
    out += " " + c.words(room_alone{});
    if (const auto left = left_as_it_is(c); !left.empty())
        out += " " + c.words(left_as_is{.things = list_of(c.words, left)});
    return out;
}

namespace {

std::vector<Column> balancing_columns(const Context& c) {
    return {name_column(c.words(column_number{})),
            name_column(c.words(column_id{})),
            words_column(c.words(column_room{})),
            figure_column(c.words(column_flow{}), "L/min"),
            figure_column(c.words(column_valve_adds{}), "kPa"),
            figure_column(c.words(column_kv{}), "m³/h"),
            figure_column(c.words(column_return{}), "°C"),
            figure_column(c.words(column_drop{}), "K"),
            words_column(c.words(column_measured_drop{}), 0.6),
            words_column(c.words(column_turns{}), 0.6)};
}

std::string balancing_notes(const Context& c, Pressure head, const std::vector<std::string>& out_of_reach) {
    std::string out = c.words(balancing_note{.head = text(head, unit::kilopascal, 1)});
    if (c.operation.changes.any()) out = c.words(balancing_changed{}) + " " + out;
    if (!c.design.mixers.empty()) out += " " + c.words(balancing_mixing{});
    if (!out_of_reach.empty()) {
        out += " " + c.words(balancing_out_of_reach{.emitters = list_of(c.words, out_of_reach)});
    }
    return out;
}

}  // namespace

Table balancing_table(const Context& c) {
    const auto& balancing = c.operation.changes.any() ? c.operation.changed : c.operation.as_found;
    Table table;
    table.caption = c.words(balancing_caption{});
    table.compact = true;
    table.columns = balancing_columns(c);
    int number = 0;
    std::vector<std::string> out_of_reach;
    for (const auto& v : balancing.valves) {
        const auto i = static_cast<std::size_t>(v.emitter);
        if (v.out_of_reach) out_of_reach.push_back(c.job.emitters[i].id);
        table.rows.push_back(
            row({fixed(++number, 0), c.job.emitters[i].id, name_of(room_of(c, c.design.emitters[i])),
                 figure(v.flow, unit::litre_per_minute, 2), figure(v.added, unit::kilopascal, 2),
                 v.kv > 0.0 ? fixed(v.kv, 2) : c.words(valve_open{}), figure(v.return_temperature, unit::celsius, 1),
                 figure(v.drop, unit::kelvin, 1), "", ""}));
    }
    table.note = balancing_notes(c, balancing.head, out_of_reach);
    return table;
}

}  // namespace loopfolio::report
