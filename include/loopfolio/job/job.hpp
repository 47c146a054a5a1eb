// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/build_up.hpp"
#include "loopfolio/job/catalogue.hpp"
#include "loopfolio/job/heat_source.hpp"
#include "loopfolio/job/hot_water.hpp"
#include "loopfolio/job/rating.hpp"
#include "loopfolio/job/season.hpp"
#include "loopfolio/job/sound.hpp"
#include "loopfolio/job/system_water.hpp"
#include "loopfolio/reference/fabric.hpp"

#include <date/date.h>

#include <optional>
#include <string>
#include <vector>

/// A job as plain, validated structs: what a surveyor wrote, before anything is calculated. Strings are
/// UTF-8 with no control characters. Every id is unique within its list and every id named exists.
namespace loopfolio::job {

struct Person {
    std::string name;
    std::string role;           ///< qualification or capacity; may be empty
};

struct Firm {
    std::string name;
    std::vector<std::string> address;
    std::string telephone;
    std::string email;
    std::string registration;   ///< of the firm with whoever licenses its work; may be empty
};

struct Household {
    std::string name;
    std::vector<std::string> contact;   ///< telephone, e-mail; lines as written
};

struct Property {
    std::vector<std::string> address;   ///< at least one line
    std::string description;            ///< `semi-detached house, built about 1936`
};

struct Identity {
    std::string reference;              ///< letters, digits, `.`, `_`, `-`; it names the output files
    std::string revision;               ///< same alphabet
    date::year_month_day design_date;
    std::string supersedes;             ///< earlier revision, may be empty
};

/// Conditions that hold for the whole house. Limits left out are filled from the reference.
struct Conditions {
    Input<Temperature> outdoor;                         ///< always stated by the job; derived where it is for a lower place
    Input<Temperature> flow;                            ///< always stated
    Input<TemperatureDifference> drop;
    Input<Velocity> velocity_preferred;
    Input<Velocity> velocity_limit;
    Input<PressureGradient> gradient_preferred;
    Input<Temperature> mild_day;                        ///< outdoor, for the state at reduced load; filled unless stated
    Input<Length> height_above_station;                 ///< of the house over where `station_outdoor` holds; absent: level
    Input<Quantity<0, -1, 0, 1>> lapse;                 ///< cooling with height; filled with the height
    Input<Temperature> station_outdoor;                 ///< as stated, once `outdoor` is derived
    Input<AirChangeRate> leakage_at_50_pa;              ///< of the house under test; absent: not tested
    Input<double> leakage_divisor;                      ///< filled with the leakage
    Input<HeatFlux> heat_up;                            ///< to warm up after a set-back, per floor area; absent: none
    Input<double> intermittent_margin;                  ///< share on top of the load instead; absent: none
};

enum class FluidName { water, propylene_glycol, ethylene_glycol };
enum class ConcentrationBasis { mass, volume };
struct FluidChoice {
    FluidName kind = FluidName::water;
    Input<double> concentration;                        ///< 0 to 0.6; absent for water
    ConcentrationBasis basis = ConcentrationBasis::mass;
};

/// What the by-area method needs to know of a room's outside.
struct Fabric {
    reference::Era era{};
    reference::WallKind wall{};
    reference::GlazingKind glazing{};
    reference::RoofKind roof = reference::RoofKind::none;
    reference::FloorKind floor = reference::FloorKind::none;
    int outside_walls = 0;                              ///< 0 to 4
    Input<UValue> wall_u_value;                         ///< filled from era and wall unless stated
    Input<UValue> roof_u_value;
    Input<UValue> glazing_u_value;
    Input<ThermalResistance> floor_insulation;
    Ground ground;                                      ///< under FloorKind::ground
    Input<UValue> thermal_bridge;
};

enum class ElementKind { wall, window, door, roof, floor, ceiling, party_wall };
enum class Beyond { outside, unheated, room, ground };
struct Element {
    std::string name;                                   ///< for a reader; may be empty
    ElementKind kind{};
    Input<Area> area;                                   ///< net of the openings in it
    Input<UValue> u_value;                              ///< stated, or derived from `layers` or `slab`
    std::vector<Layer> layers;                          ///< from the room outwards; empty with a stated U-value
    std::optional<GroundSlab> slab;                     ///< with Beyond::ground
    Beyond beyond = Beyond::outside;
    std::string beyond_room;                            ///< id, with Beyond::room
    std::optional<Input<Temperature>> beyond_temperature;   ///< of an unheated space; else see `factor`
    Input<double> factor;                               ///< share of (room - outdoor); absent to outside: the whole
    std::optional<UnheatedSpace> space;                 ///< that `factor` is derived from
};

struct Room {
    std::string id;
    std::string name;
    std::string storey;                                 ///< for a reader: `ground floor`; may be empty
    reference::RoomUse use{};
    bool heated = true;                                 ///< false: no loss is reckoned and no emitter expected
    Input<Area> floor_area;
    Input<Length> ceiling_height;
    Input<Temperature> temperature;                     ///< filled from `use` unless stated
    Input<AirChangeRate> air_changes;                   ///< filled from `use` unless stated or derived from `ventilation`
    std::optional<MechanicalVentilation> ventilation;
    Input<HeatFlux> heat_up;                            ///< filled from the conditions unless stated
    std::optional<Fabric> fabric;                       ///< by-area method, derived rate
    std::optional<Input<HeatFlux>> heat_loss_rate;      ///< by-area method, the firm's own rate
    std::vector<Element> elements;                      ///< element-by-element method, if any
    Input<UValue> element_thermal_bridge;               ///< with elements
    std::optional<Input<Power>> heat_loss;              ///< from another survey; adopted where given
    Place place;
};

struct FittingCount {
    std::string kind;       ///< name in reference::fittings(), or `other`
    int count = 0;          ///< on one pipe of the pair, 0 to 1000
    double zeta = 0.0;      ///< with `other` only
    Place place;
};

struct Emitter {
    std::string id;
    std::string name;                                   ///< for a reader; may be empty
    std::string room;
    std::string at;                                     ///< junction that its flow comes from
    std::string return_at;                              ///< junction that its return goes to; `at` unless stated
    std::string kind;                                   ///< name in reference::emitter_kinds()
    std::string model;                                  ///< of the catalogue, that its figures are taken from; may be empty
    Input<Power> output_at_50k;                         ///< stated or derived; less what `deratings` take
    Input<double> exponent;                             ///< filled from the kind unless stated; 1 with `floor`
    std::optional<RatedAt> rated_at;                    ///< these four: instead of an output at 50 K, one at most
    std::optional<Fan> fan;
    std::optional<RatedByPiece> by_piece;
    std::optional<HeatedFloor> floor;
    std::vector<Derating> deratings;
    Input<Power> rating;                                ///< at 50 K before deratings; given where there are any
    Input<Length> length;                               ///< absent where not surveyed
    Input<Length> height;
    std::optional<Input<Volume>> content;               ///< of water; else taken from its rating
    std::optional<Input<TemperatureDifference>> drop;   ///< across it at design; the conditions' unless stated
    std::optional<Input<double>> valves_kv;             ///< m3/h, of its valves as they were found, together
    std::string loop_pipe;                              ///< name in reference::pipes(); a loop in the floor, else empty
    Input<Length> loop_length;                          ///< of that loop, with its leads
    std::vector<FittingCount> fittings;                 ///< its valves, whole emitter, counted once
    std::string connection;                             ///< pipe name its valves are sized for: v2/2 is taken in it
    bool existing = true;
    Place place;
};

/// What the pipes of a section are.
enum class Carries {
    both,          ///< a flow and a return pipe side by side
    flow,
    return_,       ///< where flow and return run apart: reverse return, a ring main
    loop,          ///< the single pipe of a one-pipe loop
};

struct Section {
    std::string id;
    Carries carries = Carries::both;
    std::string from;                                   ///< which way water flows is computed; a loop runs from here
    std::string to;
    std::string pipe;                                   ///< name in reference::pipes()
    Input<Length> bore;                                 ///< filled from the pipe unless measured
    Input<Length> insert_bore;                          ///< filled from the pipe; absent where fittings do not narrow
    Input<Length> roughness;                            ///< filled from the pipe
    Input<Length> length;                               ///< one way
    std::optional<Input<Conductivity>> heat_loss;       ///< W/(m K) of each pipe over its surroundings, where counted
    Input<Temperature> surroundings;                    ///< with `heat_loss`
    bool closed = false;                                ///< an isolating valve in it is shut
    std::vector<FittingCount> fittings;                 ///< on one pipe; the return is taken to be the same
    bool existing = true;
    std::string where;                                  ///< for a reader: `under hall floor`; may be empty
    Place place;
};

enum class PumpMode { constant_speed, constant_pressure, proportional_pressure };
struct CurvePoint {
    VolumeFlow flow;
    Pressure head;
};
/// Head = shutoff - linear Q - square Q2, coefficients in SI, none below 0.
struct QuadraticCurve {
    Pressure shutoff;
    double linear = 0.0;
    double square = 0.0;
};
struct Circulator {
    std::string name;
    PumpMode mode = PumpMode::constant_speed;
    std::vector<CurvePoint> curve;                      ///< rising flow, falling head; at least two points, or empty
    std::optional<QuadraticCurve> quadratic;            ///< instead of points
    std::optional<Pressure> set_head;                   ///< of a controlled mode
    std::optional<VolumeFlow> set_flow;                 ///< of proportional pressure: where `set_head` is reached
    Basis basis = Basis::document;
    std::string source;
    Place place;
};

/// A circulator in a section of its own, beside the main one.
struct FurtherCirculator {
    Circulator pump;
    std::string in;                                     ///< section
    std::string towards;                                ///< one of its two junctions: the way it pushes in its pipe
    bool in_return = false;                             ///< of a section that carries both: in the return pipe
};

/// A mixing set between two junctions: it draws from `from` and feeds `to` at a lower temperature with a circulator
/// of its own. Everything beyond `to` hangs on it alone.
struct Mixer {
    std::string id;
    std::string from;
    std::string to;
    Input<Temperature> flow;                            ///< that it makes
    Input<TemperatureDifference> drop;                  ///< across the emitters beyond it; the conditions' unless stated
    std::optional<Circulator> pump;
    Place place;
};

enum class SeparationKind { header, close_tees, buffer_two, buffer_four, plate, volumiser };
/// What stands between the heat source and the pipework.
struct Separation {
    SeparationKind kind{};
    std::optional<Input<VolumeFlow>> source_flow;       ///< on the source's side; from the emitters' flow unless stated
    std::optional<Circulator> source_pump;              ///< on the source's side
    std::optional<Input<Volume>> volume;                ///< of a buffer or volumiser
    std::optional<Input<HeatLossCoefficient>> plate_ua; ///< of a plate exchanger
    std::optional<Input<Pressure>> pressure_drop;       ///< each side of a plate, or a volumiser, at the flow below
    std::optional<Input<VolumeFlow>> pressure_drop_flow;
    Place place;
};

struct Job {
    Identity identity;
    Firm firm;
    Person designer;
    Household household;
    Property property;
    std::vector<std::string> survey_notes;              ///< paragraphs for the household's part
    Basis plain_values = Basis::measured;               ///< what a number without a basis stands on
    Conditions conditions;
    FluidChoice fluid;
    std::vector<Room> rooms;
    std::vector<Emitter> emitters;
    std::vector<Section> sections;
    std::optional<HeatSource> heat_source;
    std::optional<Circulator> circulator;               ///< that drives the emitters
    std::vector<FurtherCirculator> further_circulators;
    std::vector<Mixer> mixers;
    std::optional<Separation> separation;
    std::optional<Season> season;
    std::optional<SystemWater> system_water;
    std::optional<HotWater> hot_water;
    std::optional<Sound> sound;
    std::vector<EmitterSize> sizes;                     ///< of the firm's catalogue, in its order; may be empty
    bool unvented_hot_water = false;                    ///< chooses a caution
    bool hot_water_store = false;
    bool old_lagging = false;                           ///< lagging, boards or flues that may hold asbestos
};

}  // namespace loopfolio::job
