// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/underfloor.hpp"

#include "loopfolio/physics/emitter.hpp"
#include "physics/valid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopfolio::physics {

namespace {

// Basic characteristic.
constexpr double flux_at_one_kelvin = 8.92;  // W/m2
constexpr double flux_exponent = 1.1;

// Standard floor and pipe, to which the factors of type A refer; m, W/(m K), W/(m2 K).
constexpr double surface_coefficient = 10.8;
constexpr double standard_cover = 0.045;
constexpr double standard_pipe_transfer = 6.7;
constexpr double standard_pipe_conductivity = 0.35;
constexpr double standard_pipe_wall = 0.002;
constexpr double with_downward_share = 1.1;  // heat of the pipe to heat of the floor

constexpr double limit_excess = 9.0;  // K, of the limit curves
constexpr double greatest_limit_excess = 20.0;

bool within(double value, double low, double high) {
    constexpr double rounding = 1e-9;
    return value >= low - rounding && value <= high + rounding;  // a value that is not finite is not
}

bool usable(const FloorBuild& b) {
    return within(b.pitch.si(), 0.05, 0.375) && within(b.screed_cover.si(), 0.010, 0.065) &&
           within(b.screed.si(), 0.3, 3.0) && within(b.covering.si(), 0.0, 0.15) &&
           within(b.pipe_outside.si(), 0.008, 0.030) && all_above_zero(b.pipe_wall, b.pipe) &&
           2.0 * b.pipe_wall < b.pipe_outside;
}

double covering_factor(const FloorBuild& b) {
    return (1.0 / surface_coefficient + standard_cover) /
           (1.0 / surface_coefficient + standard_cover / b.screed.si() + b.covering.si());
}

/// Resistance of a pipe's wall times 2 pi, m K/W.
double wall_resistance(double outside, double wall, double conductivity) {
    return std::log(outside / (outside - 2.0 * wall)) / conductivity;
}

}  // namespace

std::optional<HeatFlux> floor_flux(TemperatureDifference surface_excess) {
    if (!none_below_zero(surface_excess)) return std::nullopt;
    return HeatFlux::from_si(flux_at_one_kelvin * std::pow(surface_excess.si(), flux_exponent));
}

std::optional<TemperatureDifference> floor_excess(HeatFlux flux) {
    if (!none_below_zero(flux)) return std::nullopt;
    return TemperatureDifference::from_si(std::pow(flux.si() / flux_at_one_kelvin, 1.0 / flux_exponent));
}

std::optional<UValue> floor_transfer(const FloorBuild& b, const FloorTables& tables) {
    if (!usable(b)) return std::nullopt;
    const double covering = b.covering.si(), pitch = b.pitch.si(), outside = b.pipe_outside.si();
    const auto a_pitch = on_grid(tables.pitch, covering, 0.0);
    const auto a_cover = on_grid(tables.cover, covering, pitch);
    const auto a_diameter = on_grid(tables.diameter, covering, pitch);
    if (!a_pitch || !a_cover || !a_diameter) return std::nullopt;
    const double factors = covering_factor(b) * std::pow(*a_pitch, 1.0 - pitch / 0.075) *
                           std::pow(*a_cover, 100.0 * (standard_cover - b.screed_cover.si())) *
                           std::pow(*a_diameter, 250.0 * (outside - 0.020));
    const double more_wall = wall_resistance(outside, b.pipe_wall.si(), b.pipe.si()) -
                             wall_resistance(outside, standard_pipe_wall, standard_pipe_conductivity);
    const double inverse = 1.0 / standard_pipe_transfer +
                           with_downward_share * pitch / (2.0 * std::numbers::pi) * factors * more_wall;
    if (!all_above_zero(inverse)) return std::nullopt;
    return UValue::from_si(factors / inverse);
}

std::optional<FloorLimit> floor_limit(const FloorBuild& b, const FloorTables& tables,
                                      TemperatureDifference surface_excess) {
    const auto transfer = floor_transfer(b, tables);
    if (!transfer || !all_above_zero(surface_excess)) return std::nullopt;
    if (surface_excess.si() > greatest_limit_excess) return std::nullopt;
    const double cover = (b.screed_cover / b.screed).si();
    const auto coefficient = on_grid(tables.limit, b.pitch.si(), cover);
    const auto exponent = on_grid(tables.limit_exponent, b.pitch.si(), cover);
    if (!coefficient || !exponent || !(*exponent < 1.0)) return std::nullopt;
    const double scale = std::pow(surface_excess.si() / limit_excess, flux_exponent);
    const auto excess = TemperatureDifference::from_si(
        scale * std::pow(*coefficient / transfer->si(), 1.0 / (1.0 - *exponent)));
    const HeatFlux most = std::min(*transfer * excess, *floor_flux(surface_excess));
    return FloorLimit{most / *transfer, most};
}

std::optional<TemperatureDifference> warmest_excess(const FloorLimit& limit, TemperatureDifference surface_excess,
                                                    HeatFlux flux) {
    if (!all_above_zero(limit.flux, surface_excess) || !none_below_zero(flux)) return std::nullopt;
    return std::pow(flux / limit.flux, 1.0 / flux_exponent) * surface_excess;
}

std::optional<FloorOutput> floor_output(UValue transfer, Temperature flow, TemperatureDifference drop,
                                        Temperature room) {
    if (!all_above_zero(transfer) || !none_below_zero(drop)) return std::nullopt;
    const auto excess = log_mean_excess(flow, flow - drop, room);
    if (!excess) return std::nullopt;
    const HeatFlux flux = transfer * *excess;
    return FloorOutput{*excess, flux, room + *floor_excess(flux)};
}

std::optional<Temperature> floor_flow_temperature(UValue transfer, HeatFlux flux, TemperatureDifference drop,
                                                  Temperature room) {
    if (!all_above_zero(transfer, flux, drop, room)) return std::nullopt;
    return room + drop / -std::expm1(-(drop / (flux / transfer)));
}

std::optional<ThermalResistance> resistance_upward(const FloorBuild& b) {
    if (!usable(b)) return std::nullopt;
    return ThermalResistance::from_si(1.0 / surface_coefficient) + b.covering + b.screed_cover / b.screed;
}

std::optional<HeatFlux> flux_downward(HeatFlux flux, ThermalResistance up, ThermalResistance down, Temperature room,
                                      Temperature below) {
    if (!all_above_zero(flux, up, down, room, below)) return std::nullopt;
    return flux * (up / down) + (room - below) / down;
}

std::optional<Length> loop_length(Area area, Length pitch, Length to_manifold_and_back) {
    if (!all_above_zero(area, pitch) || !none_below_zero(to_manifold_and_back)) return std::nullopt;
    return area / pitch + to_manifold_and_back;
}

std::optional<MassFlow> loop_flow(Area area, HeatFlux flux, HeatFlux downward, TemperatureDifference drop,
                                  SpecificHeat cp) {
    if (!all_above_zero(area, flux, flux + downward, drop, cp)) return std::nullopt;
    return area * (flux + downward) / (cp * drop);
}

}  // namespace loopfolio::physics
