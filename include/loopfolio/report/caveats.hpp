// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"
#include "loopfolio/templates/texts.hpp"

#include <string>
#include <vector>

namespace loopfolio::report {

/// The flags of the design as sentences: one for each kind of caveat, naming all its subjects. Empty if nothing is
/// flagged.
[[nodiscard]] std::vector<std::string> caveats(const job::Job& filled, const design::Design& design,
                                               const templates::Texts& words);

}  // namespace loopfolio::report
