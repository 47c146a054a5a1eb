// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"
#include "design/register/register.hpp"
#include "design/plant/season_run.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace {

/// What the bands are of.
struct Outcome {
    double performance = 0.0, demand = 0.0, electricity = 0.0, cost = 0.0, carbon = 0.0;
    bool operator==(const Outcome&) const = default;
};

Outcome outcome_of(const job::Job& job, const physics::Season& season) {
    const Energy electricity = all_electricity(season);
    const double units = electricity.in(unit::kilowatt_hour);
    return {season.whole_performance.value_or(0.0), season.demand.si(), electricity.si(),
            job.season->price ? units * job.season->price->value : 0.0, job.season->carbon ? units * job.season->carbon->value : 0.0};
}

/// With every input of one line moved to an end of its range. `job` is put back as it was.
std::optional<Outcome> outcome_at(job::Job& job, const job::Job& original, const Register& reg, int line, End end) {
    if (!move_line(job, reg, line, end)) return {};
    const auto result = design_without_remedies(job);
    const auto* moved = std::get_if<Design>(&result);
    const auto run = moved != nullptr ? run_season(job, *moved) : std::nullopt;
    const auto out = run ? std::optional{outcome_of(job, run->season)} : std::nullopt;
    job = original;
    return out;
}

/// Squares of the largest fall and the largest rise that each range makes alone, summed.
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

}  // namespace

void find_bands(const job::Job& job, SeasonPlan& plan) {
    const Outcome at = outcome_of(job, plan.season);
    const Register reg = register_of(job);
    job::Job moved = job;
    Spreads spreads;
    for (std::size_t i = 0; i < reg.lines.size(); ++i) {
        if (reg.lines[i].range.empty()) continue;
        const int line = static_cast<int>(i);
        const auto low = outcome_at(moved, job, reg, line, End::low), high = outcome_at(moved, job, reg, line, End::high);
        const bool moves = low.value_or(at) != at || high.value_or(at) != at;
        plan.ranges += moves ? 1 : 0;
        spreads.add(at, low.value_or(at), high.value_or(at));
    }
    plan.performance = band(at.performance, spreads.performance);
    plan.demand = energy_band(at.demand, spreads.demand);
    plan.electricity = energy_band(at.electricity, spreads.electricity);
    if (at.electricity <= 0.0) return;   // all lies outside the maker's table: nothing is known, not nothing to pay
    if (job.season->price) plan.cost = band(at.cost, spreads.cost);
    if (job.season->carbon) plan.carbon = band(at.carbon, spreads.carbon);
}

}  // namespace loopfolio::design
