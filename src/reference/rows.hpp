// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <string_view>
#include <vector>

namespace loopfolio::reference {

/// The row of a table with this name, or nullptr.
template <class Table>
const typename Table::value_type* find_row(const Table& table, std::string_view name) {
    const auto has_name = [&](const auto& row) { return row.name == name; };
    const auto found = std::find_if(table.begin(), table.end(), has_name);
    return found == table.end() ? nullptr : &*found;
}

/// The names in a table, in its order.
template <class Table>
std::vector<std::string_view> names_of(const Table& table) {
    std::vector<std::string_view> names;
    for (const auto& row : table) names.push_back(row.name);
    return names;
}

}  // namespace loopfolio::reference
