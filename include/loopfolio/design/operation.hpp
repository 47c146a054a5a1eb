// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// How the system really runs, where a design says how it should: the pipework solved as a network with its present
/// pumps, in four states, and the results that follow.
namespace loopfolio::design {

enum class StateKind {
    as_found,  ///< every lockshield as the survey found it, every TRV open
    balanced,  ///< as found, with the lockshields set
    changed,   ///< with the changes that the design needs, and balanced again
    mild_day,  ///< as `changed`, on a milder day at the flow temperature that just meets the rooms
};

struct EmitterState {
    VolumeFlow flow;
    Temperature inlet, outlet;
    Power output;  ///< at most what its room needs
};

struct RoomState {
    Temperature temperature;  ///< the set temperature, or lower where the room's emitters fall short
    Power need, output;
};

/// Flow in each pipe of a section. In the flow pipe positive from `from` to `to`, in the return pipe from `to` to
/// `from`; zero for a pipe that the section does not have. The pipe of a one-pipe loop is a flow pipe.
struct SectionFlows {
    VolumeFlow flow, back;
};

/// Flow that a mixing set draws from its `from` and gives back there; what it sends out; and what its bypass mixes in.
struct MixerFlows {
    VolumeFlow drawn, sent, mixed_in;
};

struct State {
    StateKind kind{};
    Temperature outdoor;
    Temperature source_flow;  ///< leaving the heat source
    TemperatureDifference source_drop;
    VolumeFlow flow;         ///< round the emitters
    VolumeFlow source_side;  ///< round the heat source; the same as `flow` unless the two are separated
    Pressure head;           ///< of the emitters' pump at its duty point
    Power heat;              ///< from the source
    Power pump_power;        ///< power that all pumps together give to the water
    Velocity highest_velocity;
    int fastest_section = -1;
    /// Room furthest below its temperature, or, if none is, the one with the least margin.
    int least_served = -1;
    std::vector<EmitterState> emitters;
    std::vector<RoomState> rooms;
    std::vector<VolumeFlow> section_flow;  ///< the larger flow of its two pipes
    std::vector<SectionFlows> pipes;       ///< by section
    std::vector<MixerFlows> mixers;        ///< by mixing set
    VolumeFlow through_separation;         ///< from flow to return beside the emitters; negative the other way
    Power pipe_loss;                       ///< heat lost by pipes
    Power downward;                        ///< heat that floors give below, of the same water
    std::vector<double> reynolds;          ///< by section
    bool source_at_capacity = false;
    bool below_minimum_flow = false;
    bool above_maximum_drop = false;  ///< the temperature drop at the heat source exceeds the maximum that it allows
    bool pump_backwards = false;      ///< water is driven backwards through a pump
    bool would_freeze = false;        ///< water somewhere cools to its freezing point
    bool past_curve = false;          ///< a pump runs beyond the last point of its curve
    int rounds = 0;                   ///< iterations of hydraulics and heat in turn
    Pressure pressure_residual;
    MassFlow continuity_residual;
    double energy_error = 0.0;  ///< relative error of the energy balance
    /// Head that drives each flow through the pipework; empty on the mild day, and where only states are asked for.
    std::vector<job::CurvePoint> system_curve;
};

/// The setting of one lockshield or manifold valve.
struct BalancedValve {
    int emitter = -1;
    VolumeFlow flow;
    Pressure own;     ///< pressure drop of its branch without the valve
    Pressure added;   ///< pressure drop that the valve must add
    double kv = 0.0;  ///< m3/h; 0: fully open
    Temperature return_temperature;
    TemperatureDifference drop;  ///< temperature drop to read between its two pipes
    bool out_of_reach = false;   ///< the pumps cannot drive its design flow
};

/// The settings that balance the pipework as it is, or with its changes.
struct Balancing {
    std::vector<BalancedValve> valves;  ///< in the order of the work: the one with least to add first
    int index_emitter = -1;
    Pressure head;  ///< minimum head of the pump with which balancing is possible
};

/// The heat source connected at one junction.
struct JoinOption {
    std::string junction;
    bool is_present = false;
    bool possible = true;     ///< a design is possible
    std::vector<int> change;  ///< sections that exceed a limit
    Length metres;            ///< length of pipe in them, flow and return
    int noted = 0;            ///< sections outside a preferred value
    Pressure head;
};

/// A section outside a limit that stays as it is.
struct KeptPipe {
    int section = -1;
    Velocity velocity;                            ///< at the design flow
    double noise_margin = 0.0;                    ///< limit over velocity, less 1: negative above the limit
    std::optional<TemperatureDifference> drop;    ///< temperature drop that brings it within the preferred values
    std::optional<Temperature> flow_temperature;  ///< at which the emitters then still give their present output
    VolumeFlow total_flow;                        ///< flow of the whole system at that temperature drop
    std::optional<bool> minimum_flow_kept, maximum_drop_kept;  ///< where the heat source states them
    /// Share of the present load at which it is within its limits, at the present temperature drop.
    double load_share = 1.0;
};

enum class LoadLimit { velocity_preferred, gradient_preferred, velocity, circulator, emitters, source };
/// The largest load that the house in its present state carries under one limit.
struct LoadCapacity {
    LoadLimit limit{};
    double factor = 0.0;  ///< share of the present load; below 1 where the limit is exceeded already
    Power load;
    int where = -1;  ///< section or room that sets this capacity
};

struct Changes {
    std::vector<PipeChange> pipes;
    std::vector<int> emitters;                         ///< emitters to replace with larger ones
    bool circulator = false;                           ///< a stronger pump is needed
    std::optional<Pressure> set_head;                  ///< the pump's setting, where it could give more
    std::vector<std::optional<Pressure>> mixer_heads;  ///< the same for the pump of each mixing set
    [[nodiscard]] bool any() const { return !pipes.empty() || !emitters.empty() || circulator; }
};

struct Operation {
    bool pump_known = false;    ///< the job describes the pump; otherwise it is assumed to give the design head
    std::vector<State> states;  ///< by StateKind
    Balancing as_found;
    Balancing changed;
    Changes changes;
    Pressure changed_head;                    ///< pump head needed by the design with the changes
    Findings left;                            ///< what still has to change with them: they leave it as it is
    std::vector<job::CurvePoint> pump_curve;  ///< of the present pump; empty where it is not known
    std::vector<JoinOption> joins;            ///< the present junction first; empty without candidates
    int best_join = -1;
    std::optional<Design> best_join_design;  ///< where another junction than the present one is best
    std::vector<KeptPipe> kept;
    std::vector<LoadCapacity> capacities;
};

/// The job with the changes that its design needs. Sections above the velocity limit get the next size that is within
/// it, as do the pipes that most help a weak pump. Emitters that fall short get the smallest rating that is enough.
/// Where the present pump is still too weak a stronger one takes its place; otherwise it is set to the head that is
/// needed.
[[nodiscard]] std::pair<job::Job, Changes> with_changes(const job::Job& filled, const Design& design);

/// How much of an operation is calculated: what only a pack prints refuses nothing.
enum class Extent {
    states,  ///< the states and the changes, without the curves of pipework and pump, `joins`, `kept` and `capacities`
    whole,
};

/// Solves the four states and calculates what follows from them. `design` must be that of `house`. Refuses where a
/// network cannot be solved, and says where.
[[nodiscard]] std::variant<Operation, std::vector<Refusal>> operate(const House& house, const Design& design,
                                                                    Extent extent = Extent::whole);

}  // namespace loopfolio::design
