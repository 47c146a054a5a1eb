// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/season.hpp"

#include "physics/valid.hpp"

#include <algorithm>
#include <cstddef>

namespace loopfolio::physics {

namespace {

bool usable(const LoadLine& line) {
    return all_above_zero(line.design_load, line.design_outdoor, line.base) && line.design_outdoor < line.base;
}

bool usable(std::span<const OutdoorBin> bins) {
    const auto valid = [](const auto& b) { return all_above_zero(b.outdoor) && none_below_zero(b.time); };
    const auto not_rising = [](const auto& a, const auto& b) { return !(a.outdoor < b.outdoor); };
    return !bins.empty() && std::ranges::all_of(bins, valid) &&
           std::ranges::adjacent_find(bins, not_rising) == bins.end();
}

bool usable(const SeasonPlant& plant) {
    const auto valid = [](const Standby& s) { return none_below_zero(s.time, s.power); };
    return plant.states && plant.degradation >= 0.0 && plant.degradation <= 1.0 &&
           all_above_zero(plant.backup.performance) && none_below_zero(plant.backup.capacity.value_or(Power{})) &&
           std::ranges::all_of(plant.standby, valid);
}

bool usable(const SourceState& s) {
    return all_above_zero(s.flow) && none_below_zero(s.capacity, s.least_output) && s.least_output <= s.capacity &&
           (s.capacity == Power{} || all_above_zero(s.performance));
}

/// Splits the load between source, backup and nobody.
void share_out(SeasonBin& bin, const SourceState& state, const SeasonPlant& plant) {
    const Power from_source = std::min(bin.load, state.capacity);
    const Power missing = bin.load - from_source;
    const Power from_backup = std::min(missing, plant.backup.capacity.value_or(missing));
    bin.reached = true;
    bin.flow = state.flow;
    bin.source_heat = from_source * bin.time;
    bin.backup_heat = from_backup * bin.time;
    bin.unmet = (missing - from_backup) * bin.time;
    bin.backup_input = bin.backup_heat / plant.backup.performance;
    if (state.capacity == Power{}) return;
    bin.load_ratio = bin.load / state.capacity;
    bin.cycles = bin.load < state.least_output;
    bin.performance = state.performance;
    if (bin.cycles) bin.performance *= *cycling_factor(bin.load / state.least_output, plant.degradation);
    bin.source_electricity = bin.source_heat / bin.performance;
}

void add(Season& season, const SeasonBin& bin) {
    season.demand += bin.demand;
    season.heating_time += bin.time;
    if (!bin.reached) {
        season.outside_time += bin.time;
        season.outside_demand += bin.demand;
        return;
    }
    season.source_heat += bin.source_heat;
    season.backup_heat += bin.backup_heat;
    season.unmet += bin.unmet;
    season.source_electricity += bin.source_electricity;
    season.backup_input += bin.backup_input;
    if (bin.cycles) season.cycling_time += bin.time;
}

/// Where the source's load ratio passes 1 between two neighbouring bins, from the warm end.
std::optional<Temperature> bivalent_among(const std::vector<SeasonBin>& bins) {
    const auto ratio_known = [](const SeasonBin& b) { return b.reached && b.load_ratio > 0.0; };
    for (std::size_t i = bins.size(); i-- > 1;) {
        const auto& cold = bins[i - 1];
        const auto& warm = bins[i];
        if (!ratio_known(cold) || !ratio_known(warm)) continue;
        if (!(cold.load_ratio > 1.0) || warm.load_ratio > 1.0) continue;
        // Load and capacity are close to straight lines; their ratio is not.
        const auto spare = [](const SeasonBin& b) { return (1.0 / b.load_ratio - 1.0) * b.load; };
        const double share = spare(warm) / (spare(warm) - spare(cold));
        return warm.outdoor - share * (warm.outdoor - cold.outdoor);
    }
    return std::nullopt;
}

void add_performances(Season& s) {
    if (!(s.source_heat.si() > 0.0)) return;
    const Energy heat = s.source_heat + s.backup_heat;
    const Energy energy = s.source_electricity + s.backup_input;
    s.source_performance = s.source_heat / s.source_electricity;
    s.performance = heat / energy;
    s.whole_performance = heat / (energy + s.standby_electricity);
}

}  // namespace

std::optional<Power> load_at(const LoadLine& line, Temperature outdoor) {
    if (!usable(line) || !all_above_zero(outdoor)) return std::nullopt;
    if (outdoor >= line.base) return Power{};
    return line.design_load * ((line.base - outdoor) / (line.base - line.design_outdoor));
}

double degree_days(std::span<const OutdoorBin> bins, Temperature base) {
    double out = 0.0;
    for (const auto& bin : bins) {
        if (bin.outdoor < base) out += (base - bin.outdoor).si() * (bin.time / unit::hour(24.0));
    }
    return out;
}

std::optional<double> cycling_factor(double run_share, double degradation) {
    if (!all_above_zero(run_share) || !(degradation >= 0.0 && degradation <= 1.0)) return std::nullopt;
    const double r = std::min(run_share, 1.0);
    return r / (1.0 - degradation * (1.0 - r));
}

std::optional<Season> season(std::span<const OutdoorBin> bins, const LoadLine& line, const SeasonPlant& plant) {
    if (!usable(bins) || !usable(line) || !usable(plant)) return std::nullopt;
    Season out;
    out.bins.reserve(bins.size());
    for (const auto& b : bins) {
        SeasonBin bin;
        bin.outdoor = b.outdoor;
        bin.time = b.time;
        bin.load = *load_at(line, b.outdoor);
        bin.demand = bin.load * b.time;
        if (bin.load > Power{}) {
            const auto state = plant.states(b.outdoor, bin.load);
            if (state && !usable(*state)) return std::nullopt;
            if (state) share_out(bin, *state, plant);
            add(out, bin);
        }
        out.bins.push_back(bin);
    }
    for (const auto& s : plant.standby) out.standby_electricity += s.power * s.time;
    out.full_load_time = out.demand / line.design_load;
    out.bivalent = bivalent_among(out.bins);
    add_performances(out);
    return out;
}

}  // namespace loopfolio::physics
