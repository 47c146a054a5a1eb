// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/thermal.hpp"

namespace loopfolio::network {

/// The pipes that a section of a plan represents.
enum class Carries {
    both,  ///< a flow and a return pipe that are alike
    flow_only,
    return_only,  ///< with flow_only: for reverse return, and wherever flow and return run separately
    loop,         ///< the single pipe of a one-pipe loop
};

struct PlanSection {
    int from = 0;
    int to = 0;
    physics::Conduit conduit;
    Length length;             ///< one way
    double loss_factor = 0.0;  ///< of each pipe
    Carries carries = Carries::both;
    PipeLoss heat_loss;
    bool closed = false;  ///< it contains a shut valve: neither pipe has any flow
};

/// A pump in the pipe of a section, in addition to that of the heat source.
struct PlanPump {
    Pump pump;
    int section = 0;
    bool in_return = false;     ///< in the return pipe of a section that has both
    bool towards_from = false;  ///< pumps towards the section's `from`
};

/// A mixing set: a pump feeds `to`, drawing from `from` through a valve and from the return of `to` through a bypass.
struct PlanMixer {
    int from = 0;
    int to = 0;
    Pump pump;
    double valve_resistance = 0.0;   ///< sum of 1/Kv2
    double square_resistance = 0.0;  ///< of the bypass, and of the path back to `from`; Pa/(kg/s)2, > 0
};

/// A header, close-coupled tees or a buffer between the first source and its junctions. The source has a pump of its
/// own, and when one side has more flow than the other, the difference passes through the header.
struct PlanHeader {
    Pump source_pump;
    double square_resistance = 0.0;  ///< of the header, Pa/(kg/s)2, > 0
};

struct PlanEmitter {
    int flow_junction = 0;
    /// The same as the flow junction, the second tee on a loop, or the junction that the return goes to.
    int return_junction = 0;
    physics::EmitterRating rating;
    int room = 0;
    physics::Conduit connection;  ///< pipe that the loss factor refers to
    Length length;                ///< length of a pipe of that bore inside it, such as a loop in a floor; else 0
    double loss_factor = 0.0;
    double valve_resistance = 0.0;  ///< of its valves, sum of 1/Kv2
    double square_resistance = 0.0;
    double beyond = 0.0;  ///< as Emitter::beyond
};

struct PlanSource {
    int flow_junction = 0;
    int return_junction = 0;
    Pump pump;
    double square_resistance = 0.0;  ///< of the source itself, Pa/(kg/s)2
    Temperature flow_temperature = Temperature::from_celsius(50.0);
    std::optional<Power> capacity;
    MassFlow minimum_flow;
};

/// Pipework as described between junctions, before flow and return are separate links.
struct Plan {
    int junctions = 0;
    std::vector<PlanSection> sections;
    std::vector<PlanEmitter> emitters;
    std::vector<PlanSource> sources;
    std::vector<PlanPump> pumps;
    std::vector<PlanMixer> mixers;
    std::optional<PlanHeader> header;  ///< needs at least one source: the pump of the first then drives the emitters
    std::vector<Room> rooms;
    physics::Fluid fluid;
    Temperature outdoor = Temperature::from_celsius(-3.0);
};

/// The links made from a section; -1 where there is none. The pipe of a loop is its `flow`.
struct SectionLinks {
    int flow = -1;     ///< from the section's `from` to its `to`
    int return_ = -1;  ///< from `to` to `from`
};

/// The nodes made from a junction; the same one twice on a loop, -1 where none was needed.
struct JunctionNodes {
    int flow = -1;
    int return_ = -1;
};

/// The links made from a mixing set, each in the direction of flow.
struct MixerLinks {
    int valve = -1;   ///< admits hot water
    int bypass = -1;  ///< admits return water
    int pump = -1;    ///< sends out the mixed water
    int back = -1;    ///< leads to the return of `from`
};

struct BuiltNetwork {
    System system;  ///< emitters and sources in the plan's order; pump i belongs to source i, additional ones follow
    std::vector<SectionLinks> sections;
    std::vector<MixerLinks> mixers;
    std::vector<JunctionNodes> junctions;
    int drive = -1;        ///< link of the first source's pump; with a header, that of the secondary side
    int header = -1;       ///< link from the flow to the return side of the header; -1 without
    int source_pump = -1;  ///< with a header, the link of the source and its own pump; else the same as `drive`
    Findings findings;     ///< index: the section, emitter or source; the system is empty if one of them is an error
};

/// A junction has a flow and a return node, unless only loop pipes and emitters meet there and no source both starts
/// and ends there: then it has one node. A loop pipe leaves the flow node of a junction with two nodes, and ends at its
/// return node. A loop off a two-pipe main is therefore described from the flow tee round to the return tee.
[[nodiscard]] BuiltNetwork build_network(const Plan& plan);

}  // namespace loopfolio::network
