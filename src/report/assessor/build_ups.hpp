// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

/// The tables behind heat losses and ratings. Each is empty if the job gives nothing of that kind.
namespace loopfolio::report {

/// The sum of the rooms compared with what leaves the house and with the required heat source output.
[[nodiscard]] Table whole_house(const Context& context);

/// Layers, slabs, unheated spaces and air.
[[nodiscard]] Blocks build_ups(const Context& context);

/// Ratings that were calculated from other figures, or reduced by what surrounds the emitter.
[[nodiscard]] Blocks emitter_ratings(const Context& context);
[[nodiscard]] Blocks heated_floors(const Context& context);

}  // namespace loopfolio::report
