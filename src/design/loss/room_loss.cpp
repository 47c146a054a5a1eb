// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "design/loss/trace_parts.hpp"
#include "design/resolve/derive.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/physics/design_allowance.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "loopfolio/reference/reference.hpp"
#include "loopfolio/reference/thresholds.hpp"
#include "texts/steps_of_heat_loss.hpp"
#include "texts/steps_shared.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopfolio::design {

namespace steps = texts::steps_of_heat_loss;
namespace shared = texts::steps_shared;

namespace {

/// Outside surfaces of a square room with this floor area, fabric and ceiling height.
struct ReferenceSurfaces {
    Area floor, gross_wall, glazing, opaque_wall;
    Length exposed_perimeter;
};

ReferenceSurfaces surfaces_of(const job::Fabric& fabric, Length ceiling, Area floor) {
    const Length side = Length::from_si(std::sqrt(floor.si()));
    ReferenceSurfaces s;
    s.floor = floor;
    s.exposed_perimeter = fabric.outside_walls * side;
    s.gross_wall = s.exposed_perimeter * ceiling;
    // A room without an outside wall has no window. In a room with little wall the window takes up at most 80 % of it.
    s.glazing = std::min(reference::reference_room().glazing_share_of_floor * floor, 0.8 * s.gross_wall);
    s.opaque_wall = s.gross_wall - s.glazing;
    return s;
}

/// Even the floor of a room without an outside wall loses heat through the ground to the outside somewhere.
Length edge_of(const ReferenceSurfaces& s) {
    const double least_ratio = reference::thresholds().least_perimeter_ratio_per_m.value;
    return std::max(s.exposed_perimeter, Length::from_si(least_ratio * s.floor.si()));
}

/// Nothing without a void, and where the formula does not hold.
std::optional<physics::SuspendedUValue> suspended_floor(const job::Fabric& fabric, const ReferenceSurfaces& s) {
    if (!fabric.under) return {};
    return suspended_of(s.floor, edge_of(s), fabric.floor_insulation.value, *fabric.under, fabric.ground);
}

/// Nothing where the formula for the ground floor does not hold.
std::optional<UValue> floor_u_value(const job::Fabric& fabric, const ReferenceSurfaces& s) {
    switch (fabric.floor) {
        case reference::FloorKind::none: return UValue{};
        case reference::FloorKind::exposed: {
            const UValue bare = reference::limits().exposed_floor_uninsulated.value;
            return UValue::from_si(1.0 / (1.0 / bare.si() + fabric.floor_insulation.value.si()));
        }
        case reference::FloorKind::suspended: {
            const auto u = suspended_floor(fabric, s);
            return u ? std::optional{u->floor} : std::nullopt;
        }
        case reference::FloorKind::ground: break;
    }
    return physics::ground_floor_u_value(s.floor, edge_of(s), fabric.floor_insulation.value, ground_of(fabric.ground));
}

void trace_terms(Trace& trace, const job::Room& room, const AirSteps& air, const AreaMethod& a,
                 const ReferenceSurfaces& s) {
    const auto& f = *room.fabric;
    const auto u = [](UValue v) { return fixed(v.si(), 2); };
    const auto m2 = [](Area v) { return fixed(v.si(), 2); };
    const auto per = [](UValue v) { return text(v, unit::watt_per_square_metre_kelvin, 3); };
    const auto surface = [&](Area area, UValue value) {
        return steps::surface_formula{.area = m2(area), .u_value = u(value), .floor = m2(s.floor)};
    };
    trace.step({steps::walls{}, surface(s.opaque_wall, f.wall_u_value.value), per(a.walls), f.wall_u_value.source});
    trace.step(
        {steps::glazing{}, surface(s.glazing, f.glazing_u_value.value), per(a.glazing), f.glazing_u_value.source});
    if (a.roof.si() > 0.0) trace.step({steps::roof{}, steps::roof_formula{}, per(a.roof), f.roof_u_value.source});
    if (a.floor.si() > 0.0) {
        const bool ground = f.floor == reference::FloorKind::ground;
        KeyedText how = steps::floor_exposed_formula{};
        if (ground) {
            how = steps::floor_on_ground_formula{.edge = fixed(s.exposed_perimeter.si(), 1),
                                                 .area = m2(s.floor),
                                                 .insulation = fixed(f.floor_insulation.value.si(), 2),
                                                 .ground = fixed(f.ground.conductivity.value.si(), 1)};
        }
        const auto suspended = suspended_floor(f, s);
        if (suspended) {
            how = steps::floor_suspended_formula{
                .deck = u(suspended->deck), .ground = u(suspended->ground), .beyond = u(suspended->beyond)};
        }
        trace.step(
            {steps::floor{}, std::move(how), per(a.floor),
             ground || suspended ? "iso-13370" : std::string{reference::limits().exposed_floor_uninsulated.source}});
    }
    trace.step({steps::thermal_bridges{}, steps::thermal_bridges_formula{.addition = u(f.thermal_bridge.value)},
                per(a.bridges), f.thermal_bridge.source});
    trace_air(trace, room, air);
    trace.step({steps::ventilation{},
                steps::ventilation_by_area_formula{.heat = fixed(reference::limits().air_heat_capacity_wh_per_m3k, 2),
                                                   .changes = fixed(room.air_changes.value.in(unit::per_hour), 2),
                                                   .height = fixed(room.ceiling_height.value.si(), 2)},
                per(a.ventilation), std::string{reference::limits().air_heat_capacity_source}});
    trace.step({steps::sum_per_kelvin{}, {}, per(a.per_kelvin), ""});
}

std::optional<AreaMethod> derived_rate(const job::Room& room, Area size, const AirSteps& air, Trace* trace) {
    const auto& f = *room.fabric;
    const auto s = surfaces_of(f, room.ceiling_height.value, size);
    AreaMethod a;
    a.walls = f.wall_u_value.value * (s.opaque_wall / s.floor);
    a.glazing = f.glazing_u_value.value * (s.glazing / s.floor);
    a.roof = f.roof == reference::RoofKind::none ? UValue{} : f.roof_u_value.value;
    const auto floor = floor_u_value(f, s);
    if (!floor) return {};
    a.floor = a.floor_u_value = *floor;
    // The formula for a ground floor includes its edge already, so bridges count only for the other surfaces.
    const bool roof = f.roof != reference::RoofKind::none;
    const bool exposed_floor = f.floor == reference::FloorKind::exposed;
    a.bridges = f.thermal_bridge.value * (s.gross_wall / s.floor + (roof ? 1.0 : 0.0) + (exposed_floor ? 1.0 : 0.0));
    const auto ventilation = physics::ventilation_coefficient(
        reference::limits().air_heat_capacity_wh_per_m3k, room.air_changes.value, s.floor * room.ceiling_height.value);
    a.ventilation = ventilation / s.floor;
    a.per_kelvin = a.walls + a.glazing + a.roof + a.floor + a.bridges + a.ventilation;
    if (trace != nullptr) trace_terms(*trace, room, air, a, s);
    return a;
}

std::optional<AreaMethod> by_area(const job::Room& room, TemperatureDifference difference, const AirSteps& air,
                                  Trace* trace) {
    AreaMethod a;
    if (room.heat_loss_rate) {
        a.stated_rate = true;
        a.rate = room.heat_loss_rate->value;
        if (difference.si() > 0.0) a.per_kelvin = a.rate / difference;
    } else {
        const auto derived = derived_rate(room, room.floor_area.value, air, trace);
        if (!derived) return {};
        a = *derived;
        a.rate = a.per_kelvin * difference;
        // Shown to the assessor only, so that it costs nothing where nothing is printed.
        if (const auto fixed_size = trace == nullptr
                                        ? std::nullopt
                                        : derived_rate(room, reference::reference_room().floor_area, air, nullptr)) {
            a.fixed_rate = fixed_size->per_kelvin * difference;
        }
    }
    a.loss = a.rate * room.floor_area.value;
    if (trace != nullptr) {
        KeyedText how = steps::rate_stated_formula{};
        if (!a.stated_rate) {
            how = steps::rate_formula{.per_kelvin = fixed(a.per_kelvin.si(), 3),
                                      .difference = text(difference, unit::kelvin, 1)};
        }
        trace->step({steps::rate{}, std::move(how), text(a.rate, unit::watt_per_square_metre, 1),
                     a.stated_rate ? room.heat_loss_rate->source : ""});
        trace->step({steps::loss_by_area{},
                     steps::loss_by_area_formula{.rate = fixed(a.rate.si(), 1),
                                                 .area = text(room.floor_area.value, unit::square_metre, 1)},
                     text(a.loss, unit::watt, 0), ""});
    }
    return a;
}

Power heat_of_air(const job::Room& room, AirChangeRate rate, TemperatureDifference difference) {
    const Volume volume = room.floor_area.value * room.ceiling_height.value;
    return physics::ventilation_coefficient(reference::limits().air_heat_capacity_wh_per_m3k, rate, volume) *
           difference;
}

/// Temperature difference across an element, from the room to the other side, never below zero. Heat from a warmer
/// neighbouring room is not counted on, because its heating may be turned off.
TemperatureDifference across(const job::Element& e, const job::Room& room, const job::Job& job,
                             TemperatureDifference difference) {
    TemperatureDifference d = difference;
    if (e.beyond == job::Beyond::room) {
        for (const auto& other : job.rooms) {
            if (other.id == e.beyond_room) d = room.temperature.value - other.temperature.value;
        }
    } else if (e.beyond_temperature) {
        d = room.temperature.value - e.beyond_temperature->value;
    } else if (e.factor.given()) {
        d = e.factor.value * difference;
    }
    return std::max(d, TemperatureDifference{});
}

void trace_elements(Trace& trace, const job::Room& room, const AirSteps& air, const ElementMethod& m,
                    TemperatureDifference difference) {
    for (std::size_t i = 0; i < room.elements.size(); ++i) {
        const auto& e = room.elements[i];
        trace_build_up(trace, e, m.layered[i]);
        Figure name = e.name;
        if (e.name.empty()) name = steps::element_unnamed{.number = fixed(static_cast<double>(i + 1), 0)};
        std::string area = fixed(e.area.value.si(), 2), u_value = fixed(e.u_value.value.si(), 2);
        KeyedText formula = steps::element_formula{.area = area, .u_value = u_value};
        if (e.beyond == job::Beyond::room) formula = steps::element_inside_formula{.area = area, .u_value = u_value};
        trace.step({steps::element{.name = std::move(name)}, std::move(formula), text(m.elements[i], unit::watt, 0),
                    e.u_value.source});
    }
    trace_air(trace, room, air);
    trace.step({steps::ventilation{},
                steps::ventilation_formula{.heat = fixed(reference::limits().air_heat_capacity_wh_per_m3k, 2),
                                           .changes = fixed(room.air_changes.value.in(unit::per_hour), 2),
                                           .volume = fixed((room.floor_area.value * room.ceiling_height.value).si(), 1),
                                           .difference = fixed(difference.si(), 1)},
                text(m.ventilation, unit::watt, 0), std::string{reference::limits().air_heat_capacity_source}});
    trace.step({steps::loss_by_elements{}, shared::sum{}, text(m.loss, unit::watt, 0), "en-12831-1"});
}

ElementMethod by_elements(const job::Job& job, const job::Room& room, TemperatureDifference difference,
                          const AirSteps& air, Trace* trace) {
    ElementMethod m;
    m.elements.reserve(room.elements.size());
    for (const auto& e : room.elements) {
        const bool inside = e.beyond == job::Beyond::room;
        const bool bridged = e.beyond == job::Beyond::outside || e.beyond == job::Beyond::unheated;
        const UValue u = e.u_value.value + (bridged ? room.element_thermal_bridge.value : UValue{});
        const Power loss = e.area.value * u * across(e, room, job, difference);
        m.elements.push_back(loss);
        m.layered.push_back(transmittance_of(e));
        (inside ? m.to_rooms : m.to_outside) += loss;
        if (inside) m.inside += e.area.value * u;
    }
    m.ventilation = heat_of_air(room, room.air_changes.value, difference);
    m.loss = m.to_outside + m.to_rooms + m.ventilation;
    if (difference.si() > 0.0) m.outside = (m.to_outside + m.ventilation) / difference;
    if (trace != nullptr) trace_elements(*trace, room, air, m, difference);
    return m;
}

/// The most detailed method is adopted: a figure from another survey that the job states, then elements, then area.
void adopt(const job::Room& room, TemperatureDifference difference, RoomResult& r) {
    const Power not_at_once = room.house_air.given()
                                  ? heat_of_air(room, room.air_changes.value - room.house_air.value, difference)
                                  : Power{};
    if (room.heat_loss) {
        r.method = LossMethod::other_survey;
        r.loss = r.loss_to_outside = room.heat_loss->value;
    } else if (r.by_elements) {
        r.method = LossMethod::elements;
        r.loss = r.by_elements->loss;
        r.air_not_at_once = not_at_once;
        r.loss_to_outside = r.by_elements->to_outside + r.by_elements->ventilation - not_at_once;
    } else if (r.by_area) {
        r.method = LossMethod::area;
        r.loss = r.by_area->loss;
        if (!r.by_area->stated_rate) r.air_not_at_once = not_at_once;
        r.loss_to_outside = r.loss - r.air_not_at_once;
    }
}

/// Adds what the emitters must give in addition to the loss, so that the room warms up again after a setback. False
/// where the formula does not hold.
bool add_allowance(const job::Conditions& c, const job::Room& room, RoomResult& r) {
    if (c.intermittent_margin.given()) {
        const auto with_margin = physics::with_margin(r.loss, c.intermittent_margin.value);
        if (!with_margin) return false;
        r.heat_up = *with_margin - r.loss;
    } else if (room.heat_up.given()) {
        const auto heat_up = physics::heat_up_power(room.floor_area.value, room.heat_up.value);
        if (!heat_up) return false;
        r.heat_up = *heat_up;
    }
    r.load = r.loss + r.heat_up;
    return true;
}

void flag_room(const job::Room& room, const RoomResult& r, int index, std::vector<Flag>& flags) {
    const auto& usual = reference::thresholds();
    if (r.by_area && r.by_elements && r.by_elements->loss.si() > 0.0) {
        const double apart = r.by_area->loss / r.by_elements->loss - 1.0;
        if (std::abs(apart) > usual.methods_apart.value)
            flags.push_back({Caveat::methods_differ, Subject::room, index, apart});
    }
    if (r.method == LossMethod::area && room.fabric && !room.heat_loss_rate &&
        room.fabric->roof_u_value.basis == Basis::default_value &&
        room.fabric->roof_u_value.value > usual.bare_loft.value) {
        flags.push_back({Caveat::loft_not_stated, Subject::room, index, room.fabric->roof_u_value.value.si()});
    }
    const auto assumed = [](const std::optional<job::FloorVoid>& under) {
        return under && (under->height.basis == Basis::default_value || under->openings.basis == Basis::default_value ||
                         under->deck.basis == Basis::default_value);
    };
    const bool by_default_rate = r.method == LossMethod::area && room.fabric && !room.heat_loss_rate;
    if ((by_default_rate && assumed(room.fabric->under)) ||
        (r.by_elements &&
         std::ranges::any_of(room.elements, [&](const job::Element& e) { return e.slab && assumed(e.slab->under); }))) {
        flags.push_back({Caveat::void_not_stated, Subject::room, index, 0.0});
    }
    for (const auto& layered :
         r.by_elements ? r.by_elements->layered : std::vector<std::optional<physics::Transmittance>>{}) {
        if (layered && layered->upper / layered->lower > physics::greatest_limit_ratio) {
            flags.push_back({Caveat::limits_apart, Subject::room, index, layered->upper / layered->lower});
        }
    }
    const HeatFlux rate = r.loss / room.floor_area.value;
    if (rate < usual.least_loss_rate.value || rate > usual.greatest_loss_rate.value) {
        flags.push_back({Caveat::unusual_rate, Subject::room, index, rate.si()});
    }
}

}  // namespace

void find_room_losses(const job::Job& job, Design& design, std::vector<Refusal>& refusals, Trace* trace) {
    design.rooms.resize(job.rooms.size());
    design.air = air_of(job);
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const auto& room = job.rooms[i];
        auto& r = design.rooms[i];
        if (!room.heated) continue;
        if (trace != nullptr) trace->open(Subject::room, room.id);
        const auto difference = std::max(room.temperature.value - job.conditions.outdoor.value,
                                         TemperatureDifference{});
        if (trace != nullptr) {
            trace_outdoor(*trace, job.conditions);
            trace->step({steps::design_difference{},
                         steps::design_difference_formula{.room = fixed(room.temperature.value.celsius(), 1),
                                                          .outdoor = fixed(job.conditions.outdoor.value.celsius(), 1)},
                         text(difference, unit::kelvin, 1), ""});
        }
        const AirSteps air{job.conditions, design.air, design.air.rooms[i]};
        const auto refuse = [&](const char* field, const char* rule, Hint hint) {
            refusals.push_back({fmt::format("rooms[{}]{}", i, field), room.place, rule, std::move(hint)});
        };
        if (room.fabric || room.heat_loss_rate) {
            r.by_area = by_area(room, difference, air, trace);
            if (!r.by_area) {
                refuse(".fabric", "has a floor on the ground that lies outside the range of ISO 13370",
                       "check the room's area, or list its `elements` with the floor's U-value");
            }
        }
        if (!room.elements.empty()) r.by_elements = by_elements(job, room, difference, air, trace);
        adopt(room, difference, r);
        if (trace != nullptr) {
            trace->step({steps::loss_adopted{}, {}, text(r.loss, unit::watt, 0), ""});
            trace_house_air(*trace, room, air, r);
        }
        if (!add_allowance(job.conditions, room, r)) {
            refuse("", "has an allowance to warm up that no relation covers",
                   "check `heat_up` under `conditions`: how far the room cools and in what time it is to be warm");
        }
        if (trace != nullptr) trace_allowance(*trace, job.conditions, room, r);
        flag_room(room, r, static_cast<int>(i), design.flags);
    }
}

}  // namespace loopfolio::design
