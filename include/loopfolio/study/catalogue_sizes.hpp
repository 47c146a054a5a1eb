// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::study {

/// A size of the firm's catalogue in the place of an emitter.
struct SizeOffer {
    int size = -1;                ///< index in the job's sizes
    Power output;                 ///< there: with the emitter's water, and less what its place takes (`derating`)
    std::optional<bool> fits;     ///< no longer and no higher than what hangs there; absent where a measure is not known
};

/// Sizes for one emitter that is too small.
struct SizeChoice {
    int emitter = -1;
    std::vector<SizeOffer> offers;       ///< at most `most_offers` that give its load: those that fit first, then the smallest
    std::optional<SizeOffer> largest;    ///< of the catalogue, where none gives it
};

inline constexpr std::size_t most_offers = 4;

/// One for each emitter whose verdict is change, heated floors apart; none without a catalogue. A towel rail, skirting, column
/// or fan unit is offered sizes of its own kind alone, where the catalogue has that kind.
[[nodiscard]] std::vector<SizeChoice> sizes_that_serve(const job::Job& filled, const design::Design& design);

}  // namespace loopfolio::study
