// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
#include "loopfolio/design/air.hpp"
#include "loopfolio/design/caveat.hpp"
#include "loopfolio/design/finding.hpp"
#include "loopfolio/design/house.hpp"
#include "loopfolio/design/trace.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/physics/emitter.hpp"
#include "loopfolio/physics/fluid.hpp"
#include "loopfolio/physics/friction.hpp"
#include "loopfolio/physics/layers.hpp"
#include "loopfolio/physics/underfloor.hpp"
#include "loopfolio/reference/pipes.hpp"

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// The calculation: from a job with its defaults filled in to figures and verdicts. Every list has the order of the
/// job's: `rooms[i]` belongs to `job.rooms[i]`.
namespace loopfolio::design {

/// Heat loss of a square room of this room's size and fabric, per m2 of floor and kelvin, term by term.
struct AreaMethod {
    bool stated_rate = false;  ///< the rate is the firm's own: the terms below are then zero
    UValue walls, glazing, roof, floor, bridges, ventilation;  ///< W/(m2 K) of floor area
    UValue floor_u_value;  ///< of the reference room by ISO 13370, where the floor is on the ground
    UValue per_kelvin;     ///< the sum
    HeatFlux rate;         ///< at the design temperature difference
    /// The same for a room of one fixed size, 16 m2, as rates by area are often listed. Only with a trace.
    HeatFlux fixed_rate;
    Power loss;
};

struct ElementMethod {
    std::vector<Power> elements;  ///< as in the job's room, bridges included; 0 towards a warmer room
    std::vector<std::optional<physics::Transmittance>> layered;  ///< as `elements`; given for those with layers
    HeatLossCoefficient
        outside;                 ///< elements to outside, ground and unheated spaces, referred to the design difference
    HeatLossCoefficient inside;  ///< elements to other rooms, by their own differences
    Power to_outside, to_rooms, ventilation;
    Power loss;
};

enum class LossMethod { none, area, elements, other_survey };

struct RoomResult {
    LossMethod method = LossMethod::none;
    std::optional<AreaMethod> by_area;
    std::optional<ElementMethod> by_elements;
    Power loss;  ///< the loss of the method adopted
    /// Of `loss`, to warm air that does not enter every room of the house at once.
    Power air_not_at_once;
    /// `loss` without the heat that only moves to other rooms and without `air_not_at_once`.
    Power loss_to_outside;
    Power heat_up;  ///< to warm up after a setback, or the margin for intermittent heating
    Power load;     ///< `loss` and `heat_up` together: what the room's emitters must give
    Power output;   ///< of the room's emitters at design temperatures
    int emitters = 0;
    /// Temperature that the room reaches on the design day with its emitters at design temperatures, if that is too
    /// low. Other rooms are taken to be as warm as they are meant to be.
    std::optional<Temperature> reached;
    bool reached_alone = false;  ///< `reached` counts no heat from other rooms, as the job states no element to them
    FindingId finding;           ///< no finding for a room that is not heated
};

/// A heated floor at the design temperatures, nothing throttled.
struct FloorResult {
    UValue transfer;  ///< heat flux for each kelvin of the water's logarithmic mean excess
    HeatFlux flux;
    Temperature surface;                 ///< mean over the floor
    std::optional<Temperature> warmest;  ///< of the warmest spot, over a pipe; nothing outside the tables
    Temperature surface_limit;           ///< limit for the warmest spot, by its zone
    /// Operating point at which the warmest spot reaches its limit; nothing outside the tables.
    std::optional<physics::FloorLimit> limit;
    Length loop;  ///< length of pipe; 0 where it is not known
};

struct EmitterResult {
    int room = -1;
    Power load;      ///< its share of the room's load
    Power downward;  ///< heat that a floor loses below at `load`; its water carries both
    std::optional<FloorResult> floor;
    /// The design flow temperature, unless a mixing set or a one-pipe loop lowers it.
    Temperature inlet;
    /// Kelvin by which the inlet follows the flow temperature, per kelvin: below 1 where pipes lose heat on the way.
    double inlet_follows = 1.0;
    TemperatureDifference drop;    ///< temperature drop across the emitter at `load`
    bool on_loop = false;          ///< on a one-pipe loop: its flow is what the tees of the loop pass through it
    int mixer = -1;                ///< the mixing set that it is connected to; -1 for none
    TemperatureDifference excess;  ///< logarithmic mean at design flow and return temperatures
    double factor = 0.0;           ///< output as a share of the ΔT50 rating
    Power output;                  ///< at the design flow temperature and temperature drop
    MassFlow flow;                 ///< flow that carries `load` at the design temperature drop
    VolumeFlow volume_flow;
    Temperature return_temperature;                      ///< of the water that comes back at that flow
    std::optional<Temperature> lowest_flow_temperature;  ///< lowest at which `load` is still met
    /// Smallest ΔT50 rating that meets `load`, once the deratings of this place are taken off.
    Power needed_at_50k;
    /// The same before deratings: they would lower the rating of a new emitter in this place too.
    Power rating_to_buy;
    double loss_factor = 0.0;  ///< of the emitter and its valves, on v2/2 of the connection
    Pressure loop_friction;    ///< of a loop of pipe inside the emitter; included in `pressure_drop`
    Pressure pressure_drop;
    Pressure circuit;  ///< of the whole circuit through this emitter: sections, emitter, heat source
    FindingId finding;
};

enum class CapacityLimit { velocity_preferred, gradient_preferred, velocity };

/// What one of the pipes of a section carries, and what it costs. Zero for a pipe that a section does not have.
struct PipeResult {
    MassFlow flow;  ///< never negative
    VolumeFlow volume_flow;
    Pressure friction, fittings, pressure_drop;
};

struct SectionResult {
    int upstream = -1;  ///< index of the node nearer the heat source
    int downstream = -1;
    int pipes = 2;  ///< one where flow and return run separately
    Power load;     ///< load that its flow carries at the design temperature drop
    MassFlow flow;  ///< the larger of its two pipes'
    VolumeFlow volume_flow;
    physics::PipeFlow hydraulic;        ///< at mean water temperature and `flow`
    PipeResult flow_pipe, return_pipe;  ///< the pipe of a one-pipe loop is a flow pipe
    double fitting_loss_factor = 0.0;   ///< of one pipe, inserts included
    double insert_loss_factor = 0.0;    ///< the part of `fitting_loss_factor` that comes from the narrowing at inserts
    Pressure friction;                  ///< of all its pipes
    Pressure fittings;                  ///< of all its pipes
    Pressure pressure_drop;             ///< of all its pipes
    std::array<Power, 3> capacity;      ///< largest load at the design temperature drop, by CapacityLimit
    CapacityLimit governing{};          ///< the lowest of the preferred values
    /// Smallest that gives `keep`; null where this size does, or where none does.
    const reference::Pipe* next_size = nullptr;
    /// Smallest temperature drop at which this pipe gives `keep`, rounded up to 0.1 K.
    std::optional<TemperatureDifference> drop_to_keep;
    /// For a section to change: smallest size that meets the limit alone.
    const reference::Pipe* size_for_limit = nullptr;
    /// For a section to change: smallest temperature drop that meets the limit alone, rounded up.
    std::optional<TemperatureDifference> drop_to_limit;
    double head_share = 0.0;  ///< of the pump's head at design: what its pipes on the index circuit take
    bool on_index_circuit = false;
    FindingId velocity, gradient;
    Verdict verdict = Verdict::keep;  ///< the worse of the two
};

/// A mixing set at design: the flow that it draws, the flow that it sends out, and the head that its pump must give.
struct MixerResult {
    Temperature flow, return_;
    VolumeFlow drawn;  ///< from the main side
    VolumeFlow sent;   ///< to its emitters
    Pressure head;
    std::optional<Pressure> available;
    FindingId pump;
};

/// Hydraulic separation at design. `source` is the primary side, that of the heat source.
struct SeparationResult {
    VolumeFlow source_flow, emitter_flow;
    Temperature source_leaving;  ///< of the water that the heat source must supply
    Temperature source_entering;
    TemperatureDifference lift;  ///< `source_leaving` less the temperature that the emitters need
    /// Temperature that the heat source must supply if a four-pipe buffer mixes completely.
    std::optional<Temperature> if_mixed;
    std::optional<double> effectiveness, transfer_units;  ///< of a plate heat exchanger
    Pressure head;                                        ///< on the primary side, without its pipes
    std::optional<Pressure> available;
    FindingId pump;
};

/// What the manufacturer's table gives at the design outdoor temperature.
struct PerformanceResult {
    double at_flow = 0.0;    ///< COP at the emitters' flow temperature
    double at_source = 0.0;  ///< COP at the temperature that the heat source must supply
};

/// One step of the index circuit: the pipes of a section that it passes through.
enum class IndexPipes { both, flow, return_ };
struct IndexLeg {
    int section = -1;
    IndexPipes pipes = IndexPipes::both;  ///< `both` only where both carry the same flow
    Pressure pressure_drop;
};

struct DutyResult {
    /// The loads of the emitters and what floors lose below: the heat that the water carries.
    Power load;
    /// Heat that leaves the house, and what is added to it: the heat source output needed.
    Power source_load;
    Power heat_up, downward;  ///< parts of `source_load`: heat-up allowances, and what floors lose below
    MassFlow flow;
    VolumeFlow volume_flow;
    Power carried;  ///< heat that the water takes from the heat source: `load` and what pipes lose
    /// Return as it arrives at the heat source, or at what separates it: colder than `flow` less the design drop where
    /// mixing sets draw less, or where pipes lose heat.
    Temperature back;
    int index_emitter = -1;
    std::vector<int> index_sections;     ///< sections of the index circuit, from the heat source outwards
    std::vector<IndexLeg> index_legs;    ///< the same, pipe by pipe: outwards and back
    Pressure sections, emitter, source;  ///< parts of the head
    /// What the head has beyond these parts; negative where further pumps help along the circuit.
    Pressure left_over;
    int heaviest_section = -1;  ///< the one that alone takes most of the head; -1 where none does
    Pressure heaviest_drop;     ///< that it takes on the index circuit
    Pressure head;
    std::optional<Pressure> available;  ///< head by the pump's curve at `volume_flow`
    FindingId circulator;
    /// Where the job does not describe the pump: against the heads of usual circulators of houses.
    FindingId usual_circulator;
    /// Of the heat source on the design day: as stated, else from the manufacturer's table.
    std::optional<Power> capacity;
    bool capacity_by_table = false;
    FindingId source_capacity;
    FindingId source_minimum_flow;
    FindingId source_maximum_drop;
    std::optional<PerformanceResult> performance;  ///< only within the manufacturer's table
};

/// Junctions by number, as `Design::nodes` names them.
struct Junctions {
    std::vector<int> section_from, section_to;    ///< by section
    std::vector<int> emitter_at, emitter_return;  ///< by emitter
    std::vector<int> mixer_from, mixer_to;        ///< by mixing set
    int source_at = 0, source_return = 0;
};

struct Design {
    physics::Fluid fluid;
    Temperature flow, return_, mean;
    TemperatureDifference drop;
    physics::FluidState state;  ///< at the mean water temperature
    Pressure metre_of_water;    ///< pressure under one metre of it, as pump manufacturers state head
    std::optional<Temperature> freezing;
    std::vector<std::string> nodes;  ///< junction names; index of a node
    Junctions junctions;
    int source_node = -1;
    /// Pairs of pipes that branch from the heat source, without rings, one-pipe loops or mixing sets.
    bool tree = true;
    /// By node: the section that brings most of its water; -1 at the heat source.
    std::vector<int> node_parent_section;
    /// By node: the section that takes its water back; the same as its parent where flow and return run together.
    std::vector<int> node_return_section;
    HouseAir air;
    std::vector<RoomResult> rooms;
    std::vector<EmitterResult> emitters;
    std::vector<SectionResult> sections;
    std::vector<MixerResult> mixers;
    std::optional<SeparationResult> separation;
    DutyResult duty;
    Power pipe_loss;  ///< heat lost by the sections that state a loss
    std::vector<Flag> flags;
    Findings findings;                ///< every check of the design, in the order of the calculation
    Verdict verdict = Verdict::keep;  ///< the worst of them

    [[nodiscard]] const Finding& at(FindingId id) const { return findings.at(static_cast<std::size_t>(id.at)); }
    [[nodiscard]] Verdict verdict_of(FindingId id) const { return at(id).verdict; }
};

/// What the job states and is not usual, as flags. They depend on no figure of the design, so they are asked for once
/// and not in each design of a search.
[[nodiscard]] std::vector<Flag> unusual_flags(const job::Job& values);

/// Why a design was not possible. `field` is a path in the job.
struct Refusal {
    std::string field;
    Place place;
    std::string rule;
    Hint hint;
};

/// Whether to look for larger pipes and wider temperature drops that are enough. It takes a third of a design's time.
enum class Remedies { sought, left_out };

/// Designs a house. A pure function: no I/O, no clock, no state. It refuses, rather than extrapolates, where a formula
/// would leave its range: a frozen mixture, a flow temperature not above a room's, a return below it.
[[nodiscard]] std::variant<Design, std::vector<Refusal>> design(const House& house, Trace* trace = nullptr,
                                                                Remedies remedies = Remedies::sought);

}  // namespace loopfolio::design
