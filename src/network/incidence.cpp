// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/incidence.hpp"

#include "network/at.hpp"

namespace loopfolio::network {

void Incidence::set(int nodes, std::span<const std::pair<int, int>> ends, const std::vector<char>& used) {
    const auto counts = [&](std::size_t i) { return used.empty() || used[i] != 0; };
    first_.assign(at(nodes) + 1, 0);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (!counts(i)) continue;
        ++first_[at(ends[i].first) + 1];
        ++first_[at(ends[i].second) + 1];
    }
    for (std::size_t n = 1; n < first_.size(); ++n) first_[n] += first_[n - 1];
    link_.resize(at(first_.back()));
    std::vector<int> next(first_.begin(), first_.end() - 1);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (!counts(i)) continue;
        for (const int node : {ends[i].first, ends[i].second}) link_[at(next[at(node)]++)] = static_cast<int>(i);
    }
}

std::span<const int> Incidence::links_of(int node) const {
    return std::span{link_}.subspan(at(first_of(node)), at(first_of(node + 1) - first_of(node)));
}

}  // namespace loopfolio::network
