// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "design/emitters/heated_floor.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/base/root.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/limits.hpp"
#include "loopfolio/reference/thresholds.hpp"
#include "texts/steps_of_emitters.hpp"

#include <fmt/format.h>

#include <cmath>

namespace loopfolio::design {

namespace steps = texts::steps_of_emitters;

namespace {

void trace_emitter(Trace& trace, const job::Emitter& e, const EmitterResult& r, const Design& d, Temperature room) {
    trace.open(Subject::emitter, e.id);
    const auto c = [](Temperature t) { return fixed(t.celsius(), 1); };
    // On a one-pipe loop the excess is that of the water as it comes back at the loop's flow.
    const Temperature back = r.on_loop ? r.return_temperature : r.inlet - r.drop;
    trace.step({steps::load_share{}, steps::load_share_formula{}, text(r.load, unit::watt, 0), ""});
    trace.step({steps::log_mean_excess{},
                steps::log_mean_excess_formula{.flow = c(r.inlet), .back = c(back), .room = c(room)},
                text(r.excess, unit::kelvin, 2), "en-442"});
    trace.step({steps::output_share{},
                steps::output_share_formula{.rating_excess = fixed(physics::rating_excess().si(), 2),
                                            .excess = fixed(r.excess.si(), 2),
                                            .exponent = fixed(e.exponent.value, 2)},
                fixed(r.factor, 4), "en-442"});
    trace.step(
        {steps::output_at_design{},
         steps::output_at_design_formula{.rating = fixed(e.output_at_50k.value.si(), 0), .share = fixed(r.factor, 4)},
         text(r.output, unit::watt, 0), "en-442"});
    trace.step({steps::needed_rating{},
                steps::needed_rating_formula{.load = fixed(r.load.si(), 0), .share = fixed(r.factor, 4)},
                text(r.needed_at_50k, unit::watt, 0), ""});
    trace.step({steps::emitter_flow{},
                steps::emitter_flow_formula{.load = fixed((r.load + r.downward).si(), 0),
                                            .heat = fixed(d.state.specific_heat.si(), 0),
                                            .drop = fixed(r.drop.si(), 1)},
                text(r.flow, unit::kilogram_per_second, 4) + " = " + text(r.volume_flow, unit::litre_per_minute, 2),
                ""});
    trace.step({steps::emitter_return{}, steps::emitter_return_formula{}, text(r.return_temperature, unit::celsius, 1),
                "en-442"});
    if (r.lowest_flow_temperature) {
        trace.step(
            {steps::lowest_flow{},
             steps::lowest_flow_formula{.load = text(r.load, unit::watt, 0), .drop = text(r.drop, unit::kelvin, 1)},
             text(*r.lowest_flow_temperature, unit::celsius, 1), "en-442"});
    }
}

/// Compares a rating with what is typical for its kind and size. This shows a mistyped digit, or a rating at another
/// excess.
void flag_rating(const job::Emitter& e, int index, std::vector<Flag>& flags) {
    const auto* kind = reference::find_emitter_kind(e.kind);
    if (kind == nullptr || kind->typical_w_per_m_at_600 <= 0.0 || !e.length.given() || !e.height.given()) return;
    const double typical = kind->typical_w_per_m_at_600 * e.length.value.si() * e.height.value.si() / 0.6;
    const double ratio = e.output_at_50k.value.si() / typical;
    const auto& usual = reference::thresholds();
    if (ratio < usual.least_rating_ratio.value || ratio > usual.greatest_rating_ratio.value) {
        flags.push_back({Caveat::rating_far_off, Subject::emitter, index, ratio});
    }
}

/// On a one-pipe loop an emitter gets the flow that the loop passes to it, and its output follows from that. False
/// where the formula does not hold.
bool size_on_loop(const physics::EmitterRating& rating, Temperature room, const Design& d, EmitterResult& r) {
    if (r.inlet <= room) {  // the water has no heat left by the time it arrives
        r.output = Power{};
        r.factor = 0.0;
        r.excess = {};
        return true;
    }
    const auto balance = physics::balance_at_flow(rating, r.flow, d.state.specific_heat, r.inlet, room);
    if (!balance) return false;
    r.output = balance->output;
    r.factor = r.output / rating.output_at_50k;
    const auto excess = physics::log_mean_excess(r.inlet, balance->return_temperature, room);
    // The limit of the mean, where a trickle comes back as cold as the room.
    r.excess = excess ? *excess : TemperatureDifference{};
    return true;
}

/// Sizes an emitter between a flow and a return pipe, at the design flow and return temperatures.
bool size_on_pair(const physics::EmitterRating& rating, Temperature room, EmitterResult& r) {
    const auto excess = physics::log_mean_excess(r.inlet, r.inlet - r.drop, room);
    const auto factor = physics::output_factor(r.inlet, r.inlet - r.drop, room, rating.exponent);
    if (!excess || !factor) return false;
    r.excess = *excess;
    r.factor = *factor;
    r.output = *factor * rating.output_at_50k;
    return true;
}

/// False where the formula of EN 442 does not hold for an emitter that must give heat.
bool size_emitter(const job::Job& job, const job::Emitter& e, EmitterResult& r, const Design& d) {
    const Temperature room = job.rooms[static_cast<std::size_t>(r.room)].temperature.value;
    const physics::EmitterRating rating{e.output_at_50k.value, e.exponent.value};
    const bool sized = r.on_loop ? size_on_loop(rating, room, d, r) : size_on_pair(rating, room, r);
    if (!sized && r.load > Power{}) return false;  // an emitter without load may be colder than its room
    r.needed_at_50k = r.factor > 0.0 ? r.load / r.factor : Power{};
    r.rating_to_buy = e.deratings.empty() ? r.needed_at_50k
                                          : r.needed_at_50k / (e.output_at_50k.value / e.rating.value);
    r.volume_flow = r.flow / d.state.density;
    // The water has to carry the heat that a floor gives upwards and downwards, so the floor counts as that much
    // larger.
    const double both = r.load > Power{} ? 1.0 + r.downward / r.load : 1.0;
    const auto balance = physics::balance_at_flow({both * rating.output_at_50k, rating.exponent}, r.flow,
                                                  d.state.specific_heat, r.inlet, room);
    r.return_temperature = balance ? balance->return_temperature : r.inlet;
    r.lowest_flow_temperature = physics::lowest_flow_temperature(rating, r.load, r.drop, room);
    return true;
}

/// Finds the loss factor of emitter and valves, and the pressure drop at the design flow. Returns the dynamic pressure
/// in the conduit that the loss factor refers to.
Pressure find_resistance(const job::Emitter& e, EmitterResult& r, const Design& d) {
    const auto path = path_of(e);
    r.loss_factor = path.loss_factor;
    if (path.valve_resistance > 0.0) {
        r.pressure_drop = physics::valve_pressure_drop(r.volume_flow, 1.0 / std::sqrt(path.valve_resistance),
                                                       d.state.density);
    }
    if (path.conduit.bore <= Length{}) return {};
    const auto pipe = physics::pipe_flow(r.flow, path.conduit, d.state);
    r.loop_friction = pipe.gradient * path.length;
    r.pressure_drop += r.loss_factor * pipe.dynamic_pressure + r.loop_friction;
    return pipe.dynamic_pressure;
}

void trace_resistance(Trace& trace, const job::Emitter& e, const EmitterResult& r, Pressure dynamic) {
    const auto* pipe = reference::find_pipe(e.loop_pipe.empty() ? e.connection : e.loop_pipe);
    KeyedText formula = steps::emitter_pressure_drop_formula{
        .factor = fixed(r.loss_factor, 2),
        .dynamic = text(dynamic, unit::pascal, 2),
        .pipe = pipe != nullptr ? Figure{ReferenceName{std::string{pipe->label}}} : Figure{e.connection}};
    if (r.loop_friction > Pressure{}) {
        formula = steps::with_loop_friction{.before = std::move(formula),
                                            .friction = text(r.loop_friction, unit::pascal, 0)};
    }
    if (e.valves_kv) formula = steps::with_valves_kv{.before = std::move(formula), .kv = fixed(e.valves_kv->value, 2)};
    trace.step({steps::emitter_pressure_drop{}, std::move(formula), text(r.pressure_drop, unit::pascal, 0),
                "faber-kell-2002"});
}

}  // namespace

EmitterPath path_of(const job::Emitter& e) {
    const auto* kind = reference::find_emitter_kind(e.kind);
    const auto* connection = reference::find_pipe(e.connection);
    EmitterPath out;
    if (e.valves_kv) out.valve_resistance = 1.0 / (e.valves_kv->value * e.valves_kv->value);
    out.loss_factor = loss_factor(e.fittings) + (kind != nullptr ? kind->zeta : 0.0);
    if (connection != nullptr) out.conduit = {connection->bore, connection->roughness};
    const auto* loop = e.loop_pipe.empty() ? nullptr : reference::find_pipe(e.loop_pipe);
    if (loop == nullptr) return out;
    // At the same flow, a loss factor scales to another bore with the fourth power of the ratio of the bores.
    if (connection != nullptr) out.loss_factor *= std::pow(loop->bore / connection->bore, 4.0);
    out.conduit = {loop->bore, loop->roughness};
    out.length = e.loop_length.value;
    return out;
}

namespace {

/// Marks the junctions of one-pipe loops, where an emitter is connected between two tees.
std::vector<char> loop_junctions(const job::Job& job, const Design& d) {
    std::vector<char> out(d.nodes.size(), 0);
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        if (job.sections[i].carries != job::Carries::loop) continue;
        out[static_cast<std::size_t>(d.junctions.section_from[i])] =
            out[static_cast<std::size_t>(d.junctions.section_to[i])] = 1;
    }
    return out;
}

}  // namespace

void share_loads(const job::Job& job, Design& design, std::vector<Refusal>& refusals) {
    const auto on_loop = loop_junctions(job, design);
    design.emitters.resize(job.emitters.size());
    std::vector<Power> rated(job.rooms.size());
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        auto& r = design.emitters[i];
        for (std::size_t k = 0; k < job.rooms.size(); ++k) {
            if (job.rooms[k].id == job.emitters[i].room) r.room = static_cast<int>(k);
        }
        rated[static_cast<std::size_t>(r.room)] += job.emitters[i].output_at_50k.value;
        ++design.rooms[static_cast<std::size_t>(r.room)].emitters;
    }
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& e = job.emitters[i];
        auto& r = design.emitters[i];
        r.load = design.rooms[static_cast<std::size_t>(r.room)].load *
                 (e.output_at_50k.value / rated[static_cast<std::size_t>(r.room)]);
        r.inlet = r.mixer >= 0 ? job.mixers[static_cast<std::size_t>(r.mixer)].flow.value : design.flow;
        r.drop = e.drop         ? e.drop->value
                 : r.mixer >= 0 ? job.mixers[static_cast<std::size_t>(r.mixer)].drop.value
                                : design.drop;
        if (const auto downward = downward_loss(e, r, job.rooms[static_cast<std::size_t>(r.room)].temperature.value)) {
            r.downward = *downward;
        } else {
            refusals.push_back({fmt::format("emitters[{}].floor", i), e.place, "has no loss below it by EN 1264-3",
                                "the resistance below and the temperature there lie outside what the standard covers"});
        }
        r.flow = (r.load + r.downward) / (design.state.specific_heat * r.drop);
        const int at = design.junctions.emitter_at[i], back = design.junctions.emitter_return[i];
        r.on_loop = at != back && on_loop[static_cast<std::size_t>(at)] != 0 &&
                    on_loop[static_cast<std::size_t>(back)] != 0;
    }
}

void check_emitters(const job::Job& job, Design& design, std::vector<Refusal>& refusals, Trace* trace) {
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& e = job.emitters[i];
        auto& r = design.emitters[i];
        auto& room = design.rooms[static_cast<std::size_t>(r.room)];
        const int index = static_cast<int>(i);
        if (!size_emitter(job, e, r, design)) {
            refusals.push_back({fmt::format("emitters[{}]", i), e.place,
                                fmt::format("has no output by EN 442 with water from {} to {}",
                                            text(r.inlet, unit::celsius, 1), text(r.inlet - r.drop, unit::celsius, 1)),
                                "raise the flow temperature or make the temperature drop smaller"});
            continue;
        }
        r.finding = add(design.findings, at_least({Check::emitter_output, Subject::emitter, index}, r.output, r.load,
                                                  reference::limits().shortfall_noted.value));
        const Pressure dynamic = find_resistance(e, r, design);
        room.output += r.output;
        if (r.excess < reference::thresholds().least_excess.value) {
            design.flags.push_back({Caveat::low_excess, Subject::emitter, index, r.excess.si()});
        }
        flag_rating(e, index, design.flags);
        check_floor(e, job.rooms[static_cast<std::size_t>(r.room)], r, index, design.flags);
        if (trace != nullptr) {
            trace_emitter(*trace, e, r, design, job.rooms[static_cast<std::size_t>(r.room)].temperature.value);
            trace_rating(*trace, e, r);
            trace_resistance(*trace, e, r, dynamic);
        }
    }
}

namespace {

/// Room temperature at which the output of the emitters, at design flow and return temperatures, equals the loss.
std::optional<Temperature> temperature_reached(const job::Job& job, const Design& d, std::size_t room) {
    const Temperature outdoor = job.conditions.outdoor.value;
    const Temperature wanted = job.rooms[room].temperature.value;
    const auto& result = d.rooms[room];
    if (wanted <= outdoor) return {};
    // A room that cools gains from the rooms beside it, where the job states the elements between them.
    const bool neighbours = result.method == LossMethod::elements && result.by_elements;
    const Power to_rooms = neighbours ? result.by_elements->to_rooms : Power{};
    const HeatLossCoefficient inside = neighbours ? result.by_elements->inside : HeatLossCoefficient{};
    const HeatLossCoefficient coefficient = (result.loss - to_rooms) / (wanted - outdoor);
    const auto surplus = [&](double celsius) {
        const auto t = Temperature::from_celsius(celsius);
        Power output;
        for (std::size_t i = 0; i < job.emitters.size(); ++i) {
            if (d.emitters[i].room != static_cast<int>(room)) continue;
            const auto& e = job.emitters[i];
            const auto& r = d.emitters[i];
            // Below the wanted temperature the excess is larger than at it, so the formula holds here where it held
            // there.
            output += physics::output_factor(r.inlet, r.inlet - r.drop, t, e.exponent.value).value() *
                      e.output_at_50k.value;
        }
        return (output - coefficient * (t - outdoor) - to_rooms + inside * (wanted - t)).si();
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
        const int index = static_cast<int>(i);
        if (r.emitters == 0) {
            r.finding = add(design.findings, at_least({Check::room_has_emitter, Subject::room, index}, 0, 1, 0.0));
            continue;
        }
        r.finding = add(design.findings,
                        at_least({Check::emitter_output, Subject::room, index}, r.output, r.load, tolerance));
        if (r.output >= r.loss) continue;
        r.reached = temperature_reached(job, design, i);
        r.reached_alone = r.method != LossMethod::elements || r.by_elements->inside <= HeatLossCoefficient{};
    }
}

}  // namespace loopfolio::design
