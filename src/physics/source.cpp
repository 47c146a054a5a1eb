// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/source.hpp"

#include "physics/valid.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::physics {

namespace {

constexpr double lowest_carnot_share = 0.25;  // common practice, no source
constexpr double highest_carnot_share = 0.60;

using Points = std::vector<SourcePoint>;

bool valid(const SourcePoint& p) { return all_above_zero(p.outdoor, p.flow, p.capacity, p.performance); }

bool comes_before(const SourcePoint& a, const SourcePoint& b) {
    return std::pair{a.outdoor, a.flow} < std::pair{b.outdoor, b.flow};
}

bool same_place(const SourcePoint& a, const SourcePoint& b) { return a.outdoor == b.outdoor && a.flow == b.flow; }

Points sorted(std::span<const SourcePoint> points) {
    Points out{points.begin(), points.end()};
    std::ranges::stable_sort(out, comes_before);
    return out;
}

/// The different values of one column, rising.
template <class Member>
std::vector<Temperature> values_of(const Points& points, Member member) {
    std::vector<Temperature> out;
    for (const auto& p : points) out.push_back(p.*member);
    std::ranges::sort(out);
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

void add_bad_values(std::vector<TableFinding>& out, std::span<const SourcePoint> points) {
    for (const auto& p : points) {
        if (!valid(p)) out.push_back({TableFault::bad_value, p.outdoor, p.flow});
    }
}

void add_duplicates(std::vector<TableFinding>& out, const Points& points) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        const bool first = i < 2 || !same_place(points[i - 2], points[i]);
        if (same_place(points[i - 1], points[i]) && first) {
            out.push_back({TableFault::duplicate, points[i].outdoor, points[i].flow});
        }
    }
}

void add_holes(std::vector<TableFinding>& out, const Points& points) {
    const auto flows = values_of(points, &SourcePoint::flow);
    for (const auto outdoor : values_of(points, &SourcePoint::outdoor)) {
        for (const auto flow : flows) {
            const SourcePoint wanted{outdoor, flow, {}, 0.0};
            if (!std::ranges::binary_search(points, wanted, comes_before)) {
                out.push_back({TableFault::hole, outdoor, flow});
            }
        }
    }
}

void add_doubts(std::vector<TableFinding>& out, const Points& points) {
    const std::size_t flows = values_of(points, &SourcePoint::flow).size();
    for (std::size_t i = 0; i + flows < points.size(); ++i) {
        if (points[i].capacity > points[i + flows].capacity) {
            out.push_back({TableFault::capacity_rises_in_cold, points[i].outdoor, points[i].flow});
        }
    }
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (i % flows != 0 && points[i].performance > points[i - 1].performance) {
            out.push_back({TableFault::performance_rises_with_flow, points[i].outdoor, points[i].flow});
        }
    }
    for (const auto& p : points) {
        const auto share = share_of_carnot(p.outdoor, p.flow, p.performance);
        if (share && (*share < lowest_carnot_share || *share > highest_carnot_share)) {
            out.push_back({TableFault::unlikely_performance, p.outdoor, p.flow});
        }
    }
}

}  // namespace

std::string_view word(TableFault fault) {
    switch (fault) {
        case TableFault::empty: return "empty";
        case TableFault::bad_value: return "bad value";
        case TableFault::duplicate: return "duplicate";
        case TableFault::hole: return "hole";
        case TableFault::capacity_rises_in_cold: return "capacity rises in cold";
        case TableFault::performance_rises_with_flow: return "performance rises with flow";
        case TableFault::unlikely_performance: return "unlikely performance";
    }
    return "";
}

std::vector<TableFinding> faults_of(std::span<const SourcePoint> points) {
    std::vector<TableFinding> out;
    if (points.empty()) out.push_back({TableFault::empty, {}, {}});
    add_bad_values(out, points);
    if (!out.empty()) return out;  // what is not a number has no order
    const auto rows = sorted(points);
    add_duplicates(out, rows);
    add_holes(out, rows);
    if (out.empty()) add_doubts(out, rows);
    return out;
}

std::optional<double> share_of_carnot(Temperature outdoor, Temperature flow, double performance) {
    if (!all_above_zero(outdoor, flow, performance) || !(flow > outdoor)) return std::nullopt;
    return performance * (flow - outdoor).si() / flow.kelvin();
}

std::optional<SourceTable> source_table(std::span<const SourcePoint> points) {
    const auto forbids = [](const TableFinding& f) { return forbids_use(f.fault); };
    if (std::ranges::any_of(faults_of(points), forbids)) return std::nullopt;
    SourceTable out;
    for (const auto& p : sorted(points)) {
        out.capacity.push_back({p.outdoor.celsius(), p.flow.celsius(), p.capacity.si()});
        out.performance.push_back({p.outdoor.celsius(), p.flow.celsius(), p.performance});
    }
    return out;
}

std::optional<SourceOutput> source_at(const SourceTable& table, Temperature outdoor, Temperature flow) {
    if (!all_finite(outdoor, flow)) return std::nullopt;
    const auto capacity = on_grid(table.capacity, outdoor.celsius(), flow.celsius());
    const auto performance = on_grid(table.performance, outdoor.celsius(), flow.celsius());
    if (!capacity || !performance) return std::nullopt;
    return SourceOutput{Power::from_si(*capacity), *performance};
}

std::optional<Cascade> cascade(std::span<const SourceOutput> sources, Power load) {
    if (sources.empty() || !all_above_zero(load)) return std::nullopt;
    std::vector<SourceOutput> order{sources.begin(), sources.end()};
    const auto usable = [](const auto& s) { return all_above_zero(s.capacity, s.performance); };
    if (!std::ranges::all_of(order, usable)) return std::nullopt;
    std::ranges::stable_sort(order, std::ranges::greater{}, &SourceOutput::capacity);
    Cascade out;
    Power electricity;
    for (const auto& s : order) {
        out.capacity += s.capacity;
        if (out.running_capacity >= load) continue;
        ++out.running;
        out.running_capacity += s.capacity;
        electricity += s.capacity / s.performance;
    }
    out.heat = std::min(load, out.running_capacity);
    out.shortfall = load - out.heat;
    out.performance = out.running_capacity / electricity;  // one share of capacity for all cancels out
    return out;
}

}  // namespace loopfolio::physics
