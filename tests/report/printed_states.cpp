// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "texts/states.hpp"

#include <cmath>
#include <cstdio>

namespace loopfolio::tests {

namespace {

using namespace texts::states;
using design::State;
using design::StateKind;

std::string label_of(const Printing& p, StateKind kind) {
    switch (kind) {
        case StateKind::as_found: return p.words(state_as_found{});
        case StateKind::balanced: return p.words(state_balanced{});
        case StateKind::changed: return p.words(state_changed{});
        case StateKind::mild_day: return p.words(state_milder_day{});
    }
    return {};
}

/// A line of the table of states: its words, which name the unit, and its figure in one state.
struct Line {
    std::string what;
    std::function<std::string(const State&)> figure;
};

std::vector<Line> lines_of(const Printing& p) {
    const auto& w = p.words;
    const auto worst = [](const State& s) { return static_cast<std::size_t>(s.least_served); };
    std::vector<Line> out{
        {w(outdoor_temperature{}), [](const State& s) { return cell(s.outdoor, unit::celsius, 1); }},
        {w(flow_round_emitters{}), [](const State& s) { return cell(s.flow, unit::litre_per_minute, 1); }}};
    if (p.d.separation) {
        out.push_back(
            {w(flow_source_side{}), [](const State& s) { return cell(s.source_side, unit::litre_per_minute, 1); }});
    }
    out.push_back({w(circulator_head{}), [](const State& s) { return cell(s.head, unit::kilopascal, 1); }});
    out.push_back({w(leaving_source{}), [](const State& s) { return cell(s.source_flow, unit::celsius, 1); }});
    out.push_back({w(drop_at_source{}), [](const State& s) { return cell(s.source_drop, unit::kelvin, 1); }});
    out.push_back({w(heat_from_source{}), [](const State& s) { return cell(s.heat, unit::kilowatt, 2); }});
    out.push_back({w(least_served_room{}), [&p, worst](const State& s) {
                       return s.least_served < 0 ? std::string{} : p.job.rooms[worst(s)].name;
                   }});
    out.push_back({w(room_reaches{}), [worst](const State& s) {
                       return s.least_served < 0 ? std::string{}
                                                 : cell(s.rooms[worst(s)].temperature, unit::celsius, 1);
                   }});
    out.push_back({w(share_of_need{}), [worst](const State& s) {
                       if (s.least_served < 0) return std::string{};
                       const auto& room = s.rooms[worst(s)];
                       return room.need > Power{} ? cell(room.output / room.need, unit::percent, 0) : std::string{};
                   }});
    out.push_back(
        {w(highest_velocity{}), [](const State& s) { return cell(s.highest_velocity, unit::metre_per_second, 2); }});
    out.push_back({w(in_section{}), [&p](const State& s) {
                       return s.fastest_section < 0 ? std::string{}
                                                    : p.job.sections[static_cast<std::size_t>(s.fastest_section)].id;
                   }});
    out.push_back({w(pump_power{}), [](const State& s) { return cell(s.pump_power, unit::watt, 1); }});
    return out;
}

ExpectedTable four_states(const Printing& p) {
    const auto lines = lines_of(p);
    ExpectedTable t{all(lines.size())};
    t.column(p.words(column_figure{}), "", [&](std::size_t i) { return lines[i].what; });
    for (const auto& state : p.s.operation.states) {
        t.column(label_of(p, state.kind), "", [&](std::size_t i) { return lines[i].figure(state); });
    }
    return t;
}

ExpectedTable rooms(const Printing& p) {
    Indices rows;
    for (std::size_t i = 0; i < p.d.rooms.size(); ++i) {
        if (p.d.rooms[i].loss > Power{} && p.d.rooms[i].emitters > 0) rows.push_back(i);
    }
    ExpectedTable t{rows};
    t.figures(p.words(column_wanted{}), unit::celsius, 1,
              [&](std::size_t i) { return p.job.rooms[i].temperature.value; });
    for (const auto& state : p.s.operation.states) {
        t.figures(label_of(p, state.kind), unit::celsius, 1, [&](std::size_t i) { return state.rooms[i].temperature; });
    }
    return t;
}

ExpectedTable flows(const Printing& p) {
    Indices rows;
    for (std::size_t i = 0; i < p.d.emitters.size(); ++i) {
        if (p.d.emitters[i].load > Power{}) rows.push_back(i);
    }
    ExpectedTable t{rows};
    t.column(p.words(column_id{}), "", [&](std::size_t i) { return p.job.emitters[i].id; });
    t.figures(p.words(column_design{}), unit::litre_per_minute, 2,
              [&](std::size_t i) { return p.d.emitters[i].volume_flow; });
    for (const auto& state : p.s.operation.states) {
        if (state.kind == StateKind::mild_day) continue;
        t.figures(label_of(p, state.kind), unit::litre_per_minute, 2,
                  [&](std::size_t i) { return state.emitters[i].flow; });
    }
    return t.figures(p.words(column_return_as_found{}), unit::celsius, 1,
                     [&](std::size_t i) { return p.s.operation.states.front().emitters[i].outlet; });
}

/// What a solution misses, as a power of ten; its sign says nothing.
std::string small(double value) {
    if (value == 0.0) return "0";
    char out[32];
    std::snprintf(out, sizeof out, "%.1e", std::abs(value));
    return out;
}

ExpectedTable residuals(const Printing& p) {
    const auto& states = p.s.operation.states;
    ExpectedTable t{all(states.size())};
    return t.column(p.words(column_state{}), "", [&](std::size_t i) { return label_of(p, states[i].kind); })
        .column(p.words(column_rounds{}), "", [&](std::size_t i) { return std::to_string(states[i].rounds); })
        .column(p.words(column_flow_missing{}), "kg/s",
                [&](std::size_t i) { return small(states[i].continuity_residual.si()); })
        .column(p.words(column_pressure_missing{}), "Pa",
                [&](std::size_t i) { return small(states[i].pressure_residual.si()); })
        .column(p.words(column_heat_missing{}), p.words(unit_share{}),
                [&](std::size_t i) { return small(states[i].energy_error); });
}

ExpectedTable balancing(const Printing& p) {
    const auto& valves = (p.s.operation.changes.any() ? p.s.operation.changed : p.s.operation.as_found).valves;
    ExpectedTable t{all(valves.size())};
    return t.column(p.words(column_number{}), "", [](std::size_t i) { return std::to_string(i + 1); })
        .column(p.words(column_id{}), "",
                [&](std::size_t i) { return p.job.emitters[static_cast<std::size_t>(valves[i].emitter)].id; })
        .figures(p.words(column_flow{}), unit::litre_per_minute, 2, [&](std::size_t i) { return valves[i].flow; })
        .figures(p.words(column_valve_adds{}), unit::kilopascal, 2, [&](std::size_t i) { return valves[i].added; })
        .column(p.words(column_kv{}), "m³/h",
                [&](std::size_t i) { return valves[i].kv > 0.0 ? fixed(valves[i].kv, 2) : p.words(valve_open{}); })
        .figures(p.words(column_return{}), unit::celsius, 1,
                 [&](std::size_t i) { return valves[i].return_temperature; })
        .figures(p.words(column_drop{}), unit::kelvin, 1, [&](std::size_t i) { return valves[i].drop; });
}

}  // namespace

void add_state_tables(const Printing& p, TableChecks& out) {
    const auto& w = p.words;
    out[w(states_caption{})] = [p] { return four_states(p); };
    out[w(rooms_caption{})] = [p] { return rooms(p); };
    out[w(flows_caption{})] = [p] { return flows(p); };
    out[w(residuals_caption{})] = [p] { return residuals(p); };
    out[w(balancing_caption{})] = [p] { return balancing(p); };
}

}  // namespace loopfolio::tests
