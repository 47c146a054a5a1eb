// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/report/compose.hpp"

#include <optional>
#include <set>
#include <string>

namespace loopfolio::report {

/// Everything that a part of the pack is written from.
struct Context {
    const job::Job& job;
    const design::Design& design;
    const design::Operation& operation;
    const std::vector<design::Assumption>& inputs;
    const design::Trace& trace;
    const Making& making;
    std::set<std::string> sources;   ///< keys of the sources that the pack leans on; their order numbers them
    std::optional<design::PumpRemedy> wider_pipes;   ///< that would let a circulator do which is too weak
};

using Blocks = std::vector<Block>;

/// The parts, one a file.
[[nodiscard]] Part household_part(const Context& context);
[[nodiscard]] Part installer_part(const Context& context);
[[nodiscard]] Part assessor_part(const Context& context);

}   // namespace loopfolio::report
