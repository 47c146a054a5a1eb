// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/printed.hpp"

#include "loopfolio/design/air.hpp"
#include "texts/air.hpp"

namespace loopfolio::tests {

namespace {

/// Rooms whose air the job tells in one way or another.
Indices rooms_with_air(const Printing& p) {
    Indices out;
    for (std::size_t i = 0; i < p.job.rooms.size(); ++i) {
        const auto& room = p.job.rooms[i];
        if (room.heated && (room.fabric || !room.elements.empty())) out.push_back(i);
    }
    return out;
}

Power heat_of_air(const Printing& p, std::size_t i, AirChangeRate rate) {
    const auto& room = p.job.rooms[i];
    const double kelvin = room.temperature.value.celsius() - p.job.conditions.outdoor.value.celsius();
    const double volume = room.floor_area.value.si() * room.ceiling_height.value.si();
    return unit::watt(0.34 * rate.in(unit::per_hour)*volume * kelvin);
}

ExpectedTable air_side_by_side(const Printing& p) {
    using namespace texts::air;
    const auto& w = p.words;
    const auto& air = p.s.air;
    const auto rows = rooms_with_air(p);
    using Way = std::optional<study::AirLoss> study::RoomAirLine::*;
    const auto rate = [&](Way way) {
        return [&air, way](std::size_t i) {
            const auto& line = air.rooms[i].*way;
            return line ? std::optional{line->rate} : std::nullopt;
        };
    };
    const auto loss = [&](Way way) {
        return [&p, &air, way](std::size_t i) {
            const auto& line = air.rooms[i].*way;
            return line ? std::optional{heat_of_air(p, i, line->rate)} : std::nullopt;
        };
    };
    const auto house = [&](const study::HouseAirLine& line) {
        std::vector<std::string> out{cell(line.rooms, unit::watt, 0), cell(line.at_once, unit::watt, 0)};
        out.push_back(line.source_load ? cell(*line.source_load, unit::watt, 0) : no_figure);
        return out;
    };
    const std::vector<std::string> empty(3);
    ExpectedTable t{rows};
    using Line = study::RoomAirLine;
    return t.figures(w(column_standard{}), unit::per_hour, 2, rate(&Line::standard), empty)
        .figures(w(column_standard_loss{}), unit::watt, 0, loss(&Line::standard), house(air.standard))
        .figures(w(column_replaced{}), unit::per_hour, 2, rate(&Line::replaced), empty)
        .figures(w(column_replaced_loss{}), unit::watt, 0, loss(&Line::replaced), house(air.replaced))
        .figures(w(column_stated{}), unit::per_hour, 2, rate(&Line::stated), empty)
        .figures(w(column_stated_loss{}), unit::watt, 0, loss(&Line::stated), empty)
        .figures(w(column_counted{}), unit::watt, 0, loss(&Line::counted), house(air.counted));
}

ExpectedTable air_steps(const Printing& p) {
    using namespace texts::air;
    Indices rows;
    for (const std::size_t i : rooms_with_air(p)) {
        if (p.job.rooms[i].house_air.given()) rows.push_back(i);
    }
    const auto& w = p.words;
    constexpr const auto& flow = unit::cubic_metre_per_hour;
    const auto of = [&](VolumeFlow design::RoomAir::*part) {
        return [&p, part](std::size_t i) { return p.d.air.rooms[i].*part; };
    };
    ExpectedTable t{rows};
    using Room = design::RoomAir;
    return t
        .figures(w(column_outside{}), unit::square_metre, 1,
                 [&](std::size_t i) { return design::outside_area(p.job.rooms[i]); })
        .figures(w(column_leakage{}), flow, 1, of(&Room::leakage))
        .figures(w(column_windward{}), flow, 1, of(&Room::through_envelope))
        .figures(w(column_minimum{}), flow, 1, of(&Room::minimum))
        .figures(w(column_fans{}), flow, 1, of(&Room::technical))
        .figures(w(column_outdoor{}), flow, 1, of(&Room::outdoor))
        .figures(w(column_in_house{}), flow, 1, of(&Room::outdoor_in_house));
}

}  // namespace

void add_air_tables(const Printing& p, TableChecks& out) {
    out[p.words(texts::air::caption{})] = [p] { return air_side_by_side(p); };
    out[p.words(texts::air::steps_caption{})] = [p] { return air_steps(p); };
}

}  // namespace loopfolio::tests
