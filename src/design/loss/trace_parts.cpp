// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/loss/trace_parts.hpp"

#include "design/resolve/derive.hpp"
#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/ventilation.hpp"
#include "texts/steps_of_heat_loss.hpp"
#include "texts/steps_shared.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loopfolio::design {

namespace steps = texts::steps_of_heat_loss;
namespace shared = texts::steps_shared;

namespace {

Figure resistances(const job::Element& e) {
    const auto flow = heat_flow(e.kind);
    const auto surfaces = reference::surface_resistances(flow, e.beyond == job::Beyond::outside);
    Figure out = fixed(surfaces.inside.si(), 2);
    for (const auto& layer : e.layers) {
        Figure next = fixed(resistance_of(layer, flow).value().si(), 3);
        if (layer.bridge) {
            next = steps::layer_bridged{.resistance = std::move(next),
                                        .share = fixed(100.0 * layer.bridge->share.value, 1)};
        }
        out = shared::added{.before = std::move(out), .next = std::move(next)};
    }
    return shared::added{.before = std::move(out), .next = fixed(surfaces.beyond.si(), 2)};
}

constexpr const auto& m2k_per_w = unit::square_metre_kelvin_per_watt;

/// Share of the whole unbridged resistance that lies in one layer.
std::string share_of(const job::Layer& layer, const job::Element& e) {
    const auto flow = heat_flow(e.kind);
    const auto surfaces = reference::surface_resistances(flow, e.beyond == job::Beyond::outside);
    ThermalResistance whole = surfaces.inside + surfaces.beyond;
    for (const auto& l : e.layers) whole += resistance_of(l, flow).value();
    return fmt::format("({}/{})²", fixed(resistance_of(layer, flow).value().si(), 3), fixed(whole.si(), 3));
}

void trace_corrections(Trace& trace, const job::Element& e, const physics::Transmittance& t) {
    const auto per = [](UValue u) { return text(u, unit::watt_per_square_metre_kelvin, 4); };
    std::string gaps, fasteners;
    for (const auto& layer : e.layers) {
        if (layer.air_gap_level > 0)
            gaps += fmt::format("{}{} × {}", gaps.empty() ? "" : " + ", layer.air_gap_level == 1 ? "0.01" : "0.04",
                                share_of(layer, e));
        if (!layer.fasteners) continue;
        const auto& f = *layer.fasteners;
        const Length depth = f.depth ? f.depth->value : layer.thickness.value;
        const double alpha = 0.8 * std::min(1.0, depth / layer.thickness.value);
        fasteners += fmt::format("{}{} × {} × {} mm² × {}/m² / {} mm × {}", fasteners.empty() ? "" : " + ",
                                 fixed(alpha, 2), fixed(f.conductivity.value.si(), 1),
                                 fixed(f.section.value.in(unit::square_millimetre), 1),
                                 fixed(f.per_square_metre.value, 1),
                                 fixed(layer.thickness.value.in(unit::millimetre), 1), share_of(layer, e));
    }
    if (!gaps.empty())
        trace.step({steps::air_gaps{}, steps::air_gaps_formula{.gaps = gaps}, per(t.corrections.gaps), "iso-6946"});
    if (!fasteners.empty())
        trace.step({steps::fasteners{}, steps::fasteners_formula{.fasteners = fasteners}, per(t.corrections.fasteners),
                    "iso-6946"});
}

void trace_layers(Trace& trace, const job::Element& e, const physics::Transmittance& t) {
    const bool bridged = t.error_bound > 0.0;
    trace.step({steps::layers{}, steps::layers_formula{.resistances = resistances(e)},
                text(bridged ? t.upper : t.total, m2k_per_w, 3), "iso-6946"});
    if (bridged) {
        trace.step({steps::lower_limit{}, steps::lower_limit_formula{}, text(t.lower, m2k_per_w, 3), "iso-6946"});
        trace.step({steps::mean_of_limits{},
                    steps::mean_of_limits_formula{.upper = fixed(t.upper.si(), 3),
                                                  .lower = fixed(t.lower.si(), 3),
                                                  .error = fixed(100.0 * t.error_bound, 1)},
                    text(t.total, m2k_per_w, 3), "iso-6946"});
    }
    const auto per = [](UValue u) { return text(u, unit::watt_per_square_metre_kelvin, 4); };
    const bool corrected = t.corrections.gaps + t.corrections.fasteners > UValue{};
    if (corrected) trace_corrections(trace, e, t);
    KeyedText formula = steps::layers_u_value_formula{};
    if (corrected) {
        formula = steps::layers_u_value_corrected_formula{
            .resistance = fixed(t.total.si(), 3), .correction = per(t.corrections.gaps + t.corrections.fasteners)};
    }
    trace.step({steps::layers_u_value{}, std::move(formula), text(t.u_value, unit::watt_per_square_metre_kelvin, 3),
                "iso-6946"});
}

}  // namespace

void trace_outdoor(Trace& trace, const job::Conditions& c) {
    if (!c.station_outdoor.given()) return;
    trace.step({steps::outdoor_of_house{},
                steps::outdoor_of_house_formula{.station = fixed(c.station_outdoor.value.celsius(), 1),
                                                .lapse = text(c.lapse.value, unit::kelvin_per_100_metres, 2),
                                                .height = text(c.height_above_station.value, unit::metre, 0)},
                text(c.outdoor.value, unit::celsius, 1), c.lapse.source});
}

void trace_build_up(Trace& trace, const job::Element& e, const std::optional<physics::Transmittance>& layered) {
    if (layered) trace_layers(trace, e, *layered);
    if (e.slab && e.slab->under) {
        const auto u = suspended_of(e.area.value, e.slab->perimeter.value, e.slab->insulation.value, *e.slab->under,
                                    e.slab->ground);
        if (u) {
            trace.step({steps::suspended{},
                        steps::floor_suspended_formula{.deck = fixed(u->deck.si(), 2),
                                                       .ground = fixed(u->ground.si(), 2),
                                                       .beyond = fixed(u->beyond.si(), 2)},
                        text(e.u_value.value, unit::watt_per_square_metre_kelvin, 3), "iso-13370"});
        }
    } else if (e.slab) {
        trace.step({steps::slab{},
                    steps::slab_formula{.area = fixed(e.area.value.si(), 2),
                                        .perimeter = fixed(e.slab->perimeter.value.si(), 2),
                                        .insulation = fixed(e.slab->insulation.value.si(), 2),
                                        .ground = fixed(e.slab->ground.conductivity.value.si(), 1)},
                    text(e.u_value.value, unit::watt_per_square_metre_kelvin, 3), "iso-13370"});
    }
    if (e.space) {
        trace.step({steps::unheated_space{},
                    steps::unheated_space_formula{.to_outside = fixed(e.space->to_outside.value.si(), 1),
                                                  .to_rooms = fixed(e.space->to_rooms.value.si(), 1)},
                    fixed(e.factor.value, 3), "iso-13789"});
    }
}

namespace {

constexpr const auto& m3_per_h = unit::cubic_metre_per_hour;

std::string cubic_metres(VolumeFlow flow) { return fixed(flow.in(m3_per_h), 1); }

void trace_permeability(Trace& trace, const AirSteps& air) {
    const auto& c = air.conditions;
    if (!c.leakage_at_50_pa.given() || !c.air_permeability.given()) return;
    trace.step({steps::permeability{},
                steps::permeability_formula{.rate = fixed(c.leakage_at_50_pa.value.in(unit::per_hour), 2),
                                            .volume = fixed(air.house.volume.si(), 1),
                                            .envelope = fixed(air.house.zone.envelope.si(), 1)},
                text(c.air_permeability.value, unit::cubic_metre_per_hour_square_metre, 2), c.leakage_at_50_pa.source});
}

/// Air through the envelope: straight from the permeability, or as a part of the house's where fans and flues draw.
void trace_envelope(Trace& trace, const AirSteps& air) {
    const auto& [zone, whole] = std::tie(air.house.zone, air.house.air);
    const auto source = std::string{reference::standard_air().source};
    const std::string permeability = fixed(zone.permeability.in(unit::cubic_metre_per_hour_square_metre), 2);
    const bool unbalanced = zone.extract + zone.combustion != zone.supply;
    if (unbalanced) {
        trace.step({steps::air_adjustment{},
                    steps::air_adjustment_formula{.facade = fixed(zone.facade_factor, 0),
                                                  .ratio = fixed(zone.volume_flow_factor, 3),
                                                  .extract = cubic_metres(zone.extract),
                                                  .combustion = cubic_metres(zone.combustion),
                                                  .supply = cubic_metres(zone.supply),
                                                  .permeability = permeability,
                                                  .envelope = fixed(zone.envelope.si(), 1)},
                    fixed(whole.adjustment, 3), source});
        trace.step({steps::air_of_house{},
                    steps::air_of_house_formula{.drawn_in = cubic_metres(whole.drawn_in),
                                                .permeability = permeability,
                                                .envelope = fixed(zone.envelope.si(), 1),
                                                .ratio = fixed(zone.volume_flow_factor, 3),
                                                .adjustment = fixed(whole.adjustment, 3)},
                    text(whole.through_envelope, m3_per_h, 1), source});
        trace.step({steps::leakage_of_room{},
                    steps::leakage_by_part_formula{.envelope = fixed(air.room.envelope.si(), 2),
                                                   .whole = fixed(zone.envelope.si(), 1),
                                                   .air = cubic_metres(whole.through_envelope)},
                    text(air.room.leakage, m3_per_h, 1), source});
    } else {
        trace.step({steps::leakage_of_room{},
                    steps::leakage_of_room_formula{.envelope = fixed(air.room.envelope.si(), 2),
                                                   .permeability = permeability,
                                                   .ratio = fixed(zone.volume_flow_factor, 3)},
                    text(air.room.leakage, m3_per_h, 1), air.conditions.air_permeability.source});
    }
    const std::string factor = fixed(air.house.direction_factor, 0), leakage = cubic_metres(air.room.leakage);
    KeyedText how = steps::windward_formula{
        .factor = factor, .leakage = leakage, .house = cubic_metres(whole.through_envelope)};
    if (unbalanced) {
        how = steps::windward_drawn_formula{
            .share = fixed(whole.through_envelope > VolumeFlow{} ? whole.leakage / whole.through_envelope : 0.0, 3),
            .factor = factor,
            .leakage = leakage,
            .house = cubic_metres(whole.through_envelope)};
    }
    trace.step({steps::windward{}, std::move(how), text(air.room.through_envelope, m3_per_h, 1), source});
}

void trace_standard_air(Trace& trace, const job::Room& room, const AirSteps& air) {
    const auto source = std::string{reference::standard_air().source};
    trace_permeability(trace, air);
    trace_envelope(trace, air);
    trace.step({steps::minimum_air{},
                steps::minimum_air_formula{.changes = fixed(room.minimum_air.value.in(unit::per_hour), 2),
                                           .volume = fixed(air.room.volume.si(), 1)},
                text(air.room.minimum, m3_per_h, 1), room.minimum_air.source});
    KeyedText greater = steps::outdoor_air_formula{.envelope = cubic_metres(air.room.through_envelope),
                                                   .minimum = cubic_metres(air.room.minimum)};
    if (air.room.technical > VolumeFlow{}) {
        greater = steps::outdoor_air_fans_formula{.envelope = cubic_metres(air.room.through_envelope),
                                                  .minimum = cubic_metres(air.room.minimum),
                                                  .technical = cubic_metres(air.room.technical)};
    }
    trace.step({steps::outdoor_air{}, std::move(greater), text(air.room.outdoor, m3_per_h, 1), source});
    KeyedText changes = steps::changes_of_air_formula{.air = cubic_metres(air.room.outdoor),
                                                      .volume = fixed(air.room.volume.si(), 1)};
    if (room.ventilation) {
        changes = steps::changes_of_air_fans_formula{.air = cubic_metres(air.room.outdoor),
                                                     .fans = cubic_metres(air.room.supply),
                                                     .recovered = fixed(room.ventilation->recovery.value, 2),
                                                     .volume = fixed(air.room.volume.si(), 1)};
    }
    trace.step({steps::changes_of_air{}, std::move(changes), text(room.air_changes.value, unit::per_hour, 3), source});
}

}  // namespace

void trace_air(Trace& trace, const job::Room& room, const AirSteps& air) {
    if (air.room.by_standard) return trace_standard_air(trace, room, air);
    if (!room.ventilation) return;
    const auto& v = *room.ventilation;
    trace.step({steps::air_to_warm{},
                steps::air_to_warm_formula{.leaks = fixed(v.infiltration.value.in(unit::per_hour), 2),
                                           .fans = fixed(v.supply.value.in(unit::per_hour), 2),
                                           .recovered = fixed(v.recovery.value, 2)},
                text(room.air_changes.value, unit::per_hour, 3), "en-12831-1"});
}

void trace_house_air(Trace& trace, const job::Room& room, const AirSteps& air, const RoomResult& r) {
    if (!room.house_air.given() || r.air_not_at_once <= Power{}) return;
    KeyedText greater = steps::air_at_once_formula{.leakage = cubic_metres(air.room.leakage),
                                                   .share = fixed(air.house.house_share, 1),
                                                   .minimum = cubic_metres(air.room.minimum)};
    if (air.room.technical > VolumeFlow{}) {
        greater = steps::air_at_once_fans_formula{.leakage = cubic_metres(air.room.leakage),
                                                  .share = fixed(air.house.house_share, 1),
                                                  .minimum = cubic_metres(air.room.minimum),
                                                  .technical = cubic_metres(air.room.technical)};
    }
    trace.step({steps::air_at_once{}, std::move(greater), text(air.room.outdoor_in_house, m3_per_h, 1),
                std::string{reference::standard_air().source}});
    trace.step({steps::loss_in_house{},
                steps::loss_in_house_formula{.loss = text(r.loss, unit::watt, 0),
                                             .air = text(r.air_not_at_once, unit::watt, 0)},
                text(r.loss - r.air_not_at_once, unit::watt, 0), ""});
}

void trace_allowance(Trace& trace, const job::Conditions& c, const job::Room& room, const RoomResult& r) {
    if (r.heat_up <= Power{}) return;
    if (c.intermittent_margin.given()) {
        trace.step({steps::intermittent_margin{},
                    steps::intermittent_margin_formula{.share = text(c.intermittent_margin.value, unit::percent, 0),
                                                       .loss = text(r.loss, unit::watt, 0)},
                    text(r.heat_up, unit::watt, 0), c.intermittent_margin.source});
    } else {
        trace.step({steps::heat_up{},
                    steps::heat_up_formula{.area = text(room.floor_area.value, unit::square_metre, 1),
                                           .rate = text(room.heat_up.value, unit::watt_per_square_metre, 0)},
                    text(r.heat_up, unit::watt, 0), room.heat_up.source});
    }
    trace.step({steps::emitters_must_give{}, shared::sum{}, text(r.load, unit::watt, 0), "en-12831-1"});
}

}  // namespace loopfolio::design
