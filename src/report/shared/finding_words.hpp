// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

#include <string>

namespace loopfolio::report {

/// Everything that the pack says of one finding.
struct FindingWords {
    std::string listed;               ///< name within a list of what changes: `the pump`
    std::string line;                 ///< in the summary
    std::string head;                 ///< its heading among the changes, for the household
    std::string changes;              ///< a sentence with figure, limit and solution
    std::string noted;                ///< the same for a piece kept with little to spare
    std::string kept;                 ///< says that it is as it should be
    std::string item, finding, work;  ///< in the installer's work list
};

/// The words for a check of the plant. Empty for rooms, emitters and sections, which the pack describes kind by kind in
/// lists and tables of their own.
[[nodiscard]] FindingWords words_of(const Context& context, const design::Finding& finding);

/// Whether the pack describes this check in the lists of rooms, emitters and sections.
[[nodiscard]] bool in_lists_of_pieces(design::Check check);

// The parts of `words_of`, one for each subject.
[[nodiscard]] FindingWords pump_words(const Context& context, const design::Finding& finding);
[[nodiscard]] FindingWords source_words(const Context& context, const design::Finding& finding);

}  // namespace loopfolio::report
