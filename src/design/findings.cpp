// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"

#include "loopfolio/reference/fittings.hpp"

namespace loopfolio::design {

namespace {
/// A limit is kept where a figure meets it to rounding: 5 kW asked of 5 kW is not a shortfall of 1e-13 W.
constexpr double rounding = 1e-9;
}  // namespace

Finding at_least(Check check, double figure, double needed, double tolerance) {
    Finding f{check, Verdict::change, figure, needed, 0.0};
    if (needed <= 0.0) {
        f.verdict = Verdict::keep;
        return f;
    }
    f.margin = (figure - needed) / needed;
    if (f.margin >= -rounding) f.verdict = Verdict::keep;
    else if (f.margin >= -tolerance - rounding) f.verdict = Verdict::keep_noted;
    return f;
}

Finding at_most(Check check, double figure, double preferred, double limit) {
    Finding f{check, Verdict::keep, figure, preferred, 0.0};
    if (figure > limit * (1.0 + rounding)) {
        f.verdict = Verdict::change;
        f.limit = limit;
    } else if (figure > preferred * (1.0 + rounding)) {
        f.verdict = Verdict::keep_noted;
    }
    f.margin = (f.limit - figure) / f.limit;
    return f;
}

double loss_factor(std::span<const job::FittingCount> fittings) {
    double sum = 0.0;
    for (const auto& f : fittings) {
        const auto* known = reference::find_fitting(f.kind);
        sum += f.count * (known != nullptr ? known->zeta : f.zeta);
    }
    return sum;
}

int joints(std::span<const job::FittingCount> fittings) {
    int sum = 0;
    for (const auto& f : fittings) {
        const auto* known = reference::find_fitting(f.kind);
        if (known != nullptr && known->is_joint) sum += f.count;
    }
    return sum;
}

}  // namespace loopfolio::design
