// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/newton.hpp"

#include "loopfolio/network/hydraulics.hpp"
#include "network/at.hpp"
#include "network/soft_links.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

constexpr int most_iterations = 100;
constexpr int most_trials = 12;
constexpr double small_step = 1e-6;                // of the largest flow
constexpr double least_pressure_tolerance = 1e-7;  // Pa

Tangent drop_of(const FlowState& s, std::size_t link, double flow) {
    Tangent out = drop_at(s.laws[link], flow);
    if (s.pump_of[link] >= 0) {
        const double volume = s.laws[link].volume;
        const Tangent rise = rise_at(s.pumps[at(s.pump_of[link])], flow * volume);
        out.value -= rise.value;
        out.slope -= rise.slope * volume;
    }
    return out;
}

double difference(const FlowState& s, std::size_t link) {
    const auto [from, to] = s.topology.ends[link];
    return s.pressure[at(from)] - s.pressure[at(to)];
}

void evaluate(FlowState& s) {
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (s.topology.open[i] == 0) continue;
        s.drop[i] = drop_of(s, i, s.flow[i]);
        s.miss[i] = s.drop[i].value - difference(s, i);
    }
}

/// At the start from zero flow, every link is linear, through the flow that such a link usually has.
void slopes_from_rest(FlowState& s) {
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (s.topology.open[i] == 0) continue;
        const double usual = std::max(s.laws[i].usual_flow, still_flow.si());
        s.drop[i].slope = drop_at(s.laws[i], usual).value / usual;
    }
}

/// Adds the imbalance of each node to `right`, by unknown: flow in less flow out less flow drawn.
void add_imbalance(FlowState& s, const std::vector<double>& flow) {
    const auto& t = s.topology;
    for (std::size_t i = 0; i < flow.size(); ++i) {
        if (t.open[i] == 0) continue;
        const int a = t.unknown[at(t.ends[i].first)];
        const int b = t.unknown[at(t.ends[i].second)];
        if (a >= 0) s.right[a] -= flow[i];
        if (b >= 0) s.right[b] += flow[i];
    }
    for (std::size_t n = 0; n < s.drawn.size(); ++n) {
        if (t.unknown[n] >= 0) s.right[t.unknown[n]] -= s.drawn[n];
    }
}

double worst_imbalance(FlowState& s) {
    s.right.setZero();
    add_imbalance(s, s.flow);
    return s.right.size() == 0 ? 0.0 : s.right.lpNorm<Eigen::Infinity>();
}

/// Newton's step of the flows and pressures; false where the matrix cannot be factorised.
bool take_step(FlowState& s, SoftLinks& soft) {
    const auto& t = s.topology;
    soft.choose(s);
    if (!s.matrix.factorise(s.conductance)) return false;
    // Continuity of the new flows, with the links' flows eliminated: flow + step, where step = (dp - miss) g.
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (t.open[i] != 0) s.trial[i] = s.flow[i] - s.miss[i] * s.conductance[i];
    }
    s.right.setZero();
    add_imbalance(s, s.trial);
    s.matrix.solve(s.right);
    const auto rise_of = [&](int node) {
        const int u = t.unknown[at(node)];
        return u < 0 ? 0.0 : s.right[u];
    };
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (t.open[i] == 0) continue;
        const double change = rise_of(t.ends[i].first) - rise_of(t.ends[i].second);
        s.step[i] = (change - s.miss[i]) * s.conductance[i];
    }
    soft.correct(s);
    for (std::size_t n = 0; n < t.unknown.size(); ++n) {
        if (t.unknown[n] >= 0) s.pressure[n] += s.right[t.unknown[n]];
    }
    return true;
}

/// Slope along the step, at the present state, of the network's content, which the solution minimises: the sum over the
/// links of the pressure drop integrated over the flow.
double content_slope(const FlowState& s) {
    double sum = 0.0;
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (s.topology.open[i] != 0) sum += (s.drop[i].value - difference(s, i)) * s.step[i];
    }
    return sum;
}

/// Moves the flows from `base` by a share of the step, and returns the slope there.
double slope_at_share(FlowState& s, double share) {
    for (std::size_t i = 0; i < s.flow.size(); ++i) {
        if (s.topology.open[i] != 0) s.flow[i] = s.base[i] + share * s.step[i];
    }
    evaluate(s);
    return content_slope(s);
}

/// Takes the whole step unless the content rises clearly at its end. Otherwise takes the share that brings the content
/// near its minimum: false position with halving of the stale end (Illinois). Returns the share.
double move_along_step(FlowState& s, bool searches) {
    double at_low = content_slope(s);
    s.base = s.flow;
    double at_high = slope_at_share(s, 1.0);
    if (!searches || !(at_low < 0.0) || at_high <= 0.5 * std::abs(at_low)) return 1.0;
    const double enough = 0.1 * std::abs(at_low);
    double low = 0.0;
    double high = 1.0;
    double share = 1.0;
    int side = 0;
    for (int i = 0; i < most_trials; ++i) {
        share = low + (high - low) * at_low / (at_low - at_high);
        const double here = slope_at_share(s, share);
        if (std::abs(here) <= enough) break;
        const int now = here > 0.0 ? 1 : -1;
        (now > 0 ? high : low) = share;
        (now > 0 ? at_high : at_low) = here;
        if (now == side) (now > 0 ? at_low : at_high) *= 0.5;
        side = now;
    }
    return share;
}

double largest(const std::vector<double>& values, const std::vector<char>& open) {
    double most = 0.0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (open[i] != 0) most = std::max(most, std::abs(values[i]));
    }
    return most;
}

bool judge(FlowState& s, NewtonOutcome& out, double last_step) {
    const auto& open = s.topology.open;
    const double flows = std::max(largest(s.flow, open), 1e-9);
    double pressures = 0.0;
    for (const double p : s.pressure) pressures = std::max(pressures, std::abs(p));
    out.continuity_residual = worst_imbalance(s);
    out.pressure_residual = 0.0;
    for (std::size_t i = 0; i < s.miss.size(); ++i) {
        if (open[i] == 0) continue;
        pressures = std::max(pressures, std::abs(s.drop[i].value));
        if (!(std::abs(s.miss[i]) <= out.pressure_residual)) {
            out.pressure_residual = std::abs(s.miss[i]);
            out.worst_link = static_cast<int>(i);
        }
    }
    return out.continuity_residual <= continuity_tolerance * flows &&
           out.pressure_residual <= std::max(pressure_tolerance * pressures, least_pressure_tolerance) &&
           last_step <= flow_tolerance * flows;
}

}  // namespace

NewtonOutcome find_flows(FlowState& s) {
    NewtonOutcome out;
    SoftLinks soft;
    const bool from_rest = !s.warm;
    if (from_rest) std::ranges::fill(s.flow, 0.0);
    std::ranges::fill(s.pressure, 0.0);
    bool balanced = false;  // once the flows meet continuity, the content measures progress
    evaluate(s);
    for (out.iterations = 1; out.iterations <= most_iterations; ++out.iterations) {
        if (from_rest && out.iterations == 1) slopes_from_rest(s);
        if (!take_step(s, soft)) break;
        // A step that hardly changes the flows is taken whole; its content slope would be mere rounding.
        const double last_step = largest(s.step, s.topology.open);
        const bool small = last_step <= small_step * largest(s.flow, s.topology.open);
        const double share = move_along_step(s, balanced && !small);
        balanced = true;
        out.converged = judge(s, out, last_step) && share == 1.0;
        if (out.converged || !std::isfinite(last_step)) break;
    }
    return out;
}

}  // namespace loopfolio::network
