// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/hydraulics.hpp"
#include "loopfolio/physics/emitter.hpp"

#include <optional>

namespace loopfolio::network {

/// Heat loss of a pipe, per metre and per kelvin above its surroundings. 0 for none.
struct PipeLoss {
    Conductivity per_metre;
    Temperature ambient = Temperature::from_celsius(20.0);
};

/// How the temperature of a room is determined.
enum class RoomControl {
    fixed,  ///< at its set temperature for any emitter output, to find what that output would be
    held,   ///< emitters give no more than the room's need, each the same share of its full output. Their flow
            ///< is unchanged, so the return comes back warmer. The room is below the set temperature where they
            ///< cannot meet the need.
    free,   ///< where its loss equals the output of its emitters
};

struct Room {
    RoomControl control = RoomControl::fixed;
    Temperature set_temperature = Temperature::from_celsius(20.0);
    HeatLossCoefficient loss;  ///< to outdoors; > 0 unless `fixed`
    Power gains;               ///< heat from other sources than its emitters
};

struct Emitter {
    int link = 0;
    physics::EmitterRating rating;
    int room = 0;
    /// Heat that its water gives elsewhere for each watt to the room, >= 0: what a floor loses below.
    double beyond = 0.0;
};

/// Supplies its flow temperature, or adds its capacity, whichever gives the colder water; never cools.
struct Source {
    int link = 0;
    Temperature flow_temperature = Temperature::from_celsius(50.0);
    std::optional<Power> capacity;
    MassFlow minimum_flow;  ///< that it needs; only used for a finding
};

/// A network with its heat sources and its rooms. The links of emitters and sources must not have a pipe loss.
struct System {
    Pipework pipework;
    physics::Fluid fluid;
    Temperature outdoor = Temperature::from_celsius(-3.0);
    std::vector<PipeLoss> pipe_loss;  ///< by link; empty for none
    std::vector<Room> rooms;
    std::vector<Emitter> emitters;
    std::vector<Source> sources;
};

struct EmitterResult {
    MassFlow flow;  ///< magnitude
    Temperature inlet;
    Temperature outlet;
    Power output;
    Power available;  ///< output without throttling; more than `output` only in a `held` room
};

struct RoomResult {
    Temperature temperature;
    Power need;           ///< loss at the set temperature less gains, >= 0
    Power output;         ///< of its emitters
    Power shortfall;      ///< need less output, >= 0
    Power surplus;        ///< available less need, >= 0
    bool missed = false;  ///< it is short of its set temperature, by more than 1e-6 of its need
};

struct SourceResult {
    MassFlow flow;
    Temperature inlet;
    Temperature outlet;
    Power power;
    bool at_capacity = false;
    bool below_minimum_flow = false;
};

struct EnergyBalance {
    Power sources;
    Power emitters;  ///< heat from their water, to rooms and elsewhere
    Power pipes;
    double relative_error = 0.0;  ///< (sources - emitters - pipes) over the largest of them, or over what
                                  ///< 1 mK in a source's water is where that is more
};

/// The temperatures of links without flow (less than 1e-9 of the largest flow) have no meaning; they are set to the
/// flow temperature of the warmest source.
struct ThermalResult {
    bool solved = false;
    std::vector<Temperature> node;   ///< after mixing, by node
    std::vector<Temperature> inlet;  ///< by link, in the direction of flow
    std::vector<Temperature> outlet;
    std::vector<EmitterResult> emitters;
    std::vector<RoomResult> rooms;
    std::vector<SourceResult> sources;
    EnergyBalance energy;
    int rounds = 0;
    Findings findings;
};

/// Temperatures for given flows, one for each link. Streams mix with conservation of energy; along a pipe T_out = T_amb
/// + (T_in - T_amb) exp(-U'L/(m cp)); an emitter's heat is the same by its water and by its rating. One specific heat
/// `cp` is used for the whole system (that of water varies by 0.3 % between 30 and 75 °C), so that the energy balance
/// closes exactly. Heat from pumps and friction is left out.
[[nodiscard]] ThermalResult solve_thermal(const System& system, std::span<const MassFlow> flow, SpecificHeat cp,
                                          Workspace& workspace);

struct SystemResult {
    bool solved = false;
    HydraulicResult hydraulic;
    ThermalResult thermal;
    SpecificHeat specific_heat;  ///< at the mean of the sources' inlet and outlet
    int rounds = 0;              ///< iterations of hydraulics and heat in turn
    Findings findings;           ///< of all kinds: hydraulics and heat
};

/// Flows and temperatures that agree with each other. Density and viscosity in each link are those at the mean of its
/// end temperatures; the iteration ends when no mean changes by 1e-6 K and no flow by 1e-9 of the largest.
[[nodiscard]] SystemResult solve_system(const System& system, Workspace& workspace);
[[nodiscard]] SystemResult solve_system(const System& system);

}  // namespace loopfolio::network
