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

/// Lengths of pipe that, made wider, would let the circulator that is there do.
struct PumpRemedy {
    std::vector<PipeChange> changes;   ///< in the order in which they help most
    Pressure head;                     ///< that is then needed
    Pressure available;                ///< that the circulator then gives
    Verdict verdict = Verdict::keep;   ///< on the circulator then: never `change`
};

/// Where the circulator is too weak: widens the section of the index circuit that drops most, to the next size at which
/// it is kept (or the next there is), designs again, and goes on until the circulator does. Nothing where it does already, where it has no
/// curve, or where wider pipe alone does not help. `design` must be that of `filled`.
[[nodiscard]] std::optional<PumpRemedy> widen_for_pump(const job::Job& filled, const Design& design);

}  // namespace loopfolio::design
