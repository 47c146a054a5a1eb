// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <fstream>
#include <sstream>
#include <string>

/// The job file from which every user starts. It shows every key.
namespace loopfolio::tests {

inline std::string starting_point() {
    std::ifstream in{std::string{LOOPFOLIO_SOURCE_DIR} + "/templates/job/starting-point.yaml"};
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

/// The starting point with its spare keys switched on. A `#` without a space after it hides a key; `##` hides a key
/// that conflicts with others.
inline std::string switched_on(const std::string& text) {
    std::string out;
    std::istringstream in{text};
    for (std::string line; std::getline(in, line);) {
        const auto mark = line.find_first_not_of(' ');
        const bool spare = mark != line.npos && line[mark] == '#' && mark + 1 < line.size() && line[mark + 1] != ' ';
        if (spare) line.erase(mark, 1);
        out += line + "\n";
    }
    return out;
}

}  // namespace loopfolio::tests
