// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <vector>

namespace loopfolio::study {

/// A size of the firm's catalogue as a replacement for an emitter.
struct SizeOffer {
    int size = -1;  ///< index in the job's sizes
    Power output;   ///< in this place: with the emitter's water, and after its `derating`
    /// Neither longer nor higher than the present emitter; absent where a dimension is not known.
    std::optional<bool> fits;
};

/// Sizes for one emitter that is too small.
struct SizeChoice {
    int emitter = -1;
    /// At most `most_offers` that give the load: those that fit first, then the smallest.
    std::vector<SizeOffer> offers;
    std::optional<SizeOffer> largest;  ///< the largest of the catalogue, where none gives the load
};

inline constexpr std::size_t most_offers = 4;

/// One for each emitter with the verdict change, except heated floors; none without a catalogue. A towel rail,
/// skirting, column or fan unit is offered only sizes of its own kind, where the catalogue has that kind.
[[nodiscard]] std::vector<SizeChoice> sizes_that_serve(const job::Job& filled, const design::Design& design);

}  // namespace loopfolio::study
