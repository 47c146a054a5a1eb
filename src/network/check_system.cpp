// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/check_system.hpp"

#include "network/refusals.hpp"

namespace loopfolio::network {

namespace {

constexpr double coldest = 200.0;  // K
constexpr double hottest = 400.0;

void check_room(Refusals& r, const Room& room) {
    r.want("set_temperature", room.set_temperature.kelvin(), coldest, hottest);
    r.want("loss", room.loss.si(), 0.0);
    r.want("gains", room.gains.si(), 0.0);
    if (room.control != RoomControl::fixed && room.loss.si() == 0.0) r.add(FindingKind::room_without_loss);
}

void check_emitter(Refusals& r, const Emitter& e) {
    r.want("output_at_50k", e.rating.output_at_50k.si(), 1e-6);
    r.want("exponent", e.rating.exponent, 1.0, 1.6);
    r.want("beyond", e.beyond, 0.0);
}

void check_source(Refusals& r, const Source& source) {
    r.want("flow_temperature", source.flow_temperature.kelvin(), coldest, hottest);
    if (source.capacity) r.want("capacity", source.capacity->si(), 0.0);
    r.want("minimum_flow", source.minimum_flow.si(), 0.0);
}

/// A link belongs to at most one emitter or source, and must then not have a pipe loss.
void check_uses(Refusals& r, const System& system) {
    std::vector<char> used(system.pipework.links.size(), 0);
    const auto take = [&](int link, int index) {
        r.about_index(index);
        if (!r.want_index("link", link, 0, used.size())) return;
        if (used[at(link)] != 0) r.add(FindingKind::bad_value, "link", link);
        used[at(link)] = 1;
    };
    for (std::size_t i = 0; i < system.emitters.size(); ++i) {
        take(system.emitters[i].link, static_cast<int>(i));
        r.want_index("room", system.emitters[i].room, 0, system.rooms.size());
    }
    for (std::size_t i = 0; i < system.sources.size(); ++i) take(system.sources[i].link, static_cast<int>(i));
    if (system.pipe_loss.empty()) return;
    r.about_index(-1);
    if (system.pipe_loss.size() != used.size()) {
        r.add(FindingKind::index_out_of_range, "pipe_loss", static_cast<double>(system.pipe_loss.size()));
        return;
    }
    for (std::size_t i = 0; i < used.size(); ++i) {
        r.about_link(static_cast<int>(i));
        r.want("per_metre", system.pipe_loss[i].per_metre.si(), 0.0);
        r.want("ambient", system.pipe_loss[i].ambient.kelvin(), coldest, hottest);
        if (used[i] != 0 && system.pipe_loss[i].per_metre.si() > 0.0) r.add(FindingKind::pipe_loss_not_allowed);
    }
}

}  // namespace

Findings refusals_of(const System& system) {
    Findings out;
    Refusals r{out};
    r.want("outdoor", system.outdoor.kelvin(), coldest, hottest);
    if (system.sources.empty()) r.add(FindingKind::bad_value, "sources", 0.0);
    for (const auto m : system.pipework.drawn) {
        if (m.si() != 0.0) {
            r.add(FindingKind::demand_in_heat, "drawn", m.si());
            break;
        }
    }
    check_uses(r, system);
    for (std::size_t i = 0; i < system.rooms.size(); ++i) {
        r.about_index(static_cast<int>(i));
        check_room(r, system.rooms[i]);
    }
    for (std::size_t i = 0; i < system.emitters.size(); ++i) {
        r.about_index(static_cast<int>(i));
        check_emitter(r, system.emitters[i]);
    }
    for (std::size_t i = 0; i < system.sources.size(); ++i) {
        r.about_index(static_cast<int>(i));
        check_source(r, system.sources[i]);
    }
    return out;
}

Findings refusals_of(const System& system, std::span<const MassFlow> flow, SpecificHeat cp) {
    Findings out = refusals_of(system);
    Refusals r{out};
    r.want("cp", cp.si(), 1e-3);
    if (flow.size() != system.pipework.links.size()) {
        r.add(FindingKind::index_out_of_range, "flow", static_cast<double>(flow.size()));
    }
    for (std::size_t i = 0; i < flow.size(); ++i) {
        r.about_link(static_cast<int>(i));
        r.want("flow", std::abs(flow[i].si()), 0.0);
    }
    return out;
}

}  // namespace loopfolio::network
