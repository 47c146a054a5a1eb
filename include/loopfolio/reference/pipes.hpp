// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/quantity.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

enum class PipeMaterial { copper, steel, multilayer, pex, polybutylene };

/// The words printed in the pack: `copper tube`, `steel pipe`, ...
[[nodiscard]] std::string_view word(PipeMaterial material);

/// One size of one kind of pipe, as new and clean.
struct Pipe {
    std::string_view name;   ///< the name in a job file: `copper_22`
    std::string_view label;  ///< for a reader: `22 mm copper`
    PipeMaterial material;
    Length outside_diameter;
    Length bore;
    Length insert_bore;       ///< narrowest bore inside an insert fitting; 0 where fittings do not narrow
    Length roughness;         ///< absolute
    std::string_view source;  ///< key of the dimensions
    std::string_view roughness_source;
};

/// Every size, grouped by material, each group in order of bore.
[[nodiscard]] std::span<const Pipe> pipes();
[[nodiscard]] const Pipe* find_pipe(std::string_view name);
[[nodiscard]] std::vector<std::string_view> pipe_names();

/// The larger sizes of the same material, in order of bore; empty for the largest.
[[nodiscard]] std::span<const Pipe> larger_sizes(const Pipe& pipe);

}  // namespace loopfolio::reference
