// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/air.hpp"

#include "design/resolve/fill.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/ventilation.hpp"

#include <algorithm>

namespace loopfolio::study {

namespace {

using reference::AirBy;

/// The heat that this air takes in a room.
Power heat_of(const job::Job& job, const job::Room& room, AirChangeRate rate) {
    const auto difference = std::max(room.temperature.value - job.conditions.outdoor.value, TemperatureDifference{});
    const Volume volume = room.floor_area.value * room.ceiling_height.value;
    return physics::ventilation_coefficient(reference::limits().air_heat_capacity_wh_per_m3k, rate, volume) *
           difference;
}

bool takes_air(const job::Room& room) { return room.heated && (room.fabric || !room.elements.empty()); }

bool states_air(const job::Room& room) {
    const auto& rate = room.air_changes;
    const bool leaks = room.ventilation && room.ventilation->infiltration.given();
    return takes_air(room) && (leaks || (rate.given() && rate.basis != Basis::default_value));
}

/// The same house with the air that the standard gives, whatever the job states.
design::House by_standard(const design::House& house) {
    design::House out = house;
    auto& c = out.inputs.conditions;
    c.air_by = AirBy::en_12831_2017;
    for (auto& room : out.inputs.rooms) {
        room.air_changes = {};
        if (room.ventilation) room.ventilation->infiltration = {};
    }
    design::fill_air(out.inputs);
    design::derive(out);
    return out;
}

AirBy replaced_way(const job::Job& job) {
    const auto by = job.conditions.air_by;
    return by == AirBy::en_12831_2017 ? AirBy::bs_5449_1990 : by;
}

/// The same house with the air of the replaced table in every room.
design::House by_table(const design::House& house, AirBy way) {
    design::House out = house;
    auto& c = out.inputs.conditions;
    for (auto& room : out.inputs.rooms) {
        const auto cited = reference::replaced_air_changes(way, room.use, c.guide_category);
        room.ventilation.reset();
        room.air_changes = Input<AirChangeRate>::filled(cited.value, std::string{cited.source});
    }
    c.air_by = way;
    c.leakage_at_50_pa = {};
    design::derive(out);
    return out;
}

std::optional<Power> source_load_of(const design::House& house) {
    const auto result = design::design(house, nullptr, design::Remedies::left_out);
    const auto* design = std::get_if<design::Design>(&result);
    return design != nullptr ? std::optional{design->duty.source_load} : std::nullopt;
}

/// Fills one way's line of each room, and its sums.
HouseAirLine add_way(const job::Job& job, std::vector<RoomAirLine>& lines, std::optional<AirLoss> RoomAirLine::*way) {
    HouseAirLine out;
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const auto& room = job.rooms[i];
        if (!takes_air(room) || !room.air_changes.given()) continue;
        const AirLoss line{room.air_changes.value, heat_of(job, room, room.air_changes.value)};
        lines[i].*way = line;
        out.rooms += line.loss;
        out.at_once += room.house_air.given() ? heat_of(job, room, room.house_air.value) : line.loss;
    }
    return out;
}

}  // namespace

AirComparison compare_air(const design::House& house, const design::Design& design) {
    AirComparison out;
    const auto& job = house.values;
    out.rooms.resize(job.rooms.size());
    const auto way = replaced_way(job);
    out.replaced_source = reference::edition_of(way);
    const auto standard = by_standard(house), replaced = by_table(house, way);
    out.standard = add_way(standard.values, out.rooms, &RoomAirLine::standard);
    out.replaced = add_way(replaced.values, out.rooms, &RoomAirLine::replaced);
    out.counted = add_way(job, out.rooms, &RoomAirLine::counted);
    out.standard.source_load = source_load_of(standard);
    out.replaced.source_load = source_load_of(replaced);
    out.counted.source_load = design.duty.source_load;
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        out.any = out.any || takes_air(job.rooms[i]);
        if (!states_air(house.inputs.rooms[i])) continue;
        out.stated_any = true;
        out.rooms[i].stated = out.rooms[i].counted;
    }
    return out;
}

}  // namespace loopfolio::study
