// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/layers.hpp"

#include "physics/valid.hpp"

#include <algorithm>

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
    return !c.layers.empty() && none_below_zero(c.inside_surface, c.outside_surface, c.correction) &&
           std::ranges::all_of(c.layers, [](const Layer& l) { return usable(l); }) &&
           static_cast<std::size_t>(bridged) <= most_bridged_layers;
}

/// Sum of share / resistance over all ways from layer `next` on, after a way of this share and resistance.
double ways_through(const std::vector<Layer>& layers, std::size_t next, double share,
                    ThermalResistance so_far) {
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
    return ThermalResistance::from_si(
        1.0 / ((1.0 - share) / layer.resistance.si() + share / layer.bridge->resistance.si()));
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
    out.u_value = UValue::from_si(1.0 / out.total.si()) + c.correction;
    out.error_bound = (out.upper - out.lower) / (2.0 * out.total);
    return out;
}

std::optional<UValue> with_added_resistance(UValue bare, ThermalResistance added) {
    if (!all_above_zero(bare) || !none_below_zero(added)) return std::nullopt;
    return UValue::from_si(1.0 / (1.0 / bare.si() + added.si()));
}

}  // namespace loopfolio::physics
