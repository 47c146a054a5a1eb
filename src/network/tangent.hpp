// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

namespace loopfolio::network {

/// Value and slope of a function at one point.
struct Tangent {
    double value = 0.0;
    double slope = 0.0;
};

}  // namespace loopfolio::network
