// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <set>
#include <string>

/// The assessor's sections, each a few blocks.
namespace loopfolio::report {

/// Conditions and rules that the whole design stands on.
[[nodiscard]] Facts basis_of_design(const Context& context);

/// Every input: first what needs care, with the effect of its range, then what was measured or documented.
[[nodiscard]] Blocks input_register(const Context& context);

/// How far each range can move the heat that the source must make, as a chart; empty where none moves it.
[[nodiscard]] Blocks assumptions_drawn(const Context& context);

/// How the default heat loss rates in W/m2 come about, fabric by fabric; and element by element.
[[nodiscard]] Blocks fabric_derivations(const Context& context);
[[nodiscard]] Blocks element_losses(const Context& context);
[[nodiscard]] Blocks methods_side_by_side(const Context& context);

/// The relations that this design used, with range and source.
[[nodiscard]] Table methods_table(const Context& context);
/// Loss factors of the fittings and emitters of this job, with the spread between sources.
[[nodiscard]] Table loss_factors_table(const Context& context);
[[nodiscard]] List limits_of_validity(const Context& context);

/// One room, one section, one emitter and the duty, step by step from the calculation itself.
[[nodiscard]] Blocks worked_examples(const Context& context);

/// Keys of every source that this pack leans on.
[[nodiscard]] std::set<std::string> source_keys(const Context& context);
/// `[4] read`: number in the list of sources, and certainty. Words that are no key stand as they are.
[[nodiscard]] std::string source_reference(const Context& context, const std::string& key_or_words);
[[nodiscard]] Table sources_table(const Context& context);

}   // namespace loopfolio::report
