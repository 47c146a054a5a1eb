// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/fields.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::job {

/// A job as far as it could be read, with the mappings that its items came from, so that a check across items can point
/// at the field at fault. These lists have the order of the job's.
struct Draft {
    Job job;
    std::optional<Mapping> conditions;
    std::vector<Mapping> rooms;
    std::vector<std::vector<Mapping>> elements;  ///< by room
    std::vector<Mapping> emitters;
    std::vector<Mapping> sections;
    std::optional<Mapping> heat_source;
    std::vector<Mapping> further_units;  ///< of the heat source
    std::optional<Mapping> season;
    std::vector<Mapping> mixers;
    std::vector<Mapping> further_circulators;
};

/// Reads the sizes of the firm's catalogue, and completes each item of `root` that names a model with the keys that the
/// item leaves out.
void take_catalogue(Reading& reading, Node& root, Draft& draft);

/// Puts the lines of the tables of the survey into `root`, as if they stood in the job.
void take_tables(Reading& reading, Node& root);

/// Copies what is stated once under `defaults` into every item of `root` that leaves it out.
void take_defaults(Reading& reading, Node& root);

// One function for each part of the file; `top` is the mapping of the whole file.
void read_parties(const Mapping& top, Draft& draft);
void read_conditions(const Mapping& top, Draft& draft);
void read_rooms(const Mapping& top, Draft& draft);
void read_emitters(const Mapping& top, Draft& draft);
void read_pipework(const Mapping& top, Draft& draft);
void read_plant(const Mapping& top, Draft& draft);
/// Pumps in addition to the main one, mixing sets, and the separation from the heat source.
void read_hydraulics(const Mapping& top, Draft& draft);
void read_season(const Mapping& top, Draft& draft);
void read_system_water(const Mapping& top, Draft& draft);
void read_hot_water(const Mapping& top, Draft& draft);
void read_sound(const Mapping& top, Draft& draft);
/// What was agreed, and what is handed over; after the emitters, which it names.
void read_handover(const Mapping& top, Draft& draft);

[[nodiscard]] std::vector<FittingCount> read_fittings(const Mapping& m);
/// The materials of an element without a U-value: layers, or a slab described by its edge.
void read_build_up(const Mapping& m, Element& element);
/// Name of the kind of ground under `ground`; empty where it is not given.
[[nodiscard]] std::string ground_at(const Mapping& m);
/// The void under a suspended ground floor, where the job describes one.
[[nodiscard]] std::optional<FloorVoid> read_void(const Mapping& m);
/// The output of an emitter, in whichever way the job states it, and the deratings.
void read_rating(const Mapping& m, Emitter& emitter);
[[nodiscard]] Circulator read_circulator(const Mapping& m);
/// A flow that may be given in litres a minute or in litres a second, but not in both.
[[nodiscard]] Input<VolumeFlow> flow_at(const Mapping& m, std::string_view per_minute, std::string_view per_second);

/// Reports the first of a table's points without a capacity; `why` says what needs one.
void demand_capacities(const Mapping& source, const std::vector<PerformancePoint>& points, const std::string& why);

// Checks that involve several fields. Each reports through the mappings of the draft.
void check_temperatures(const Draft& draft);
/// Checks that heat source and conditions give what a season needs.
void check_season(const Draft& draft);
/// Warns of a price that is not realistic for electricity.
void check_price(const Draft& draft);
void check_ids(const Draft& draft);
/// Asks about values that are more often a slip than the truth.
void check_unusual(const Draft& draft);
void check_references(const Draft& draft);
void check_pipework(const Draft& draft);
/// Checks that every emitter has a flow route and a return route. Sections and references must be valid already.
void check_flow_and_return(const Draft& draft);

}  // namespace loopfolio::job
