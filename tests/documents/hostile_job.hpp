// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

namespace loopfolio::tests {

/// An invented house, as the text of a job file, whose words and numbers of parts a test can choose.
struct House {
    std::string firm = "Fernhollow Heating", designer = "Siân Owen-Łukasik", household = "The Whitlock household";
    std::vector<std::string> address{"19 Quarry Rise", "Helmsbeck"};
    std::string description = "semi-detached house of about 1936";
    std::vector<std::string> notes{"The pipes were followed as far as the hall."};
    std::string room = "Room", section_place = "under the floor", source = "air-source heat pump", evidence = "survey";
    int rooms = 3;
    int emitters = 3;         ///< one in each room in turn, starting again at the first
    int sections_in_row = 4;  ///< emitters on each branch; all branches start at one manifold
    [[nodiscard]] std::string job() const;
};

}  // namespace loopfolio::tests
