// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "texts/air.hpp"
#include "loopfolio/reference/edition.hpp"
#include "loopfolio/reference/ventilation.hpp"
#include "report/assessor/assessor_blocks.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::air;
using study::AirLoss;
using study::HouseAirLine;

std::string edition_title(std::string_view key) {
    const auto* edition = reference::find_edition(key);
    return edition != nullptr ? std::string{edition->title} : std::string{key};
}

std::string standard_title() { return edition_title(reference::edition_of(reference::AirBy::en_12831_2017)); }

std::string permeability_text(const Context& c) {
    return text(c.job.conditions.air_permeability.value, unit::cubic_metre_per_hour_square_metre, 1);
}

/// Where the permeability comes from; empty where no room takes its air from the standard.
std::string permeability_words(const Context& c) {
    const auto& conditions = c.job.conditions;
    const auto& permeability = conditions.air_permeability;
    if (!permeability.given()) return {};
    std::string source = source_reference(c, permeability.source);
    switch (permeability.basis) {
        case Basis::derived:
            return c.words(permeability_converted{.rate = text(conditions.leakage_at_50_pa.value, unit::per_hour, 1),
                                                  .volume = text(c.design.air.volume, unit::cubic_metre, 0),
                                                  .envelope = text(c.design.air.zone.envelope, unit::square_metre, 0),
                                                  .permeability = permeability_text(c),
                                                  .source = std::move(source)});
        case Basis::default_value:
            return c.words(permeability_not_tested{.permeability = permeability_text(c), .source = std::move(source)});
        case Basis::absent:
        case Basis::measured:
        case Basis::document:
        case Basis::assumed: break;
    }
    return c.words(permeability_tested{.permeability = permeability_text(c), .source = std::move(source)});
}

std::string rate_of(const std::optional<AirLoss>& air) {
    return air ? figure(air->rate, unit::per_hour, 2) : std::string{"\u2013"};
}
std::string loss_of(const std::optional<AirLoss>& air) {
    return air ? figure(air->loss, unit::watt, 0) : std::string{"\u2013"};
}

Table side_by_side(const Context& c) {
    const auto& air = c.study.air;
    Table table;
    table.caption = c.words(caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_room{})),
                     figure_column(c.words(column_standard{}), "1/h"),
                     figure_column(c.words(column_standard_loss{}), "W"),
                     figure_column(c.words(column_replaced{}), "1/h"),
                     figure_column(c.words(column_replaced_loss{}), "W"),
                     figure_column(c.words(column_stated{}), "1/h"),
                     figure_column(c.words(column_stated_loss{}), "W"),
                     figure_column(c.words(column_counted{}), "W")};
    for (std::size_t i = 0; i < air.rooms.size(); ++i) {
        const auto& line = air.rooms[i];
        if (!line.standard) continue;
        table.rows.push_back(
            row({name_of(c.job.rooms[i]), rate_of(line.standard), loss_of(line.standard), rate_of(line.replaced),
                 loss_of(line.replaced), rate_of(line.stated), loss_of(line.stated), loss_of(line.counted)}));
    }
    const auto house = [&](std::string name, auto part) {
        table.rows.push_back(
            sum_row({std::move(name), "", figure(air.standard.*part, unit::watt, 0), "",
                     figure(air.replaced.*part, unit::watt, 0), "", "", figure(air.counted.*part, unit::watt, 0)}));
    };
    house(c.words(sum_of_rooms{}), &HouseAirLine::rooms);
    house(c.words(at_once{}), &HouseAirLine::at_once);
    house(c.words(source_load{}), &HouseAirLine::source_load);
    table.note = c.words(
        texts::air::note{.standard = standard_title(), .replaced = edition_title(air.replaced_source)});
    return table;
}

Table steps_table(const Context& c) {
    const auto& house = c.design.air;
    const auto flow = [](VolumeFlow value) { return figure(value, unit::cubic_metre_per_hour, 1); };
    Table table;
    table.caption = c.words(steps_caption{});
    table.compact = true;
    table.columns = {words_column(c.words(column_room{})), figure_column(c.words(column_outside{}), "m²")};
    for (auto head : {c.words(column_leakage{}), c.words(column_windward{}), c.words(column_minimum{}),
                      c.words(column_fans{}), c.words(column_outdoor{}), c.words(column_in_house{})}) {
        table.columns.push_back(figure_column(std::move(head), "m³/h"));
    }
    for (std::size_t i = 0; i < house.rooms.size(); ++i) {
        const auto& room = house.rooms[i];
        if (!room.by_standard) continue;
        table.rows.push_back(row({name_of(c.job.rooms[i]), figure(room.envelope, unit::square_metre, 1),
                                  flow(room.leakage), flow(room.through_envelope), flow(room.minimum),
                                  flow(room.technical), flow(room.outdoor), flow(room.outdoor_in_house)}));
    }
    const auto& standard = reference::standard_air();
    table.note = c.words(steps_note{.permeability = permeability_text(c),
                                    .factor = trimmed(house.zone.volume_flow_factor, 3),
                                    .direction = trimmed(standard.direction_factor, 1),
                                    .share = text(house.house_share, unit::percent, 0)});
    if (house.zone.extract + house.zone.combustion != house.zone.supply) {
        const auto& air = house.air;
        table.note += " " + c.words(steps_unbalanced{.taken = text(house.taken_out, unit::cubic_metre_per_hour, 0),
                                                     .brought = text(house.zone.supply, unit::cubic_metre_per_hour, 0),
                                                     .left = text(air.adjustment, unit::percent, 0)});
    }
    return table;
}

}  // namespace

Blocks air_of_rooms(const Context& c) {
    Blocks out;
    if (!c.study.air.any) return out;
    std::string said = c.words(explained{.standard = standard_title()});
    if (const auto permeability = permeability_words(c); !permeability.empty()) said += " " + permeability;
    say(out, said + " " + c.words(counts_as_envelope{}));
    const auto by = c.job.conditions.air_by;
    if (by != reference::AirBy::en_12831_2017)
        say(out, c.words(design_by_replaced{.replaced = edition_title(reference::edition_of(by))}));
    out.push_back(side_by_side(c));
    if (auto steps = steps_table(c); !steps.rows.empty()) out.push_back(std::move(steps));
    return out;
}

}  // namespace loopfolio::report
