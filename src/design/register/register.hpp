// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/assumptions.hpp"

#include <vector>

namespace loopfolio::design {

/// The register's lines, and for each input in visiting order the line that it stands in (-1: absent).
struct Register {
    std::vector<Assumption> lines;
    std::vector<int> line_of_input;
};

[[nodiscard]] Register register_of(const job::Job& filled);

enum class End { low, high };

/// Moves every input of one line to an end of its range. False where it has none there.
bool move_line(job::Job& job, const Register& reg, int line, End end);

}  // namespace loopfolio::design
