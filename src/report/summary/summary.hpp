// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/by_verdict.hpp"
#include "report/shared/parts.hpp"

namespace loopfolio::report {

/// Everything in the house, grouped by verdict.
struct Outcome {
    Points keep, noted, change;
};
[[nodiscard]] Outcome outcome_of(const Context& context);

// The conclusions: blocks of the summary that the household's part may contain too.
[[nodiscard]] Blocks lead_block(const Context& context);
[[nodiscard]] Blocks key_figures(const Context& context);
/// One sentence on what happens on the design day if nothing is changed.
[[nodiscard]] Blocks nothing_changed(const Context& context);

}  // namespace loopfolio::report
