// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace loopfolio::tests {

/// A small table of reference values: lines that start with `#` give their source, then comes one line of column names,
/// then the rows. Quoting is not supported.
struct Csv {
    std::vector<std::string> head;
    std::vector<std::vector<std::string>> rows;

    [[nodiscard]] std::size_t column(const std::string& name) const {
        for (std::size_t i = 0; i < head.size(); ++i) {
            if (head[i] == name) return i;
        }
        throw std::runtime_error{"no column " + name};
    }
    [[nodiscard]] double number(std::size_t row, const std::string& name) const {
        return std::stod(rows.at(row).at(column(name)));
    }
};

inline Csv read_csv(const std::string& name) {
    std::ifstream in{std::string{LOOPFOLIO_TEST_DATA} + "/" + name};
    if (!in) throw std::runtime_error{"no test data " + name};
    Csv csv;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#') continue;
        std::vector<std::string> cells;
        std::istringstream parts{line};
        for (std::string cell; std::getline(parts, cell, ',');) cells.push_back(cell);
        if (line.back() == ',') cells.emplace_back();
        if (csv.head.empty()) csv.head = cells;
        else csv.rows.push_back(cells);
    }
    return csv;
}

}  // namespace loopfolio::tests
