// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/unusual.hpp"

#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/thresholds.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <unordered_set>

namespace loopfolio::job {

namespace {

using reference::thresholds;

/// Outdoor temperature at which manufacturers rate an air-source heat pump: A7 of EN 14511.
constexpr auto rating_outdoor = Temperature::from_celsius(7.0);
constexpr double alike = 0.005;  // share by which two outputs may differ and still be the same figure, rounded twice
constexpr auto wide_enough = TemperatureDifference::from_si(10.0);

int as_index(std::size_t i) { return static_cast<int>(i); }

/// Names are compared as a reader takes them: without regard to capital letters and spaces.
std::string as_read(const std::string& name) {
    std::string out;
    for (const char c : name) {
        if (c == ' ') continue;
        out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return out;
}

void ask_about_rooms(const Job& job, std::vector<UnusualValue>& out) {
    std::unordered_set<std::string> names;
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        const Room& room = job.rooms[i];
        const bool stated = room.floor_area.given();
        if (stated && (room.floor_area.value < thresholds().smallest_room.value ||
                       room.floor_area.value > thresholds().largest_room.value))
            out.push_back({Unusual::room_area, as_index(i), room.floor_area.value.si()});
        const std::string name = as_read(room.name);
        if (!name.empty() && !names.insert(name).second) out.push_back({Unusual::room_name, as_index(i), 0.0});
    }
}

/// Skirting heating may run along several walls and is measured along all of them, and a loop in the floor has no
/// length against a wall.
bool stands_along_one_wall(const Emitter& emitter) { return emitter.kind != "skirting" && !emitter.floor; }

void ask_about_emitters(const Job& job, std::vector<UnusualValue>& out) {
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const Emitter& emitter = job.emitters[i];
        const auto room = std::ranges::find(job.rooms, emitter.room, &Room::id);
        if (!emitter.length.given() || room == job.rooms.end() || !room->floor_area.given()) continue;
        const double longest = thresholds().longest_emitter.value * std::sqrt(room->floor_area.value.si());
        if (stands_along_one_wall(emitter) && emitter.length.value.si() > longest)
            out.push_back({Unusual::emitter_length, as_index(i), emitter.length.value.si()});
    }
}

void ask_about_pipework(const Job& job, std::vector<UnusualValue>& out) {
    Length total;
    for (const auto& section : job.sections) total += section.length.value;
    if (total > thresholds().longest_pipework.value) out.push_back({Unusual::pipework, 0, total.si()});
}

bool same(Power a, Power b) { return b > Power{} && std::abs(a / b - 1.0) <= alike; }

/// A table that holds one output for every outdoor temperature, over a range in which no air-source heat pump does so,
/// was filled in from a nominal figure.
bool one_capacity(const std::vector<PerformancePoint>& points) {
    if (points.size() < 2 || !points.front().capacity) return false;
    if (points.back().outdoor - points.front().outdoor < wide_enough) return false;
    return std::ranges::all_of(
        points, [&](const PerformancePoint& p) { return p.capacity && same(*p.capacity, *points.front().capacity); });
}

/// The output of all units at one point of the first table; nothing where one of the others does not state it.
std::optional<Power> output_at(const HeatSource& source, const PerformancePoint& point) {
    if (!point.capacity) return {};
    Power out = static_cast<double>(source.number) * *point.capacity;
    for (const auto& units : source.further) {
        const auto there = std::ranges::find_if(units.performance, [&](const PerformancePoint& p) {
            return p.outdoor == point.outdoor && p.flow == point.flow;
        });
        if (there == units.performance.end() || !there->capacity) return {};
        out += static_cast<double>(units.number) * *there->capacity;
    }
    return out;
}

/// The stated capacity is what the table has at the rating temperature, and at no colder one.
bool rated_capacity(const HeatSource& source) {
    bool rated = false;
    for (const auto& point : source.performance) {
        const auto output = output_at(source, point);
        if (!output || !same(source.capacity->value, *output)) continue;
        if (point.outdoor < rating_outdoor) return false;
        rated = rated || point.outdoor == rating_outdoor;
    }
    return rated;
}

void ask_about_source(const Job& job, std::vector<UnusualValue>& out) {
    if (!job.heat_source) return;
    const HeatSource& source = *job.heat_source;
    const auto ask_about_table = [&](const std::vector<PerformancePoint>& points, int index) {
        if (const auto rising = rising_performance(points, source))
            out.push_back({Unusual::rising_performance, index, rising->colder.outdoor.celsius()});
        if (one_capacity(points)) out.push_back({Unusual::nominal_capacity, index, points.front().capacity->si()});
    };
    const bool rated = source.capacity && job.conditions.outdoor.given() &&
                       job.conditions.outdoor.value < rating_outdoor && rated_capacity(source);
    if (rated) out.push_back({Unusual::nominal_capacity, 0, source.capacity->value.si()});
    ask_about_table(source.performance, 0);
    for (std::size_t i = 0; i < source.further.size(); ++i)
        ask_about_table(source.further[i].performance, as_index(i + 1));
}

}  // namespace

std::optional<RisingPerformance> rising_performance(std::span<const PerformancePoint> sorted,
                                                    const HeatSource& source) {
    const bool stated = source.defrost_from.given() && source.defrost_to.given();
    const Temperature from = stated ? source.defrost_from.value : thresholds().frost_from.value;
    const Temperature to = stated ? source.defrost_to.value : thresholds().frost_to.value;
    for (auto colder = sorted.begin(); colder != sorted.end(); ++colder) {
        const auto warmer = std::find_if(colder, sorted.end(), [&](const PerformancePoint& p) {
            return p.flow == colder->flow && p.outdoor > colder->outdoor;
        });
        if (warmer == sorted.end() || colder->performance <= warmer->performance) continue;
        if (warmer->outdoor < from || warmer->outdoor > to) return RisingPerformance{*colder, *warmer};
    }
    return {};
}

std::vector<UnusualValue> unusual_values(const Job& job) {
    std::vector<UnusualValue> out;
    const auto& outdoor = job.conditions.outdoor;
    if (outdoor.given() &&
        (outdoor.value < thresholds().coldest_design.value || outdoor.value > thresholds().mildest_design.value))
        out.push_back({Unusual::outdoor, 0, outdoor.value.celsius()});
    ask_about_rooms(job, out);
    ask_about_emitters(job, out);
    ask_about_pipework(job, out);
    ask_about_source(job, out);
    return out;
}

}  // namespace loopfolio::job
