// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/derating.hpp"

#include "physics/valid.hpp"

namespace loopfolio::physics {

namespace {

constexpr double greatest = 1.5;

bool usable(const Derating& d) {
    return all_above_zero(d.low, d.factor, d.high) && d.low <= d.factor && d.factor <= d.high && d.high <= greatest;
}

}  // namespace

std::optional<Derating> all_of(std::span<const Derating> deratings) {
    Derating out;
    for (const auto& d : deratings) {
        if (!usable(d)) return std::nullopt;
        out.factor *= d.factor;
        out.low *= d.low;
        out.high *= d.high;
    }
    return out;
}

}  // namespace loopfolio::physics
