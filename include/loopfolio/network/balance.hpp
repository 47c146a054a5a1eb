// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/hydraulics.hpp"
#include "loopfolio/physics/emitter.hpp"

#include <optional>

namespace loopfolio::network {

/// An emitter that is to get its design flow. Its link holds everything in its branch but what the
/// lockshield adds.
struct BalancedEmitter {
    int link = 0;
    MassFlow design_flow;                          ///< > 0, from `from` to `to`
    std::optional<physics::EmitterRating> rating;  ///< for the return temperature to expect
    Temperature room = Temperature::from_celsius(20.0);
};

/// A pump that is to be sized. The pump in its link is left out of account, its resistance is not.
struct SizedPump {
    int link = 0;
    std::optional<MassFlow> flow;   ///< needed where several pumps are sized; else the sum of the emitters'.
                                    ///< With a one-pipe loop it is the flow round the loop.
};

struct BalanceTask {
    std::vector<BalancedEmitter> emitters;
    std::vector<SizedPump> pumps;
    Temperature flow_temperature = Temperature::from_celsius(50.0);   ///< at every emitter
    Pressure least_added;   ///< that each lockshield must keep; >= 0
};

struct EmitterSetting {
    Pressure available;                      ///< across the branch, with the pumps as sized
    Pressure own;                            ///< drop of the branch at its design flow
    Pressure added;                          ///< what the lockshield must add, >= 0
    double kv = 0.0;                         ///< of the lockshield, m3/h; 0 where nothing is to be added
    std::optional<Temperature> return_temperature;
};

struct BalanceResult {
    bool solved = false;
    std::vector<EmitterSetting> emitters;
    std::vector<Pressure> pump_rise;         ///< by sized pump
    std::vector<MassFlow> pump_flow;
    std::vector<MassFlow> flow;              ///< by link, as designed
    int index_emitter = -1;                  ///< the one with least to add: it sets the pump
    std::vector<int> order;                  ///< emitters as they are set on site: least to add first
    Pressure pressure_residual;              ///< of the flow solution underneath
    Findings findings;
};

/// What the lockshields must add so that every emitter gets its design flow, and the least pressure of
/// the pumps that makes that possible. The emitters' and the sized pumps' flows are fixed and drawn from
/// the rest of the network, which is solved for its pressures; this works for every layout. Pumps that
/// are not sized run as they are described. Where parts hang together only through the emitters and sized
/// pumps, their pressures follow as the longest path over what the emitters need.
[[nodiscard]] BalanceResult balance(const Pipework& pipework, const physics::FluidState& fluid,
                                    const BalanceTask& task, Workspace& workspace);

/// The network with the lockshields set: each emitter's link with its valve added.
[[nodiscard]] Pipework with_settings(Pipework pipework, const BalanceTask& task, const BalanceResult& result);

}  // namespace loopfolio::network
