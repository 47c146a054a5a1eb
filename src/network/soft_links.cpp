// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/soft_links.hpp"

#include "network/at.hpp"
#include "network/newton.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

/// Smallest slope that a link may have in the matrix, as a share of its own scale, pressure over flow.
constexpr double soft_below = 1e-3;

double scale_of(const FlowState& s, std::size_t link) {
    const double rise = rise_at(s.pumps[at(s.pump_of[link])], 0.0).value;
    return std::max(rise, 1.0) / std::max(std::abs(s.flow[link]), 1e-3);
}

/// Pressure difference from the start of link `link` to its end, from the pressures of the unknown nodes.
double across(const FlowState& s, const Eigen::VectorXd& pressure, int link) {
    const auto& t = s.topology;
    const auto of = [&](int node) {
        const int u = t.unknown[at(node)];
        return u < 0 ? 0.0 : pressure[u];
    };
    return of(t.ends[at(link)].first) - of(t.ends[at(link)].second);
}

}  // namespace

void SoftLinks::choose(FlowState& s) {
    links_.clear();
    excess_.clear();
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (s.topology.open[i] == 0) continue;
        s.slope[i] = s.drop[i].slope;
        s.conductance[i] = 1.0 / s.slope[i];
    }
    for (const int link : s.pump_links) {
        const auto i = at(link);
        const double scale = scale_of(s, i);
        if (s.slope[i] >= soft_below * scale) continue;
        links_.push_back(link);
        excess_.push_back(scale - s.slope[i]);
        s.slope[i] = scale;
        s.conductance[i] = 1.0 / scale;
    }
}

void SoftLinks::correct(FlowState& s) {
    if (links_.empty()) return;
    const auto k = static_cast<Eigen::Index>(links_.size());
    const auto& t = s.topology;
    pressure_.resize(links_.size());
    response_.resize(k, k);
    for (Eigen::Index j = 0; j < k; ++j) {
        // A unit pressure added in the link equals a flow of its conductance, drawn at one end and fed in at the other.
        const int link = links_[at(j)];
        auto& p = pressure_[at(j)];
        p = Eigen::VectorXd::Zero(s.right.size());
        const int a = t.unknown[at(t.ends[at(link)].first)];
        const int b = t.unknown[at(t.ends[at(link)].second)];
        if (a >= 0) p[a] = -s.conductance[at(link)];
        if (b >= 0) p[b] = s.conductance[at(link)];
        s.matrix.solve(p);
        for (Eigen::Index i = 0; i < k; ++i) {
            const int other = links_[at(i)];
            response_(i, j) = (across(s, p, other) + (i == j ? 1.0 : 0.0)) * s.conductance[at(other)];
        }
    }
    // step = step0 + sum over j of w_j d_j step_j. Scaled by root d, the matrix is symmetric, and it is positive
    // definite wherever the network as a whole is steeper than its pumps; elsewhere the uncorrected step is kept.
    Eigen::VectorXd root(k);
    Eigen::VectorXd first(k);
    for (Eigen::Index i = 0; i < k; ++i) {
        root[i] = std::sqrt(excess_[at(i)]);
        first[i] = root[i] * s.step[at(links_[at(i)])];
    }
    const Eigen::MatrixXd system = Eigen::MatrixXd::Identity(k, k) - root.asDiagonal() * response_ * root.asDiagonal();
    const Eigen::LLT<Eigen::MatrixXd> factors{system};
    if (factors.info() != Eigen::Success) return;
    const Eigen::VectorXd pushed = root.asDiagonal() * factors.solve(first);  // pressure added in each link
    for (Eigen::Index j = 0; j < k; ++j) s.right += pushed[j] * pressure_[at(j)];
    for (std::size_t i = 0; i < s.step.size(); ++i) {
        if (t.open[i] == 0) continue;
        for (Eigen::Index j = 0; j < k; ++j) {
            s.step[i] += across(s, pressure_[at(j)], static_cast<int>(i)) * s.conductance[i] * pushed[j];
        }
    }
    for (Eigen::Index j = 0; j < k; ++j) s.step[at(links_[at(j)])] += s.conductance[at(links_[at(j)])] * pushed[j];
}

}  // namespace loopfolio::network
