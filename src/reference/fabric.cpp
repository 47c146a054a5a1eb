// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/fabric.hpp"

#include "loopfolio/base/unit.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace loopfolio::reference {

namespace {

constexpr auto eras = std::to_array<Named<Era>>({
    {Era::before_1900, "before_1900", "before 1900"},
    {Era::from_1900, "from_1900_to_1929", "1900 to 1929"},
    {Era::from_1930, "from_1930_to_1949", "1930 to 1949"},
    {Era::from_1950, "from_1950_to_1966", "1950 to 1966"},
    {Era::from_1967, "from_1967_to_1975", "1967 to 1975"},
    {Era::from_1976, "from_1976_to_1982", "1976 to 1982"},
    {Era::from_1983, "from_1983_to_1990", "1983 to 1990"},
    {Era::from_1991, "from_1991_to_1995", "1991 to 1995"},
    {Era::from_1996, "from_1996_to_2002", "1996 to 2002"},
    {Era::from_2003, "from_2003_to_2006", "2003 to 2006"},
    {Era::from_2007, "from_2007_to_2011", "2007 to 2011"},
    {Era::from_2012, "from_2012", "2012 or later"},
});

constexpr auto walls = std::to_array<Named<WallKind>>({
    {WallKind::solid_brick, "solid_brick", "solid brick"},
    {WallKind::cavity, "cavity", "cavity, as built"},
    {WallKind::filled_cavity, "filled_cavity", "cavity, filled later"},
    {WallKind::timber_frame, "timber_frame", "timber frame"},
    {WallKind::system_built, "system_built", "system built"},
    {WallKind::insulated_solid, "insulated_solid", "solid brick, insulated later"},
});

constexpr auto glazings = std::to_array<Named<GlazingKind>>({
    {GlazingKind::single, "single", "single glazing"},
    {GlazingKind::secondary, "secondary", "single with secondary glazing"},
    {GlazingKind::double_before_2002, "double_before_2002", "double glazing, before 2002"},
    {GlazingKind::double_from_2002, "double_from_2002", "double glazing, 2002 or later"},
    {GlazingKind::triple, "triple", "triple glazing"},
});

constexpr auto roofs = std::to_array<Named<RoofKind>>({
    {RoofKind::none, "none", "heated room above"},
    {RoofKind::pitched, "pitched", "pitched roof, loft above"},
    {RoofKind::flat, "flat", "flat roof"},
});

constexpr auto floors = std::to_array<Named<FloorKind>>({
    {FloorKind::none, "none", "heated room below"},
    {FloorKind::ground, "ground", "floor on the ground"},
    {FloorKind::suspended, "suspended", "suspended ground floor"},
    {FloorKind::exposed, "exposed", "floor over outside air"},
});

constexpr std::size_t era_count = eras.size();

/// A U-value in W/(m2 K), with its range.
struct Band {
    double value;
    double low;
    double high;
};
using Bands = std::array<Band, era_count>;

/// Where the editions agree, the range is 20 % either way.
constexpr Band about(double value) { return {value, 0.8 * value, 1.2 * value}; }

// RdSAP 2012 v9.94, bands A to L. A transcription that names this edition has cavities of 2.1 (A) and 1.6 (B to E), and
// 0.5 where they are filled; it has the older value for solid brick, too, so that the ranges hold its values. The
// ranges of the first five bands of solid brick extend from the measured mean to the older edition; those of the bands
// from 1983 on include the tables for Scotland. For filled cavities, the bands from 1996 on have the wall as built.
constexpr Bands solid_brick = {{
    {1.7, 1.3, 2.1},
    {1.7, 1.3, 2.1},
    {1.7, 1.3, 2.1},
    {1.7, 1.3, 2.1},
    {1.7, 1.3, 2.1},
    about(1.0),
    about(0.60),
    {0.60, 0.45, 0.72},
    about(0.45),
    about(0.35),
    {0.30, 0.24, 0.36},
    about(0.28),
}};
constexpr Bands cavity = {{
    {1.5, 1.2, 2.1},
    about(1.5),
    about(1.5),
    about(1.5),
    about(1.5),
    about(1.0),
    about(0.60),
    {0.60, 0.45, 0.72},
    about(0.45),
    about(0.35),
    {0.30, 0.24, 0.36},
    about(0.28),
}};
constexpr Bands filled_cavity = {{
    {0.70, 0.50, 0.84},
    {0.70, 0.50, 0.84},
    {0.70, 0.50, 0.84},
    {0.70, 0.50, 0.84},
    {0.70, 0.50, 0.84},
    about(0.40),
    about(0.35),
    about(0.35),
    about(0.45),
    about(0.35),
    about(0.30),
    about(0.28),
}};
constexpr Bands timber_frame = {{
    about(2.5),
    about(1.9),
    about(1.9),
    about(1.0),
    about(0.8),
    about(0.45),
    about(0.40),
    about(0.40),
    about(0.40),
    about(0.35),
    about(0.30),
    about(0.28),
}};
constexpr Bands system_built = {{
    about(2.0),
    about(2.0),
    about(2.0),
    about(2.0),
    about(1.7),
    about(1.0),
    about(0.60),
    {0.60, 0.45, 0.72},
    about(0.45),
    about(0.35),
    {0.30, 0.24, 0.36},
    about(0.28),
}};

// The thickness of the loft insulation is unknown. The low end of the early bands assumes 100 mm added at some later
// time.
constexpr Bands pitched_roof = {{
    {2.3, 0.40, 2.3},
    {2.3, 0.40, 2.3},
    {2.3, 0.40, 2.3},
    {2.3, 0.40, 2.3},
    {1.5, 0.40, 1.5},
    {0.68, 0.30, 0.80},
    about(0.40),
    about(0.30),
    about(0.26),
    about(0.16),
    about(0.16),
    about(0.16),
}};
constexpr Bands flat_roof = {{
    {2.3, 1.5, 2.5},
    {2.3, 1.5, 2.5},
    {2.3, 1.5, 2.5},
    {2.3, 1.5, 2.5},
    about(1.5),
    about(0.68),
    about(0.40),
    about(0.35),
    about(0.35),
    about(0.25),
    about(0.25),
    about(0.18),
}};

/// Insulation in the floor, mm, with its range.
constexpr Bands floor_thickness = {{
    {0, 0, 0},
    {0, 0, 0},
    {0, 0, 0},
    {0, 0, 0},
    {0, 0, 0},
    {0, 0, 25},
    {0, 0, 25},
    {0, 0, 25},
    {25, 0, 50},
    {75, 50, 100},
    {100, 75, 125},
    {100, 75, 125},
}};
constexpr double floor_conductivity = 0.035;  // W/(m K)

// RdSAP 2012, S5.5, from memory. Ranges are common practice, no source, but for the shielding, whose range is the
// standard's from sheltered to exposed. Openings: 1,500 mm2/m is what the Building Regulations ask for, and old air
// bricks are painted over or blocked.
template <class U>
constexpr auto of_void(const U& unit, double value, double low, double high) {
    return Cited<decltype(unit(value))>{unit(value), unit(low), unit(high), "rdsap-2012-s5"};
}
constexpr FloorVoidDefaults void_table = {
    .height = of_void(unit::metre, 0.3, 0.15, 0.6),
    .openings = of_void(unit::square_millimetre_per_metre, 3000.0, 500.0, 6000.0),
    .wind = of_void(unit::metre_per_second, 5.0, 3.0, 6.0),
    .shielding = {0.05, 0.02, 0.10, "rdsap-2012-s5"},
    .walls = of_void(unit::watt_per_square_metre_kelvin, 1.5, 1.0, 2.1),
    .wall_thickness = of_void(unit::metre, 0.3, 0.22, 0.5),
    .deck = of_void(unit::square_metre_kelvin_per_watt, 0.2, 0.1, 0.35),
    .base = {ThermalResistance{}, ThermalResistance{}, ThermalResistance::from_si(0.5), "common-practice"},
    .openings_questioned = unit::square_millimetre_per_metre(20'000.0),
};

constexpr const Band& band_of(const Bands& bands, Era era) { return bands[static_cast<std::size_t>(era)]; }

constexpr Cited<UValue> cited(const Band& band, std::string_view source) {
    constexpr auto& u = unit::watt_per_square_metre_kelvin;
    return {u(band.value), u(band.low), u(band.high), source};
}

/// A wall with insulation of this thickness at 0.04 W/(m K) put on it.
constexpr double insulated(double u, double millimetres) { return 1.0 / (1.0 / u + millimetres / 1000.0 / 0.04); }

}  // namespace

std::span<const Named<Era>> era_names() { return eras; }
std::span<const Named<WallKind>> wall_names() { return walls; }
std::span<const Named<GlazingKind>> glazing_names() { return glazings; }
std::span<const Named<RoofKind>> roof_names() { return roofs; }
std::span<const Named<FloorKind>> floor_names() { return floors; }

Cited<UValue> wall_u_value(WallKind kind, Era era) {
    const bool older = era <= Era::from_1967;
    switch (kind) {
        case WallKind::solid_brick: return cited(band_of(solid_brick, era), older ? "rdsap-2012-solid" : "rdsap-2012");
        case WallKind::cavity: return cited(band_of(cavity, era), "rdsap-2012");
        case WallKind::filled_cavity: return cited(band_of(filled_cavity, era), "rdsap-2012");
        case WallKind::timber_frame: return cited(band_of(timber_frame, era), "rdsap-2012");
        case WallKind::system_built: return cited(band_of(system_built, era), "rdsap-2012");
        case WallKind::insulated_solid: break;
    }
    const auto& bare = band_of(solid_brick, era);
    return cited({insulated(bare.value, 50.0), insulated(bare.low, 100.0), insulated(bare.high, 25.0)},
                 "insulated-solid-wall");
}

Cited<UValue> roof_u_value(RoofKind kind, Era era) {
    return cited(band_of(kind == RoofKind::flat ? flat_roof : pitched_roof, era), "rdsap-2012");
}

Cited<UValue> glazing_u_value(GlazingKind kind) {
    constexpr std::string_view source = "rdsap-2012-s14";
    switch (kind) {
        case GlazingKind::single: return cited({4.8, 4.8, 5.7}, source);
        case GlazingKind::secondary: return cited({2.4, 2.2, 2.9}, source);
        case GlazingKind::double_before_2002: return cited({2.8, 2.6, 3.7}, source);
        case GlazingKind::double_from_2002: return cited({2.0, 1.6, 2.2}, source);
        case GlazingKind::triple: break;
    }
    return cited({2.1, 1.8, 2.4}, source);
}

Cited<ThermalResistance> floor_insulation(Era era) {
    const auto resistance = [](double mm) {
        return mm / 1000.0 / floor_conductivity * unit::square_metre_kelvin_per_watt;
    };
    const auto& mm = band_of(floor_thickness, era);
    return {resistance(mm.value), resistance(mm.low), resistance(mm.high), "rdsap-2012-s11"};
}

const FloorVoidDefaults& floor_void() { return void_table; }

Cited<UValue> thermal_bridge_allowance(Era era) {
    if (era < Era::from_2003) return cited({0.10, 0.05, 0.15}, "en-12831-1");
    return cited({0.05, 0.02, 0.11}, "en-12831-1");
}

}  // namespace loopfolio::reference
