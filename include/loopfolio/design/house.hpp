// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"

namespace loopfolio::design {

/// A house that can be calculated: every input has a value.
///
/// `inputs` holds what the job states and what the reference tables fill in. Each input is there once, with its basis,
/// source and range, and an input that follows from others is absent. `values` is the same house with the inputs that
/// follow added, such as a U-value from its layers; these have the basis `derived`. Code that changes an input calls
/// `derive` again. Nothing has to be undone, because `values` is always made afresh from `inputs`.
struct House {
    job::Job inputs;
    job::Job values;
};

/// Fills in what a job leaves out from the reference tables. Each such input has the basis `default`, its source key
/// and, where the table gives a spread, a low and a high. Then derives the inputs that follow from others.
[[nodiscard]] House resolve(job::Job stated);

/// Makes `values` from `inputs`. A value outside the range of its formula stays absent, and the design refuses it.
void derive(House& house);

}  // namespace loopfolio::design
