// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/emitters/heated_floor.hpp"

#include "design/resolve/derive.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/underfloor.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace {

void find_floor(const job::Emitter& e, Temperature room, EmitterResult& r) {
    const auto build = build_of(*e.floor);
    const auto transfer = physics::floor_transfer(build, floor_tables());
    if (!transfer) return;
    FloorResult f;
    f.transfer = *transfer;
    f.flux = r.output / e.floor->area.value;
    const auto excess = physics::floor_excess(f.flux);
    if (!excess) return;   // a floor that takes heat: it is colder than its room
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
    trace.step(
        {"transfer of the floor",
         fmt::format(
             "K = B·aB·aT^(1 − T/75 mm)·aU^(0.1·(45 mm − s))·aD^(0.25·(D − 20 mm)), T = {}, s = {}, D = {}, "
             "covering {} m²K/W, screed {} W/(m·K)",
             text(build.pitch, unit::millimetre, 0), text(build.screed_cover, unit::millimetre, 0),
             text(build.pipe_outside, unit::millimetre, 0), fixed(build.covering.si(), 3),
             fixed(build.screed.si(), 2)),
         text(r.floor->transfer, unit::watt_per_square_metre_kelvin, 3), "en-1264-2"});
    trace.step({"rating of the floor",
                fmt::format("K·A·{} K = {} × {} × {}", fixed(physics::rating_excess().si(), 2),
                            fixed(r.floor->transfer.si(), 3), text(f.area.value, unit::square_metre, 1),
                            fixed(physics::rating_excess().si(), 2)),
                text(e.output_at_50k.value, unit::watt, 0), "en-1264-2"});
    trace.step(
        {"mean temperature of the floor",
         fmt::format("room + (q/8.92)^(1/1.1), q = {}", text(r.floor->flux, unit::watt_per_square_metre, 1)),
         text(r.floor->surface, unit::celsius, 1), "en-1264-2"});
    if (r.floor->limit) {
        trace.step({"flux at which the warmest spot reaches its limit",
                    fmt::format("f·B·(Δθ/f)^n, limit {} °C", celsius(r.floor->surface_limit)),
                    text(r.floor->limit->flux, unit::watt_per_square_metre, 1), "en-1264-2"});
    }
    if (r.floor->warmest) {
        trace.step({"temperature of its warmest spot",
                    fmt::format("room + (limit − room)·(q/most)^(1/1.1), limit {} °C", celsius(r.floor->surface_limit)),
                    text(*r.floor->warmest, unit::celsius, 1), "en-1264-2"});
    }
    if (f.below) {
        trace.step({"heat lost below",
                    fmt::format("A·(q·Ro + room − below)/Ru, q = load/A = {}, Ro = {}, Ru = {}",
                                text(r.load / f.area.value, unit::watt_per_square_metre, 1),
                                fixed(physics::resistance_upward(build).value().si(), 3),
                                fixed(f.below->value.si(), 2)),
                    text(r.downward, unit::watt, 0), "en-1264-3"});
    }
}

void trace_stated(Trace& trace, const job::Emitter& e, Power rating) {
    const auto at = [](const job::RatingTemperatures& t) {
        return fmt::format("{} / {} / {} °C", celsius(t.flow), celsius(t.return_), celsius(t.air));
    };
    const std::string result = text(rating, unit::watt, 0);
    if (e.rated_at) {
        trace.step({"output at 50 K",
                    fmt::format("Φ·({} / Δθ)^n, Φ = {} at {}", fixed(physics::rating_excess().si(), 2),
                                text(e.rated_at->output.value, unit::watt, 0), at(e.rated_at->at)),
                    result, "en-442"});
    } else if (e.fan) {
        trace.step({"output at 50 K",
                    fmt::format("between the stated speeds at speed {}, from {}", e.fan->speed, at(e.fan->at)),
                    result, "en-442"});
    } else if (e.by_piece && e.by_piece->sections > 0) {
        trace.step({"output at 50 K", fmt::format("{} sections × {}", e.by_piece->sections,
                    text(e.by_piece->output.value, unit::watt, 0)), result, ""});
    } else if (e.by_piece) {
        trace.step({"output at 50 K", fmt::format("{} × {} for each metre", text(e.length.value, unit::metre, 2),
                    text(e.by_piece->output.value, unit::watt, 0)), result, ""});
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

void check_floor(const job::Emitter& e, const job::Room& room, EmitterResult& r, int index,
                 std::vector<Flag>& flags) {
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
        trace.step(
            {fmt::format("what is left: {}", row->label), fmt::format("× {}", fixed(d.factor.value, 2)),
             d.factor.low ? fmt::format("{} to {}", fixed(*d.factor.low, 2), fixed(*d.factor.high, 2)) : "",
             d.factor.source});
    }
    if (!e.deratings.empty()) {
        trace.step({"rating as it stands",
                    fmt::format("{} × {}", fixed(e.rating.value.si(), 0), fixed(derating_of(e).value(), 3)),
                    text(e.output_at_50k.value, unit::watt, 0), ""});
    }
}

}  // namespace loopfolio::design
