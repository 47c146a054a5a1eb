// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/yaml/tree.hpp"

#include <optional>
#include <string>

namespace loopfolio::yaml {

/// A number as a file writes it, or what is wrong with how it is written.
struct NumberReading {
    std::optional<double> value;
    std::string rule;
    Hint hint = {};
};

/// Reads decimal numbers only: `12`, `-3.5`, `+.5`, `1e3`. Rejects hexadecimal and octal numbers, underscores, commas,
/// units, quotes and infinities; minus zero reads as zero.
[[nodiscard]] NumberReading number_in(const Node& node);

}  // namespace loopfolio::yaml
