// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <cstddef>
#include <optional>
#include <vector>

/// What a wall, roof or floor lets through, from the layers that it is made of: BS EN ISO 6946.
namespace loopfolio::physics {

/// Resistance of a solid layer, R = d / lambda. Nothing unless both are above zero.
[[nodiscard]] std::optional<ThermalResistance> resistance_of(Length thickness, Conductivity conductivity);

/// A second material that takes the place of the first over a share of the layer: studs, joists, mortar.
struct Bridge {
    ThermalResistance resistance;  ///< > 0, through the layer's own thickness
    double share = 0.0;            ///< of the area, 0 to 1
};

/// A plane layer: a solid by `resistance_of`, or an air layer or membrane by its resistance.
struct Layer {
    ThermalResistance resistance;  ///< > 0
    std::optional<Bridge> bridge;
};

/// What is added to a U-value for workmanship and metal; each >= 0.
struct Corrections {
    UValue gaps;       ///< air gaps in insulation
    UValue fasteners;  ///< metal through insulation
};

/// From the room outwards. Towards an unheated space both surfaces are inside ones.
struct Construction {
    ThermalResistance inside_surface;   ///< >= 0; 0.13, 0.10 up, 0.17 down
    std::vector<Layer> layers;          ///< at least one
    ThermalResistance outside_surface;  ///< >= 0; 0.04
    Corrections corrections;            ///< by the relations below
};

/// Layers with a bridge that one construction may have: each doubles the ways through it.
inline constexpr std::size_t most_bridged_layers = 12;

/// Ratio of the limits above which ISO 6946 does not let the combined method stand: the element needs a
/// calculation in two or three dimensions. Metal through insulation is outside the method at any ratio.
inline constexpr double greatest_limit_ratio = 1.5;

struct Transmittance {
    ThermalResistance upper;   ///< no heat flows sideways: every way through is on its own
    ThermalResistance lower;   ///< heat flows sideways freely: every plane is at one temperature
    ThermalResistance total;   ///< their mean
    UValue u_value;            ///< 1 / total, plus the corrections
    double error_bound = 0.0;  ///< of the total, as a share: (upper - lower) / (2 total)
    Corrections corrections;   ///< as added
};

/// Share of the U-value below which ISO 6946 lets corrections be left out.
inline constexpr double least_correction = 0.03;
/// The corrections over 1 / total.
[[nodiscard]] double correction_share(const Transmittance& transmittance);

/// Surfaces and layers as if nothing bridged them.
[[nodiscard]] ThermalResistance unbridged_total(const Construction& construction);

/// Air gaps in a layer: dU'' (R1 / RT)^2, dU'' 0.00, 0.01, 0.04 W/(m2 K) for level 0 (none that matter), 1 (from the
/// warm side to the cold one) and 2 (with air moving round the insulation); R1 of the layer, RT of the whole,
/// both unbridged. Nothing for other levels or unless 0 < R1 <= RT.
[[nodiscard]] std::optional<UValue> gap_correction(int level, ThermalResistance layer, ThermalResistance whole);

/// Metal through a layer. Conductivity at least 1 W/(m K): below it none is counted.
struct Fasteners {
    Conductivity conductivity;
    Area section;                   ///< across one, > 0
    double per_square_metre = 0.0;  ///< > 0
    Length thickness;               ///< d0 of the layer, > 0
    Length depth;                   ///< d1 into it, > 0; d0 or more where they go through
};

/// alpha lambda A n / d0 (R1 / RT)^2, alpha 0.8 right through and 0.8 d1 / d0 where they end in the layer; R1 and RT as
/// above. Not for metal that touches metal sheets at both ends. Nothing outside the ranges.
[[nodiscard]] std::optional<UValue> fastener_correction(const Fasteners& fasteners, ThermalResistance layer,
                                                        ThermalResistance whole);

/// The combined method: 1 / upper is the sum over all combinations of the layers' parts of share /
/// resistance, the share being the product of the parts' shares; a layer of the lower limit has 1 / R as
/// the sum of share / R of its parts. Both with the surfaces. Nothing for values outside the ranges above
/// or too many bridges.
[[nodiscard]] std::optional<Transmittance> transmittance(const Construction& construction);

/// An element whose U-value is known, with more resistance added to it: 1 / (1 / U + R). U > 0, R >= 0.
[[nodiscard]] std::optional<UValue> with_added_resistance(UValue bare, ThermalResistance added);

}  // namespace loopfolio::physics
