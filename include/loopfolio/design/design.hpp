// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"
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

/// The calculation: from a job whose defaults are filled to figures and verdicts. Everything is indexed as in
/// the job: `rooms[i]` belongs to `job.rooms[i]`.
namespace loopfolio::design {

/// Heat loss of the reference room for this room's fabric, per m2 of floor and kelvin, term by term.
struct AreaMethod {
    bool stated_rate = false;            ///< the firm's own rate: the terms below are then zero
    UValue walls, glazing, roof, floor, bridges, ventilation;   ///< W/(m2 K) of floor area
    UValue floor_u_value;                ///< by ISO 13370 for the reference room, where the floor is on the ground
    UValue per_kelvin;                   ///< the sum
    HeatFlux rate;                       ///< at the design difference
    Power loss;
};

struct ElementMethod {
    std::vector<Power> elements;         ///< as in the job's room, bridges included; 0 towards a warmer room
    std::vector<std::optional<physics::Transmittance>> layered;   ///< as `elements`; of those with layers
    HeatLossCoefficient outside;         ///< elements to outside, ground and unheated spaces, referred to the design difference
    Power to_outside, to_rooms, ventilation;
    Power loss;
};

enum class LossMethod { none, area, elements, other_survey };

struct RoomResult {
    LossMethod method = LossMethod::none;
    std::optional<AreaMethod> by_area;
    std::optional<ElementMethod> by_elements;
    Power loss;                          ///< the one adopted
    Power loss_to_outside;               ///< less what only moves to other rooms
    Power heat_up;                       ///< to warm up after a set-back, or by the margin for heating now and then
    Power load;                          ///< loss and heat_up: what its emitters must give
    Power output;                        ///< of its emitters at design temperatures
    int emitters = 0;
    /// What the room would reach on the design day with its emitters at design temperatures, if short.
    std::optional<Temperature> reached;
    FindingId finding;                   ///< none for a room that is not heated
};

/// A heated floor at the design temperatures, nothing throttled.
struct FloorResult {
    UValue transfer;                     ///< flux for each kelvin of the water's log mean excess
    HeatFlux flux;
    Temperature surface;                 ///< mean
    std::optional<Temperature> warmest;  ///< spot of it, over a pipe; nothing outside the tables
    Temperature surface_limit;           ///< of the warmest spot, by its zone
    std::optional<physics::FloorLimit> limit;   ///< where the warmest spot reaches it; outside the tables nothing
    Length loop;                         ///< of pipe; 0 where it is not known
};

struct EmitterResult {
    int room = -1;
    Power load;                          ///< its share of the room's load
    Power downward;                      ///< that a floor loses below, at `load`; its water carries both
    std::optional<FloorResult> floor;
    Temperature inlet;                   ///< the design flow temperature, but below a mixing set or along a one-pipe loop
    TemperatureDifference drop;          ///< across it, at `load`
    bool on_loop = false;                ///< on a one-pipe loop: its flow is what the loop's tees let it have
    int mixer = -1;                      ///< that it hangs on
    TemperatureDifference excess;        ///< log mean at design flow and return
    double factor = 0.0;                 ///< share of the 50 K output
    Power output;                        ///< at design flow temperature and drop
    MassFlow flow;                       ///< that carries `load` at the design drop
    VolumeFlow volume_flow;
    Temperature return_temperature;      ///< that comes back at that flow
    std::optional<Temperature> lowest_flow_temperature;   ///< at which `load` is still met
    Power needed_at_50k;                 ///< rating that would just meet `load`, after what lowers it in its place
    Power rating_to_buy;                 ///< the same before: what lowers this emitter there would lower another one too
    double loss_factor = 0.0;            ///< emitter and its valves, on v2/2 of the connection
    Pressure loop_friction;              ///< of a loop of pipe inside it; in `pressure_drop`
    Pressure pressure_drop;
    Pressure circuit;                    ///< whole circuit through this emitter: sections, emitter, source
    FindingId finding;
};

enum class CapacityLimit { velocity_preferred, gradient_preferred, velocity };

struct SectionResult {
    int upstream = -1;                   ///< node index nearer the source
    int downstream = -1;
    int pipes = 2;                       ///< one where flow and return run apart
    Power load;                          ///< that its flow carries at the design drop
    MassFlow flow;
    VolumeFlow volume_flow;
    physics::PipeFlow hydraulic;         ///< at mean water temperature
    double fitting_loss_factor = 0.0;    ///< one pipe, inserts included
    double insert_loss_factor = 0.0;     ///< of that, the narrowing at inserts
    Pressure friction;                   ///< all its pipes
    Pressure fittings;                   ///< all its pipes
    Pressure pressure_drop;              ///< all its pipes
    std::array<Power, 3> capacity;       ///< at the design drop, by CapacityLimit
    CapacityLimit governing{};           ///< the lowest of the preferred limits
    const reference::Pipe* next_size = nullptr;   ///< smallest that would be `keep`; null where it is kept, or none is
    std::optional<TemperatureDifference> drop_to_keep;   ///< smallest drop at which this pipe would be `keep`, rounded up to 0.1 K
    const reference::Pipe* size_for_limit = nullptr;     ///< of a section to change: smallest within the hard limit alone
    std::optional<TemperatureDifference> drop_to_limit;  ///< of a section to change: smallest drop that does so, rounded up
    bool on_index_circuit = false;
    FindingId velocity, gradient;
    Verdict verdict = Verdict::keep;     ///< the worse of the two
};

/// A mixing set at design: what it draws, what it sends out, and what its pump must give.
struct MixerResult {
    Temperature flow, return_;
    VolumeFlow drawn;                    ///< from the main side
    VolumeFlow sent;                     ///< to its emitters
    Pressure head;
    std::optional<Pressure> available;
    FindingId pump;
};

/// Hydraulic separation at design. `source` is the side of the heat source.
struct SeparationResult {
    VolumeFlow source_flow, emitter_flow;
    Temperature source_leaving;          ///< that the source must make
    Temperature source_entering;
    TemperatureDifference lift;          ///< of `source_leaving` over what the emitters need
    std::optional<Temperature> if_mixed; ///< that it must make if a buffer with four connections mixes through
    std::optional<double> effectiveness, transfer_units;   ///< of a plate
    Pressure head;                       ///< on the source's side, its pipes left out
    std::optional<Pressure> available;
    FindingId pump;
};

/// What the maker's table gives at the design outdoor temperature.
struct PerformanceResult {
    double at_flow = 0.0;                ///< heat over electricity at the emitters' flow temperature
    double at_source = 0.0;              ///< at what the source must make
};

struct DutyResult {
    Power load;                          ///< sum of the emitters' loads and what floors lose below: what the water carries
    Power source_load;                   ///< heat leaving the house, and what follows: what the source must make
    Power heat_up, downward;             ///< of that, heat-up allowances, and what floors lose below
    MassFlow flow;
    VolumeFlow volume_flow;
    Temperature back;                    ///< of the water of all emitters together: colder than theirs where mixing sets draw less
    int index_emitter = -1;
    std::vector<int> index_sections;     ///< from the source outwards
    Pressure sections, emitter, source;  ///< parts of the head
    Pressure head;
    std::optional<Pressure> available;   ///< by the circulator's curve at `volume_flow`
    FindingId circulator;
    std::optional<Power> capacity;       ///< of the source on the design day: stated, else by the maker's table
    bool capacity_by_table = false;
    FindingId source_capacity;
    FindingId source_minimum_flow;
    FindingId source_maximum_drop;
    std::optional<PerformanceResult> performance;   ///< inside the maker's table only
};

/// A figure that stands, but less firmly than the rest; shown in the pack beside the figure.
enum class Caveat {
    transition_flow,       ///< Reynolds number 2000 to 4000: friction is a blend
    still_section,         ///< a section that carries nothing
    methods_differ,        ///< by area and by elements more than 25 % apart
    rating_far_off,        ///< stated emitter output outside 0.6 to 1.6 of typical for its size
    curve_exceeded,        ///< design flow beyond the circulator's curve
    low_excess,            ///< emitter excess below 10 K: EN 442 exponents are fitted above that
    loft_not_stated,       ///< a roof U-value of an old era by default, for a loft of unknown thickness
    unusual_rate,          ///< heat loss rate outside 15 to 250 W/m2
    limits_apart,          ///< upper limit of layers over 1.5 times the lower: ISO 6946 does not hold; figure: the ratio
    floor_too_warm,        ///< a floor gives more than its surface limit allows; figure: share of the limit
    loop_too_long,         ///< a floor's loop; figure: metres
    piece_far_off,         ///< output of one section or metre outside what is usual; figure: W
    outside_table,         ///< the source's performance is asked for outside the maker's table; figure: °C of its flow
    capacity_unlike_table, ///< the stated capacity and the maker's table are over 10 % apart; figure: their ratio
    head_far_off,          ///< more head than a house's circulators give, 100 kPa: common practice, no source; figure: Pa
};
struct Flag {
    Caveat caveat{};
    Subject subject{};
    int index = -1;
    double figure = 0.0;
};

/// Junctions by number, as `Design::nodes` names them.
struct Junctions {
    std::vector<int> section_from, section_to;       ///< by section
    std::vector<int> emitter_at, emitter_return;     ///< by emitter
    std::vector<int> mixer_from, mixer_to;           ///< by mixing set
    int source_at = 0, source_return = 0;
};

struct Design {
    physics::Fluid fluid;
    Temperature flow, return_, mean;
    TemperatureDifference drop;
    physics::FluidState state;           ///< at the mean water temperature
    Pressure metre_of_water;             ///< pressure under one metre of it, as pump manufacturers state head
    std::optional<Temperature> freezing;
    std::vector<std::string> nodes;      ///< junction names; index of a node
    Junctions junctions;
    int source_node = -1;
    bool tree = true;                    ///< pairs of pipes that branch from the source: no ring, loop or mixing set
    std::vector<int> node_parent_section;   ///< by node: the one that brings most of its water; -1 at the source
    std::vector<int> node_return_section;   ///< the one that takes its water back; as above where they run together
    std::vector<RoomResult> rooms;
    std::vector<EmitterResult> emitters;
    std::vector<SectionResult> sections;
    std::vector<MixerResult> mixers;
    std::optional<SeparationResult> separation;
    DutyResult duty;
    Power pipe_loss;                     ///< of the sections that state one
    std::vector<Flag> flags;
    Findings findings;                   ///< every check of the design, in the order of the calculation
    Verdict verdict = Verdict::keep;     ///< the worst of them

    [[nodiscard]] const Finding& at(FindingId id) const { return findings.at(static_cast<std::size_t>(id.at)); }
    [[nodiscard]] Verdict verdict_of(FindingId id) const { return at(id).verdict; }
};

/// Why a design could not be made. `field` is a path in the job.
struct Refusal {
    std::string field;
    Place place;
    std::string rule;
    std::string hint;
};

/// Whether larger pipes and wider drops that would be enough are looked for, which takes a third of the time of a design.
enum class Remedies { sought, left_out };

/// Designs a house. Pure: no I/O, no clock, no state. Refuses (rather than extrapolates) where a relation's range is
/// left: a frozen mixture, a flow temperature not above a room's, a return below it.
[[nodiscard]] std::variant<Design, std::vector<Refusal>> design(const House& house, Trace* trace = nullptr,
                                                                Remedies remedies = Remedies::sought);

}  // namespace loopfolio::design
