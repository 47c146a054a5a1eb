// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <set>
#include <string>

/// The blocks of each section of the assessor's part.
namespace loopfolio::report {

/// The conditions and rules on which the whole design is based.
[[nodiscard]] Facts basis_of_design(const Context& context);

/// Every input. Those that need care come first, with the effect of their ranges; then those that were measured or
/// documented.
[[nodiscard]] Blocks input_register(const Context& context);

/// A chart of how far each input's range changes the required heat source output. Empty if no range changes it.
[[nodiscard]] Blocks assumptions_drawn(const Context& context);

/// How the default heat loss rates in W/m2 are calculated: fabric by fabric, and element by element.
[[nodiscard]] Blocks fabric_derivations(const Context& context);
[[nodiscard]] Blocks element_losses(const Context& context);
[[nodiscard]] Blocks methods_side_by_side(const Context& context);

/// The formulas that this design used, each with its range and source.
[[nodiscard]] Table methods_table(const Context& context);
/// Loss factors of the fittings and emitters of this job, with the spread between sources.
[[nodiscard]] Table loss_factors_table(const Context& context);
[[nodiscard]] List limits_of_validity(const Context& context);

/// One room, one section, one emitter and the duty, worked step by step with the figures of the calculation itself.
[[nodiscard]] Blocks worked_examples(const Context& context);

/// Keys of every source that this pack relies on.
[[nodiscard]] std::set<std::string> source_keys(const Context& context);
/// `[4] read`: the number in the list of sources, and the certainty. Words that are not a key are returned unchanged.
[[nodiscard]] std::string source_reference(const Context& context, const std::string& key_or_words);
[[nodiscard]] Table sources_table(const Context& context);

}  // namespace loopfolio::report
