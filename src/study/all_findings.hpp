// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/plant.hpp"

namespace loopfolio::study {

/// All findings of a house with another design, without the season and the network's states.
[[nodiscard]] inline design::Findings all_findings(const design::House& house, const design::Design& design) {
    design::Findings out = design.findings;
    const design::Findings beside = plant_findings(house, design);
    out.insert(out.end(), beside.begin(), beside.end());
    return out;
}

}  // namespace loopfolio::study
