// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/hydraulics.hpp"
#include "loopfolio/physics/emitter.hpp"

#include <optional>

namespace loopfolio::network {

/// Heat that a pipe loses: per metre and kelvin over what surrounds it. 0 for none.
struct PipeLoss {
    Conductivity per_metre;
    Temperature ambient = Temperature::from_celsius(20.0);
};

/// How a room's temperature is settled.
enum class RoomControl {
    fixed,   ///< at its set temperature whatever the emitters give: how much would they give?
    held,   ///< emitters give no more than the room's need, each the same share of what it could; their flow
            ///< is unchanged, so that the rest comes back as a warmer return. Below the set temperature where
            ///< they cannot meet the need.
    free,   ///< where its loss and its emitters balance
};

struct Room {
    RoomControl control = RoomControl::fixed;
    Temperature set_temperature = Temperature::from_celsius(20.0);
    HeatLossCoefficient loss;   ///< to outdoors; > 0 unless `fixed`
    Power gains;                ///< from anything but its emitters
};

struct Emitter {
    int link = 0;
    physics::EmitterRating rating;
    int room = 0;
    double beyond = 0.0;        ///< heat that its water gives elsewhere for each watt to the room, >= 0: below a floor
};

/// Gives its flow temperature, or adds its capacity, whichever is the colder; never cools.
struct Source {
    int link = 0;
    Temperature flow_temperature = Temperature::from_celsius(50.0);
    std::optional<Power> capacity;
    MassFlow minimum_flow;      ///< that it needs; only reported
};

/// A network with what heats it and what it heats. Emitter and source links must not lose heat as pipes do.
struct System {
    Pipework pipework;
    physics::Fluid fluid;
    Temperature outdoor = Temperature::from_celsius(-3.0);
    std::vector<PipeLoss> pipe_loss;   ///< by link; empty for none
    std::vector<Room> rooms;
    std::vector<Emitter> emitters;
    std::vector<Source> sources;
};

struct EmitterResult {
    MassFlow flow;            ///< magnitude
    Temperature inlet;
    Temperature outlet;
    Power output;
    Power available;          ///< what it would give unthrottled; more than `output` only in a `held` room
};

struct RoomResult {
    Temperature temperature;
    Power need;               ///< loss at the set temperature less gains, >= 0
    Power output;             ///< of its emitters
    Power shortfall;          ///< need less output, >= 0
    Power surplus;            ///< available less need, >= 0
    bool missed = false;      ///< does not reach its set temperature: short by more than 1e-6 of its need
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
    Power emitters;           ///< what their water gives, to rooms and beyond
    Power pipes;
    double relative_error = 0.0;   ///< (sources - emitters - pipes) over the largest of them, or over what
                                   ///< 1 mK in a source's water is where that is more
};

/// Temperatures where water stands still (a link with less than 1e-9 of the largest flow) mean nothing
/// and are those of the warmest source's flow.
struct ThermalResult {
    bool solved = false;
    std::vector<Temperature> node;     ///< mixed, by node
    std::vector<Temperature> inlet;    ///< by link, in the direction of flow
    std::vector<Temperature> outlet;
    std::vector<EmitterResult> emitters;
    std::vector<RoomResult> rooms;
    std::vector<SourceResult> sources;
    EnergyBalance energy;
    int rounds = 0;
    Findings findings;
};

/// Temperatures on given flows, one a link. Streams mix by conservation; along a pipe T_out = T_amb +
/// (T_in - T_amb) exp(-U'L/(m cp)); an emitter balances its water side with its rating. One specific heat
/// `cp` serves the whole system (water's moves by 0.3 % between 30 and 75 °C), so that the energy balance
/// closes exactly. Heat from pumps and friction is left out.
[[nodiscard]] ThermalResult solve_thermal(const System& system, std::span<const MassFlow> flow,
                                          SpecificHeat cp, Workspace& workspace);

struct SystemResult {
    bool solved = false;
    HydraulicResult hydraulic;
    ThermalResult thermal;
    SpecificHeat specific_heat;   ///< at the mean of the sources' inlet and outlet
    int rounds = 0;               ///< of hydraulics and heat in turn
    Findings findings;            ///< of all kinds
};

/// Flows and temperatures that agree: density and viscosity in each link at the mean of its ends, until
/// no mean moves by 1e-6 K nor any flow by 1e-9 of the largest.
[[nodiscard]] SystemResult solve_system(const System& system, Workspace& workspace);
[[nodiscard]] SystemResult solve_system(const System& system);

}  // namespace loopfolio::network
