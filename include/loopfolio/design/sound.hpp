// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/reference/edition.hpp"

#include <optional>

namespace loopfolio::design {

/// How the rule in force for the job's nation and day judges the sound of an outdoor unit.
struct SoundRule {
    const reference::Edition* edition = nullptr;
    double limit = 0.0;                ///< dB(A)
    std::optional<double> background;  ///< dB(A) that the rule counts; absent: the units alone are judged
    double figure = 0.0;               ///< dB(A) that is held against the limit, rounded to 0.1
};

/// The rule for this job, without its figure; nothing where none is held for its nation and day.
[[nodiscard]] std::optional<SoundRule> sound_rule(const job::Job& values);

/// An indication of the outdoor unit's sound at the neighbour's window. Levels in dB(A).
struct SoundPlan {
    double power_level = 0.0;  ///< of all units together
    int units = 1;
    double directivity = 2.0;
    double at_distance = 0.0;  ///< without the effect of barriers on the way
    double level = 0.0;        ///< at the window
    std::optional<double> with_background;
    std::optional<SoundRule> rule;  ///< in force for this house
    /// Distance at which the rule's limit is met; without a rule, the job's own.
    std::optional<Length> far_enough;
    FindingId by_rule;  ///< figure: that of the rule; dB(A)
    /// By a limit that the job states. Figure: level, with the background level where that is stated; dB(A).
    FindingId limit;
};

/// Adds the checks that it makes to `findings`.
[[nodiscard]] std::optional<SoundPlan> plan_sound(const job::Job& values, Findings& findings, Trace* trace = nullptr);

}  // namespace loopfolio::design
