// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::design {

struct PipeChange {
    int section = -1;
    const reference::Pipe* to = nullptr;
};

/// Lengths of pipe that, replaced by a wider size, make the present pump strong enough.
struct PumpRemedy {
    std::vector<PipeChange> changes;  ///< the most helpful first
    Pressure head;                    ///< head that is then needed
    Pressure available;               ///< head that the pump then gives
    Verdict verdict = Verdict::keep;  ///< of the pump with these changes: never `change`
};

/// For a pump that is too weak: widens the section of the index circuit with the largest pressure drop to the next size
/// that gives `keep`, or else to the next size there is, then designs again, and repeats this until the pump is strong
/// enough. Nothing where the pump is strong enough already, where it has no curve, or where wider pipe alone is not
/// enough. `design` must be that of `filled`.
[[nodiscard]] std::optional<PumpRemedy> widen_for_pump(const job::Job& filled, const Design& design);

/// Puts another pipe in the place of a section's.
void replace_pipe(job::Job& filled, int section, const reference::Pipe& pipe);

}  // namespace loopfolio::design
