// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/ventilation.hpp"

#include "physics/valid.hpp"

#include <algorithm>

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

std::optional<ZoneAir> air_of_zone(const AirZone& z) {
    if (!none_below_zero(z.envelope, z.permeability, z.extract, z.combustion, z.supply)) return std::nullopt;
    if (!(z.volume_flow_factor > 0.0 && z.volume_flow_factor <= 1.0) || !(z.facade_factor > 0.0)) return std::nullopt;
    const VolumeFlow unbalanced = z.extract + z.combustion - z.supply;
    const VolumeFlow at_50_pa = z.permeability * z.envelope;
    ZoneAir out;
    if (at_50_pa > VolumeFlow{}) {
        const double share = unbalanced / at_50_pa;
        out.adjustment = 1.0 / (1.0 + z.facade_factor / z.volume_flow_factor * share * share);
    }
    out.leakage = z.volume_flow_factor * out.adjustment * at_50_pa;
    out.drawn_in = std::max(unbalanced, VolumeFlow{});
    out.through_envelope = out.drawn_in + out.leakage;
    return out;
}

VolumeFlow part_of_room(const ZoneAir& air, const AirZone& zone, Area envelope) {
    if (zone.envelope <= Area{}) return {};
    return envelope / zone.envelope * air.through_envelope;
}

VolumeFlow air_of_room(const ZoneAir& air, VolumeFlow part, double direction_factor) {
    if (air.through_envelope <= VolumeFlow{}) return {};
    const VolumeFlow windward = std::min(air.through_envelope, direction_factor * part);
    return air.leakage / air.through_envelope * windward + air.drawn_in / air.through_envelope * part;
}

VolumeFlow technical_air(VolumeFlow supply, VolumeFlow extract, VolumeFlow combustion) {
    return std::max(supply, extract + combustion);
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
