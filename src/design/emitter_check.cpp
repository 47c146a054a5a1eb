// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/base/root.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/limits.hpp"

#include <fmt/format.h>

#include <cmath>

namespace loopfolio::design {

namespace {

constexpr double least_usual_excess = 10.0;   // K
constexpr double least_rating_ratio = 0.6, greatest_rating_ratio = 1.6;

void trace_emitter(Trace& trace, const job::Emitter& e, const EmitterResult& r, const Design& d, Temperature room) {
    trace.open(Subject::emitter, e.id);
    const auto c = [](Temperature t) { return fixed(t.celsius(), 1); };
    trace.step({"share of the room's heat loss", "in proportion to the ratings of the room's emitters",
                text(r.load, unit::watt, 0), ""});
    trace.step({"log mean excess", fmt::format("Δθ = (flow − return) / ln((flow − room) / (return − room)), {} / {} / {} °C",
                c(d.flow), c(d.return_), c(room)), text(r.excess, unit::kelvin, 2), "en-442"});
    trace.step({"share of the 50 K output", fmt::format("(Δθ / {})^n = ({} / {})^{}", fixed(physics::rating_excess().si(), 2),
                fixed(r.excess.si(), 2), fixed(physics::rating_excess().si(), 2), fixed(e.exponent.value, 2)),
                fixed(r.factor, 4), "en-442"});
    trace.step({"output at design", fmt::format("Φ = {} × {}", fixed(e.output_at_50k.value.si(), 0), fixed(r.factor, 4)),
                text(r.output, unit::watt, 0), "en-442"});
    trace.step({"rating that would just do", fmt::format("{} / {}", fixed(r.load.si(), 0), fixed(r.factor, 4)),
                text(r.needed_at_50k, unit::watt, 0), ""});
    trace.step({"design flow", fmt::format("m = Φ / (c·Δθ) = {} / ({} × {})", fixed(r.load.si(), 0),
                fixed(d.state.specific_heat.si(), 0), fixed(d.drop.si(), 1)),
                text(r.flow, unit::kilogram_per_second, 4) + " = " + text(r.volume_flow, unit::litre_per_minute, 2), ""});
    trace.step({"return temperature at that flow", "water side and room side in balance",
                text(r.return_temperature, unit::celsius, 1), "en-442"});
    if (r.lowest_flow_temperature) {
        trace.step({"lowest flow temperature", fmt::format("where the output is {} with a drop of {}",
                    text(r.load, unit::watt, 0), text(d.drop, unit::kelvin, 1)),
                    text(*r.lowest_flow_temperature, unit::celsius, 1), "en-442"});
    }
}

/// Rating against what is typical for its kind and size: a slip of a digit, or a figure at another excess, shows.
void flag_rating(const job::Emitter& e, int index, std::vector<Flag>& flags) {
    const auto* kind = reference::find_emitter_kind(e.kind);
    if (kind == nullptr || kind->typical_w_per_m_at_600 <= 0.0 || !e.length.given() || !e.height.given()) return;
    const double typical = kind->typical_w_per_m_at_600 * e.length.value.si() * e.height.value.si() / 0.6;
    const double ratio = e.output_at_50k.value.si() / typical;
    if (ratio < least_rating_ratio || ratio > greatest_rating_ratio) {
        flags.push_back({Caveat::rating_far_off, Subject::emitter, index, ratio});
    }
}

std::string_view connection_label(const job::Emitter& e) {
    const auto* pipe = reference::find_pipe(e.connection);
    return pipe != nullptr ? pipe->label : std::string_view{e.connection};
}

void size_emitter(const job::Job& job, const job::Emitter& e, EmitterResult& r, const Design& d) {
    const Temperature room = job.rooms[static_cast<std::size_t>(r.room)].temperature.value;
    const physics::EmitterRating rating{e.output_at_50k.value, e.exponent.value};
    r.excess = physics::log_mean_excess(d.flow, d.return_, room).value_or(TemperatureDifference{});
    r.factor = physics::output_factor(d.flow, d.return_, room, rating.exponent).value_or(0.0);
    r.output = r.factor * rating.output_at_50k;
    r.needed_at_50k = r.factor > 0.0 ? r.load / r.factor : Power{};
    r.flow = r.load / (d.state.specific_heat * d.drop);
    r.volume_flow = r.flow / d.state.density;
    const auto balance = physics::balance_at_flow(rating, r.flow, d.state.specific_heat, d.flow, room);
    r.return_temperature = balance ? balance->return_temperature : d.flow;
    r.lowest_flow_temperature = physics::lowest_flow_temperature(rating, r.load, d.drop, room);
    r.finding = at_least(Check::emitter_output, r.output.si(), r.load.si(), reference::limits().shortfall_noted.value);
}

/// Loss factor of emitter and valves, and what it costs at the design flow in the bore of its connection.
/// Returns the dynamic pressure there.
Pressure find_resistance(const job::Emitter& e, EmitterResult& r, const Design& d) {
    const auto* kind = reference::find_emitter_kind(e.kind);
    const auto* pipe = reference::find_pipe(e.connection);
    r.loss_factor = loss_factor(e.fittings) + (kind != nullptr ? kind->zeta : 0.0);
    if (pipe == nullptr) return {};
    const auto dynamic = physics::pipe_flow(r.flow, {pipe->bore, pipe->roughness}, d.state).dynamic_pressure;
    r.pressure_drop = r.loss_factor * dynamic;
    return dynamic;
}

}  // namespace

void check_emitters(const job::Job& job, Design& design, Trace* trace) {
    design.emitters.resize(job.emitters.size());
    std::vector<Power> rated(job.rooms.size());
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& e = job.emitters[i];
        auto& r = design.emitters[i];
        for (std::size_t k = 0; k < job.rooms.size(); ++k) {
            if (job.rooms[k].id == e.room) r.room = static_cast<int>(k);
        }
        rated[static_cast<std::size_t>(r.room)] += e.output_at_50k.value;
        ++design.rooms[static_cast<std::size_t>(r.room)].emitters;
    }
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& e = job.emitters[i];
        auto& r = design.emitters[i];
        auto& room = design.rooms[static_cast<std::size_t>(r.room)];
        r.load = room.loss * (e.output_at_50k.value / rated[static_cast<std::size_t>(r.room)]);
        size_emitter(job, e, r, design);
        const Pressure dynamic = find_resistance(e, r, design);
        room.output += r.output;
        const int index = static_cast<int>(i);
        if (r.excess.si() < least_usual_excess) {
            design.flags.push_back({Caveat::low_excess, Subject::emitter, index, r.excess.si()});
        }
        flag_rating(e, index, design.flags);
        if (trace != nullptr) {
            trace_emitter(*trace, e, r, design, job.rooms[static_cast<std::size_t>(r.room)].temperature.value);
            trace->step({"pressure drop with its valves", fmt::format("Σζ·ρv²/2, Σζ = {}, ρv²/2 = {} in {}",
                         fixed(r.loss_factor, 2), text(dynamic, unit::pascal, 2),
                         connection_label(e)),
                         text(r.pressure_drop, unit::pascal, 0), "faber-kell-2002"});
        }
    }
}

namespace {

/// Room temperature at which the emitters, at design flow and return temperatures, match the loss.
std::optional<Temperature> temperature_reached(const job::Job& job, const Design& d, std::size_t room) {
    const Temperature outdoor = job.conditions.outdoor.value;
    const Temperature wanted = job.rooms[room].temperature.value;
    const auto& result = d.rooms[room];
    if (wanted <= outdoor) return {};
    const HeatLossCoefficient coefficient = result.loss / (wanted - outdoor);
    const auto surplus = [&](double celsius) {
        const auto t = Temperature::from_celsius(celsius);
        Power output;
        for (std::size_t i = 0; i < job.emitters.size(); ++i) {
            if (d.emitters[i].room != static_cast<int>(room)) continue;
            const auto& e = job.emitters[i];
            output += physics::output_factor(d.flow, d.return_, t, e.exponent.value).value_or(0.0) * e.output_at_50k.value;
        }
        return (output - coefficient * (t - outdoor)).si();
    };
    const auto root = find_root(surplus, outdoor.celsius(), wanted.celsius(), 1e-4);
    if (!root) return {};
    return Temperature::from_celsius(*root);
}

}  // namespace

void check_rooms(const job::Job& job, Design& design) {
    const double tolerance = reference::limits().shortfall_noted.value;
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        auto& r = design.rooms[i];
        if (!job.rooms[i].heated) continue;
        if (r.emitters == 0) {
            r.finding = {Check::room_has_emitter, Verdict::change, 0.0, 1.0, -1.0};
            continue;
        }
        r.finding = at_least(Check::emitter_output, r.output.si(), r.loss.si(), tolerance);
        if (r.output < r.loss) r.reached = temperature_reached(job, design, i);
    }
}

}  // namespace loopfolio::design
