// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/season.hpp"
#include "study/register.hpp"

#include <optional>

namespace loopfolio::study {

/// Designs the house again with each line of the register that has a range at either end of it. Fills the effects of the
/// lines that need care, and gives the bands of the season, where the job asks for one. `designed` must be that of `house`.
std::optional<design::SeasonBands> explore_ranges(const design::House& house, const design::Design& designed, Register& reg);

}  // namespace loopfolio::study
