// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/unusual.hpp"
#include "loopfolio/reference/thresholds.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace loopfolio::job {

namespace {

using reference::thresholds;

std::string rounded(double value, const char* symbol) {
    return decimal(std::round(value * 100.0) / 100.0) + " " + symbol;
}

void ask_about_outdoor(const Draft& draft) {
    if (!draft.conditions) return;
    warn(*draft.conditions, "outdoor_temperature_c",
         "lies outside the usual design outdoor temperatures, " + in_celsius(thresholds().coldest_design.value) +
             " to " + in_celsius(thresholds().mildest_design.value),
         "look it up again for this place, in °C");
}

void ask_about_area(const Mapping& room) {
    warn(room, "floor_area_m2",
         "is unusual for one room: most have " + rounded(thresholds().smallest_room.value.si(), "m²") + " to " +
             rounded(thresholds().largest_room.value.si(), "m²"),
         "check the figure and its unit");
}

void ask_about_length(const Draft& draft, const UnusualValue& value) {
    const auto i = static_cast<std::size_t>(value.index);
    warn(draft.emitters.at(i), "length_mm", "is longer than a wall of its room is likely to be",
         "check the length, and the `floor_area_m2` of room `" + draft.job.emitters.at(i).room + "`");
}

/// Not opened again, because errors in its keys have been reported already.
Mapping table_of(const Mapping& source) {
    return {source.reading, value_at(source, "performance"), path_of(source, "performance"), &group("performance"),
            source.owner};
}

const Mapping* units_of(const Draft& draft, int index) {
    if (index == 0) return draft.heat_source ? &*draft.heat_source : nullptr;
    const auto i = static_cast<std::size_t>(index - 1);
    return i < draft.further_units.size() ? &draft.further_units[i] : nullptr;
}

const std::vector<PerformancePoint>& points_of(const HeatSource& source, int index) {
    return index == 0 ? source.performance : source.further.at(static_cast<std::size_t>(index - 1)).performance;
}

void ask_about_performance(const Draft& draft, const UnusualValue& value) {
    const Mapping* units = units_of(draft, value.index);
    const auto& source = *draft.job.heat_source;
    const auto rising = rising_performance(points_of(source, value.index), source);
    if (units == nullptr || !rising) return;
    warn(table_of(*units), "points",
         "have a higher `ratio` at " + in_celsius(rising->colder.outdoor) + " outdoors than at " +
             in_celsius(rising->warmer.outdoor) + ", at " + in_celsius(rising->colder.flow) + " flow",
         "a heat pump makes heat less easily in colder air, except where frost forms: check the two rows");
}

void ask_about_capacity(const Draft& draft, const UnusualValue& value) {
    const Mapping* units = units_of(draft, value.index);
    if (units == nullptr) return;
    const auto& capacity = draft.job.heat_source->capacity;
    if (value.index == 0 && capacity && capacity->value.si() == value.figure) {
        warn(*units, "capacity_kw", "is the capacity that the manufacturer's table has at 7 °C outdoors",
             "give what the source makes at the design outdoor and flow temperatures, or leave the key out");
        return;
    }
    warn(table_of(*units), "points", "have one capacity for all outdoor temperatures, as a nominal output does",
         "give what the manufacturer states at each of them");
}

void ask_about_name(const Draft& draft, const UnusualValue& value) {
    warn(draft.rooms.at(static_cast<std::size_t>(value.index)), "name", "is the name of another room too",
         "name each so that a reader can tell them apart");
}

void ask_about_pipework(const Mapping& section, const UnusualValue& value) {
    warn(section, "length_m",
         "belongs to " + rounded(value.figure, "m") + " of pipework one way, and few houses have over " +
             rounded(thresholds().longest_pipework.value.si(), "m"),
         "check the longest sections, and that lengths are in metres");
}

/// The question about all pipework is put at the longest section.
const Mapping* longest_section(const Draft& draft) {
    const Mapping* out = nullptr;
    Length longest;
    for (std::size_t i = 0; i < draft.sections.size() && i < draft.job.sections.size(); ++i) {
        const Length length = draft.job.sections[i].length.value;
        if (length > longest) out = &draft.sections[i];
        longest = std::max(longest, length);
    }
    return out;
}

}  // namespace

void check_unusual(const Draft& draft) {
    for (const auto& value : unusual_values(draft.job)) {
        switch (value.kind) {
            case Unusual::outdoor: ask_about_outdoor(draft); break;
            case Unusual::room_area: ask_about_area(draft.rooms.at(static_cast<std::size_t>(value.index))); break;
            case Unusual::emitter_length: ask_about_length(draft, value); break;
            case Unusual::rising_performance: ask_about_performance(draft, value); break;
            case Unusual::nominal_capacity: ask_about_capacity(draft, value); break;
            case Unusual::room_name: ask_about_name(draft, value); break;
            case Unusual::pipework:
                if (const Mapping* section = longest_section(draft)) ask_about_pipework(*section, value);
                break;
        }
    }
}

}  // namespace loopfolio::job
