// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/air.hpp"

#include "design/resolve/derive.hpp"
#include "design/resolve/fill.hpp"
#include "design/resolve/fill_keys.hpp"
#include "loopfolio/reference/allowances.hpp"
#include "loopfolio/reference/ventilation.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace {

using reference::AirBy;

bool has_outside(const job::Room& room) { return room.fabric || !room.elements.empty(); }

/// The era of the oldest part of the house that is told.
std::optional<reference::Era> oldest_era(const job::Job& job) {
    std::optional<reference::Era> out;
    for (const auto& room : job.rooms) {
        if (room.heated && room.fabric) out = std::min(out.value_or(room.fabric->era), room.fabric->era);
    }
    return out;
}

/// A figure that every nation of the United Kingdom has holds for a job that states none.
reference::Cited<Velocity> permeability_of(const job::Job& job) {
    const auto stated = job.property.nation;
    const auto nation = stated == reference::Nation::not_stated ? reference::Nation::england : stated;
    return reference::untested_permeability(nation, job.identity.design_date, oldest_era(job));
}

void fill_from_table(job::Room& room, const job::Conditions& c) {
    if (room.air_changes.given() || room.ventilation) return;
    fill(room.air_changes, reference::replaced_air_changes(c.air_by, room.use, c.guide_category));
}

VolumeFlow flow_of(const Input<AirChangeRate>& rate, Volume volume) {
    return rate.given() ? rate.value * volume : VolumeFlow{};
}

RoomAir start_of(const job::Room& room, const job::Conditions& c) {
    RoomAir out;
    out.volume = room.floor_area.value * room.ceiling_height.value;
    out.in_zone = room.heated && has_outside(room);
    out.by_standard = out.in_zone && air_by_standard(room, c);
    if (!room.heated) return out;
    if (out.in_zone) out.envelope = outside_area(room);
    if (room.ventilation) {
        const auto& fans = *room.ventilation;
        out.supply = flow_of(fans.supply, out.volume);
        out.extract = fans.extract.given() ? flow_of(fans.extract, out.volume) : out.supply;
    }
    if (room.flue_air.given()) out.combustion = room.flue_air.value;
    out.technical = physics::technical_air(out.supply, out.extract, out.combustion);
    out.minimum = flow_of(room.minimum_air, out.volume);
    return out;
}

void take_leakage(RoomAir& room, const HouseAir& house) {
    room.leakage = physics::part_of_room(house.air, house.zone, room.envelope);
    room.through_envelope = physics::air_of_room(house.air, room.leakage, house.direction_factor);
    if (!room.by_standard) return;
    // Below zero where fans bring more than the minimum: what leaks is then the greater.
    room.outdoor = std::max(room.through_envelope, room.minimum - room.technical);
    room.outdoor_in_house = std::max(room.leakage, house.house_share * room.minimum - room.technical);
}

/// Air changes at outdoor temperature that ask for as much heat; nothing where a figure of the fans is out of range.
std::optional<AirChangeRate> to_warm(const job::Room& room, VolumeFlow outdoor, Volume volume) {
    if (volume <= Volume{}) return {};
    physics::MechanicalVentilation air{{}, 0.0, outdoor / volume};
    if (room.ventilation) {
        air.supply = room.ventilation->supply.value;
        air.recovery = room.ventilation->recovery.value;
    }
    return physics::air_changes_to_warm(air);
}

void derive_permeability(job::Job& job) {
    auto& c = job.conditions;
    if (!c.leakage_at_50_pa.given() || c.air_by != AirBy::en_12831_2017) return;
    c.air_permeability = {};
    const HouseAir house = air_of(job);
    if (house.zone.envelope <= Area{}) return;
    c.air_permeability = Input<Velocity>::derived(c.leakage_at_50_pa.value * house.volume / house.zone.envelope,
                                                  c.leakage_at_50_pa.source);
}

/// Fans whose leaks are stated, or follow from the test by the replaced way.
void derive_by_fans(job::Room& room, const job::Conditions& c) {
    if (!room.ventilation) return;
    auto& fans = *room.ventilation;
    if (c.air_by != AirBy::en_12831_2017 && c.leakage_at_50_pa.given() && !fans.infiltration.given()) {
        const auto rate = physics::leakage_by_divisor(c.leakage_at_50_pa.value, c.leakage_divisor.value);
        if (rate) fans.infiltration = Input<AirChangeRate>::derived(*rate, c.leakage_divisor.source);
    }
    const auto rate = physics::air_changes_to_warm({fans.supply.value, fans.recovery.value, fans.infiltration.value});
    if (rate) room.air_changes = Input<AirChangeRate>::derived(*rate, "");
}

}  // namespace

bool air_by_standard(const job::Room& room, const job::Conditions& conditions) {
    if (conditions.air_by != AirBy::en_12831_2017 || !room.heated || !has_outside(room)) return false;
    if (room.ventilation && room.ventilation->infiltration.given()) return false;
    return !room.air_changes.given() || room.air_changes.basis == Basis::derived;
}

Area outside_area(const job::Room& room) {
    Area out;
    if (!room.elements.empty()) {
        for (const auto& e : room.elements) {
            const bool over_void = e.slab && e.slab->under;
            if (e.beyond == job::Beyond::outside || e.beyond == job::Beyond::unheated || over_void) out += e.area.value;
        }
        return out;
    }
    if (!room.fabric) return out;
    // The square room of the area method.
    const Area floor = room.floor_area.value;
    const Length side = Length::from_si(std::sqrt(floor.si()));
    out = room.fabric->outside_walls * side * room.ceiling_height.value;
    if (room.fabric->roof != reference::RoofKind::none) out += floor;
    const auto below = room.fabric->floor;
    if (below == reference::FloorKind::exposed || below == reference::FloorKind::suspended) out += floor;
    return out;
}

HouseAir air_of(const job::Job& job) {
    const auto& standard = reference::standard_air();
    const auto& c = job.conditions;
    HouseAir out;
    out.direction_factor = standard.direction_factor;
    out.zone.volume_flow_factor = c.volume_flow_factor.given() ? c.volume_flow_factor.value
                                                               : standard.volume_flow_factor.value;
    out.zone.facade_factor = c.exposed_sides == 1 ? standard.facade_factor_one : standard.facade_factor_more;
    if (c.air_permeability.given()) out.zone.permeability = c.air_permeability.value;
    int count = 0;
    for (const auto& room : job.rooms) {
        const RoomAir& air = out.rooms.emplace_back(start_of(room, c));
        out.zone.envelope += air.envelope;
        out.zone.supply += air.supply;
        out.zone.extract += air.extract;
        out.zone.combustion += air.combustion;
        if (!air.in_zone) continue;
        out.volume += air.volume;
        ++count;
    }
    out.taken_out = out.zone.extract + out.zone.combustion;
    if (count > 1) out.house_share = standard.house_share;
    if (const auto air = physics::air_of_zone(out.zone)) out.air = *air;
    for (auto& room : out.rooms) take_leakage(room, out);
    return out;
}

void fill_air(job::Job& job) {
    auto& c = job.conditions;
    const bool standard = c.air_by == AirBy::en_12831_2017;
    if (!standard && c.leakage_at_50_pa.given()) fill(c.leakage_divisor, reference::allowances().leakage_divisor);
    bool any = false;
    for (auto& room : job.rooms) {
        if (room.flue != reference::Flue::none) fill(room.flue_air, reference::flue_air(room.flue));
        if (!standard) fill_from_table(room, c);
        if (!air_by_standard(room, c)) continue;
        fill(room.minimum_air, reference::minimum_air(room.use));
        any = true;
    }
    if (!any) return;
    fill(c.volume_flow_factor, reference::standard_air().volume_flow_factor);
    if (!c.leakage_at_50_pa.given()) fill(c.air_permeability, permeability_of(job));
}

void derive_air(job::Job& job) {
    derive_permeability(job);
    const HouseAir house = air_of(job);
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        auto& room = job.rooms[i];
        const auto& air = house.rooms[i];
        room.house_air = {};
        if (!air.by_standard) {
            derive_by_fans(room, job.conditions);
            continue;
        }
        const auto in_room = to_warm(room, air.outdoor, air.volume);
        const auto in_house = to_warm(room, air.outdoor_in_house, air.volume);
        if (!in_room || !in_house) continue;
        room.air_changes = Input<AirChangeRate>::derived(*in_room, std::string{reference::standard_air().source});
        room.house_air = Input<AirChangeRate>::derived(*in_house, std::string{reference::standard_air().source});
    }
}

}  // namespace loopfolio::design
