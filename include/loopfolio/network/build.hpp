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
};

struct PlanEmitter {
    int flow_junction = 0;
    int return_junction = 0;         ///< the same, or the second tee on a loop, or where the return joins
    physics::EmitterRating rating;
    int room = 0;
    physics::Conduit connection;     ///< that the loss factor counts on
    double loss_factor = 0.0;
    double valve_resistance = 0.0;   ///< of its valves, sum of 1/Kv2
    double square_resistance = 0.0;
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

struct BuiltNetwork {
    System system;   ///< emitters and sources in the plan's order; pump i belongs to source i
    std::vector<SectionLinks> sections;
    std::vector<JunctionNodes> junctions;
    Findings findings;   ///< index: the section, emitter or source; the system is empty where one is an error
};

/// A junction has a flow and a return node, unless only loop pipes and emitters meet there and no source
/// both starts and ends there: then it has one. A loop pipe leaves the flow node of a junction that has
/// two, and ends at its return node: a loop off a two-pipe main is described from the flow tee round to
/// the return tee.
[[nodiscard]] BuiltNetwork build_network(const Plan& plan);

}  // namespace loopfolio::network
