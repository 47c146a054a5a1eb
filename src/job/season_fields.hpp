// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "job/field_makers.hpp"

namespace loopfolio::job {

inline constexpr std::array season_fields{
    line("climate", optional),
};

}  // namespace loopfolio::job
