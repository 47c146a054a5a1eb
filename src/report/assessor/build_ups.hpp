// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// What heat losses and ratings are made of. Each is empty where the job states nothing of the kind.
namespace loopfolio::report {

/// The sum of the rooms against what leaves the house and what the source must make.
[[nodiscard]] Table whole_house(const Context& context);

/// Layers, slabs, unheated spaces and air.
[[nodiscard]] Blocks build_ups(const Context& context);

/// Ratings that were worked out, or lowered by what stands round the emitter.
[[nodiscard]] Blocks emitter_ratings(const Context& context);
[[nodiscard]] Blocks heated_floors(const Context& context);

}   // namespace loopfolio::report
