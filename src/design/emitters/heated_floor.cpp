// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/emitters/heated_floor.hpp"

#include "design/resolve/derive.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/underfloor.hpp"
#include "texts/steps_of_emitters.hpp"
#include "texts/steps_shared.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace steps = texts::steps_of_emitters;

namespace {

void find_floor(const job::Emitter& e, Temperature room, EmitterResult& r) {
    const auto build = build_of(*e.floor);
    const auto transfer = physics::floor_transfer(build, floor_tables());
    if (!transfer) return;
    FloorResult f;
    f.transfer = *transfer;
    f.flux = r.output / e.floor->area.value;
    const auto excess = physics::floor_excess(f.flux);
    if (!excess) return;  // a floor colder than its room takes heat instead of giving it
    f.surface = room + *excess;
    f.surface_limit = reference::find_floor_surface_limit(e.floor->zone)->limit;
    f.limit = physics::floor_limit(build, floor_tables(), f.surface_limit - room);
    if (f.limit) {
        const auto spot = physics::warmest_excess(*f.limit, f.surface_limit - room, f.flux);
        if (spot) f.warmest = room + *spot;
    }
    f.loop = e.loop_length.given() ? e.loop_length.value : Length{};
    r.floor = f;
}

void flag_floor(const FloorResult& f, int index, std::vector<Flag>& flags) {
    if (f.limit && f.flux > f.limit->flux) {
        flags.push_back({Caveat::floor_too_warm, Subject::emitter, index, f.flux / f.limit->flux});
    }
    if (f.loop > reference::loop_limits().length.value) {
        flags.push_back({Caveat::loop_too_long, Subject::emitter, index, f.loop.si()});
    }
}

void flag_piece(const job::RatedByPiece& piece, int index, std::vector<Flag>& flags) {
    const auto* usual = reference::find_usual_output(piece.sections > 0 ? "column_section" : "skirting");
    const double watts = piece.output.value.si();
    if (watts < usual->low_w || watts > usual->high_w)
        flags.push_back({Caveat::piece_far_off, Subject::emitter, index, watts});
}

std::string celsius(Temperature t) { return fixed(t.celsius(), 1); }

void trace_floor(Trace& trace, const job::Emitter& e, const EmitterResult& r) {
    const auto& f = *e.floor;
    const auto build = build_of(f);
    trace.step({steps::floor_transfer{},
                steps::floor_transfer_formula{.pitch = text(build.pitch, unit::millimetre, 0),
                                              .cover = text(build.screed_cover, unit::millimetre, 0),
                                              .outside = text(build.pipe_outside, unit::millimetre, 0),
                                              .covering = fixed(build.covering.si(), 3),
                                              .screed = fixed(build.screed.si(), 2)},
                text(r.floor->transfer, unit::watt_per_square_metre_kelvin, 3), "en-1264-2"});
    trace.step({steps::floor_rating{},
                steps::floor_rating_formula{.excess = fixed(physics::rating_excess().si(), 2),
                                            .transfer = fixed(r.floor->transfer.si(), 3),
                                            .area = text(f.area.value, unit::square_metre, 1)},
                text(e.output_at_50k.value, unit::watt, 0), "en-1264-2"});
    trace.step({steps::floor_mean{},
                steps::floor_mean_formula{.flux = text(r.floor->flux, unit::watt_per_square_metre, 1)},
                text(r.floor->surface, unit::celsius, 1), "en-1264-2"});
    if (r.floor->limit) {
        trace.step({steps::floor_flux_limit{},
                    steps::floor_flux_limit_formula{.limit = celsius(r.floor->surface_limit)},
                    text(r.floor->limit->flux, unit::watt_per_square_metre, 1), "en-1264-2"});
    }
    if (r.floor->warmest) {
        trace.step({steps::floor_warmest{}, steps::floor_warmest_formula{.limit = celsius(r.floor->surface_limit)},
                    text(*r.floor->warmest, unit::celsius, 1), "en-1264-2"});
    }
    if (f.below) {
        const auto upward = physics::resistance_upward(build).value();
        trace.step({steps::floor_downward{},
                    steps::floor_downward_formula{.flux = text(r.load / f.area.value, unit::watt_per_square_metre, 1),
                                                  .upward = fixed(upward.si(), 3),
                                                  .downward = fixed(f.below->value.si(), 2)},
                    text(r.downward, unit::watt, 0), "en-1264-3"});
    }
}

void trace_stated(Trace& trace, const job::Emitter& e, Power rating) {
    const std::string result = text(rating, unit::watt, 0);
    if (e.rated_at) {
        const auto& at = e.rated_at->at;
        trace.step({steps::output_at_50k{},
                    steps::rated_elsewhere_formula{.excess = fixed(physics::rating_excess().si(), 2),
                                                   .output = text(e.rated_at->output.value, unit::watt, 0),
                                                   .flow = celsius(at.flow),
                                                   .back = celsius(at.return_),
                                                   .air = celsius(at.air)},
                    result, "en-442"});
    } else if (e.fan) {
        const auto& at = e.fan->at;
        trace.step({steps::output_at_50k{},
                    steps::fan_formula{.speed = fmt::format("{}", e.fan->speed),
                                       .flow = celsius(at.flow),
                                       .back = celsius(at.return_),
                                       .air = celsius(at.air)},
                    result, "en-442"});
    } else if (e.by_piece && e.by_piece->sections > 0) {
        trace.step({steps::output_at_50k{},
                    steps::by_section_formula{.sections = fixed(e.by_piece->sections, 0),
                                              .each = text(e.by_piece->output.value, unit::watt, 0)},
                    result, ""});
    } else if (e.by_piece) {
        trace.step({steps::output_at_50k{},
                    steps::by_metre_formula{.length = text(e.length.value, unit::metre, 2),
                                            .each = text(e.by_piece->output.value, unit::watt, 0)},
                    result, ""});
    }
}

}  // namespace

std::optional<Power> downward_loss(const job::Emitter& e, const EmitterResult& r, Temperature room) {
    if (!e.floor || !e.floor->below || r.load <= Power{}) return Power{};
    const auto up = physics::resistance_upward(build_of(*e.floor));
    if (!up) return {};
    const auto flux = physics::flux_downward(r.load / e.floor->area.value, *up, e.floor->below->value, room,
                                             e.floor->below_temperature.value);
    if (!flux) return {};
    return std::max(*flux * e.floor->area.value, Power{});
}

void check_floor(const job::Emitter& e, const job::Room& room, EmitterResult& r, int index, std::vector<Flag>& flags) {
    if (e.by_piece) flag_piece(*e.by_piece, index, flags);
    if (!e.floor) return;
    find_floor(e, room.temperature.value, r);
    if (r.floor) flag_floor(*r.floor, index, flags);
}

void trace_rating(Trace& trace, const job::Emitter& e, const EmitterResult& r) {
    if (r.floor) trace_floor(trace, e, r);
    else trace_stated(trace, e, e.deratings.empty() ? e.output_at_50k.value : e.rating.value);
    for (const auto& d : e.deratings) {
        const auto* row = reference::find_derating(d.name);
        Figure range = "";
        if (d.factor.low) {
            range = texts::steps_shared::range{.low = fixed(*d.factor.low, 2), .high = fixed(*d.factor.high, 2)};
        }
        trace.step({steps::derating{.cause = ReferenceName{std::string{row->label}}},
                    steps::derating_formula{.factor = fixed(d.factor.value, 2)}, std::move(range), d.factor.source});
    }
    if (!e.deratings.empty()) {
        trace.step({steps::rating_as_it_stands{},
                    steps::rating_as_it_stands_formula{.rating = fixed(e.rating.value.si(), 0),
                                                       .share = fixed(derating_of(e).value(), 3)},
                    text(e.output_at_50k.value, unit::watt, 0), ""});
    }
}

}  // namespace loopfolio::design
