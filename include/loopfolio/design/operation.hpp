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

/// What the water really does, where a design says what it should do: the pipework solved as a network with the pumps that
/// are there, in four states, and what follows from it.
namespace loopfolio::design {

enum class StateKind {
    as_found,   ///< every lockshield as the survey found it, every thermostatic valve open
    balanced,   ///< as found, with the lockshields set
    changed,    ///< with the changes that the design asks for, and balanced again
    mild_day,   ///< the same on a milder day, with the flow temperature that just meets the rooms
};

struct EmitterState {
    VolumeFlow flow;
    Temperature inlet, outlet;
    Power output;                  ///< not more than its room needs
};

struct RoomState {
    Temperature temperature;       ///< its set temperature, or below where its emitters fall short
    Power need, output;
};

struct State {
    StateKind kind{};
    Temperature outdoor;
    Temperature source_flow;       ///< leaving the heat source
    TemperatureDifference source_drop;
    VolumeFlow flow;               ///< round the emitters
    VolumeFlow source_side;        ///< round the source; the same unless it is separated
    Pressure head;                 ///< of the emitters' circulator at its duty point
    Power heat;                    ///< from the source
    Power pump_power;              ///< that the pumps give to the water, all together
    Velocity highest_velocity;
    int fastest_section = -1;
    int least_served = -1;         ///< room that misses its temperature most, or that has least in hand
    std::vector<EmitterState> emitters;
    std::vector<RoomState> rooms;
    std::vector<VolumeFlow> section_flow;   ///< the larger of its two pipes
    std::vector<double> reynolds;           ///< by section
    bool source_at_capacity = false;
    bool below_minimum_flow = false;
    bool pump_backwards = false;   ///< water is driven through a pump against the way it pushes
    bool would_freeze = false;     ///< water somewhere comes down to its freezing point
    bool past_curve = false;       ///< a pump runs beyond its last point
    int rounds = 0;                ///< of hydraulics and heat in turn
    Pressure pressure_residual;
    MassFlow continuity_residual;
    double energy_error = 0.0;     ///< of the energy balance, relative
    std::vector<job::CurvePoint> system_curve;   ///< head that drives a flow through the pipework; empty on the mild day
};

/// What one lockshield or manifold valve is set to.
struct BalancedValve {
    int emitter = -1;
    VolumeFlow flow;
    Pressure own;                  ///< what its branch drops by itself
    Pressure added;                ///< that the valve must add
    double kv = 0.0;               ///< m3/h; 0: fully open
    Temperature return_temperature;
    TemperatureDifference drop;    ///< to read between its two pipes
    bool out_of_reach = false;     ///< the pumps cannot give it its flow
};

/// What the pipework as it is, or with its changes, needs to be balanced.
struct Balancing {
    std::vector<BalancedValve> valves;   ///< in the order of the work: the one with least to add first
    int index_emitter = -1;
    Pressure head;                 ///< least head of the circulator that makes it possible
};

/// The heat source joined at one junction.
struct JoinOption {
    std::string junction;
    bool is_present = false;
    bool possible = true;          ///< a design could be made
    std::vector<int> change;       ///< sections past a hard limit
    Length metres;                 ///< of pipe in them, flow and return
    int noted = 0;                 ///< sections past a preferred limit
    Pressure head;
};

/// A section past a limit that stays as it is.
struct KeptPipe {
    int section = -1;
    Velocity velocity;             ///< at the design flow
    double noise_margin = 0.0;     ///< limit over velocity, less 1: negative beyond the limit
    std::optional<TemperatureDifference> drop;          ///< that brings it within the preferred limits
    std::optional<Temperature> flow_temperature;        ///< at which the emitters then still give what they give now
    VolumeFlow total_flow;         ///< at that drop
    std::optional<bool> minimum_flow_kept, maximum_drop_kept;   ///< where the source states them
    double load_share = 1.0;       ///< of the present load, at which it would be within its limits at the present drop
};

enum class LoadLimit { velocity_preferred, gradient_preferred, velocity, circulator, emitters, source };
/// The largest load that the house as it stands carries under one limit.
struct LoadCapacity {
    LoadLimit limit{};
    double factor = 0.0;           ///< of the present load; below 1 where the limit is broken now
    Power load;
    int where = -1;                ///< section or room that sets it
};

struct Changes {
    std::vector<PipeChange> pipes;
    std::vector<int> emitters;     ///< that are replaced by larger ones
    bool circulator = false;       ///< a stronger one is needed
    std::optional<Pressure> set_head;   ///< that the circulator is set to, where it could give more
    std::vector<std::optional<Pressure>> mixer_heads;   ///< the same of the pump of each mixing set
    [[nodiscard]] bool any() const { return !pipes.empty() || !emitters.empty() || circulator; }
};

struct Operation {
    bool pump_known = false;       ///< the job says what the circulator gives; else it is taken to give the design head
    std::vector<State> states;     ///< by StateKind
    Balancing as_found;
    Balancing changed;
    Changes changes;
    Pressure changed_head;         ///< that the design with the changes asks of the circulator
    std::vector<job::CurvePoint> pump_curve;   ///< of the circulator there is; empty where it is not known
    std::vector<JoinOption> joins; ///< the present junction first; empty without candidates
    int best_join = -1;
    std::optional<Design> best_join_design;   ///< where the best is not the present one
    std::vector<KeptPipe> kept;
    std::vector<LoadCapacity> capacities;
};

/// The job with the changes that its design asks for: sections past the velocity limit one size up that keeps, the pipes
/// that help a weak circulator, emitters that fall short at the rating that would do, and a circulator of the head that is
/// then needed where none of this is enough, or else the one there is, set to the head that is needed.
[[nodiscard]] std::pair<job::Job, Changes> with_changes(const job::Job& filled, const Design& design);

/// Solves the four states and all that follows. `design` must be that of `house`. Refuses where a network cannot be
/// solved, and says where.
[[nodiscard]] std::variant<Operation, std::vector<Refusal>> operate(const House& house, const Design& design);

}  // namespace loopfolio::design
