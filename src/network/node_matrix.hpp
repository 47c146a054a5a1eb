// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "network/topology.hpp"

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include <vector>

namespace loopfolio::network {

/// The matrix of conductances between nodes, without the nodes of zero pressure: symmetric and positive definite. Its
/// pattern and order of elimination are found once for each topology.
class NodeMatrix {
public:
    void set_pattern(const Topology& topology);

    /// Fills in one conductance for each link and factorises. False where a pivot fails.
    [[nodiscard]] bool factorise(const std::vector<double>& conductance);

    /// Replaces `right` by the solution.
    void solve(Eigen::VectorXd& right) const;

private:
    /// Where the conductance of a link is added in the matrix; -1 for nowhere.
    struct Places {
        int from = -1;
        int to = -1;
        int across = -1;
    };
    std::vector<Places> places_;
    Eigen::SparseMatrix<double> lower_;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> factors_;
};

}  // namespace loopfolio::network
