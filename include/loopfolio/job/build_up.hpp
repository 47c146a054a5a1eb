// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>

/// The materials of an element of a room's outside, and the means of ventilation and of heat loss to other spaces.
namespace loopfolio::job {

/// A second material in a share of a layer, such as studs, joists or mortar.
struct LayerBridge {
    std::string material;              ///< name in reference::materials(), or empty
    Input<Conductivity> conductivity;  ///< filled from the material unless stated
    Input<double> share;               ///< share of the area, 0 to 1
};

/// Metal through an insulating layer, such as wall ties or screws.
struct Fasteners {
    std::string material;                ///< name in reference::materials(), or empty
    Input<Conductivity> conductivity;    ///< filled from the material unless stated; at least 1 W/(m K)
    Input<Area> section;                 ///< cross-section of one of them
    Input<double> per_square_metre;      ///< number on 1 m2
    std::optional<Input<Length>> depth;  ///< into the layer; absent: through the whole layer
};

/// One layer, from the room outwards: solid with a thickness, still air, or known by its resistance alone.
struct Layer {
    std::string material;              ///< name in reference::materials(), or empty
    Input<Length> thickness;           ///< of a solid or of still air; absent with `resistance`
    Input<Conductivity> conductivity;  ///< of a solid; filled from the material unless stated
    bool air = false;
    std::optional<Input<ThermalResistance>> resistance;
    std::optional<LayerBridge> bridge;
    int air_gap_level = 0;               ///< of ISO 6946, 0 to 2
    std::optional<Fasteners> fasteners;  ///< of a solid
};

/// The ground under a floor.
struct Ground {
    std::string kind;                  ///< name in reference::ground_names(); empty: assumed
    Input<Conductivity> conductivity;  ///< filled
};

/// The void under a suspended ground floor, and the floor's deck over it. All is filled unless stated.
struct FloorVoid {
    Input<Length> height;           ///< of the floor above the ground outside
    Input<Length> openings;         ///< area of ventilation openings for each length of exposed edge
    Input<Velocity> wind;           ///< mean at 10 m
    Input<double> shielding;        ///< share of the wind that acts on the openings
    Input<UValue> walls;            ///< of the void, above ground
    Input<Length> wall_thickness;   ///< at the ground
    Input<ThermalResistance> deck;  ///< without insulation and surfaces
    Input<ThermalResistance> base;  ///< insulation on the base of the void
};

/// A ground floor, described by its edge that faces outside: a slab, or suspended where there is a void under it.
struct GroundSlab {
    Input<Length> perimeter;  ///< exposed edge, > 0
    Input<ThermalResistance> insulation;
    Ground ground{};
    std::optional<FloorVoid> under{};
};

/// An unheated space, by its heat gain from the rooms next to it and its heat loss to outdoors.
struct UnheatedSpace {
    Input<HeatLossCoefficient> to_rooms, to_outside;
};

/// Ventilation of a room by fans.
struct MechanicalVentilation {
    Input<AirChangeRate> supply;
    Input<double> recovery;             ///< share of the heat recovered from extract air, 0 to 1
    Input<AirChangeRate> infiltration;  ///< absent: by the standard, or from the house's leakage with a replaced table
    Input<AirChangeRate> extract;       ///< air taken out by the fans; absent: as much as `supply`
};

}  // namespace loopfolio::job
