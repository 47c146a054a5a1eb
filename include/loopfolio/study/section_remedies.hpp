// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/design.hpp"
#include "loopfolio/design/house.hpp"

#include <optional>
#include <vector>

/// Ways out for sections outside a limit, each tried on the whole house before the pack prints it. The design looks for
/// them section by section, and what helps one may break another: a temperature drop that suits one pipe can be more
/// than emitters or the heat source allow.
namespace loopfolio::study {

/// A way out that was designed with.
struct Tried {
    bool holds = false;  ///< a design is possible, the section passes, and nothing changes that did not before
    int breaks = 0;      ///< number of findings that change only with it
};

/// The ways out that hold, and what became of all of them. Empty for a section that is kept.
struct SectionRemedies {
    const reference::Pipe* next_size = nullptr;  ///< as in `design::SectionResult`, where it holds
    const reference::Pipe* size_for_limit = nullptr;
    std::optional<TemperatureDifference> drop_to_keep, drop_to_limit;
    std::optional<Tried> tried_next_size, tried_size_for_limit, tried_drop_to_keep, tried_drop_to_limit;
};

/// By section. `design` must be that of `house`.
[[nodiscard]] std::vector<SectionRemedies> try_remedies(const design::House& house, const design::Design& design);

}  // namespace loopfolio::study
