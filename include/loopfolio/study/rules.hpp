// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/job/job.hpp"
#include "loopfolio/reference/edition.hpp"

#include <optional>
#include <vector>

/// Which editions of rules, standards and guides hold for a job: by its nation and its dates, never by the clock.
namespace loopfolio::study {

/// How one edition stands on the day of the design.
struct EditionStanding {
    const reference::Edition* edition = nullptr;
    /// Not covered also where the job states no nation and the nations differ.
    reference::Standing standing = reference::Standing::not_covered;
    std::optional<reference::Dated> from, until;     ///< of the term that is nearest to that day
    std::vector<const reference::Edition*> instead;  ///< in force in its place, where it does not hold on that day
};

/// One subject with the editions that hold on the day of the design and that are known to follow.
struct RuleLine {
    reference::Rule rule{};
    std::vector<EditionStanding> in_force;      ///< empty: no edition is held for this nation and day
    std::vector<EditionStanding> before_start;  ///< come into force before the work starts, or on that day
    std::vector<EditionStanding> later;         ///< come into force after that
    bool by_nation = false;                     ///< the job states no nation, and the nations differ
};

struct Rules {
    std::vector<RuleLine> lines;             ///< one for each reference::Rule, in its order
    std::vector<EditionStanding> standings;  ///< of every edition, in the order of reference::editions()

    [[nodiscard]] const RuleLine& line(reference::Rule rule) const { return lines[static_cast<std::size_t>(rule)]; }
    /// The standing of the edition with this key, or nullptr.
    [[nodiscard]] const EditionStanding* standing(std::string_view key) const;
};

[[nodiscard]] Rules rules_of(const job::Job& values);

}  // namespace loopfolio::study
