// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/study/study.hpp"
#include "record/values.hpp"

#include <string_view>
#include <vector>

/// The parts of the record, each one object or list.
namespace loopfolio::record {

[[nodiscard]] Json job_json(const job::Job& job);
[[nodiscard]] Json rooms_of_job(const job::Job& job);
/// The layers and other parts of an element, and the figures behind a rating.
void put_build_up(Json& out, const job::Element& element);
void put_ground(Json& out, const job::Ground& ground);
void put_rating(Json& out, const job::Emitter& emitter);

/// What moves or separates the water, other than the sections, as the job describes it.
[[nodiscard]] Json circulator_json(const std::optional<job::Circulator>& circulator);
void put_hydraulics(Json& out, const job::Job& job);
[[nodiscard]] Json performance_json(const std::vector<job::PerformancePoint>& table, const std::string& source);
[[nodiscard]] Json further_units_json(const std::vector<job::FurtherUnits>& further);

/// The inputs for calculations beyond rooms and pipes, added to the job's object.
void put_plant(Json& out, const job::Job& job);
[[nodiscard]] Json season_input_json(const job::Season& season);
[[nodiscard]] Json plant_json(const job::Job& job, const design::Plant& plant);
[[nodiscard]] Json season_json(const job::Job& job, const design::SeasonPlan& season);

[[nodiscard]] Json operation_json(const job::Job& job, const design::Operation& operation);

/// The id at an index, or null for an index below zero: a flag of the whole house has no id.
template <class List>
[[nodiscard]] Json id_at(const List& list, int index) {
    if (index < 0 || static_cast<std::size_t>(index) >= list.size()) return {};
    return list[static_cast<std::size_t>(index)].id;
}

/// The id that the job gives to the subject of a finding or a caveat, or null.
[[nodiscard]] Json id_of(const job::Job& job, design::Subject subject, int index);

[[nodiscard]] Json findings_json(const job::Job& job, const design::Findings& findings);
[[nodiscard]] Json finding_json(const design::Finding& finding);
[[nodiscard]] Json design_json(const job::Job& job, const design::Design& design);
/// Sizes from the firm's catalogue that are large enough, for each emitter that is too small.
[[nodiscard]] Json sizes_json(const job::Job& job, const std::vector<study::SizeChoice>& sizes);
[[nodiscard]] Json air_results(const job::Job& job, const design::Design& design);
[[nodiscard]] Json room_results(const job::Job& job, const design::Design& design);
[[nodiscard]] Json flags_json(const job::Job& job, const design::Design& design);

/// What the study finds beyond its design: the source's line, other ways out, build-ups, and the sums that the pages
/// print.
void put_study(Json& out, const study::Study& study);

[[nodiscard]] Json derivations_json(const design::Trace& trace);
[[nodiscard]] Json register_json(const std::vector<study::Assumption>& inputs);

}  // namespace loopfolio::record
