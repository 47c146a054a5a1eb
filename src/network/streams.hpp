// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/thermal.hpp"
#include "network/at.hpp"

#include <vector>

namespace loopfolio::network {

/// A link in the heat calculation: water that flows from one node to another. All temperatures are in kelvin.
struct Stream {
    int link = 0;
    int up = 0;
    int down = 0;
    double flow = 0.0;      // kg/s, > 0
    double capacity = 0.0;  // W/K
    int emitter = -1;
    int source = -1;
    double keeps = 1.0;  // share of the excess over ambient that remains at the end of a pipe
    double ambient = 0.0;
};

/// The heat from an emitter's water at one inlet and one room temperature.
struct EmitterState {
    double output = 0.0;  // W
    double slope = 0.0;   // W/K, for each kelvin of inlet temperature over room temperature
};

/// The last state that was calculated for an emitter, and the temperatures that it was calculated for.
struct EmitterMemory {
    double inlet = 0.0;
    double room = 0.0;
    double capacity = -1.0;
    EmitterState state;
};

/// The moving water, by the node that it leaves, and the temperatures found so far.
struct ThermalState {
    std::vector<Stream> streams;  // sorted by `up`
    std::vector<Stream> unsorted;
    std::vector<int> first;      // by node: its first stream; one more at the end
    std::vector<int> of_link;    // stream of a link; -1 where it has no flow
    std::vector<double> inflow;  // by node, kg/s
    // Nodes, each after those that feed it, with sources cut; incomplete where there is a cycle.
    std::vector<int> order;
    bool cyclic = false;

    std::vector<double> node;        // temperature
    std::vector<double> room;        // temperature
    std::vector<double> share;       // by room: share of its emitters' output that it takes
    std::vector<double> need;        // by room, W
    std::vector<int> emitter_first;  // first emitter of each room, packed
    std::vector<int> emitter_of_room;
    std::vector<EmitterMemory> memory;
    std::vector<double> mixed;  // sum of flow times temperature into a node
    std::vector<int> waiting;   // number of streams still to arrive at a node
    double standing = 0.0;      // temperature assigned to water that does not move

    [[nodiscard]] std::span<const int> emitters_of(std::size_t room_index) const {
        const auto from = at(emitter_first[room_index]);
        return std::span{emitter_of_room}.subspan(from, at(emitter_first[room_index + 1]) - from);
    }
};

/// Directs the links by their flows and orders the nodes. Keeps the room temperatures of the same system as a starting
/// point.
void set_streams(ThermalState& state, const System& system, std::span<const MassFlow> flow, SpecificHeat cp);

/// State of a stream's emitter at one inlet and one room temperature.
[[nodiscard]] EmitterState emitter_at(ThermalState& state, const System& system, const Stream& stream, double inlet,
                                      double room);

/// Share of the heat from an emitter's water that goes to its room.
[[nodiscard]] inline double to_room(const Emitter& emitter) { return 1.0 / (1.0 + emitter.beyond); }

/// Outlet temperature of a stream that is neither an emitter nor a limited source, and its slope with the inlet
/// temperature.
[[nodiscard]] inline double pipe_outlet(const Stream& s, double inlet) {
    return s.ambient + (inlet - s.ambient) * s.keeps;
}

/// Finds a room's temperature and share for the present inlet temperatures. Returns how far it moved: kelvin, or share
/// of output times 100.
double settle_room(ThermalState& state, const System& system, std::size_t room);

/// The emitter's stream; null where it has no flow.
[[nodiscard]] const Stream* stream_of(const ThermalState& state, const Emitter& emitter);

/// The output of all emitters of a room together, with the room at this temperature.
[[nodiscard]] EmitterState room_at(ThermalState& state, const System& system, std::size_t room, double temperature);

}  // namespace loopfolio::network
