// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/thermal.hpp"

#include "network/at.hpp"
#include "network/check_system.hpp"
#include "network/temperatures.hpp"
#include "network/workspace.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

constexpr double met_within = 1e-6;  // of a room's need

Finding finding(FindingKind kind, Severity severity, int index, int link, double value = 0.0) {
    Finding f;
    f.kind = kind;
    f.severity = severity;
    f.index = index;
    f.link = link;
    f.value = value;
    return f;
}

void take_nodes(ThermalState& s, const System& system, ThermalResult& r) {
    const Temperature standing = Temperature::from_kelvin(s.standing);
    r.inlet.assign(s.of_link.size(), standing);
    r.outlet.assign(s.of_link.size(), standing);
    double pipes = 0.0;
    for (const auto& stream : s.streams) {
        const double inlet = s.node[at(stream.up)];
        const double outlet = outlet_of(s, system, stream);
        r.inlet[at(stream.link)] = Temperature::from_kelvin(inlet);
        r.outlet[at(stream.link)] = Temperature::from_kelvin(outlet);
        if (stream.emitter < 0 && stream.source < 0) pipes += stream.capacity * (inlet - outlet);
    }
    r.energy.pipes = Power::from_si(pipes);
    r.node.reserve(s.node.size());
    for (const double t : s.node) r.node.push_back(Temperature::from_kelvin(t));
}

void take_emitters(ThermalState& s, const System& system, ThermalResult& r) {
    for (std::size_t e = 0; e < system.emitters.size(); ++e) {
        const Emitter& emitter = system.emitters[e];
        const auto room = at(emitter.room);
        EmitterResult out;
        out.inlet = r.inlet[at(emitter.link)];
        out.outlet = r.outlet[at(emitter.link)];
        if (const Stream* stream = stream_of(s, emitter)) {
            const double full = emitter_at(s, system, *stream, out.inlet.kelvin(), s.room[room]).output;
            out.flow = MassFlow::from_si(stream->flow);
            out.available = Power::from_si(full * to_room(emitter));
            out.output = s.share[room] * out.available;
        } else {
            r.findings.push_back(
                finding(FindingKind::emitter_without_flow, Severity::warning, static_cast<int>(e), emitter.link));
        }
        r.energy.emitters += (1.0 + emitter.beyond) * out.output;
        r.emitters.push_back(out);
    }
}

void take_rooms(const ThermalState& s, const System& system, ThermalResult& r) {
    constexpr Power none;
    for (std::size_t i = 0; i < system.rooms.size(); ++i) {
        RoomResult out;
        out.temperature = Temperature::from_kelvin(s.room[i]);
        out.need = Power::from_si(s.need[i]);
        Power available;
        for (const int e : s.emitters_of(i)) {
            out.output += r.emitters[at(e)].output;
            available += r.emitters[at(e)].available;
        }
        out.shortfall = std::max(none, out.need - out.output);
        out.surplus = std::max(none, available - out.need);
        out.missed = out.shortfall > met_within * out.need;
        r.rooms.push_back(out);
    }
}

void take_sources(const ThermalState& s, const System& system, ThermalResult& r) {
    for (std::size_t i = 0; i < system.sources.size(); ++i) {
        const Source& source = system.sources[i];
        const int index = static_cast<int>(i);
        SourceResult out;
        out.inlet = r.inlet[at(source.link)];
        out.outlet = r.outlet[at(source.link)];
        if (const int place = s.of_link[at(source.link)]; place >= 0) {
            const Stream& stream = s.streams[at(place)];
            out.flow = MassFlow::from_si(stream.flow);
            out.power = Power::from_si(stream.capacity * (out.outlet - out.inlet).si());
            out.at_capacity = source_outlet(source, stream, out.inlet.kelvin()).at_capacity;
        } else {
            r.findings.push_back(finding(FindingKind::source_without_flow, Severity::warning, index, source.link));
        }
        out.below_minimum_flow = out.flow < source.minimum_flow;
        if (out.at_capacity) {
            r.findings.push_back(
                finding(FindingKind::source_at_capacity, Severity::warning, index, source.link, out.outlet.kelvin()));
        }
        if (out.below_minimum_flow) {
            r.findings.push_back(
                finding(FindingKind::source_below_minimum_flow, Severity::warning, index, source.link, out.flow.si()));
        }
        r.energy.sources += out.power;
        r.sources.push_back(out);
    }
}

void close_balance(ThermalResult& r, SpecificHeat cp) {
    EnergyBalance& e = r.energy;
    const double off = (e.sources - e.emitters - e.pipes).si();
    double scale = std::max({std::abs(e.sources.si()), std::abs(e.emitters.si()), std::abs(e.pipes.si())});
    // Where hardly any heat flows, rounding must not count as an error.
    for (const auto& s : r.sources) scale = std::max(scale, 1e-3 * (s.flow.si() * cp.si()));
    e.relative_error = scale > 0.0 ? off / scale : 0.0;
}

}  // namespace

ThermalResult find_temperatures(const System& system, std::span<const MassFlow> flow, SpecificHeat cp,
                                Workspace& workspace) {
    ThermalResult r;
    ThermalState& s = workspace.parts().heat;
    set_streams(s, system, flow, cp);
    TemperatureOutcome found = sweep_temperatures(s, system);
    r.rounds = found.rounds;
    if (!found.found) {
        found = solve_temperatures(s, system);
        r.rounds += found.rounds;
    }
    if (!found.found) {
        r.findings.push_back(finding(FindingKind::temperatures_not_found, Severity::error, -1, -1, found.last_change));
        return r;
    }
    r.solved = true;
    take_nodes(s, system, r);
    take_emitters(s, system, r);
    take_rooms(s, system, r);
    take_sources(s, system, r);
    close_balance(r, cp);
    return r;
}

ThermalResult solve_thermal(const System& system, std::span<const MassFlow> flow, SpecificHeat cp,
                            Workspace& workspace) {
    Findings refused = refusals_of(system, flow, cp);
    if (has_error(refused)) {
        ThermalResult r;
        r.findings = std::move(refused);
        return r;
    }
    return find_temperatures(system, flow, cp, workspace);
}

}  // namespace loopfolio::network
