// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <optional>
#include <span>

/// How loud a unit outside is at a neighbour's. A screening figure from A-weighted totals, not an
/// assessment.
namespace loopfolio::physics {

/// Where sound power has to go: the share of a sphere that is open. 1 / 0.5 / 0.25 / 0.125.
inline constexpr double directivity_free = 1.0;
inline constexpr double directivity_on_ground = 2.0;
inline constexpr double directivity_by_wall = 4.0;
inline constexpr double directivity_in_corner = 8.0;

struct SoundPath {
    double power_level = 0.0;                    ///< dB(A) re 1 pW
    Length distance;                             ///< from the unit; several times its size
    double directivity = directivity_on_ground;  ///< 1 to 8
    double barrier_reduction = 0.0;              ///< dB, >= 0, as whoever judged it states it
};

/// Sound pressure level in dB(A) re 20 uPa: Lp = Lw + 10 lg(Q / (4 pi r2)) - barrier, r in m.
/// Nothing for a distance that is not above zero or a directivity outside 1 to 8. Source:
/// geometrical divergence of ISO 9613-2 (Lw - 20 lg r - 11 dB for Q = 1) and of the hemisphere of
/// ISO 3744, from memory. Air absorption, ground effect and reflections beyond the directivity are
/// left out.
[[nodiscard]] std::optional<double> sound_pressure_level(const SoundPath& path);

/// Levels of sources that are not in step, and of what is heard anyway: 10 lg sum 10^(L/10).
/// Nothing for no level or one that is not finite.
[[nodiscard]] std::optional<double> sum_of_levels(std::span<const double> levels);

/// The distance at which the level falls to `level`. Path's own distance does not count.
[[nodiscard]] std::optional<Length> distance_to_level(const SoundPath& path, double level);

}  // namespace loopfolio::physics
