// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/compensation.hpp"

#include "loopfolio/physics/emitter.hpp"
#include "physics/valid.hpp"

#include <cmath>

namespace loopfolio::physics {

namespace {

constexpr Temperature highest_flow = Temperature::from_celsius(95.0);

}  // namespace

std::optional<FlowAndReturn> compensated_flow(const EmissionDesign& design, double share) {
    const auto design_excess = log_mean_excess(design.flow, design.return_, design.room);
    if (!design_excess || !exponent_in_range(design.exponent) || !all_above_zero(share)) return std::nullopt;
    const auto excess = std::pow(share, 1.0 / design.exponent) * *design_excess;
    const auto drop = share * (design.flow - design.return_);
    const auto return_excess = drop.si() == 0.0 ? excess : drop / std::expm1(drop / excess);
    const FlowAndReturn out{design.room + return_excess + drop, design.room + return_excess};
    if (!(out.flow <= highest_flow)) return std::nullopt;
    return out;
}

}  // namespace loopfolio::physics
