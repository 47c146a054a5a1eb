// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/ventilation.hpp"

#include "physics/valid.hpp"

namespace loopfolio::physics {

std::optional<AirChangeRate> leakage_by_divisor(AirChangeRate at_50_pa, double divisor) {
    if (!none_below_zero(at_50_pa) || !(divisor >= 5.0 && divisor <= 50.0)) return std::nullopt;
    return at_50_pa / divisor;
}

std::optional<AirChangeRate> leakage_by_exposure(AirChangeRate at_50_pa, double shielding, double height_factor) {
    if (!none_below_zero(at_50_pa) || !(shielding >= 0.0 && shielding <= 0.1)) return std::nullopt;
    if (!(height_factor >= 1.0 && height_factor <= 2.0)) return std::nullopt;
    return 2.0 * shielding * height_factor * at_50_pa;
}

std::optional<AirChangeRate> air_changes_to_warm(const MechanicalVentilation& v) {
    if (!none_below_zero(v.supply, v.recovery, v.infiltration) || v.recovery > 1.0) return std::nullopt;
    return v.infiltration + (1.0 - v.recovery) * v.supply;
}

std::optional<double> unheated_factor(const UnheatedSpace& space) {
    const HeatLossCoefficient sum = space.to_rooms + space.to_outside;
    if (!none_below_zero(space.to_rooms, space.to_outside) || !all_above_zero(sum)) return std::nullopt;
    return space.to_outside / sum;
}

std::optional<Temperature> unheated_temperature(const UnheatedSpace& space, Temperature room, Temperature outdoor) {
    const auto factor = unheated_factor(space);
    if (!factor || !all_above_zero(room, outdoor)) return std::nullopt;
    return room - *factor * (room - outdoor);
}

}  // namespace loopfolio::physics
