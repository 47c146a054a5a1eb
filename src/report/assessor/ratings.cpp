// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/assessor/build_ups.hpp"

#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/underfloor.hpp"
#include "report/shared/blocks.hpp"
#include "report/shared/phrases.hpp"
#include "texts/build_ups.hpp"

namespace loopfolio::report {

namespace {

using namespace texts::build_ups;

std::string watts(Power power) { return figure(power, unit::watt, 0); }

std::string stated(const Context& c, const job::Emitter& e) {
    if (e.rated_at) {
        const auto& at = e.rated_at->at;
        return c.words(texts::build_ups::rated_at{.output = text(e.rated_at->output.value, unit::watt, 0),
                                                  .flow = degrees(at.flow),
                                                  .back = degrees(at.return_),
                                                  .room = degrees(at.air)});
    }
    if (e.fan) {
        const auto& at = e.fan->at;
        return c.words(fan_at{.speed = trimmed(e.fan->speed, 2),
                              .flow = degrees(at.flow),
                              .back = degrees(at.return_),
                              .room = degrees(at.air)});
    }
    if (e.by_piece && e.by_piece->sections > 0) {
        return c.words(sections_of{.count = static_cast<std::size_t>(e.by_piece->sections),
                                   .output = text(e.by_piece->output.value, unit::watt, 0)});
    }
    if (e.by_piece) {
        return c.words(by_metre{.length = text(e.length.value, unit::metre, 2),
                                .output = text(e.by_piece->output.value, unit::watt, 0)});
    }
    return c.words(at_50_k{.output = text(e.rating.value, unit::watt, 0)});
}

std::string lowered_by(const Context& c, const job::Emitter& e) {
    std::vector<std::string> names;
    for (const auto& d : e.deratings) {
        if (const auto* row = reference::find_derating(d.name)) names.push_back(c.named(row->label));
    }
    return names.empty() ? c.words(nothing_lowers{}) : list_of(c.words, names);
}

Row rating_row(const Context& c, std::size_t i) {
    const auto& e = c.job.emitters[i];
    const auto& total = c.study.totals.emitters[i];
    const bool lowered = !e.deratings.empty();
    return row({e.id, stated(c, e), watts(lowered ? e.rating.value : e.output_at_50k.value), lowered_by(c, e),
                fixed(total.left, 2),
                lowered ? c.words(range_text{.low = fixed(total.low, 2), .high = fixed(total.high, 2)})
                        : std::string{"\u2013"},
                watts(e.output_at_50k.value)});
}

std::string remark(const Context& c, const design::FloorResult& f) {
    const bool warm = f.limit && f.flux > f.limit->flux;
    const bool too_long = f.loop > reference::loop_limits().length.value;
    if (warm && too_long) return c.words(floor_warm_and_long{});
    return warm ? c.words(floor_warm{}) : too_long ? c.words(floor_long{}) : c.words(floor_well{});
}

Row floor_row(const Context& c, std::size_t i) {
    const auto& e = c.job.emitters[i];
    const auto& r = c.design.emitters[i];
    const auto& f = *r.floor;
    const std::string dash = "\u2013";
    return row({e.id, name_of(room_of(c, r)), figure(e.floor->area.value, unit::square_metre, 1),
                figure(e.floor->pitch.value, unit::millimetre, 0),
                figure(e.floor->covering_resistance.value, unit::square_metre_kelvin_per_watt, 2),
                figure(f.transfer, unit::watt_per_square_metre_kelvin, 2),
                figure(f.flux, unit::watt_per_square_metre, 0),
                f.limit ? figure(f.limit->flux, unit::watt_per_square_metre, 0) : dash,
                figure(f.surface, unit::celsius, 1), f.warmest ? figure(*f.warmest, unit::celsius, 1) : dash,
                figure(f.surface_limit, unit::celsius, 0), f.loop > Length{} ? figure(f.loop, unit::metre, 0) : dash,
                e.floor->below ? watts(r.downward) : dash, remark(c, f)});
}

}  // namespace

Blocks emitter_ratings(const Context& c) {
    Table table;
    table.caption = c.words(ratings_caption{});
    table.compact = true;
    table.columns = {name_column(c.words(column_id{})),
                     words_column(c.words(column_stated{}), 1.3),
                     figure_column(c.words(column_rated{}), "W"),
                     words_column(c.words(column_lowered{}), 1.3),
                     figure_column(c.words(column_left{}), ""),
                     name_column(c.words(column_range{})),
                     figure_column(c.words(column_counted{}), "W")};
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        const auto& e = c.job.emitters[i];
        if (e.rated_at || e.fan || e.by_piece || !e.deratings.empty()) table.rows.push_back(rating_row(c, i));
    }
    if (table.rows.empty()) return {};
    table.note = c.words(ratings_note{});
    return {std::move(table)};
}

Blocks heated_floors(const Context& c) {
    Table table;
    table.caption = c.words(floors_caption{});
    table.compact = true;
    table.columns = {name_column(c.words(column_id{})),
                     words_column(c.words(column_room{})),
                     figure_column(c.words(column_area{}), "m²"),
                     figure_column(c.words(column_pitch{}), "mm"),
                     figure_column(c.words(column_covering{}), "m²·K/W"),
                     figure_column(c.words(column_transfer{}), "W/(m²·K)"),
                     figure_column(c.words(column_gives{}), "W/m²"),
                     figure_column(c.words(column_most{}), "W/m²"),
                     figure_column(c.words(column_surface{}), "°C"),
                     figure_column(c.words(column_warmest{}), "°C"),
                     figure_column(c.words(column_limit{}), "°C"),
                     figure_column(c.words(column_loop{}), "m"),
                     figure_column(c.words(column_below{}), "W"),
                     words_column(c.words(column_remark{}), 0.8)};
    for (std::size_t i = 0; i < c.job.emitters.size(); ++i) {
        if (c.design.emitters[i].floor) table.rows.push_back(floor_row(c, i));
    }
    if (table.rows.empty()) return {};
    table.note = c.words(floors_note{.longest = text(reference::loop_limits().length.value, unit::metre, 0)});
    return {std::move(table)};
}

}  // namespace loopfolio::report
