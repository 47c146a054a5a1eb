// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <utility>
#include <vector>

namespace loopfolio::network {

/// The links at each node, in packed form.
class Incidence {
public:
    /// `ends` are the two nodes of each link; links with `used` false are left out (empty: all are used).
    void set(int nodes, std::span<const std::pair<int, int>> ends, const std::vector<char>& used);

    [[nodiscard]] std::span<const int> links_of(int node) const;
    [[nodiscard]] int first_of(int node) const { return first_[static_cast<std::size_t>(node)]; }
    [[nodiscard]] int link_at(int place) const { return link_[static_cast<std::size_t>(place)]; }

private:
    std::vector<int> first_;
    std::vector<int> link_;
};

}  // namespace loopfolio::network
