// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/job.hpp"

#include <algorithm>
#include <optional>
#include <string>

namespace loopfolio::design {

/// Fill in what the job leaves out of these parts, from common practice and standards, each with its source key.
void fill_parts(job::Job& job);  ///< build-ups of elements, allowances, ratings
void fill_air(job::Job& job);    ///< what gives the air changes of rooms that state none
void fill_system_water(job::Job& job);
void fill_hot_water(job::Job& job);
void fill_season(job::Job& job);

}  // namespace loopfolio::design
