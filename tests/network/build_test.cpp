// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/build.hpp"

#include "network/houses.hpp"
#include "support/catch.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("a section of both pipes becomes a flow and a return link, alike") {
    const auto built = build_network(two_pipe_house(4, network::RoomControl::fixed));
    REQUIRE(built.findings.empty());
    const auto& p = built.system.pipework;
    CHECK(p.nodes == 10);
    CHECK(p.links.size() == 2 * 4 + 4 + 1);
    CHECK(built.system.emitters.size() == 4);
    const auto r = solve_system(built.system);
    REQUIRE(r.solved);
    for (const auto& s : built.sections) {
        // Both run the way of the water, and carry the same.
        CHECK(flow_of(r.hydraulic, static_cast<std::size_t>(s.flow)) > 0.0);
        CHECK(flow_of(r.hydraulic, static_cast<std::size_t>(s.flow)) ==
              Approx(flow_of(r.hydraulic, static_cast<std::size_t>(s.return_))).epsilon(1e-9));
    }
}

TEST_CASE("a loop junction is one node, and a loop ends where it began on the return side") {
    const auto built = build_network(one_pipe_house(3, network::RoomControl::fixed));
    REQUIRE(built.findings.empty());
    CHECK(built.system.pipework.nodes == 8);
    CHECK(built.junctions[0].flow != built.junctions[0].return_);
    for (std::size_t j = 1; j < built.junctions.size(); ++j) {
        CHECK(built.junctions[j].flow == built.junctions[j].return_);
    }
    const auto r = solve_system(built.system);
    REQUIRE(r.solved);
    // Every radiator along the loop is fed colder than the one before.
    for (std::size_t e = 1; e < 3; ++e) CHECK(r.thermal.emitters[e].inlet < r.thermal.emitters[e - 1].inlet);
    // And takes part of the loop's flow only.
    CHECK(r.thermal.emitters[0].flow < 0.9 * r.thermal.sources[0].flow);
}

TEST_CASE("a loop hangs off a two-pipe main at a junction of its own") {
    network::Plan plan;
    plan.junctions = 4;
    plan.sections = {section(0, 1, 26.2, 5.0), section(1, 2, 20.2, 4.0, network::Carries::loop),
                     section(2, 3, 13.6, 1.0, network::Carries::loop),
                     section(3, 1, 20.2, 4.0, network::Carries::loop)};
    plan.emitters = {radiator(2, 3, 1000.0, 0), radiator(1, 1, 1000.0, 0)};
    plan.rooms = {room(network::RoomControl::fixed, 40.0)};
    plan.sources.push_back({});
    plan.sources[0].pump = curve_pump(3e4, 1e10);
    plan.sources[0].square_resistance = 1e5;
    const auto built = build_network(plan);
    const auto r = solve_system(built.system);
    REQUIRE(r.solved);
    for (const auto& e : r.thermal.emitters) CHECK(e.output.si() > 100.0);
}

TEST_CASE("a plan that names what is not there is refused by section") {
    auto plan = two_pipe_house(3, network::RoomControl::fixed);
    plan.sections[1].to = 9;
    plan.emitters[2].flow_junction = -4;
    const auto built = build_network(plan);
    REQUIRE(built.findings.size() == 2);
    CHECK(built.findings[0].field == "to");
    CHECK(built.findings[0].index == 1);
    CHECK(built.findings[1].field == "flow_junction");
    CHECK(built.findings[1].index == 2);
    CHECK(built.system.pipework.links.empty());
}
