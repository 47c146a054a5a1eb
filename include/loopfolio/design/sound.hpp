// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>

namespace loopfolio::design {

/// An indication of the outdoor unit's sound at the neighbour's window. Levels in dB(A).
struct SoundPlan {
    double power_level = 0.0;  ///< of all units together
    int units = 1;
    double directivity = 2.0;
    double at_distance = 0.0;  ///< without the effect of barriers on the way
    double level = 0.0;        ///< at the window
    std::optional<double> with_background;
    /// Distance at which the limit is met, with the background level where that is stated.
    std::optional<Length> far_enough;
    FindingId limit;  ///< figure: level, with the background level where that is stated; dB(A)
};

/// Adds the checks that it makes to `findings`.
[[nodiscard]] std::optional<SoundPlan> plan_sound(const job::Job& values, Findings& findings, Trace* trace = nullptr);

}  // namespace loopfolio::design
