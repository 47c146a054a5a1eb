// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"
#include "report/shared/by_verdict.hpp"

namespace loopfolio::report {

/// Everything in the house by its verdict.
struct Outcome {
    Points keep, noted, change;
};
[[nodiscard]] Outcome outcome_of(const Context& context);

// What it comes to: blocks of the summary that the household's part may hold too.
[[nodiscard]] Blocks lead_block(const Context& context);
[[nodiscard]] Blocks key_figures(const Context& context);
/// One sentence on the design day with nothing changed.
[[nodiscard]] Blocks nothing_changed(const Context& context);

}   // namespace loopfolio::report
