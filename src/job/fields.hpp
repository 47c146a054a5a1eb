// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"
#include "loopfolio/job/names.hpp"
#include "loopfolio/job/read_job.hpp"
#include "loopfolio/job/vocabulary.hpp"
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/yaml/mapping.hpp"

#include <date/date.h>

#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What a job file has beyond any other: numbers with a basis, and files that it names.
namespace loopfolio::job {

using namespace yaml;  // most lines of the reader use nodes, places and findings

/// What a read carries from field to field.
struct Reading : yaml::Reading {
    Reading(std::string file, const UnprintableIn& unprintable_in, const ReadFile& reads)
        : yaml::Reading{{std::move(file), {}}, unprintable_in, vocabulary(), "of the job file ", "docs/job-file.md"},
          read_file{reads} {}

    Basis plain_values = Basis::measured;
    const ReadFile& read_file;
    std::vector<NamedFile> files = {};  ///< read so far
    std::set<int> survey_files =
        {};  ///< of them, those that hold the survey itself: numbers stand on what the job's do
};

/// Every mapping of a job was opened with the job's own reading.
[[nodiscard]] inline Reading& reading_of(const Mapping& m) { return static_cast<Reading&>(*m.reading); }

template <class E>
[[nodiscard]] std::optional<E> choice_at(const Mapping& m, std::string_view key, std::string_view noun,
                                         std::span<const reference::Named<E>> table) {
    std::vector<std::string_view> names;
    for (const auto& row : table) names.push_back(row.name);
    const auto index = choice_at(m, key, noun, names);
    return index ? std::optional{table[*index].value} : std::nullopt;
}

/// Temperature for a message, to a hundredth, so that it does not show the tail of its binary form.
[[nodiscard]] std::string in_celsius(Temperature temperature);

/// A number with its basis, in the unit of the key.
[[nodiscard]] Input<double> number_at(const Mapping& m, std::string_view key);

template <class U>
[[nodiscard]] auto input_at(const Mapping& m, std::string_view key, const U& unit) {
    using Q = decltype(unit(0.0));
    Input<double> raw = number_at(m, key);
    Input<Q> out;
    if (!raw.given()) return out;
    out = Input<Q>{unit(raw.value), raw.basis, {}, {}, std::move(raw.source), raw.place};
    if (raw.low) out.low = unit(*raw.low);
    if (raw.high) out.high = unit(*raw.high);
    return out;
}

/// A day of the calendar, year-month-day; without a value where there is none, and reported where it is no such day.
[[nodiscard]] date::year_month_day date_at(const Mapping& m, std::string_view key);

/// Complains of a preferred velocity above the limit that the same mapping states.
void check_velocities(const Mapping& m, const Input<Velocity>& preferred, const Input<Velocity>& limit);

template <class T>
[[nodiscard]] std::optional<Input<T>> if_given(Input<T> input) {
    return input.given() ? std::optional{std::move(input)} : std::nullopt;
}

}  // namespace loopfolio::job
