// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/fluid.hpp"

#include <optional>
#include <span>

/// Expansion vessel of a closed system, EN 12828:2003 Annex D (from memory). Pressures are gauge,
/// at the vessel; the air outside counts as 1 bar, as it does there.
namespace loopfolio::physics {

inline constexpr Pressure atmosphere = Pressure::from_si(1e5);

/// Growth of the system's water from the fill to the highest temperature, as a share of its volume
/// cold: density ratio less 1, from `state_of`. Nothing unless fill < highest, or where the fluid's
/// range ends.
[[nodiscard]] std::optional<double> expansion_share(const Fluid& fluid, Temperature fill, Temperature highest);

/// Water filled at 10 °C by table D.1: (0.31 + 3.9e-4 T2) %, T the highest temperature, 30 to 110
/// °C. A second opinion: against the density of water it is 24 % high at 40 °C and 3 % low at 90
/// °C. Nothing outside.
[[nodiscard]] std::optional<double> table_expansion_share(Temperature highest);

/// Highest pressure in use under a safety valve: 0.5 bar under its setting up to 5 bar, else 0.9 of
/// it. Nothing for a setting up to 0.5 bar.
[[nodiscard]] std::optional<Pressure> highest_in_use(Pressure safety_valve);

/// Gas pressure of the empty vessel: static head plus the steam pressure at the highest temperature
/// (0 up to 100 °C), 0.7 bar at least (recommended there). Nothing where either is below zero.
[[nodiscard]] std::optional<Pressure> least_precharge(Pressure static_head, Pressure steam = {});

struct VesselDemand {
    Volume system;           ///< water in the system, cold; > 0
    double expansion = 0.0;  ///< share, > 0
    Pressure precharge;      ///< >= 0
    Pressure safety_valve;   ///< setting
};

struct VesselSize {
    Volume expansion;  ///< water that the heating pushes out
    /// Water kept in it cold: 20 % of a vessel up to 15 L, else 0.5 % of the system and 3 L at least.
    Volume reserve;
    Volume least;      ///< (expansion + reserve)(pe + 1)/(pe - p0), bar
    Pressure highest;  ///< pe
};

/// Nothing for an input out of range, or a precharge that is not under the highest pressure in use.
[[nodiscard]] std::optional<VesselSize> vessel_size(const VesselDemand& demand);

/// The smallest of `sizes` (rising) that is not under `least`. Nothing where none is.
[[nodiscard]] std::optional<Volume> smallest_size(std::span<const Volume> sizes, Volume least);

/// A chosen vessel in use, its gas kept at one temperature.
struct VesselPressures {
    Volume reserve;  ///< water in it cold
    Pressure fill;   ///< cold
    /// Cold, from which hot is just the highest in use; under the precharge for too small a vessel.
    Pressure highest_fill;
    Pressure final;         ///< hot, from `fill`
    Pressure allowed;       ///< highest in use
    Pressure valve_margin;  ///< safety valve's setting less `final`; below zero where the valve lifts
};

/// `fill` as stated, or what puts the reserve into the vessel: VN (p0 + 1)/(VN - VWR) - 1. Nothing
/// for an input out of range; a fill below the precharge, or not under the highest pressure in use
/// (so not under the safety valve either); a vessel too small to hold reserve and expansion at any
/// pressure.
[[nodiscard]] std::optional<VesselPressures> vessel_pressures(const VesselDemand& demand, Volume vessel,
                                                              std::optional<Pressure> fill = {});

/// BS 7074-1:1989 (from memory), a second opinion without a reserve: e C / (1 - P1/P2), absolute
/// pressures. `final` is there the safety valve's setting less 0.35 bar, or 10 %. All > 0 but the
/// fill, which may be 0; nothing unless fill < final.
[[nodiscard]] std::optional<Volume> bs7074_vessel(Volume system, double expansion, Pressure fill, Pressure final);

}  // namespace loopfolio::physics
