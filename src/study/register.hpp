// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/design/house.hpp"
#include "loopfolio/study/register.hpp"

#include <vector>

namespace loopfolio::study {

/// The lines of the register and, for each input in visiting order, the number of its line (-1: absent).
struct Register {
    std::vector<Assumption> lines;
    std::vector<int> line_of_input;
};

[[nodiscard]] Register register_of(const design::House& house);

enum class End { low, high };

/// Moves every input of one line to an end of its range, and derives the house again. False, with nothing moved, where
/// the line has no such end.
bool move_line(design::House& house, const Register& reg, int line, End end);

}  // namespace loopfolio::study
