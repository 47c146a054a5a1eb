// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/fields.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::job {

/// A job as far as it could be read, with the mappings that its items came from, so that a check
/// across them can point at the field that breaks it. The lists run parallel to the job's.
struct Draft {
    Job job;
    std::optional<Mapping> conditions;
    std::vector<Mapping> rooms;
    std::vector<std::vector<Mapping>> elements;   ///< of each room
    std::vector<Mapping> emitters;
    std::vector<Mapping> sections;
    std::optional<Mapping> heat_source;
    std::optional<Mapping> season;
    std::vector<Mapping> mixers;
    std::vector<Mapping> further_circulators;
};

/// The sizes of the firm's catalogue; and into each item of `root` that names a model of it, whatever the item leaves out.
void take_catalogue(Reading& reading, Node& root, Draft& draft);

// One function for each part of the file; `top` is the whole of it.
void read_parties(const Mapping& top, Draft& draft);
void read_conditions(const Mapping& top, Draft& draft);
void read_rooms(const Mapping& top, Draft& draft);
void read_emitters(const Mapping& top, Draft& draft);
void read_pipework(const Mapping& top, Draft& draft);
void read_plant(const Mapping& top, Draft& draft);
/// Circulators beside the main one, mixing sets and what separates the source.
void read_hydraulics(const Mapping& top, Draft& draft);
void read_season(const Mapping& top, Draft& draft);
void read_system_water(const Mapping& top, Draft& draft);
void read_hot_water(const Mapping& top, Draft& draft);
void read_sound(const Mapping& top, Draft& draft);

[[nodiscard]] std::vector<FittingCount> read_fittings(const Mapping& m);
/// What an element is made of, where no U-value stands for it: layers, or a slab by its edge.
void read_build_up(const Mapping& m, Element& element);
/// Name of the kind of ground under `ground`; empty where none is stated.
[[nodiscard]] std::string ground_at(const Mapping& m);
/// Whichever of the ways to state an output stands there, and what lowers it.
void read_rating(const Mapping& m, Emitter& emitter);
[[nodiscard]] Circulator read_circulator(const Mapping& m);
/// A flow that may be written in litres a minute or in litres a second, but not in both.
[[nodiscard]] Input<VolumeFlow> flow_at(const Mapping& m, std::string_view per_minute, std::string_view per_second);

/// Complains of the first of a table's points without a capacity; `why` says what needs one.
void demand_capacities(const Mapping& source, const std::vector<PerformancePoint>& points, const std::string& why);

// What holds between fields; each reports through the mappings of the draft.
void check_temperatures(const Draft& draft);
/// What a season needs of the heat source and the conditions.
void check_season(const Draft& draft);
/// Warns of a price that no electricity has.
void check_price(const Draft& draft);
void check_ids(const Draft& draft);
void check_references(const Draft& draft);
void check_pipework(const Draft& draft);
/// Every emitter has a way there and a way back. Sections and references must be whole.
void check_flow_and_return(const Draft& draft);

}  // namespace loopfolio::job
