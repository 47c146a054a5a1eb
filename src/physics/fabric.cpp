// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/fabric.hpp"

#include <cmath>
#include <numbers>

namespace loopfolio::physics {

namespace {

bool above_zero(double value) { return std::isfinite(value) && value > 0.0; }

}  // namespace

std::optional<UValue> ground_floor_u_value(Area area, Length exposed_perimeter, ThermalResistance insulation,
                                           const GroundFloor& ground) {
    if (!above_zero(area.si()) || !above_zero(exposed_perimeter.si())) return std::nullopt;
    if (!std::isfinite(insulation.si()) || insulation.si() < 0.0) return std::nullopt;
    const Length characteristic = 2.0 * area / exposed_perimeter;
    const Length equivalent = ground.wall_thickness +
                              ground.ground * (ground.inside_surface + insulation + ground.outside_surface);
    if (equivalent < characteristic) {
        const Length round = std::numbers::pi * characteristic;
        return 2.0 * ground.ground / (round + equivalent) * std::log(round / equivalent + 1.0);
    }
    return ground.ground / (0.457 * characteristic + equivalent);
}

std::optional<SuspendedUValue> suspended_floor_u_value(Area area, Length exposed_perimeter, const SuspendedFloor& floor,
                                                       const GroundFloor& ground) {
    constexpr double heat_in_air = 1450.0;  // J/(m3 K), with the mean effect of wind on openings: ISO 13370
    for (const double value : {floor.deck.si(), floor.height.si(), floor.openings.si(), floor.wind.si(),
                               floor.shielding, floor.walls.si(), floor.base.si()}) {
        if (!std::isfinite(value) || value < 0.0) return std::nullopt;
    }
    const auto through_ground = ground_floor_u_value(area, exposed_perimeter, floor.base, ground);
    const ThermalResistance deck = 2.0 * ground.inside_surface + floor.deck;
    if (!through_ground || !above_zero(deck.si())) return std::nullopt;
    const double characteristic = (2.0 * area / exposed_perimeter).si();
    const double walls = 2.0 * floor.height.si() * floor.walls.si();
    const double air = heat_in_air * floor.openings.si() * floor.wind.si() * floor.shielding;
    SuspendedUValue out;
    out.deck = UValue::from_si(1.0 / deck.si());
    out.ground = *through_ground;
    out.beyond = UValue::from_si((walls + air) / characteristic);
    out.floor = UValue::from_si(1.0 / (deck.si() + 1.0 / (out.ground + out.beyond).si()));
    return out;
}

HeatLossCoefficient ventilation_coefficient(double air_wh_per_m3k, AirChangeRate rate, Volume volume) {
    constexpr double second_per_hour = 3600.0;
    return HeatLossCoefficient::from_si(air_wh_per_m3k * second_per_hour * rate.si() * volume.si());
}

}  // namespace loopfolio::physics
