// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/design.hpp"

#include "design/parts.hpp"
#include "loopfolio/base/number_text.hpp"

#include <fmt/format.h>

namespace loopfolio::design {

namespace {

using Refusals = std::vector<Refusal>;

constexpr double standard_gravity = 9.80665;  // m/s2, exact by definition

physics::FluidKind kind_of(job::FluidName name) {
    switch (name) {
        case job::FluidName::water: return physics::FluidKind::water;
        case job::FluidName::propylene_glycol: return physics::FluidKind::propylene_glycol;
        case job::FluidName::ethylene_glycol: return physics::FluidKind::ethylene_glycol;
    }
    return physics::FluidKind::water;
}

void set_fluid(const job::Job& job, Design& d, Refusals& refusals) {
    d.fluid.kind = kind_of(job.fluid.kind);
    if (d.fluid.kind != physics::FluidKind::water) {
        const double stated = job.fluid.concentration.value;
        const auto mass = job.fluid.basis == job::ConcentrationBasis::mass
                              ? std::optional<double>{stated}
                              : physics::mass_fraction_from_volume(d.fluid.kind, stated);
        if (!mass) {
            refusals.push_back({"fluid.concentration_percent", job.fluid.concentration.place,
                                "lies outside the table that turns a volume share into a mass share",
                                "state the share by mass, with `concentration_basis: mass`"});
            return;
        }
        d.fluid.mass_fraction = *mass;
        d.freezing = physics::freezing_point(d.fluid.kind, *mass);
    }
    const auto state = physics::state_of(d.fluid, d.mean);
    if (state) {
        d.state = *state;
        d.metre_of_water = Pressure::from_si(state->density.si() * standard_gravity);
    } else
        refusals.push_back(
            {"fluid", job.fluid.concentration.place,
             fmt::format("has no properties at the mean water temperature of {}", text(d.mean, unit::celsius, 1)),
             "the relations hold for liquid between the freezing point and 100 °C"});
}

/// An emitter cannot give heat to a room that is as warm as its water.
void refuse_cold_water(const job::Job& job, const Design& d, Refusals& refusals) {
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const auto& room = job.rooms[i];
        if (!room.heated || d.return_ > room.temperature.value) continue;
        refusals.push_back(
            {fmt::format("rooms[{}].temperature_c", i), room.temperature.place,
             fmt::format("must lie below the return temperature of {}", text(d.return_, unit::celsius, 1)),
             "raise the flow temperature or make the temperature drop smaller"});
    }
}

/// The same check for emitters with a temperature drop or a flow temperature of their own.
void refuse_cold_emitters(const job::Job& job, const Design& d, Refusals& refusals) {
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& r = d.emitters[i];
        const auto room = job.rooms[static_cast<std::size_t>(r.room)].temperature.value;
        if (r.load <= Power{} || r.inlet - r.drop > room) continue;
        const auto& e = job.emitters[i];
        refusals.push_back(
            {fmt::format("emitters[{}].temperature_drop_k", i), e.drop ? e.drop->place : e.place,
             fmt::format("leaves the water at {}, no warmer than the room", text(r.inlet - r.drop, unit::celsius, 1)),
             "make the drop smaller or the flow temperature higher"});
    }
}

/// Refuses inputs that the job states in parts which no formula can combine.
void refuse_underived(const job::Job& job, Refusals& refusals) {
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const auto& elements = job.rooms[i].elements;
        for (std::size_t e = 0; e < elements.size(); ++e) {
            if (elements[e].u_value.given()) continue;
            refusals.push_back({fmt::format("rooms[{}].elements[{}]", i, e), elements[e].area.place,
                                "has no U-value: its layers lie outside the ranges of ISO 6946",
                                "check the layers, or state `u_value_w_per_m2k` itself"});
        }
    }
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& e = job.emitters[i];
        if (e.output_at_50k.given() && e.output_at_50k.value > Power{}) continue;
        refusals.push_back({fmt::format("emitters[{}]", i), e.place,
                            e.floor ? "has no output: its floor lies outside the tables of EN 1264-2" : "has no output",
                            e.floor ? Hint{"check spacing, covering and pipe, or state `output_at_50k_w` itself"}
                                    : Hint{"state `output_at_50k_w`, or what it follows from"}});
    }
}

}  // namespace

std::variant<Design, Refusals> design_values(const job::Job& job, Trace* trace, Remedies remedies) {
    Design d;
    Refusals refusals;
    d.flow = job.conditions.flow.value;
    d.drop = job.conditions.drop.value;
    d.return_ = d.flow - d.drop;
    d.mean = d.flow - 0.5 * d.drop;
    set_fluid(job, d, refusals);
    refuse_cold_water(job, d, refusals);
    refuse_underived(job, refusals);
    number_junctions(job, d);
    if (!place_mixers(job, d, refusals) || !refusals.empty()) return refusals;

    find_room_losses(job, d, refusals, trace);
    share_loads(job, d, refusals);
    refuse_cold_emitters(job, d, refusals);
    size_mixers(job, d);
    const auto routes = refusals.empty() ? find_routes(job, d, refusals) : std::nullopt;
    if (!routes) return refusals;
    check_emitters(job, d, refusals, trace);
    if (!refusals.empty()) return refusals;
    check_rooms(job, d);
    check_sections(job, d, remedies, trace);
    check_duty(job, d, *routes, trace);
    d.verdict = worst_of(d.findings);
    return d;
}

std::variant<Design, Refusals> design(const House& house, Trace* trace, Remedies remedies) {
    return design_values(house.values, trace, remedies);
}

}  // namespace loopfolio::design
