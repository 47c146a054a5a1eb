// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/hydraulics.hpp"

#include "network/parts.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;
using network::Pipework;

namespace {

/// A ladder with a ring in its flow side and a cross pipe, so that a shortcut for trees would be noticed.
Pipework ringed_ladder() {
    auto p = ladder(6, curve_pump(4e4, 1e10));
    p.links.push_back(pipe(2, 6, 13.6, 10.0));
    p.links.push_back(pipe(1, 5, 20.2, 9.0));
    return p;
}

void check_same(const network::HydraulicResult& a, const network::HydraulicResult& b, double tolerance = 1e-8) {
    REQUIRE(a.solved);
    REQUIRE(b.solved);
    REQUIRE(a.flow.size() == b.flow.size());
    const double most = std::abs(flow_of(a, 0));
    for (std::size_t i = 0; i < a.flow.size(); ++i) {
        CAPTURE(i);
        CHECK(flow_of(a, i) == Approx(flow_of(b, i)).epsilon(0).margin(tolerance * most));
    }
}

}  // namespace

TEST_CASE("where the solution starts makes no difference") {
    const auto p = ringed_ladder();
    const auto cold = solve(p);
    for (const double start : {1e-6, 0.3, -0.3, 50.0, -1000.0}) {
        network::Workspace w;
        std::vector<MassFlow> flows(p.links.size());
        for (std::size_t i = 0; i < flows.size(); ++i) flows[i] = MassFlow::from_si(i % 3 == 0 ? -start : start);
        const auto water = plain_water();
        (void)solve_hydraulics(p, std::span{&water, 1}, w);
        w.start_from(flows);
        const auto r = solve_hydraulics(p, std::span{&water, 1}, w);
        CAPTURE(start, r.iterations);
        check_same(cold, r);
    }
}

TEST_CASE("the order of the links makes no difference") {
    const auto p = ringed_ladder();
    auto turned = p;
    std::ranges::reverse(turned.links);
    auto r = solve(turned);
    std::ranges::reverse(r.flow);
    check_same(solve(p), r);
}

TEST_CASE("the direction that a link is described in only turns its sign") {
    const auto p = ringed_ladder();
    auto turned = p;
    for (auto& link : turned.links) {
        if (link.pump < 0) std::swap(link.from, link.to);
    }
    auto r = solve(turned);
    for (std::size_t i = 0; i < p.links.size(); ++i) {
        if (p.links[i].pump < 0) r.flow[i] = -r.flow[i];
    }
    check_same(solve(p), r);
}

TEST_CASE("quadratic networks scale: four times the pressure, twice the flow") {
    auto p = ladder(4, level_pump(1e4));
    for (auto& link : p.links) {
        if (link.pump < 0) link = valve(link.from, link.to, 1.0 + 0.1 * link.to);
    }
    auto quadrupled = p;
    quadrupled.pumps[0].set_rise = Pressure::from_si(4e4);
    auto r = solve(quadrupled);
    for (auto& m : r.flow) m = 0.5 * m;
    check_same(solve(p), r, 1e-6);  // still_flow bends the square by less than this
}

TEST_CASE("equal branches get equal flows") {
    // A manifold: five equal links between two nodes, a pipe away from the pump.
    Pipework p;
    p.nodes = 4;
    p.pumps = {curve_pump(3e4, 1e10)};
    p.links = {pump_link(3, 0, 0, 1e4), pipe(0, 1, 26.2, 5.0), pipe(2, 3, 26.2, 5.0)};
    for (int i = 0; i < 5; ++i) p.links.push_back(pipe(1, 2, 12.0, 60.0));
    const auto r = solve(p);
    REQUIRE(r.solved);
    for (std::size_t i = 3; i < 8; ++i) CHECK(flow_of(r, i) == Approx(flow_of(r, 0) / 5.0).epsilon(1e-9));
}

TEST_CASE("in a tree with one pump a larger bore never lowers the flow to its own emitter") {
    const auto p = ladder(8, curve_pump(3e4, 2e10));
    const auto before = solve(p);
    REQUIRE(before.solved);
    for (std::size_t rung = 0; rung < 8; ++rung) {
        for (const double share : {1.05, 1.3, 2.0}) {
            auto wider = p;
            for (const std::size_t pipe_link : {1 + 3 * rung, 2 + 3 * rung}) {
                auto& bore = wider.links[pipe_link].conduit.bore;
                bore = share * bore;
            }
            const auto after = solve(wider);
            REQUIRE(after.solved);
            CAPTURE(rung, share);
            CHECK(flow_of(after, 3 + 3 * rung) >= flow_of(before, 3 + 3 * rung) * (1.0 - 1e-9));
        }
    }
}

TEST_CASE("a workspace serves one network after another, and a warm one is quicker") {
    network::Workspace w;
    const auto water = plain_water();
    const std::span state{&water, 1};
    const auto ringed = ringed_ladder();
    const auto first = solve_hydraulics(ringed, state, w);
    check_same(solve(ladder(3, curve_pump(3e4, 1e10))), solve_hydraulics(ladder(3, curve_pump(3e4, 1e10)), state, w));
    check_same(first, solve_hydraulics(ringed, state, w));
    const auto again = solve_hydraulics(ringed, state, w);
    check_same(first, again);
    CHECK(again.iterations <= 2);
}
