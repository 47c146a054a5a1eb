// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/season.hpp"
#include "study/register.hpp"

#include <optional>

namespace loopfolio::study {

/// Designs the house again for each line of the register that has a range, at either end of it. Fills in the effects of
/// the lines that need care, and returns the bands of the season, where the job has one. `designed` must be that of
/// `house`.
std::optional<design::SeasonBands> explore_ranges(const design::House& house, const design::Design& designed,
                                                  Register& reg);

}  // namespace loopfolio::study
