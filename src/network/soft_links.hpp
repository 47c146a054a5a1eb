// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include <Eigen/Core>

#include <vector>

namespace loopfolio::network {

struct FlowState;

/// Pump links whose pressure drop rises too little with the flow to be used in the matrix, because a controlled pump
/// holds its pressure or raises it. The matrix gets a slope that is steep enough, and the step is then corrected for
/// the difference by the Sherman, Morrison and Woodbury formula, so that it remains Newton's step.
class SoftLinks {
public:
    /// Sets the state's slopes and conductances.
    void choose(FlowState& state);

    /// Corrects step and pressure change of a solution with those slopes.
    void correct(FlowState& state);

private:
    std::vector<int> links_;
    std::vector<double> excess_;  // slope used, less the true slope
    std::vector<Eigen::VectorXd> pressure_;
    Eigen::MatrixXd response_;
};

}  // namespace loopfolio::network
