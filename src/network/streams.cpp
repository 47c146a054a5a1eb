// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/streams.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

constexpr double still_share = 1e-9;  // of the largest flow: a smaller flow counts as none
constexpr double still = 1e-12;       // kg/s: and so does a flow below this

void add_streams(ThermalState& s, const System& system, std::span<const MassFlow> flow, SpecificHeat cp) {
    double most = 0.0;
    for (const auto m : flow) most = std::max(most, std::abs(m.si()));
    s.unsorted.clear();
    for (std::size_t i = 0; i < flow.size(); ++i) {
        const double m = flow[i].si();
        if (std::abs(m) <= std::max(still_share * most, still)) continue;
        const Link& link = system.pipework.links[i];
        Stream stream;
        stream.link = static_cast<int>(i);
        stream.up = m > 0.0 ? link.from : link.to;
        stream.down = m > 0.0 ? link.to : link.from;
        stream.flow = std::abs(m);
        stream.capacity = stream.flow * cp.si();
        if (!system.pipe_loss.empty() && system.pipe_loss[i].per_metre.si() > 0.0) {
            const auto& loss = system.pipe_loss[i];
            stream.keeps = std::exp(-(loss.per_metre * link.length).si() / stream.capacity);
            stream.ambient = loss.ambient.kelvin();
        }
        s.unsorted.push_back(stream);
    }
}

/// Sorts the streams by the node that they leave, and finds the stream of each link.
void sort_streams(ThermalState& s, std::size_t nodes, std::size_t links) {
    s.first.assign(nodes + 1, 0);
    for (const auto& stream : s.unsorted) ++s.first[at(stream.up) + 1];
    for (std::size_t n = 0; n < nodes; ++n) s.first[n + 1] += s.first[n];
    s.waiting.assign(s.first.begin(), s.first.end());
    s.streams.resize(s.unsorted.size());
    for (const auto& stream : s.unsorted) s.streams[at(s.waiting[at(stream.up)]++)] = stream;
    s.of_link.assign(links, -1);
    s.inflow.assign(nodes, 0.0);
    for (std::size_t i = 0; i < s.streams.size(); ++i) {
        s.of_link[at(s.streams[i].link)] = static_cast<int>(i);
        s.inflow[at(s.streams[i].down)] += s.streams[i].flow;
    }
}

/// Orders the nodes in the direction of flow (Kahn). The water that leaves a source does not depend on the water that
/// enters it.
void order_nodes(ThermalState& s, std::size_t nodes) {
    s.waiting.assign(nodes, 0);
    for (const auto& stream : s.streams) {
        if (stream.source < 0) ++s.waiting[at(stream.down)];
    }
    s.order.clear();
    for (std::size_t n = 0; n < nodes; ++n) {
        if (s.waiting[n] == 0) s.order.push_back(static_cast<int>(n));
    }
    for (std::size_t k = 0; k < s.order.size(); ++k) {
        const auto n = at(s.order[k]);
        for (auto i = at(s.first[n]); i < at(s.first[n + 1]); ++i) {
            const Stream& stream = s.streams[i];
            if (stream.source < 0 && --s.waiting[at(stream.down)] == 0) s.order.push_back(stream.down);
        }
    }
    s.cyclic = s.order.size() != nodes;
}

void set_rooms(ThermalState& s, const System& system) {
    const std::size_t rooms = system.rooms.size();
    const bool keep = s.room.size() == rooms;
    s.room.resize(rooms);
    s.share.resize(rooms, 1.0);
    s.need.resize(rooms);
    for (std::size_t r = 0; r < rooms; ++r) {
        const Room& room = system.rooms[r];
        if (!keep || room.control == RoomControl::fixed) {
            s.room[r] = room.set_temperature.kelvin();
            s.share[r] = 1.0;
        }
        const Power loss = room.loss * (room.set_temperature - system.outdoor);
        s.need[r] = std::max(0.0, (loss - room.gains).si());
    }
    s.emitter_first.assign(rooms + 1, 0);
    for (const auto& e : system.emitters) ++s.emitter_first[at(e.room) + 1];
    for (std::size_t r = 0; r < rooms; ++r) s.emitter_first[r + 1] += s.emitter_first[r];
    s.emitter_of_room.resize(system.emitters.size());
    s.waiting.assign(s.emitter_first.begin(), s.emitter_first.end());
    for (std::size_t e = 0; e < system.emitters.size(); ++e) {
        const auto place = at(s.waiting[at(system.emitters[e].room)]++);
        s.emitter_of_room[place] = static_cast<int>(e);
    }
}

/// The temperature at which a room's loss equals the output of its emitters. The balance rises with the temperature, so
/// Newton's method is kept within a bracket that shrinks with every step.
double balanced_temperature(ThermalState& s, const System& system, std::size_t r) {
    const Room& room = system.rooms[r];
    const double loss = room.loss.si();
    const double outdoor = system.outdoor.kelvin();
    double low = outdoor + room.gains.si() / loss;
    double high = low;
    for (const int e : s.emitters_of(r)) {
        const Stream* stream = stream_of(s, system.emitters[at(e)]);
        if (stream != nullptr) high = std::max(high, s.node[at(stream->up)]);
    }
    double t = std::clamp(s.room[r], low, high);
    for (int i = 0; i < 100 && high - low > 1e-12; ++i) {
        const EmitterState given = room_at(s, system, r, t);
        const double over = loss * (t - outdoor) - room.gains.si() - given.output;
        (over > 0.0 ? high : low) = t;
        double next = t - over / (loss + given.slope);
        if (!(next >= low && next <= high)) next = 0.5 * (low + high);
        const double moved = std::abs(next - t);
        t = next;
        if (moved <= 1e-11) break;
    }
    return t;
}

EmitterState work_out(const Emitter& emitter, const Stream& stream, double inlet, double room) {
    const double excess = inlet - room;
    const auto cp = SpecificHeat::from_si(stream.capacity / stream.flow);
    const physics::EmitterRating rating{(1.0 + emitter.beyond) * emitter.rating.output_at_50k, emitter.rating.exponent};
    const auto found = physics::balance_at_flow(rating, MassFlow::from_si(stream.flow), cp,
                                                Temperature::from_kelvin(inlet), Temperature::from_kelvin(room));
    if (!found) return {};
    // u = ln(inlet excess over outlet excess) solves n ln u + (1 - n) ln(1 - exp(-u)) + (1 - n) ln excess = constant.
    // This is its derivative by the excess.
    const double n = emitter.rating.exponent;
    const double left = (found->return_temperature.kelvin() - room) / excess;
    const double given = 1.0 - left;
    if (!(left > 1e-300) || !(given > 0.0)) return {found->output.si(), stream.capacity * given};
    const double u = -std::log(left);
    const double u_slope = (n - 1.0) / (excess * (n / u + (1.0 - n) * left / given));
    return {found->output.si(), stream.capacity * (given + excess * left * u_slope)};
}

}  // namespace

void set_streams(ThermalState& s, const System& system, std::span<const MassFlow> flow, SpecificHeat cp) {
    const auto nodes = at(system.pipework.nodes);
    add_streams(s, system, flow, cp);
    sort_streams(s, nodes, flow.size());
    for (std::size_t e = 0; e < system.emitters.size(); ++e) {
        const int stream = s.of_link[at(system.emitters[e].link)];
        if (stream >= 0) s.streams[at(stream)].emitter = static_cast<int>(e);
    }
    s.standing = 0.0;
    for (std::size_t i = 0; i < system.sources.size(); ++i) {
        const int stream = s.of_link[at(system.sources[i].link)];
        if (stream >= 0) s.streams[at(stream)].source = static_cast<int>(i);
        s.standing = std::max(s.standing, system.sources[i].flow_temperature.kelvin());
    }
    s.memory.assign(system.emitters.size(), {});
    order_nodes(s, nodes);
    set_rooms(s, system);
    if (s.node.size() != nodes) s.node.assign(nodes, s.standing);
}

EmitterState emitter_at(ThermalState& s, const System& system, const Stream& stream, double inlet, double room) {
    EmitterMemory& m = s.memory[at(stream.emitter)];
    if (m.inlet == inlet && m.room == room && m.capacity == stream.capacity) return m.state;
    m = {inlet, room, stream.capacity, work_out(system.emitters[at(stream.emitter)], stream, inlet, room)};
    return m.state;
}

const Stream* stream_of(const ThermalState& s, const Emitter& emitter) {
    const int stream = s.of_link[at(emitter.link)];
    return stream < 0 ? nullptr : &s.streams[at(stream)];
}

EmitterState room_at(ThermalState& s, const System& system, std::size_t room, double temperature) {
    EmitterState sum;
    for (const int e : s.emitters_of(room)) {
        const Emitter& emitter = system.emitters[at(e)];
        const Stream* stream = stream_of(s, emitter);
        if (stream == nullptr) continue;
        const EmitterState one = emitter_at(s, system, *stream, s.node[at(stream->up)], temperature);
        sum.output += one.output * to_room(emitter);
        sum.slope += one.slope * to_room(emitter);
    }
    return sum;
}

double settle_room(ThermalState& s, const System& system, std::size_t r) {
    const Room& room = system.rooms[r];
    if (room.control == RoomControl::fixed) return 0.0;
    double temperature = room.set_temperature.kelvin();
    double share = 1.0;
    bool meets = false;
    if (room.control == RoomControl::held) {
        const double available = room_at(s, system, r, temperature).output;
        meets = available >= s.need[r];
        if (meets) share = available > 0.0 ? s.need[r] / available : 0.0;
    }
    if (!meets) temperature = balanced_temperature(s, system, r);
    const double moved = std::abs(temperature - s.room[r]) + 100.0 * std::abs(share - s.share[r]);
    s.room[r] = temperature;
    s.share[r] = share;
    return moved;
}

}  // namespace loopfolio::network
