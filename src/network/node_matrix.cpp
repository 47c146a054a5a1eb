// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/node_matrix.hpp"

#include "network/at.hpp"

#include <algorithm>

namespace loopfolio::network {

namespace {

/// Index among the values of row `row` in column `column`.
int place_of(const Eigen::SparseMatrix<double>& m, int row, int column) {
    const int* rows = m.innerIndexPtr();
    const int* first = rows + m.outerIndexPtr()[column];
    const int* last = rows + m.outerIndexPtr()[column + 1];
    return static_cast<int>(std::lower_bound(first, last, row) - rows);
}

}  // namespace

void NodeMatrix::set_pattern(const Topology& t) {
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(at(t.unknowns) + t.ends.size());
    for (int i = 0; i < t.unknowns; ++i) entries.emplace_back(i, i, 1.0);
    const auto unknowns_of = [&](std::size_t link) {
        return std::pair{t.unknown[at(t.ends[link].first)], t.unknown[at(t.ends[link].second)]};
    };
    for (std::size_t i = 0; i < t.ends.size(); ++i) {
        const auto [a, b] = unknowns_of(i);
        if (t.open[i] != 0 && a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), 0.0);
    }
    lower_.resize(t.unknowns, t.unknowns);
    lower_.setFromTriplets(entries.begin(), entries.end());
    places_.assign(t.ends.size(), {});
    for (std::size_t i = 0; i < t.ends.size(); ++i) {
        if (t.open[i] == 0) continue;
        const auto [a, b] = unknowns_of(i);
        if (a >= 0) places_[i].from = place_of(lower_, a, a);
        if (b >= 0) places_[i].to = place_of(lower_, b, b);
        if (a >= 0 && b >= 0) places_[i].across = place_of(lower_, std::max(a, b), std::min(a, b));
    }
    if (t.unknowns > 0) factors_.analyzePattern(lower_);
}

bool NodeMatrix::factorise(const std::vector<double>& conductance) {
    if (lower_.rows() == 0) return true;
    double* values = lower_.valuePtr();
    std::fill_n(values, lower_.nonZeros(), 0.0);
    for (std::size_t i = 0; i < places_.size(); ++i) {
        const Places& p = places_[i];
        if (p.from >= 0) values[p.from] += conductance[i];
        if (p.to >= 0) values[p.to] += conductance[i];
        if (p.across >= 0) values[p.across] -= conductance[i];
    }
    factors_.factorize(lower_);
    return factors_.info() == Eigen::Success;
}

void NodeMatrix::solve(Eigen::VectorXd& right) const {
    if (lower_.rows() == 0) return;
    right = factors_.solve(right).eval();
}

}  // namespace loopfolio::network
