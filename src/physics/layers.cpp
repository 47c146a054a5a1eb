// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/layers.hpp"

#include "physics/valid.hpp"

#include <algorithm>
#include <array>

namespace loopfolio::physics {

namespace {

bool usable(const Layer& layer) {
    if (!all_above_zero(layer.resistance)) return false;
    if (!layer.bridge) return true;
    return all_above_zero(layer.bridge->resistance) && none_below_zero(layer.bridge->share) &&
           layer.bridge->share <= 1.0;
}

bool usable(const Construction& c) {
    const auto bridged = std::ranges::count_if(c.layers, [](const Layer& l) { return l.bridge.has_value(); });
    return !c.layers.empty() &&
           none_below_zero(c.inside_surface, c.outside_surface, c.corrections.gaps, c.corrections.fasteners) &&
           std::ranges::all_of(c.layers, [](const Layer& l) { return usable(l); }) &&
           static_cast<std::size_t>(bridged) <= most_bridged_layers;
}

/// Sum of share / resistance over all ways from layer `next` on, after a way of this share and resistance.
double ways_through(const std::vector<Layer>& layers, std::size_t next, double share, ThermalResistance so_far) {
    if (share == 0.0) return 0.0;
    if (next == layers.size()) return share / so_far.si();
    const Layer& layer = layers[next];
    if (!layer.bridge) return ways_through(layers, next + 1, share, so_far + layer.resistance);
    return ways_through(layers, next + 1, share * (1.0 - layer.bridge->share), so_far + layer.resistance) +
           ways_through(layers, next + 1, share * layer.bridge->share, so_far + layer.bridge->resistance);
}

ThermalResistance mixed(const Layer& layer) {
    if (!layer.bridge) return layer.resistance;
    const double share = layer.bridge->share;
    return ThermalResistance::from_si(1.0 /
                                      ((1.0 - share) / layer.resistance.si() + share / layer.bridge->resistance.si()));
}

}  // namespace

std::optional<ThermalResistance> resistance_of(Length thickness, Conductivity conductivity) {
    if (!all_above_zero(thickness, conductivity)) return std::nullopt;
    return thickness / conductivity;
}

std::optional<Transmittance> transmittance(const Construction& c) {
    if (!usable(c)) return std::nullopt;
    const ThermalResistance surfaces = c.inside_surface + c.outside_surface;
    Transmittance out;
    out.upper = ThermalResistance::from_si(1.0 / ways_through(c.layers, 0, 1.0, surfaces));
    out.lower = surfaces;
    for (const auto& layer : c.layers) out.lower += mixed(layer);
    out.total = 0.5 * (out.upper + out.lower);
    out.u_value = UValue::from_si(1.0 / out.total.si()) + c.corrections.gaps + c.corrections.fasteners;
    out.corrections = c.corrections;
    out.error_bound = (out.upper - out.lower) / (2.0 * out.total);
    return out;
}

double correction_share(const Transmittance& t) {
    return (t.corrections.gaps + t.corrections.fasteners).si() * t.total.si();
}

ThermalResistance unbridged_total(const Construction& c) {
    ThermalResistance out = c.inside_surface + c.outside_surface;
    for (const auto& layer : c.layers) out += layer.resistance;
    return out;
}

std::optional<UValue> gap_correction(int level, ThermalResistance layer, ThermalResistance whole) {
    constexpr std::array<double, 3> at_most{0.00, 0.01, 0.04};  // W/(m2 K)
    if (level < 0 || level > 2 || !all_above_zero(layer, whole) || layer > whole) return std::nullopt;
    const double share = layer / whole;
    return UValue::from_si(at_most[static_cast<std::size_t>(level)] * share * share);
}

std::optional<UValue> fastener_correction(const Fasteners& f, ThermalResistance layer, ThermalResistance whole) {
    constexpr double least_conductivity = 1.0, right_through = 0.8;
    if (!all_above_zero(f.conductivity, f.section, f.thickness, f.depth, layer, whole)) return std::nullopt;
    if (!(f.per_square_metre > 0.0) || f.conductivity.si() < least_conductivity || layer > whole) return std::nullopt;
    const double alpha = right_through * std::min(1.0, f.depth / f.thickness);
    const double share = layer / whole;
    return UValue::from_si(alpha * f.conductivity.si() * f.section.si() * f.per_square_metre / f.thickness.si() *
                           share * share);
}

std::optional<UValue> with_added_resistance(UValue bare, ThermalResistance added) {
    if (!all_above_zero(bare) || !none_below_zero(added)) return std::nullopt;
    return UValue::from_si(1.0 / (1.0 / bare.si() + added.si()));
}

}  // namespace loopfolio::physics
