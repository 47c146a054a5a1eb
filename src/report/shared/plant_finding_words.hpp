// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "report/shared/parts.hpp"

namespace loopfolio::report {

/// What is said, in plain words, of a finding on system water, hot water or sound.
struct BesideWords {
    std::string subject;      ///< `The expansion vessel`
    std::string listed;       ///< the same within a list
    std::string head;         ///< of what changes
    std::string comparison;   ///< figure and limit
    std::string remedy;
    std::string aside;        ///< what is said of it where it is noted
    std::string kept;         ///< that it is as it should be, with the subject
    std::string line;         ///< of the summary
    std::string item, finding, work;   ///< of the installer's list of work
};

/// Whether a check is one of these.
[[nodiscard]] bool beside_heating(design::Check check);
[[nodiscard]] BesideWords beside_words(const Context& context, const design::Finding& finding);

}   // namespace loopfolio::report
