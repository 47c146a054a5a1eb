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

HeatLossCoefficient ventilation_coefficient(double air_wh_per_m3k, AirChangeRate rate, Volume volume) {
    constexpr double second_per_hour = 3600.0;
    return HeatLossCoefficient::from_si(air_wh_per_m3k * second_per_hour * rate.si() * volume.si());
}

}  // namespace loopfolio::physics
