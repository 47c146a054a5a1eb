// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/thermal.hpp"

namespace loopfolio::network {

/// What a section of a plan stands for.
enum class Carries {
    both,          ///< a flow and a return pipe, alike
    flow_only,
    return_only,   ///< with flow_only: reverse return, and wherever the two run apart
    loop,          ///< the single pipe of a one-pipe loop
};

struct PlanSection {
    int from = 0;
    int to = 0;
    physics::Conduit conduit;
    Length length;              ///< one way
    double loss_factor = 0.0;   ///< of each pipe
    Carries carries = Carries::both;
    PipeLoss heat_loss;
    bool closed = false;        ///< a shut valve: nothing flows in either pipe
};

/// A pump in the pipe of a section, beside the source's.
struct PlanPump {
    Pump pump;
    int section = 0;
    bool in_return = false;     ///< of a section that has both pipes
    bool towards_from = false;  ///< pushes towards the section's `from`
};

/// A mixing set: a pump feeds `to`, drawing from `from` through a valve and from the return of `to` through a bypass.
struct PlanMixer {
    int from = 0;
    int to = 0;
    Pump pump;
    double valve_resistance = 0.0;    ///< sum of 1/Kv2
    double square_resistance = 0.0;   ///< of the bypass, and of the way back to `from`; Pa/(kg/s)2, > 0
};

/// A header, a pair of close tees or a buffer between the first source and its junctions: the source has a pump of its own,
/// and what one side pumps more than the other passes through the header.
struct PlanHeader {
    Pump source_pump;
    double square_resistance = 0.0;   ///< of the header, Pa/(kg/s)2, > 0
};

struct PlanEmitter {
    int flow_junction = 0;
    int return_junction = 0;         ///< the same, or the second tee on a loop, or where the return joins
    physics::EmitterRating rating;
    int room = 0;
    physics::Conduit connection;     ///< that the loss factor counts on
    Length length;                   ///< of a pipe of that bore inside it, as a loop in a floor; else 0
    double loss_factor = 0.0;
    double valve_resistance = 0.0;   ///< of its valves, sum of 1/Kv2
    double square_resistance = 0.0;
    double beyond = 0.0;             ///< as Emitter::beyond
};

struct PlanSource {
    int flow_junction = 0;
    int return_junction = 0;
    Pump pump;
    double square_resistance = 0.0;   ///< of the source itself, Pa/(kg/s)2
    Temperature flow_temperature = Temperature::from_celsius(50.0);
    std::optional<Power> capacity;
    MassFlow minimum_flow;
};

/// Pipework as it is described between junctions, before flow and return are told apart.
struct Plan {
    int junctions = 0;
    std::vector<PlanSection> sections;
    std::vector<PlanEmitter> emitters;
    std::vector<PlanSource> sources;
    std::vector<PlanPump> pumps;
    std::vector<PlanMixer> mixers;
    std::optional<PlanHeader> header;   ///< with at least one source: the pump of the first is then the emitters'
    std::vector<Room> rooms;
    physics::Fluid fluid;
    Temperature outdoor = Temperature::from_celsius(-3.0);
};

/// The links that a section became; -1 where there is none. A loop's pipe is its `flow`.
struct SectionLinks {
    int flow = -1;      ///< from the section's `from` to its `to`
    int return_ = -1;   ///< from `to` to `from`
};

/// The nodes that a junction became; the same one twice on a loop, -1 where nothing needed one.
struct JunctionNodes {
    int flow = -1;
    int return_ = -1;
};

/// The links that a mixing set became, each from where water comes to where it goes.
struct MixerLinks {
    int valve = -1;     ///< hot water in
    int bypass = -1;    ///< return water in
    int pump = -1;      ///< mixed water out
    int back = -1;      ///< to the return of `from`
};

struct BuiltNetwork {
    System system;   ///< emitters and sources in the plan's order; pump i belongs to source i, further ones follow
    std::vector<SectionLinks> sections;
    std::vector<MixerLinks> mixers;
    std::vector<JunctionNodes> junctions;
    int drive = -1;         ///< link of the first source's pump: with a header, of the emitters' side
    int header = -1;        ///< link from the flow to the return side of the header; -1 without
    int source_pump = -1;   ///< link of the source and its own pump, with a header; else `drive`
    Findings findings;   ///< index: the section, emitter or source; the system is empty where one is an error
};

/// A junction has a flow and a return node, unless only loop pipes and emitters meet there and no source
/// both starts and ends there: then it has one. A loop pipe leaves the flow node of a junction that has
/// two, and ends at its return node: a loop off a two-pipe main is described from the flow tee round to
/// the return tee.
[[nodiscard]] BuiltNetwork build_network(const Plan& plan);

}  // namespace loopfolio::network
