// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/sound.hpp"

#include "physics/valid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopfolio::physics {

namespace {

double level_of(double ratio) { return 10.0 * std::log10(ratio); }
double ratio_of(double level) { return std::pow(10.0, level / 10.0); }

bool usable(const SoundPath& path) {
    return all_finite(path.power_level) && none_below_zero(path.barrier_reduction) &&
           path.directivity >= directivity_free && path.directivity <= directivity_in_corner;
}

}  // namespace

std::optional<double> sound_pressure_level(const SoundPath& path) {
    const double r = path.distance.si();
    if (!usable(path) || !all_above_zero(r)) return std::nullopt;
    const double level = path.power_level + level_of(path.directivity / (4.0 * std::numbers::pi)) - 2.0 * level_of(r) -
                         path.barrier_reduction;
    return level;
}

std::optional<double> sum_of_levels(std::span<const double> levels) {
    const auto finite = [](double level) { return all_finite(level); };
    if (levels.empty() || !std::ranges::all_of(levels, finite)) return std::nullopt;
    const double loudest = std::ranges::max(levels);  // out of the sum, which then stays in range
    double sum = 0.0;
    for (const double level : levels) sum += ratio_of(level - loudest);
    return loudest + level_of(sum);
}

std::optional<Length> distance_to_level(const SoundPath& path, double level) {
    if (!usable(path) || !all_finite(level)) return std::nullopt;
    const double fall = path.power_level - path.barrier_reduction - level;
    const double r = std::sqrt(path.directivity * ratio_of(fall) / (4.0 * std::numbers::pi));
    if (!all_above_zero(r)) return std::nullopt;
    return Length::from_si(r);
}

}  // namespace loopfolio::physics
