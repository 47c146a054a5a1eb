// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

// The checks that make up a design, one a file. Each reads the filled job and what stands already, fills its own
// results, and writes its derivation where a trace is passed.

#include "design/judge.hpp"
#include "loopfolio/design/design.hpp"

#include <optional>
#include <span>
#include <vector>

namespace loopfolio::design {

/// Heat loss of every room by each method that its survey allows, and the one adopted.
void find_room_losses(const job::Job& job, Design& design, std::vector<Refusal>& refusals, Trace* trace);

/// Whether source and emitters each have their own pump round a header, tees or a buffer.
[[nodiscard]] inline bool through_header(const job::Job& job) {
    return job.separation && job.separation->kind != job::SeparationKind::plate &&
           job.separation->kind != job::SeparationKind::volumiser;
}

/// Whether the source has a circuit of its own.
[[nodiscard]] inline bool separated(const job::Job& job) {
    return job.separation && job.separation->kind != job::SeparationKind::volumiser;
}

/// Gives every junction a number.
void number_junctions(const job::Job& job, Design& design);

/// Finds which mixing set each emitter hangs on. False, with a refusal, where what lies beyond one meets the rest.
[[nodiscard]] bool place_mixers(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// Flows through each mixing set, from what its emitters need.
void size_mixers(const job::Job& job, Design& design);

/// Shares each room's loss among its emitters in proportion to their ratings, and sets the temperatures that reach them
/// and the flows that they need.
void share_loads(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// Where the water goes: flows of sections, and what the circuits ask of the pumps.
struct Routes {
    std::vector<int> order;            ///< with a tree: nodes, each after its parent
    std::vector<int> parent_node;      ///< with a tree: by node
    Pressure head;                     ///< without: what the main circulator must give
    std::vector<Pressure> spare;       ///< without, by emitter: head that its circuit does not need
    int index_emitter = -1;            ///< without
    std::vector<Pressure> mixer_head;  ///< by mixing set
};

/// Directs the pipework away from the source and finds the design flow in every section: summed up a tree, or from the
/// network's solution with the emitters' flows given. Nothing where it was refused.
[[nodiscard]] std::optional<Routes> find_routes(const job::Job& job, Design& design, std::vector<Refusal>& refusals);

/// What each emitter gives at the temperatures and flow that reach it.
void check_emitters(const job::Job& job, Design& design, std::vector<Refusal>& refusals, Trace* trace);

/// What the rooms get: output against loss, and the temperature reached where it falls short.
void check_rooms(const job::Job& job, Design& design);

/// Velocity, pressure drop, capacity and remedies of every section.
void check_sections(const job::Job& job, Design& design, Remedies remedies, Trace* trace);

/// As `design`, of values that are derived already, such as those of a house with changes made.
[[nodiscard]] std::variant<Design, std::vector<Refusal>> design_values(const job::Job& values, Trace* trace = nullptr,
                                                                      Remedies remedies = Remedies::sought);

/// The index circuit, the duty, and the plant that has to give it.
void check_duty(const job::Job& job, Design& design, const Routes& routes, Trace* trace);

/// What the pump of each mixing set must give, and what it gives.
void find_mixer_heads(const job::Job& job, Design& design, const Routes& routes);
void judge_mixers(const job::Job& job, Design& design);

/// Both sides of a hydraulic separation, and the head that its primary pump must give.
void check_separation(const job::Job& job, Design& design, Trace* trace);
void judge_separation(const job::Job& job, Design& design);

/// Head of a circulator at a flow, by its curve or set point; nothing without either, or beyond the curve.
[[nodiscard]] std::optional<Pressure> head_at(const job::Circulator& pump, VolumeFlow flow);

/// Pressure drop of the source at a flow, by the square law; none where it is not stated.
[[nodiscard]] Pressure source_drop(const job::HeatSource& source, VolumeFlow flow);

/// What an emitter is to the water: a conduit with a length and a loss factor, and valves by their Kv.
struct EmitterPath {
    physics::Conduit conduit;   ///< bore 0 where nothing is known of it
    Length length;
    double loss_factor = 0.0;   ///< on v2/2 in `conduit`
    double valve_resistance = 0.0;   ///< 1/Kv2, h2/m6
};
[[nodiscard]] EmitterPath path_of(const job::Emitter& emitter);

/// Fills what a section leaves out from the tables of its pipe.
void fill_section(job::Section& section);

/// Sum of loss factors of fittings on one pipe; inserts not included.
[[nodiscard]] double loss_factor(std::span<const job::FittingCount> fittings);
/// How many of them are joints, which narrow a pipe that has inserts.
[[nodiscard]] int narrowed_joints(std::span<const job::FittingCount> fittings);

}  // namespace loopfolio::design
