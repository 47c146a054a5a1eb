// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// The checks that make up a design, one in each file. Each reads the filled job and the results so far, fills in its
// own results, and writes its derivation if it is given a trace.

#include "design/judge.hpp"
#include "loopfolio/design/design.hpp"

#include <optional>
#include <span>
#include <vector>

namespace loopfolio::design {

/// Heat loss of every room by each method that its survey allows, and the loss adopted.
void find_room_losses(const job::Job& job, Design& design, std::vector<Refusal>& refusals, Trace* trace);

/// Whether heat source and emitters each have their own pump, with a header, tees or a buffer between them.
[[nodiscard]] inline bool through_header(const job::Job& job) {
    return job.separation && job.separation->kind != job::SeparationKind::plate &&
           job.separation->kind != job::SeparationKind::volumiser;
}

/// Whether the heat source has a circuit of its own.
[[nodiscard]] inline bool separated(const job::Job& job) {
    return job.separation && job.separation->kind != job::SeparationKind::volumiser;
}

/// Gives every junction a number.
void number_junctions(const job::Job& job, Design& design);

/// Finds the mixing set that each emitter is connected to. False, with a refusal, where pipework beyond a mixing set
/// meets the rest.
[[nodiscard]] bool place_mixers(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// Calculates the flows through each mixing set from what its emitters need.
void size_mixers(const job::Job& job, Design& design);

/// Shares each room's loss among its emitters in proportion to their ratings, and sets the temperatures that reach them
/// and the flows that they need.
void share_loads(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// The route of the water: the flows of sections, and the head that the circuits need from the pumps.
struct Routes {
    std::vector<int> order;            ///< only with a tree: nodes, each after its parent
    std::vector<int> parent_node;      ///< only with a tree: by node
    Pressure head;                     ///< only without a tree: head that the main pump must give
    std::vector<Pressure> spare;       ///< only without a tree, by emitter: head that its circuit has to spare
    int index_emitter = -1;            ///< only without a tree
    std::vector<Pressure> mixer_head;  ///< by mixing set
};

/// Directs the pipework away from the heat source and finds the design flow in every section: summed up along a tree,
/// or from the network's solution with the emitters' flows given. Nothing where it was refused.
[[nodiscard]] std::optional<Routes> find_routes(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// What each emitter gives at the temperatures and flow that reach it.
void check_emitters(const job::Job& job, Design& design, std::vector<Refusal>& refusals, Trace* trace);

/// Heat that the rooms get: output against loss, and the temperature reached where the output falls short.
void check_rooms(const job::Job& job, Design& design);

/// Velocity, pressure drop, capacity and remedies of every section.
void check_sections(const job::Job& job, Design& design, Remedies remedies, Trace* trace);

/// As `design`, for values that are already derived, such as those of a house with changes made.
[[nodiscard]] std::variant<Design, std::vector<Refusal>> design_values(const job::Job& values, Trace* trace = nullptr,
                                                                       Remedies remedies = Remedies::sought);

/// The index circuit, the duty, and the checks of the pump and heat source that must meet it.
void check_duty(const job::Job& job, Design& design, const Routes& routes, Trace* trace);

/// Finds the head that the pump of each mixing set must give, and the head that it gives.
void find_mixer_heads(const job::Job& job, Design& design, const Routes& routes);
void judge_mixers(const job::Job& job, Design& design);

/// Calculates both sides of a hydraulic separation, and the head that its primary pump must give.
void check_separation(const job::Job& job, Design& design, Trace* trace);
void judge_separation(const job::Job& job, Design& design);

/// Head of a pump at a flow, by its curve or set point; nothing without either, or beyond the curve.
[[nodiscard]] std::optional<Pressure> head_at(const job::Circulator& pump, VolumeFlow flow);

/// Pressure drop of the heat source at a flow, by the square law; zero where the job does not state it.
[[nodiscard]] Pressure source_drop(const job::HeatSource& source, VolumeFlow flow);

/// The hydraulic model of an emitter: a conduit with a length and a loss factor, and valves by their Kv.
struct EmitterPath {
    physics::Conduit conduit;  ///< bore 0 where it is not known
    Length length;
    double loss_factor = 0.0;       ///< on v2/2 in `conduit`
    double valve_resistance = 0.0;  ///< 1/Kv2, h2/m6
};
[[nodiscard]] EmitterPath path_of(const job::Emitter& emitter);

/// Fills in what a section leaves out from the conditions of the house and the tables of its pipe.
void fill_section(job::Section& section, const job::Conditions& conditions);

/// The limits of the velocity in a section, or in another pipe in its place: those that the job states, else those of
/// the guidance for that pipe.
struct VelocityLimits {
    Velocity preferred, limit;
};
[[nodiscard]] VelocityLimits velocity_limits_in(const job::Section& section, const reference::Pipe& pipe);

/// Sum of loss factors of the fittings on one pipe, without inserts.
[[nodiscard]] double loss_factor(std::span<const job::FittingCount> fittings);
/// Number of these fittings that are joints, which narrow a pipe that has inserts.
[[nodiscard]] int narrowed_joints(std::span<const job::FittingCount> fittings);

}  // namespace loopfolio::design
