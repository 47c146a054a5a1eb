// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <string>

/// What an element of a room's outside is made of, and what moves air and heat past it.
namespace loopfolio::job {

/// A second material in a share of a layer: studs, joists, mortar.
struct LayerBridge {
    std::string material;                           ///< name in reference::materials(), or empty
    Input<Conductivity> conductivity;               ///< filled from the material unless stated
    Input<double> share;                            ///< of the area, 0 to 1
};

/// Metal through an insulating layer: wall ties, screws.
struct Fasteners {
    std::string material;                           ///< name in reference::materials(), or empty
    Input<Conductivity> conductivity;               ///< filled from the material unless stated; at least 1 W/(m K)
    Input<Area> section;                            ///< across one of them
    Input<double> per_square_metre;                 ///< how many on 1 m2
    std::optional<Input<Length>> depth;             ///< into the layer; absent: through all of it
};

/// One layer, from the room outwards: solid with a thickness, still air, or known by its resistance alone.
struct Layer {
    std::string material;                           ///< name in reference::materials(), or empty
    Input<Length> thickness;                        ///< of a solid or of still air; absent with `resistance`
    Input<Conductivity> conductivity;               ///< of a solid; filled from the material unless stated
    bool air = false;
    std::optional<Input<ThermalResistance>> resistance;
    std::optional<LayerBridge> bridge;
    int air_gap_level = 0;                          ///< of ISO 6946, 0 to 2
    std::optional<Fasteners> fasteners;             ///< of a solid
};

/// What a floor lies on.
struct Ground {
    std::string kind;                               ///< name in reference::ground_names(), or empty: assumed
    Input<Conductivity> conductivity;               ///< filled
};

/// Slab on the ground by the edge that it has to outside.
struct GroundSlab {
    Input<Length> perimeter;                        ///< exposed, > 0
    Input<ThermalResistance> insulation;
    Ground ground{};
};

/// An unheated space by what it takes from the rooms beside it and loses to outdoors.
struct UnheatedSpace {
    Input<HeatLossCoefficient> to_rooms, to_outside;
};

/// Fans that bring air into a room.
struct MechanicalVentilation {
    Input<AirChangeRate> supply;
    Input<double> recovery;                         ///< share of the heat taken from extract air, 0 to 1
    Input<AirChangeRate> infiltration;              ///< filled from the house's leakage unless stated
};

}  // namespace loopfolio::job
