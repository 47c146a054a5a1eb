// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "network/link_law.hpp"
#include "network/node_matrix.hpp"
#include "network/pump_law.hpp"
#include "network/topology.hpp"

#include <Eigen/Core>

#include <vector>

namespace loopfolio::network {

/// Storage and state of the flow solution, by link or by node, in SI units.
struct FlowState {
    Topology topology;
    NodeMatrix matrix;
    bool ready = false;  // topology and matrix are set
    bool warm = false;   // `flow` holds a starting point
    std::vector<LinkLaw> laws;
    std::vector<PumpLaw> pumps;
    std::vector<int> pump_of;     // by link; -1 for none
    std::vector<int> pump_links;  // open links with a pump
    std::vector<double> drawn;
    std::vector<double> flow;
    std::vector<double> pressure;
    // Used within one iteration.
    std::vector<Tangent> drop;  // without the pump's pressure
    std::vector<double> miss;   // pressure drop less the difference of pressures
    std::vector<double> slope;  // slope used in the matrix
    std::vector<double> conductance;
    std::vector<double> step;  // change of the flows
    std::vector<double> trial;
    std::vector<double> base;  // flows at the start of a step
    std::vector<double> start;
    Eigen::VectorXd right;
};

struct NewtonOutcome {
    bool converged = false;
    int iterations = 0;
    int worst_link = -1;
    double pressure_residual = 0.0;
    double continuity_residual = 0.0;
};

/// Finds flows and pressures from any starting point in the state.
[[nodiscard]] NewtonOutcome find_flows(FlowState& state);

}  // namespace loopfolio::network
