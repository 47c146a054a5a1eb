// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "loopfolio/reference/fittings.hpp"

namespace loopfolio::design {

double loss_factor(std::span<const job::FittingCount> fittings) {
    double sum = 0.0;
    for (const auto& f : fittings) {
        const auto* known = reference::find_fitting(f.kind);
        sum += f.count * (known != nullptr ? known->zeta : f.zeta);
    }
    return sum;
}

int narrowed_joints(std::span<const job::FittingCount> fittings) {
    int sum = 0;
    for (const auto& f : fittings) {
        const auto* known = reference::find_fitting(f.kind);
        if (known != nullptr && known->is_joint) sum += f.count;
    }
    return sum;
}

}  // namespace loopfolio::design
