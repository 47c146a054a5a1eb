// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/totals.hpp"

#include <algorithm>

namespace loopfolio::study {

namespace {

std::optional<HeatFlux> rate_of(Power loss, Area floor) {
    return floor > Area{} ? std::optional{loss / floor} : std::nullopt;
}

RoomTotal room_total(const job::Room& room, const design::RoomResult& result) {
    RoomTotal out;
    out.surplus = result.output - result.load;
    out.rate = rate_of(result.loss, room.floor_area.value);
    if (result.by_area && result.by_elements && result.by_elements->loss > Power{}) {
        out.methods_apart = result.by_area->loss / result.by_elements->loss - 1.0;
    }
    if (result.by_area && !result.by_area->stated_rate && result.by_area->fixed_rate > HeatFlux{})
        out.size_effect = result.by_area->rate / result.by_area->fixed_rate - 1.0;
    return out;
}

void add_rooms(Totals& out, const job::Job& job, const design::Design& design) {
    Power load;
    auto& heated = out.heated;
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const auto& result = design.rooms[i];
        out.rooms.push_back(room_total(job.rooms[i], result));
        out.losses += result.loss;
        out.leaving += result.loss_to_outside;
        out.air_not_at_once -= result.air_not_at_once;
        if (result.method == design::LossMethod::elements) out.between_rooms -= result.by_elements->to_rooms;
        if (!job.rooms[i].heated) continue;
        heated.floor_area += job.rooms[i].floor_area.value;
        heated.loss += result.loss;
        heated.output += result.output;
        load += result.load;
    }
    heated.heat_up = load - heated.loss;
    heated.surplus = heated.output - load;
    heated.rate = rate_of(heated.loss, heated.floor_area);
}

void add_index_circuit(Totals& out, const design::Design& design) {
    const auto& duty = design.duty;
    Pressure so_far;
    const auto add = [&](Pressure part) { out.index_so_far.push_back(so_far += part); };
    for (const auto& leg : duty.index_legs) add(leg.pressure_drop);
    add(duty.emitter);
    add(duty.source);
    if (duty.left_over != Pressure{}) out.index_left_over = duty.left_over;
}

void add_velocities(Totals& out, const job::Job& job) {
    const auto widen = [](Span<Velocity>& span, Velocity value, bool first) {
        span.low = first ? value : std::min(span.low, value);
        span.high = first ? value : std::max(span.high, value);
    };
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        widen(out.velocity_preferred, job.sections[i].velocity_preferred.value, i == 0);
        widen(out.velocity_limit, job.sections[i].velocity_limit.value, i == 0);
    }
}

LoweredTotal lowered_total(const job::Emitter& emitter) {
    LoweredTotal out;
    for (const auto& d : emitter.deratings) {
        out.left *= d.factor.value;
        out.low *= d.factor.low.value_or(d.factor.value);
        out.high *= d.factor.high.value_or(d.factor.value);
    }
    return out;
}

std::optional<double> share_served(const design::State& state) {
    if (state.least_served < 0) return {};
    const auto& room = state.rooms[static_cast<std::size_t>(state.least_served)];
    return room.need > Power{} ? std::optional{room.output / room.need} : std::nullopt;
}

void count(Totals& out, const design::Design& design, const design::Findings& findings) {
    for (const auto& f : findings) {
        const auto verdict = static_cast<std::size_t>(f.verdict);
        if (f.subject == design::Subject::room) ++out.room_verdicts[verdict];
        else if (f.subject == design::Subject::emitter) ++out.emitter_verdicts[verdict];
        else if (f.subject != design::Subject::section) ++out.plant_verdicts[verdict];
    }
    for (const auto& s : design.sections) ++out.section_verdicts[static_cast<std::size_t>(s.verdict)];
}

}  // namespace

Totals totals_of(const job::Job& values, const design::Design& design, const design::Operation& operation,
                 const design::Plant& plant, const design::Findings& findings) {
    Totals out;
    add_rooms(out, values, design);
    out.drop = design.flow - design.duty.back;
    add_velocities(out, values);
    if (design.duty.index_emitter >= 0) add_index_circuit(out, design);
    for (const auto& emitter : values.emitters) out.emitters.push_back(lowered_total(emitter));
    for (const auto& state : operation.states) out.share_served.push_back(share_served(state));
    if (plant.season) {
        const auto& season = plant.season->season;
        for (const auto& bin : season.bins) out.bin_electricity.push_back(bin.source_electricity + bin.backup_input);
        for (const auto& bin : season.bins) out.season_time += bin.time;
        out.electricity = season.source_electricity + season.backup_input;
    }
    count(out, design, findings);
    return out;
}

}  // namespace loopfolio::study
