// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <set>
#include <string>
#include <vector>

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
/// Air of the rooms by the standard in force and by the table that it replaced. Empty where no room has its own air.
[[nodiscard]] Blocks air_of_rooms(const Context& context);

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
/// How well a source is known, in the words of the template.
[[nodiscard]] std::string certainty_words(const Context& context, reference::Certainty certainty);
[[nodiscard]] Table sources_table(const Context& context);

/// Every rule, standard and guide with the edition in force, what changes, and where the pack deals with it.
[[nodiscard]] Blocks rules_in_force(const Context& context);
/// Editions that the pack relies on although they had been replaced on the day of the design.
[[nodiscard]] std::vector<const study::EditionStanding*> replaced_editions(const Context& context);
/// A source's title: where its edition was not yet in force on the day of the design, that of the one which was.
[[nodiscard]] std::string title_on_day(const Context& context, const reference::Source& source);
/// What is to be said of a source: first whether its edition was replaced.
[[nodiscard]] std::string remark_on(const Context& context, const reference::Source& source);

}  // namespace loopfolio::report
