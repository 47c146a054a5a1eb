// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <span>

namespace loopfolio::physics {

/// One value of a table over two variables.
struct GridPoint {
    double x = 0.0;
    double y = 0.0;
    double value = 0.0;
};

/// Bilinear interpolation in a complete rectangular table, its points in order of rising x and then rising y. A table
/// of one row or column counts at that x or y only. Nothing outside the table: it is never extrapolated.
[[nodiscard]] std::optional<double> on_grid(std::span<const GridPoint> points, double x, double y);

}  // namespace loopfolio::physics
