// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/job/job.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopfolio::design {

/// What the house would look like if one assumption were at the end of its range.
struct Effect {
    Power source_load_change;     ///< from the design as it stands
    int verdicts_changed = 0;     ///< rooms, emitters, sections and plant whose verdict would differ
};

/// One line of the register: a value and what it stands on. Equal values of one kind, basis and source stand in one line.
struct Assumption {
    std::string what;             ///< `air changes per hour`
    std::vector<std::string> subjects;   ///< names of the rooms or sections that it is used for; empty: whole house
    std::string value;            ///< with unit
    std::string range;            ///< `0.7 to 1.5`, in the unit of the value, or empty
    std::string low, high;        ///< the ends of the range, where it has both
    Basis basis{};
    std::string source;           ///< words of the job, or a source key where `is_key`
    bool is_key = false;
    std::optional<Effect> at_low, at_high;
};

/// Every input of a filled job, in the order of the job, grouped. `measured` and `document` values come too, so that the register
/// is whole; `needs_care` tells the others apart.
[[nodiscard]] std::vector<Assumption> inputs_register(const job::Job& filled);

/// The same with the effect of each range on the design: two designs for each line that has a range and is
/// neither measured nor documented.
[[nodiscard]] std::vector<Assumption> inputs_register_with_effects(const job::Job& filled, const Design& as_designed);

[[nodiscard]] inline bool needs_care(const Assumption& a) {
    return a.basis == Basis::assumed || a.basis == Basis::default_value;
}

}  // namespace loopfolio::design
