// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/physics/grid.hpp"

#include <optional>
#include <vector>

/// A floor warmed by pipes in its screed: BS EN 1264-2 and -3, type A (pipes in wet screed above
/// insulation). Dry and suspended floors are rated by their makers and are not covered.
namespace loopfolio::physics {

/// Basic characteristic of any heated floor: q = 8.92 (floor - room)^1.1 W/m2, the mean of the surface over
/// the operative temperature of the room. Excess >= 0.
[[nodiscard]] std::optional<HeatFlux> floor_flux(TemperatureDifference surface_excess);
/// Its inverse. Flux >= 0.
[[nodiscard]] std::optional<TemperatureDifference> floor_excess(HeatFlux flux);

/// The tables of EN 1264-2, each complete, rising in x and then in y.
struct FloorTables {
    std::vector<GridPoint> pitch;           ///< a_T: x covering m2 K/W, y 0
    std::vector<GridPoint> cover;           ///< a_U: x covering m2 K/W, y pitch m
    std::vector<GridPoint> diameter;        ///< a_D: x covering m2 K/W, y pitch m
    std::vector<GridPoint> limit;           ///< B_G in W/m2: x pitch m, y screed cover / conductivity m2 K/W
    std::vector<GridPoint> limit_exponent;  ///< n_G: x pitch m, y as above
};

/// A floor's build above and round the pipe.
struct FloorBuild {
    Length pitch;                ///< between pipes, 0.05 to 0.375 m
    Length screed_cover;         ///< of screed above the top of the pipe, 0.010 to 0.065 m
    Conductivity screed;         ///< 0.3 to 3 W/(m K)
    ThermalResistance covering;  ///< 0 to 0.15 m2 K/W
    Length pipe_outside;         ///< diameter, 0.008 to 0.030 m
    Length pipe_wall = Length::from_si(0.002);
    Conductivity pipe = Conductivity::from_si(0.35);
};

/// Flux per kelvin of the water's logarithmic mean excess over the room:
///     K_H = B a_B a_T^(1 - T/0.075) a_U^(100 (0.045 - s_u)) a_D^(250 (D - 0.020)), in m,
///     a_B = (1/10.8 + 0.045) / (1/10.8 + 0.045 / screed + covering),
///     B = 6.7 W/(m2 K) for a pipe of 0.35 W/(m K) and 2 mm;
/// for another pipe 1/B = 1/6.7 + (1.1 T / 2 pi) (product of the factors)
///     [ln(D / bore) / pipe - ln(D / (D - 4 mm)) / 0.35].
/// Nothing outside the ranges above, or for a pipe without a bore. A thicker cover has a relation of its
/// own in the standard and is refused here.
[[nodiscard]] std::optional<UValue> floor_transfer(const FloorBuild& build, const FloorTables& tables);

/// Where the warmest spot of the floor, over a pipe, reaches its limit.
struct FloorLimit {
    TemperatureDifference water_excess;  ///< logarithmic mean of the water over the room
    HeatFlux flux;                       ///< mean of the floor; at most the basic characteristic
};

/// Limit curve q_G = f B_G (dTH / f)^n_G with f = (surface limit / 9 K)^1.1, cut with q = K_H dTH: dTH = f
/// (B_G / K_H)^(1 / (1 - n_G)). `surface_excess` is what the warmest spot may have over the room: 9 K for
/// 29 °C over 20 °C. Above zero, up to 20 K. Cover / conductivity of the screed within the tables, 0.010 to
/// 0.0792 m2 K/W. Conduction round the pipe alone gives a lower limit at a wide pitch: by 4 % at 0.15 m, 10 %
/// at 0.20 m and 25 % at 0.30 m of a bare floor (floor_conduction.csv of the tests).
[[nodiscard]] std::optional<FloorLimit> floor_limit(const FloorBuild& build, const FloorTables& tables,
                                                    TemperatureDifference surface_excess);

/// What the warmest spot has over the room at a mean flux: the excess whose limit curve passes there. Both curves grow
/// with the excess to 1.1, so it is `surface_excess` (flux / limit.flux)^(1/1.1), with the limit of that excess. Flux
/// >= 0.
[[nodiscard]] std::optional<TemperatureDifference> warmest_excess(const FloorLimit& limit,
                                                                  TemperatureDifference surface_excess, HeatFlux flux);

struct FloorOutput {
    TemperatureDifference water_excess;  ///< logarithmic mean
    HeatFlux flux;
    Temperature surface;  ///< mean of the floor, by the basic characteristic
};

/// What a floor of this transfer gives. Nothing unless flow - drop > room, drop >= 0, transfer > 0.
[[nodiscard]] std::optional<FloorOutput> floor_output(UValue transfer, Temperature flow, TemperatureDifference drop,
                                                      Temperature room);

/// Flow temperature for a wanted flux: room + drop / (1 - exp(-drop / dTH)), dTH = flux / transfer. Flux,
/// drop and transfer > 0.
[[nodiscard]] std::optional<Temperature> floor_flow_temperature(UValue transfer, HeatFlux flux,
                                                                TemperatureDifference drop, Temperature room);

/// Resistance from the pipes up to the room: 1/10.8 + covering + screed cover / screed.
[[nodiscard]] std::optional<ThermalResistance> resistance_upward(const FloorBuild& build);

/// Heat lost downwards, EN 1264-3: q Ro / Ru + (room - below) / Ru. `down` from the pipes to what lies
/// below, its surface included, > 0. Negative where it is warmer below than that. Flux and `up` > 0.
[[nodiscard]] std::optional<HeatFlux> flux_downward(HeatFlux flux, ThermalResistance up, ThermalResistance down,
                                                    Temperature room, Temperature below);

/// Length of pipe of a loop: area / pitch, plus its way from the manifold and back. Area, pitch > 0, ways
/// >= 0.
[[nodiscard]] std::optional<Length> loop_length(Area area, Length pitch, Length to_manifold_and_back);

/// Water that a loop needs: A (q + downward) / (cp drop). Nothing unless all are above zero and the sum is.
[[nodiscard]] std::optional<MassFlow> loop_flow(Area area, HeatFlux flux, HeatFlux downward, TemperatureDifference drop,
                                                SpecificHeat cp);

}  // namespace loopfolio::physics
