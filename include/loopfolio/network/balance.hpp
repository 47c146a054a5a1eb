// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/hydraulics.hpp"
#include "loopfolio/physics/emitter.hpp"

#include <optional>

namespace loopfolio::network {

/// An emitter to balance to its design flow. Its link holds everything in its branch except the resistance that the
/// lockshield adds.
struct BalancedEmitter {
    int link = 0;
    MassFlow design_flow;                          ///< > 0, from `from` to `to`
    std::optional<physics::EmitterRating> rating;  ///< used for the expected return temperature
    Temperature room = Temperature::from_celsius(20.0);
};

/// A pump to size. The pump in its link is ignored, but the link's resistance counts.
struct SizedPump {
    int link = 0;
    std::optional<MassFlow> flow;  ///< needed where several pumps are sized; else the sum of the emitters'.
                                   ///< With a one-pipe loop it is the flow round the loop.
};

struct BalanceTask {
    std::vector<BalancedEmitter> emitters;
    std::vector<SizedPump> pumps;
    Temperature flow_temperature = Temperature::from_celsius(50.0);  ///< at every emitter
    Pressure least_added;  ///< pressure drop that each lockshield must have at least; >= 0
};

struct EmitterSetting {
    Pressure available;  ///< across the branch, once the pumps are sized
    Pressure own;        ///< pressure drop of the branch at its design flow
    Pressure added;      ///< pressure drop that the lockshield must add, >= 0
    double kv = 0.0;     ///< of the lockshield, m3/h; 0 where it adds nothing
    std::optional<Temperature> return_temperature;
};

struct BalanceResult {
    bool solved = false;
    std::vector<EmitterSetting> emitters;
    std::vector<Pressure> pump_rise;  ///< by sized pump
    std::vector<MassFlow> pump_flow;
    std::vector<MassFlow> flow;  ///< by link, at design
    int index_emitter = -1;      ///< the emitter with the least to add: it sets the pump
    std::vector<int> order;      ///< emitters in the order in which to set them on site: least to add first
    Pressure pressure_residual;  ///< of the flow solution that this is based on
    Findings findings;
};

/// The pressure drop that the lockshields must add so that every emitter gets its design flow, and the lowest pump
/// pressures with which that is possible. The flows of the emitters and the sized pumps are fixed and drawn from the
/// rest of the network, which is solved for its pressures; this works for every layout. Pumps that are not sized run as
/// described. Where parts of the network are connected only through the emitters and sized pumps, their pressures
/// follow as the longest path over what the emitters need.
[[nodiscard]] BalanceResult balance(const Pipework& pipework, const physics::FluidState& fluid, const BalanceTask& task,
                                    Workspace& workspace);

/// The network with the lockshields set: the link of each emitter includes its valve.
[[nodiscard]] Pipework with_settings(Pipework pipework, const BalanceTask& task, const BalanceResult& result);

}  // namespace loopfolio::network
