// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/diagnostic.hpp"
#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"

#include <string>
#include <vector>

namespace loopfolio::job {

/// The heating season that a job asks to be reckoned.
struct Season {
    std::string climate;                     ///< name in reference::climates(); empty with rows of the job's own
    Place place;
};

}  // namespace loopfolio::job
