// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/loss/trace_parts.hpp"

#include "design/resolve/derive.hpp"
#include "loopfolio/base/number_text.hpp"
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

void trace_air(Trace& trace, const job::Room& room) {
    if (!room.ventilation) return;
    const auto& v = *room.ventilation;
    trace.step({steps::air_to_warm{},
                steps::air_to_warm_formula{.leaks = fixed(v.infiltration.value.in(unit::per_hour), 2),
                                           .fans = fixed(v.supply.value.in(unit::per_hour), 2),
                                           .recovered = fixed(v.recovery.value, 2)},
                text(room.air_changes.value, unit::per_hour, 3), "en-12831-1"});
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
