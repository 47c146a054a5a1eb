// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "study/ranges.hpp"

#include "study/all_findings.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <variant>

namespace loopfolio::study {

namespace {

using design::Band;
using design::Finding;
using design::Findings;
using design::Subject;

/// The figures for which the season has bands.
struct Outcome {
    double performance = 0.0, demand = 0.0, electricity = 0.0, cost = 0.0, carbon = 0.0;
    bool operator==(const Outcome&) const = default;
};

Outcome outcome_of(const job::Job& job, const physics::Season& season) {
    const Energy electricity = design::all_electricity(season);
    const double units = electricity.in(unit::kilowatt_hour);
    return {.performance = season.whole_performance.value_or(0.0),
            .demand = season.demand.si(),
            .electricity = electricity.si(),
            .cost = job.season->price ? units * job.season->price->value : 0.0,
            .carbon = job.season->carbon ? units * job.season->carbon->value : 0.0};
}

/// Sums of squares, over all ranges, of the largest fall and the largest rise that each range causes alone.
struct Spread {
    double down = 0.0, up = 0.0;

    void add(double at, double low, double high) {
        const double fall = std::min({0.0, low - at, high - at}), rise = std::max({0.0, low - at, high - at});
        down += fall * fall;
        up += rise * rise;
    }
};

struct Spreads {
    Spread performance, demand, electricity, cost, carbon;

    void add(const Outcome& at, const Outcome& low, const Outcome& high) {
        performance.add(at.performance, low.performance, high.performance);
        demand.add(at.demand, low.demand, high.demand);
        electricity.add(at.electricity, low.electricity, high.electricity);
        cost.add(at.cost, low.cost, high.cost);
        carbon.add(at.carbon, low.carbon, high.carbon);
    }
};

Band<double> band(double at, const Spread& s) { return {at - std::sqrt(s.down), at, at + std::sqrt(s.up)}; }

Band<Energy> energy_band(double at, const Spread& s) {
    const auto b = band(at, s);
    return {Energy::from_si(b.low), Energy::from_si(b.value), Energy::from_si(b.high)};
}

design::SeasonBands bands_of(const job::Job& job, const Outcome& at, const Spreads& spreads, int ranges) {
    design::SeasonBands out;
    out.ranges = ranges;
    out.performance = band(at.performance, spreads.performance);
    out.demand = energy_band(at.demand, spreads.demand);
    out.electricity = energy_band(at.electricity, spreads.electricity);
    // Everything lies outside the manufacturer's table: the cost is unknown, not zero.
    if (at.electricity <= 0.0) return out;
    if (job.season->price) out.cost = band(at.cost, spreads.cost);
    if (job.season->carbon) out.carbon = band(at.carbon, spreads.carbon);
    return out;
}

/// The key by which findings are compared: a section has one verdict for all its checks, everything else one for each
/// check.
std::tuple<Subject, int, int> thing_of(const Finding& f) {
    return {f.subject, f.index, f.subject == Subject::section ? -1 : static_cast<int>(f.check)};
}

/// The worst verdict for each key, in the order of keys.
std::vector<std::pair<std::tuple<Subject, int, int>, Verdict>> verdicts_of(const Findings& findings) {
    std::vector<std::pair<std::tuple<Subject, int, int>, Verdict>> out;
    out.reserve(findings.size());
    for (const auto& f : findings) out.emplace_back(thing_of(f), f.verdict);
    std::ranges::sort(out);
    const auto same = [](const auto& a, const auto& b) { return a.first == b.first; };
    // Findings are sorted with the worst verdict of a key last. Reversed, it comes first and is the one that is kept.
    std::ranges::reverse(out);
    out.erase(std::unique(out.begin(), out.end(), same), out.end());
    return out;
}

/// Number of keys present in both lists whose verdicts differ.
int verdicts_apart(const Findings& a, const Findings& b) {
    const auto as_designed = verdicts_of(a), moved = verdicts_of(b);
    int count = 0;
    for (auto x = as_designed.begin(), y = moved.begin(); x != as_designed.end() && y != moved.end();) {
        if (x->first == y->first) count += x++->second != y++->second ? 1 : 0;
        else if (x->first > y->first) ++x;  // both verdicts have been read
        else ++y;
    }
    return count;
}

/// The house as designed, and a copy of it with changed inputs.
struct Explored {
    const design::House& house;
    const design::Design& designed;
    Findings findings;
    std::optional<Outcome> season;
    design::House moved;
};

/// Results with every input of one line at an end of its range. `effect` and `outcome` stay empty where the line has no
/// such end, or no design is possible there.
struct AtEnd {
    std::optional<Effect> effect;
    std::optional<Outcome> outcome;
};

AtEnd at_end(Explored& e, const Register& reg, int line, End end) {
    AtEnd out;
    if (!move_line(e.moved, reg, line, end)) return out;
    const auto result = design::design(e.moved, nullptr, design::Remedies::left_out);
    if (const auto* d = std::get_if<design::Design>(&result)) {
        if (needs_care(reg.lines[static_cast<std::size_t>(line)])) {
            out.effect = Effect{d->duty.source_load - e.designed.duty.source_load,
                                verdicts_apart(e.findings, all_findings(e.moved, *d))};
        }
        if (e.season) {
            const auto run = design::run_season(e.moved.values, *d);
            if (run) out.outcome = outcome_of(e.moved.values, run->season);
        }
    }
    e.moved.inputs = e.house.inputs;
    return out;
}

}  // namespace

std::optional<design::SeasonBands> explore_ranges(const design::House& house, const design::Design& designed,
                                                  Register& reg) {
    const auto run = design::run_season(house.values, designed);
    Explored explored{house, designed, all_findings(house, designed),
                      run ? std::optional{outcome_of(house.values, run->season)} : std::nullopt, house};
    Spreads spreads;
    int ranges = 0;
    for (std::size_t i = 0; i < reg.lines.size(); ++i) {
        auto& line = reg.lines[i];
        if (line.range.empty() || (!needs_care(line) && !explored.season)) continue;
        const auto low = at_end(explored, reg, static_cast<int>(i), End::low);
        const auto high = at_end(explored, reg, static_cast<int>(i), End::high);
        line.at_low = low.effect;
        line.at_high = high.effect;
        if (!explored.season) continue;
        const Outcome at = *explored.season;
        ranges += low.outcome.value_or(at) != at || high.outcome.value_or(at) != at ? 1 : 0;
        spreads.add(at, low.outcome.value_or(at), high.outcome.value_or(at));
    }
    if (!explored.season) return {};
    return bands_of(house.values, *explored.season, spreads, ranges);
}

}  // namespace loopfolio::study
