// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/base/input.hpp"
#include "loopfolio/base/quantity.hpp"
#include "loopfolio/design/house.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopfolio::study {

/// The changes in the results if one assumption were at the end of its range.
struct Effect {
    Power source_load_change;  ///< compared with the design as it is
    int verdicts_changed = 0;  ///< rooms, emitters, sections and plant whose verdict would change
};

/// One line of the register: a value and its basis. Equal values of one kind, basis and source share one line.
struct Assumption {
    std::string what;                   ///< `air changes per hour`
    std::vector<std::string> subjects;  ///< names of the rooms or sections that use it; empty: whole house
    std::string value;                  ///< with unit
    std::string range;                  ///< `0.7 to 1.5`, in the unit of the value, or empty
    std::string low, high;              ///< the ends of the range, where both are known
    Basis basis{};
    std::string source;  ///< text from the job, or a source key where `is_key`
    bool is_key = false;
    std::optional<Effect> at_low, at_high;
};

/// Every input of a house, in the order of the job, grouped, without effects. Inputs with the basis `measured` or
/// `document` are included, so that the register is complete; `needs_care` marks the others.
[[nodiscard]] std::vector<Assumption> inputs_register(const design::House& house);

[[nodiscard]] inline bool needs_care(const Assumption& a) {
    return a.basis == Basis::assumed || a.basis == Basis::default_value;
}

}  // namespace loopfolio::study
