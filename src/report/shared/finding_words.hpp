// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string>

namespace loopfolio::report {

/// Everything that the pack says of one finding.
struct FindingWords {
    std::string listed;       ///< the thing within a list of what changes: `the pump`
    std::string line;         ///< of the summary
    std::string head;         ///< of what changes, for the household
    std::string changes;      ///< a sentence with figure, limit and solution
    std::string noted;        ///< the same where it is kept with little to spare
    std::string kept;         ///< that it is as it should be
    std::string item, finding, work;   ///< of the installer's work list
};

/// The words of a check of the plant. Of rooms, emitters and sections the pack speaks kind by kind, in lists and tables of
/// their own, and these are empty.
[[nodiscard]] FindingWords words_of(const Context& context, const design::Finding& finding);

/// Whether the pack speaks of this check among the lists of rooms, emitters and sections.
[[nodiscard]] bool in_lists_of_pieces(design::Check check);

// The parts of `words_of`, by what they are about.
[[nodiscard]] FindingWords pump_words(const Context& context, const design::Finding& finding);
[[nodiscard]] FindingWords source_words(const Context& context, const design::Finding& finding);

}   // namespace loopfolio::report
