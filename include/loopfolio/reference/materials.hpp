// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/reference/fabric.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// Design conductivity of a building material. A manufacturer's declared value overrides it. Low and high give the
/// spread between tables and between usual products, from memory.
struct Material {
    std::string_view name;   ///< in a job file: `brick_outer`
    std::string_view label;  ///< for a reader
    Cited<Conductivity> conductivity;
};
[[nodiscard]] std::span<const Material> materials();
[[nodiscard]] const Material* find_material(std::string_view name);
[[nodiscard]] std::vector<std::string_view> material_names();

/// Kinds of ground that ISO 13370 distinguishes: `clay`, `sand`, `rock`. The first is assumed where the job states
/// none.
[[nodiscard]] std::span<const std::string_view> ground_names();
[[nodiscard]] const Material* find_ground(std::string_view name);

/// Direction of the heat flow from a room through an element: for walls, ceilings and floors.
enum class HeatFlow { horizontal, upward, downward };

/// Surface resistances of BS EN ISO 6946. Horizontal includes directions up to 30 degrees either way.
struct SurfaceResistances {
    ThermalResistance inside;
    ThermalResistance beyond;  ///< outside, or a second inside surface towards an unheated space
    std::string_view source;
};
[[nodiscard]] SurfaceResistances surface_resistances(HeatFlow flow, bool to_outside);

/// An air layer without openings, between ordinary surfaces (no foil), linear between the thicknesses of the table.
/// Thickness 0 to 0.3 m; nothing outside. A layer with openings counts half or not at all: see the standard.
struct AirLayer {
    ThermalResistance resistance;
    std::string_view source;
};
[[nodiscard]] std::optional<AirLayer> air_layer(Length thickness, HeatFlow flow);

/// The space under a pitched roof over a flat insulated ceiling, together with the roof covering, as one layer.
struct RoofSpace {
    std::string_view name;
    std::string_view label;
    ThermalResistance resistance;
    std::string_view source;
};
[[nodiscard]] std::span<const RoofSpace> roof_spaces();

}  // namespace loopfolio::reference
