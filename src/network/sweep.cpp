// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/temperatures.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

constexpr int most_rounds = 200;
constexpr double settled = 1e-9;  // K

/// One pass over the nodes in order. Returns the largest change of a node's temperature.
double pass(ThermalState& s, const System& system) {
    std::ranges::fill(s.mixed, 0.0);
    for (const auto& stream : s.streams) {
        if (stream.source < 0) continue;
        const double outlet = system.sources[at(stream.source)].flow_temperature.kelvin();
        s.mixed[at(stream.down)] += stream.flow * outlet;
    }
    double change = 0.0;
    for (const int node : s.order) {
        const auto n = at(node);
        const double t = s.inflow[n] > 0.0 ? s.mixed[n] / s.inflow[n] : s.standing;
        change = std::max(change, std::abs(t - s.node[n]));
        s.node[n] = t;
        for (auto i = at(s.first[n]); i < at(s.first[n + 1]); ++i) {
            const Stream& stream = s.streams[i];
            if (stream.source < 0) s.mixed[at(stream.down)] += stream.flow * outlet_of(s, system, stream);
        }
    }
    return change;
}

bool sources_meet(const ThermalState& s, const System& system) {
    return std::ranges::all_of(s.streams, [&](const Stream& stream) {
        if (stream.source < 0) return true;
        const Source& source = system.sources[at(stream.source)];
        return !source_outlet(source, stream, s.node[at(stream.up)]).follows_inlet;
    });
}

}  // namespace

SourceOutlet source_outlet(const Source& source, const Stream& stream, double inlet) {
    const double wanted = source.flow_temperature.kelvin();
    if (inlet > wanted) return {inlet, true, false};
    if (source.capacity) {
        const double reached = inlet + source.capacity->si() / stream.capacity;
        if (reached < wanted) return {reached, true, true};
    }
    return {wanted, false, false};
}

double outlet_of(ThermalState& s, const System& system, const Stream& stream) {
    const double inlet = s.node[at(stream.up)];
    if (stream.source >= 0) return source_outlet(system.sources[at(stream.source)], stream, inlet).temperature;
    if (stream.emitter < 0) return pipe_outlet(stream, inlet);
    const auto room = at(system.emitters[at(stream.emitter)].room);
    return inlet - s.share[room] * emitter_at(s, system, stream, inlet, s.room[room]).output / stream.capacity;
}

TemperatureOutcome sweep_temperatures(ThermalState& s, const System& system) {
    TemperatureOutcome out;
    if (s.cyclic) return out;
    s.mixed.resize(s.node.size());
    const bool rooms_settle = std::ranges::any_of(system.rooms,
                                                  [](const Room& r) { return r.control != RoomControl::fixed; });
    for (out.rounds = 1; out.rounds <= most_rounds; ++out.rounds) {
        out.last_change = pass(s, system);
        if (!rooms_settle) {
            out.found = true;
            break;
        }
        double moved = 0.0;
        for (std::size_t r = 0; r < system.rooms.size(); ++r) moved = std::max(moved, settle_room(s, system, r));
        // If no room moved, the pass over the nodes already used the present room temperatures.
        if (moved <= settled) {
            out.found = true;
            break;
        }
        out.last_change = std::max(out.last_change, moved);
    }
    out.found = out.found && sources_meet(s, system);
    return out;
}

}  // namespace loopfolio::network
