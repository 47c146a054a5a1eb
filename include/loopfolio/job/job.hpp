// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/build_up.hpp"
#include "loopfolio/job/catalogue.hpp"
#include "loopfolio/job/handover.hpp"
#include "loopfolio/job/heat_source.hpp"
#include "loopfolio/job/hot_water.hpp"
#include "loopfolio/job/parties.hpp"
#include "loopfolio/job/rating.hpp"
#include "loopfolio/job/season.hpp"
#include "loopfolio/job/sound.hpp"
#include "loopfolio/job/system_water.hpp"
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/reference/ventilation.hpp"

#include <optional>
#include <string>
#include <vector>

/// A job as plain, validated structs: what the surveyor wrote, before anything is calculated. Strings are UTF-8 without
/// control characters. Every id is unique within its list, and every id that is referred to exists.
namespace loopfolio::job {

/// Conditions that hold for the whole house. Limits that the job leaves out are filled from the reference.
struct Conditions {
    /// Always stated by the job; derived where the job states it for a lower place.
    Input<Temperature> outdoor;
    Input<Temperature> flow;  ///< always stated
    Input<TemperatureDifference> drop;
    Input<Velocity> velocity_preferred;  ///< for every section that states none; absent: by material and size
    Input<Velocity> velocity_limit;
    Input<PressureGradient> gradient_preferred;
    /// Outdoor temperature of the mild-day state; filled unless stated.
    Input<Temperature> mild_day;
    /// Of the house above the place of `station_outdoor`; absent: same height.
    Input<Length> height_above_station;
    /// Temperature fall with height; filled where a height is given.
    Input<Quantity<0, -1, 0, 1>> lapse;
    Input<Temperature> station_outdoor;  ///< as stated, once `outdoor` is derived
    /// What gives the air changes of rooms that state none.
    reference::AirBy air_by = reference::AirBy::en_12831_2017;
    reference::GuideCategory guide_category{};  ///< with AirBy::guide_categories
    /// Of the rooms' outside area at 50 Pa; derived from `leakage_at_50_pa`, or filled where a room takes its air from
    /// the standard.
    Input<Velocity> air_permeability;
    Input<double> volume_flow_factor;       ///< filled where a room takes its air from the standard
    int exposed_sides = 2;                  ///< of the house, that the wind reaches: 1 to 4
    Input<AirChangeRate> leakage_at_50_pa;  ///< air leakage of the house when tested; absent: not tested
    Input<double> leakage_divisor;          ///< filled where a leakage is given and a replaced table is used
    Input<HeatFlux> heat_up;                ///< to warm up after a setback, per floor area; absent: none
    /// Share of the load for intermittent heating, used instead of `heat_up`; absent: none.
    Input<double> intermittent_margin;
};

enum class FluidName { water, propylene_glycol, ethylene_glycol };
enum class ConcentrationBasis { mass, volume };
struct FluidChoice {
    FluidName kind = FluidName::water;
    Input<double> concentration;  ///< 0 to 0.6; absent for water
    ConcentrationBasis basis = ConcentrationBasis::mass;
};

/// The data about a room's outside that the by-area method needs.
struct Fabric {
    reference::Era era{};
    reference::WallKind wall{};
    reference::GlazingKind glazing{};
    reference::RoofKind roof = reference::RoofKind::none;
    reference::FloorKind floor = reference::FloorKind::none;
    int outside_walls = 0;       ///< 0 to 4
    Input<UValue> wall_u_value;  ///< filled from era and wall unless stated
    Input<UValue> roof_u_value;
    Input<UValue> glazing_u_value;
    Input<ThermalResistance> floor_insulation;
    Ground ground;                   ///< under FloorKind::ground and FloorKind::suspended
    std::optional<FloorVoid> under;  ///< with FloorKind::suspended, filled
    Input<UValue> thermal_bridge;
};

enum class ElementKind { wall, window, door, roof, floor, ceiling, party_wall };
enum class Beyond { outside, unheated, room, ground };
struct Element {
    std::string name;  ///< printed in the pack; may be empty
    ElementKind kind{};
    Input<Area> area;                ///< without the openings in it
    Input<UValue> u_value;           ///< stated, or derived from `layers` or `slab`
    std::vector<Layer> layers;       ///< from the room outwards; empty with a stated U-value
    std::optional<GroundSlab> slab;  ///< with Beyond::ground
    Beyond beyond = Beyond::outside;
    std::string beyond_room;                               ///< id, with Beyond::room
    std::optional<Input<Temperature>> beyond_temperature;  ///< of an unheated space; absent: see `factor`
    /// Share of (room - outdoor); absent for elements to outside, which have the full difference.
    Input<double> factor;
    std::optional<UnheatedSpace> space;  ///< the unheated space that `factor` is derived from
};

struct Room {
    std::string id;
    std::string name;
    std::string storey;  ///< printed in the pack: `ground floor`; may be empty
    std::string group;   ///< rooms for which the job states things once; may be empty
    reference::RoomUse use{};
    bool heated = true;  ///< false: no loss is calculated and no emitter expected
    Input<Area> floor_area;
    Input<Length> ceiling_height;
    Input<Temperature> temperature;    ///< filled from `use` unless stated
    Input<AirChangeRate> air_changes;  ///< derived by the standard unless stated, or filled from a replaced table
    Input<AirChangeRate> house_air;    ///< derived: what of `air_changes` counts for the house as a whole
    Input<AirChangeRate> minimum_air;  ///< filled from `use` where the standard gives the air changes
    std::optional<MechanicalVentilation> ventilation;
    reference::Flue flue = reference::Flue::none;
    Input<VolumeFlow> flue_air;                     ///< that a fire or flue takes; filled from `flue` unless stated
    Input<HeatFlux> heat_up;                        ///< filled from the conditions unless stated
    std::optional<Fabric> fabric;                   ///< by-area method, derived rate
    std::optional<Input<HeatFlux>> heat_loss_rate;  ///< by-area method, the firm's own rate
    std::vector<Element> elements;                  ///< element-by-element method, if any
    Input<UValue> element_thermal_bridge;           ///< with elements
    std::optional<Input<Power>> heat_loss;          ///< from another survey; adopted where stated
    Place place;
};

struct FittingCount {
    std::string kind;   ///< name in reference::fittings(), or `other`
    int count = 0;      ///< on one pipe of the pair, 0 to 1000
    double zeta = 0.0;  ///< with `other` only
    Place place;
};

struct Emitter {
    std::string id;
    std::string name;  ///< printed in the pack; may be empty
    std::string room;
    std::string at;         ///< junction that its flow comes from
    std::string return_at;  ///< junction that its return goes to; `at` unless stated
    std::string kind;       ///< name in reference::emitter_kinds()
    /// Model in the catalogue that its figures are taken from; may be empty.
    std::string model;
    Input<Power> output_at_50k;  ///< stated or derived; after `deratings`
    Input<double> exponent;      ///< filled from the kind unless stated; 1 with `floor`
    /// At most one of these four is given, instead of an output at 50 K.
    std::optional<RatedAt> rated_at;
    std::optional<Fan> fan;
    std::optional<RatedByPiece> by_piece;
    std::optional<HeatedFloor> floor;
    std::vector<Derating> deratings;
    Input<Power> rating;   ///< ΔT50 rating before deratings; given where there are any
    Input<Length> length;  ///< absent where not surveyed
    Input<Length> height;
    std::optional<Input<Volume>> content;  ///< water content; absent: estimated from the rating
    /// Temperature drop across it at design; absent: that of the conditions.
    std::optional<Input<TemperatureDifference>> drop;
    std::optional<Input<double>> valves_kv;  ///< m3/h, of all its valves together as found
    /// Name in reference::pipes(), for a loop in the floor; else empty.
    std::string loop_pipe;
    Input<Length> loop_length;           ///< of that loop, with its tails
    std::vector<FittingCount> fittings;  ///< its valves; for the whole emitter, so counted once
    /// Pipe size of its valves: loss factors refer to v2/2 in this pipe.
    std::string connection;
    bool existing = true;
    Place place;
};

/// The pipes that a section consists of.
enum class Carries {
    both,  ///< a flow and a return pipe next to each other
    flow,
    return_,  ///< with flow: where the two run separately, as in reverse return or a ring main
    loop,     ///< the single pipe of a one-pipe loop
};

struct Section {
    std::string id;
    Carries carries = Carries::both;
    std::string from;  ///< the direction of flow is calculated; a loop runs from here
    std::string to;
    std::string pipe;           ///< name in reference::pipes()
    Input<Length> bore;         ///< filled from the pipe unless measured
    Input<Length> insert_bore;  ///< filled from the pipe; absent where fittings do not narrow
    Input<Length> roughness;    ///< filled from the pipe
    /// Filled from the conditions, else from the guidance for this pipe.
    Input<Velocity> velocity_preferred, velocity_limit;
    Input<Length> length;  ///< one way
    /// W/(m K) of each pipe to its surroundings; absent: not counted.
    std::optional<Input<Conductivity>> heat_loss;
    Input<Temperature> surroundings;     ///< with `heat_loss`
    bool closed = false;                 ///< an isolating valve in it is shut
    std::vector<FittingCount> fittings;  ///< on one pipe; the return is assumed to be the same
    bool existing = true;
    std::string where;  ///< printed in the pack: `under hall floor`; may be empty
    /// Whether it runs where nobody heats: outdoors, under floors that air passes, in a garage or loft.
    bool outside_heated_space = false;
    std::string insulation;  ///< as found or as it is to be: `25 mm mineral wool`; empty: not stated
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
    /// With rising flow and falling head; at least two points, or empty.
    std::vector<CurvePoint> curve;
    std::optional<QuadraticCurve> quadratic;  ///< instead of points
    std::optional<Pressure> set_head;         ///< for the controlled modes
    /// For proportional pressure: flow at which `set_head` is reached.
    std::optional<VolumeFlow> set_flow;
    Basis basis = Basis::document;
    std::string source;
    Place place;
};

/// A pump in a section of its own, in addition to the main one.
struct FurtherCirculator {
    Circulator pump;
    std::string in;  ///< section that contains it
    /// One of the section's two junctions: the one that it pumps towards.
    std::string towards;
    bool in_return = false;  ///< in the return pipe of a section that carries both
};

/// A mixing set between two junctions. Its own pump draws from `from` and supplies `to` at a lower temperature.
/// Everything beyond `to` is connected through it alone.
struct Mixer {
    std::string id;
    std::string from;
    std::string to;
    Input<Temperature> flow;  ///< flow temperature that it supplies
    /// Across the emitters beyond it; absent: that of the conditions.
    Input<TemperatureDifference> drop;
    std::optional<Circulator> pump;
    Place place;
};

enum class SeparationKind { header, close_tees, buffer_two, buffer_four, plate, volumiser };
/// The component that separates the heat source from the pipework.
struct Separation {
    SeparationKind kind{};
    /// On the primary side; calculated from the emitters' flow unless stated.
    std::optional<Input<VolumeFlow>> source_flow;
    std::optional<Circulator> source_pump;               ///< primary pump
    std::optional<Input<Volume>> volume;                 ///< of a buffer or volumiser
    std::optional<Input<HeatLossCoefficient>> plate_ua;  ///< of a plate heat exchanger
    /// Each side of a plate heat exchanger, or a volumiser, at the flow below.
    std::optional<Input<Pressure>> pressure_drop;
    std::optional<Input<VolumeFlow>> pressure_drop_flow;
    Place place;
};

struct Job {
    Identity identity;
    Firm firm;
    Person designer;
    Household household;
    Property property;
    std::vector<std::string> survey_notes;  ///< paragraphs for the household's part
    Basis plain_values = Basis::measured;   ///< basis of a number that states none
    Conditions conditions;
    FluidChoice fluid;
    std::vector<Room> rooms;
    std::vector<Emitter> emitters;
    std::vector<Section> sections;
    std::optional<HeatSource> heat_source;
    std::optional<Circulator> circulator;  ///< the main pump, which drives the emitters
    std::vector<FurtherCirculator> further_circulators;
    std::vector<Mixer> mixers;
    std::optional<Separation> separation;
    std::optional<Season> season;
    std::optional<SystemWater> system_water;
    std::optional<HotWater> hot_water;
    std::optional<Sound> sound;
    std::vector<EmitterSize> sizes;   ///< the firm's catalogue, in its order; may be empty
    bool unvented_hot_water = false;  ///< selects a caution
    bool hot_water_store = false;
    bool old_lagging = false;  ///< lagging, boards or flues may contain asbestos
    std::vector<RuledOut> cautions_ruled_out;
    Handover handover;
};

}  // namespace loopfolio::job
