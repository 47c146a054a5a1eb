// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/thermal.hpp"
#include "network/at.hpp"

#include <vector>

namespace loopfolio::network {

/// A link as heat sees it: water on its way from one node to another. Temperatures are in kelvin
/// throughout.
struct Stream {
    int link = 0;
    int up = 0;
    int down = 0;
    double flow = 0.0;         // kg/s, > 0
    double capacity = 0.0;     // W/K
    int emitter = -1;
    int source = -1;
    double keeps = 1.0;        // share of the excess over ambient that is left at the end of a pipe
    double ambient = 0.0;
};

/// What an emitter's water gives at an inlet and a room temperature.
struct EmitterState {
    double output = 0.0;       // W
    double slope = 0.0;        // W/K, by excess of the inlet over the room
};

/// The last state that an emitter was asked for, and what for.
struct EmitterMemory {
    double inlet = 0.0;
    double room = 0.0;
    double capacity = -1.0;
    EmitterState state;
};

/// The moving water, by node it leaves, and what is known of temperatures so far.
struct ThermalState {
    std::vector<Stream> streams;       // sorted by `up`
    std::vector<Stream> unsorted;
    std::vector<int> first;            // by node: its first stream; one more at the end
    std::vector<int> of_link;          // stream of a link; -1 where it stands still
    std::vector<double> inflow;        // by node, kg/s
    std::vector<int> order;   // nodes after those that feed them, sources cut; short where there is a cycle
    bool cyclic = false;

    std::vector<double> node;          // temperature
    std::vector<double> room;          // temperature
    std::vector<double> share;         // by room: of its emitters' output that it takes
    std::vector<double> need;          // by room, W
    std::vector<int> emitter_first;    // emitters by room, packed
    std::vector<int> emitter_of_room;
    std::vector<EmitterMemory> memory;
    std::vector<double> mixed;         // sum of flow times temperature into a node
    std::vector<int> waiting;          // streams that still have to reach a node
    double standing = 0.0;             // temperature given to water that does not move

    [[nodiscard]] std::span<const int> emitters_of(std::size_t room_index) const {
        const auto from = at(emitter_first[room_index]);
        return std::span{emitter_of_room}.subspan(from, at(emitter_first[room_index + 1]) - from);
    }
};

/// Directs the links by their flows and orders the nodes. Keeps room temperatures of the same system as a
/// start.
void set_streams(ThermalState& state, const System& system, std::span<const MassFlow> flow, SpecificHeat cp);

/// The emitter of a stream, at an inlet and a room temperature.
[[nodiscard]] EmitterState emitter_at(ThermalState& state, const System& system, const Stream& stream,
                                      double inlet, double room);

/// Share of what an emitter's water gives that goes to its room.
[[nodiscard]] inline double to_room(const Emitter& emitter) { return 1.0 / (1.0 + emitter.beyond); }

/// Where a stream that is neither emitter nor limited source ends up, and how that moves with its inlet.
[[nodiscard]] inline double pipe_outlet(const Stream& s, double inlet) {
    return s.ambient + (inlet - s.ambient) * s.keeps;
}

/// Settles a room's temperature and share on the inlet temperatures as they stand. Returns how far it
/// moved: kelvin, or share of output times 100.
double settle_room(ThermalState& state, const System& system, std::size_t room);

/// The emitter's stream; null where no water moves.
[[nodiscard]] const Stream* stream_of(const ThermalState& state, const Emitter& emitter);

/// What a room's emitters would give together with the room at this temperature.
[[nodiscard]] EmitterState room_at(ThermalState& state, const System& system, std::size_t room,
                                   double temperature);

}  // namespace loopfolio::network
