// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/base/unit.hpp"

#include <optional>

/// Hot water from a store: what is drawn, how large the store, how long it takes to heat again and
/// through what.
namespace loopfolio::physics {

/// Heat of a volume of water, measured hot, warmed from `cold`: rho(hot) V (h(hot) - h(cold)),
/// IAPWS-IF97. Volume > 0, 0.01 °C <= cold < hot <= 95 °C; nothing otherwise.
[[nodiscard]] std::optional<Energy> heat_to_warm(Volume volume, Temperature cold, Temperature hot);

struct DailyUse {
    double persons = 0.0;  ///< > 0
    Volume each;           ///< drawn a day by each, mixed at `drawn`; > 0
    Temperature cold;      ///< of the main
    Temperature drawn;     ///< at the tap
};

/// `heat_to_warm` of all that is drawn.
[[nodiscard]] std::optional<Energy> daily_heat(const DailyUse& use);

/// Store that gives `mixed` water at `drawn` from one filling at `stored`: mixed (drawn -
/// cold)/(stored - cold) / usable share. The usable share, above 0 to 1, is what leaves hot before
/// the cold below reaches the top. Nothing unless cold < drawn <= stored.
[[nodiscard]] std::optional<Volume> store_volume(Volume mixed, Temperature cold, Temperature drawn, Temperature stored,
                                                 double usable_share);

/// W for every kelvin between the source's flow and a store mixed through and through: through a
/// coil of conductance UA with a capacity flow C = m cp, C (1 - exp(-UA/C)). Both > 0. Source:
/// effectiveness-NTU method, one side at one temperature.
[[nodiscard]] std::optional<HeatLossCoefficient> coil_transfer(HeatLossCoefficient ua, HeatLossCoefficient source_flow);

/// The same through a plate outside the store, counterflow, with a pump to the store: effectiveness
/// times the smaller capacity flow.
[[nodiscard]] std::optional<HeatLossCoefficient> plate_transfer(HeatLossCoefficient ua, HeatLossCoefficient source_flow,
                                                                HeatLossCoefficient store_flow);

struct ReheatDemand {
    Volume store;
    Temperature from;              ///< store, mixed; >= 0.01 °C
    Temperature to;                ///< up to 95 °C
    Temperature flow;              ///< highest flow temperature of the source
    Power capacity;                ///< of the source while it heats water
    HeatLossCoefficient transfer;  ///< `coil_transfer`, `plate_transfer`, or UA itself for much flow
};

struct Reheat {
    Duration time;
    Duration by_capacity;  ///< of it, with the source's capacity as the limit
    Duration by_transfer;  ///< of it, with the coil as the limit
    Energy heat;           ///< that the store takes up
    Temperature turns;     ///< store at which the second limit takes over, `from` to `to`
    Power least;           ///< power at the end
};

/// A mixed store under rho cp V dT/dt = min(capacity, transfer (flow - T)), rho and cp at the mean
/// of `from` and `to`: constant power, then exponential. No losses while it heats. Nothing unless
/// from < to < flow and all > 0.
[[nodiscard]] std::optional<Reheat> reheat(const ReheatDemand& demand);

/// Flow temperature at which a coil or plate passes `power` into a store at `stored`: stored +
/// power/transfer. All > 0.
[[nodiscard]] std::optional<Temperature> flow_to_pass(Power power, HeatLossCoefficient transfer, Temperature stored);

/// Loss of a store a day, from its test: in proportion to its excess over the room, 45 K in the
/// test of EN 12897 (from memory). Test loss >= 0; stored >= room.
[[nodiscard]] std::optional<Energy> standing_loss(Energy test_loss_a_day, Temperature stored, Temperature room,
                                                  TemperatureDifference test_excess = unit::kelvin(45.0));

/// A store taken to `hot` from time to time against bacteria. The heat is drawn later: what it
/// costs is the performance.
struct Pasteurisation {
    Volume store;
    Temperature usual;                      ///< where it stands before
    Temperature hot = unit::celsius(60.0);  ///< HSG274 part 2: stored at 60 °C at least
    Temperature source_reach;               ///< store up to which the source heats it
    double source_performance = 0.0;        ///< there; > 0 where the source has a part
    double times_a_year = 52.0;             ///< > 0
};

struct PasteurisationUse {
    Energy by_source, by_immersion;  ///< heat each time
    Energy electricity_a_year;       ///< of both
};

/// Nothing unless usual < hot.
[[nodiscard]] std::optional<PasteurisationUse> pasteurise(const Pasteurisation& cycle);

/// Time a day that the source gives to hot water: (daily heat + standing loss) / capacity at hot
/// water. May exceed a day: then it does not keep up. Heats >= 0, capacity > 0.
[[nodiscard]] std::optional<Duration> time_for_hot_water(Energy daily_heat, Energy standing_loss, Power capacity);

}  // namespace loopfolio::physics
