// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// A number from an outside source: value, spread, and the key of its source.
template <class Q>
struct Cited {
    Q value;
    Q low;
    Q high;
    std::string_view source;
};

/// Era of building, England and Wales bands. Names in a job file: `before_1900`, `from_1900_to_1929`,
/// ..., `from_2012`.
enum class Era {
    before_1900,
    from_1900,
    from_1930,
    from_1950,
    from_1967,
    from_1976,
    from_1983,
    from_1991,
    from_1996,
    from_2003,
    from_2007,
    from_2012,
};
enum class WallKind { solid_brick, cavity, filled_cavity, timber_frame, system_built, insulated_solid };
enum class GlazingKind { single, secondary, double_before_2002, double_from_2002, triple };
enum class RoofKind { none, pitched, flat };  ///< `none`: heated room above
/// `ground`: on the ground; `suspended`: over a ventilated void; `exposed`: over outside air.
enum class FloorKind { none, ground, suspended, exposed };

/// Names in a job file and labels in the pack, one table for each vocabulary, in enumerator order.
template <class E>
struct Named {
    E value;
    std::string_view name;
    std::string_view label;
};
[[nodiscard]] std::span<const Named<Era>> era_names();
[[nodiscard]] std::span<const Named<WallKind>> wall_names();
[[nodiscard]] std::span<const Named<GlazingKind>> glazing_names();
[[nodiscard]] std::span<const Named<RoofKind>> roof_names();
[[nodiscard]] std::span<const Named<FloorKind>> floor_names();

template <class E>
[[nodiscard]] std::string_view label_of(std::span<const Named<E>> names, E value) {
    for (const auto& n : names) {
        if (n.value == value) return n.label;
    }
    return {};
}

/// U-values by era. Low and high give the spread between editions and measured values.
[[nodiscard]] Cited<UValue> wall_u_value(WallKind kind, Era era);
[[nodiscard]] Cited<UValue> roof_u_value(RoofKind kind, Era era);  ///< kind must not be `none`
[[nodiscard]] Cited<UValue> glazing_u_value(GlazingKind kind);
/// Thermal resistance of the insulation in a ground, suspended or exposed floor of this era (0 where none).
[[nodiscard]] Cited<ThermalResistance> floor_insulation(Era era);
/// What is taken of a suspended ground floor and the void below it where the job says nothing.
struct FloorVoidDefaults {
    Cited<Length> height;           ///< of the floor above the ground outside
    Cited<Length> openings;         ///< ventilation openings for each length of exposed edge
    Cited<Velocity> wind;           ///< mean at 10 m
    Cited<double> shielding;        ///< share of the wind that acts on the openings
    Cited<UValue> walls;            ///< of the void, above ground
    Cited<Length> wall_thickness;   ///< at the ground
    Cited<ThermalResistance> deck;  ///< boards and joists, without insulation and surfaces
    Cited<ThermalResistance> base;  ///< insulation on the base of the void
    Length openings_questioned;     ///< above it the job is asked; common practice, no source
};
[[nodiscard]] const FloorVoidDefaults& floor_void();
/// Allowance for thermal bridges, added to every U-value of an element to outside.
[[nodiscard]] Cited<UValue> thermal_bridge_allowance(Era era);

/// Use of a room. Its temperature and air changes follow from it unless the job states them.
enum class RoomUse {
    living,
    dining,
    kitchen,
    bedroom,
    bedroom_with_ensuite,
    bathroom,
    toilet,
    hall,
    landing,
    study,
    utility,
    store,
};
struct RoomUseDefaults {
    RoomUse use;
    std::string_view name;   ///< in a job file
    std::string_view label;  ///< for a reader
    double temperature_c;
    std::string_view temperature_source;
    double air_changes_per_hour, air_changes_low, air_changes_high;
    std::string_view air_changes_source;
};
[[nodiscard]] std::span<const RoomUseDefaults> room_uses();
[[nodiscard]] const RoomUseDefaults& defaults_for(RoomUse use);

/// The room for which the default rates in W/m2 are derived: square plan, one side for each outside wall, glazing as a
/// share of the floor area, the rest of the outside wall opaque.
struct ReferenceRoom {
    Area floor_area;
    Length ceiling_height;
    double glazing_share_of_floor;
    std::string_view source;
};
[[nodiscard]] const ReferenceRoom& reference_room();

}  // namespace loopfolio::reference
