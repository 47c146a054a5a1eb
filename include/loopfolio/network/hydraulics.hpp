// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#pragma once

#include "loopfolio/network/finding.hpp"
#include "loopfolio/network/pipework.hpp"
#include "loopfolio/physics/fluid.hpp"

#include <memory>
#include <span>
#include <vector>

namespace loopfolio::network {

/// Results of one solution that help the next: storage, the order of elimination, and the last flows as a start.
/// Solving the same network again with other resistances, pumps or fluids is then cheap; for another network everything
/// is set up again. Results depend on it only within the tolerances. Not for use by several threads at once.
class Workspace {
public:
    Workspace();
    ~Workspace();
    Workspace(Workspace&&) noexcept;
    Workspace& operator=(Workspace&&) noexcept;

    /// The next solution starts from these flows, one for each link; they need not balance.
    void start_from(std::span<const MassFlow> flows);
    /// The next solution starts from zero flow.
    void forget();

    struct Parts;
    [[nodiscard]] Parts& parts() { return *parts_; }

private:
    std::unique_ptr<Parts> parts_;
};

/// Tolerances that every solution meets.
inline constexpr double continuity_tolerance = 1e-10;  ///< relative to the largest flow in a link
inline constexpr double pressure_tolerance = 1e-9;     ///< relative to the largest pressure, and at least 1e-7 Pa
inline constexpr double flow_tolerance = 1e-9;         ///< of the last step, relative to the largest flow in a link

struct HydraulicResult {
    bool solved = false;
    std::vector<MassFlow> flow;      ///< by link, signed; zero in a closed one
    std::vector<Pressure> pressure;  ///< by node; zero at each part's reference node
    std::vector<Pressure> rise;      ///< by pump: pressure that it adds
    std::vector<double> reynolds;    ///< by link; 0 for a link without a pipe
    MassFlow continuity_residual;    ///< largest at a node
    Pressure pressure_residual;      ///< largest along a link
    int iterations = 0;
    Findings findings;  ///< whether solved or not
};

/// Steady flow in every link. Newton's method on flows and pressures together (global gradient method), with the exact
/// slope of the friction law and a line search on the network's content function. It converges from any start wherever
/// pressure rises with flow. Water is assumed incompressible, and heights have no effect: the circuit is closed and
/// gravity circulation is left out. `fluid` holds one state for all links, or one for each. A description that is
/// rejected, or a network that does not converge, is returned with `solved` false and findings that say where and why.
[[nodiscard]] HydraulicResult solve_hydraulics(const Pipework& pipework, std::span<const physics::FluidState> fluid,
                                               Workspace& workspace);
[[nodiscard]] HydraulicResult solve_hydraulics(const Pipework& pipework, const physics::FluidState& fluid);

}  // namespace loopfolio::network
