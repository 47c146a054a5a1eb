// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"

namespace loopfolio::design {

/// A house that can be calculated: every input has a value.
///
/// `inputs` holds what the job states and what the reference tables fill in: each is there once, with its basis, source and
/// range, and an input that follows from others is absent. `values` is the same house with what follows put in, such as a
/// U-value from its layers; these have basis `derived`. Whoever moves an input calls `derive` again, and nothing has to be
/// undone, as `values` is always made from `inputs` anew.
struct House {
    job::Job inputs;
    job::Job values;
};

/// Fills what a job leaves out from the reference tables; each such input carries basis `default`, its source key and, where
/// the table has a spread, a low and a high. Then derives what follows from the inputs.
[[nodiscard]] House resolve(job::Job stated);

/// Makes `values` from `inputs`. What lies outside a relation's range stays absent, and the design refuses it.
void derive(House& house);

}  // namespace loopfolio::design
