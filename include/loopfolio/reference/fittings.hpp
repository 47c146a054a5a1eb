// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// A fitting's loss factor, on v2/2 of the pipe that contains it, at the small bores of houses.
struct Fitting {
    std::string_view name;   ///< in a job file: `elbow`
    std::string_view label;  ///< for a reader: `elbow, 90°`
    double zeta;
    double low, high;  ///< spread between the published tables
    bool is_joint;     ///< on plastic or multilayer pipe it is made with an insert
    std::string_view source;
};

[[nodiscard]] std::span<const Fitting> fittings();
[[nodiscard]] const Fitting* find_fitting(std::string_view name);
[[nodiscard]] std::vector<std::string_view> fitting_names();

}  // namespace loopfolio::reference
