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

/// What solving leaves behind for the next time: storage, the order of elimination, and the last flows
/// as a start. Solving the same network again, with other resistances, pumps or fluids, is then cheap; with
/// another network it is simply set up anew. Results do not depend on it beyond the tolerances. One thread
/// at a time.
class Workspace {
public:
    Workspace();
    ~Workspace();
    Workspace(Workspace&&) noexcept;
    Workspace& operator=(Workspace&&) noexcept;

    /// Start the next solution from these flows, one a link; they need not balance.
    void start_from(std::span<const MassFlow> flows);
    /// Start the next solution from rest.
    void forget();

    struct Parts;
    [[nodiscard]] Parts& parts() { return *parts_; }

private:
    std::unique_ptr<Parts> parts_;
};

/// Tolerances that a solution meets.
inline constexpr double continuity_tolerance = 1e-10;   ///< of the largest flow in a link
inline constexpr double pressure_tolerance = 1e-9;      ///< of the largest pressure, and at least 1e-7 Pa
inline constexpr double flow_tolerance = 1e-9;          ///< last step, of the largest flow in a link

struct HydraulicResult {
    bool solved = false;
    std::vector<MassFlow> flow;        ///< by link, signed; zero in a closed one
    std::vector<Pressure> pressure;    ///< by node; zero at each part's reference node
    std::vector<Pressure> rise;        ///< by pump: what it adds
    std::vector<double> reynolds;      ///< by link; 0 without a pipe
    MassFlow continuity_residual;      ///< largest at a node
    Pressure pressure_residual;        ///< largest along a link
    int iterations = 0;
    Findings findings;                 ///< solved or not
};

/// Steady flow in every link. Newton on flows and pressures together (global gradient method), with the
/// exact slope of the friction law and a line search on the network's content, which makes it converge
/// from any start wherever pressure rises with flow. Water is taken as incompressible, and heights as
/// without effect: the circuit is closed and gravity circulation is left out. `fluid` holds one state for
/// all, or one a link. A description that is refused, or a network that does not settle, is returned with
/// `solved` false and findings that say where and why.
[[nodiscard]] HydraulicResult solve_hydraulics(const Pipework& pipework,
                                               std::span<const physics::FluidState> fluid,
                                               Workspace& workspace);
[[nodiscard]] HydraulicResult solve_hydraulics(const Pipework& pipework, const physics::FluidState& fluid);

}  // namespace loopfolio::network
