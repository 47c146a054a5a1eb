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
        // Both follow the direction of the water, and have the same flow.
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
    // Along the loop, every radiator gets colder water than the one before.
    for (std::size_t e = 1; e < 3; ++e) CHECK(r.thermal.emitters[e].inlet < r.thermal.emitters[e - 1].inlet);
    // Each takes only part of the loop's flow.
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

namespace {

network::Pump constant(double pascals) {
    network::Pump pump;
    pump.mode = network::PumpMode::constant_pressure;
    pump.set_rise = Pressure::from_si(pascals);
    return pump;
}

network::Plan with_header(double source_head, double emitter_head) {
    auto plan = two_pipe_house(4, network::RoomControl::fixed);
    plan.sources.front().pump = constant(emitter_head);
    plan.sources.front().square_resistance = 2e5;
    plan.header = network::PlanHeader{constant(source_head), 200.0};
    return plan;
}

}  // namespace

TEST_CASE("a header mixes by conservation of water and heat, whichever side pumps more") {
    for (const double head : {2'000.0, 20'000.0, 90'000.0}) {
        const auto built = build_network(with_header(head, 12'000.0));
        REQUIRE(built.findings.empty());
        const auto r = solve_system(built.system);
        REQUIRE(r.solved);
        const auto flow = [&](int link) { return flow_of(r.hydraulic, static_cast<std::size_t>(link)); };
        CAPTURE(head, flow(built.source_pump), flow(built.drive));
        // The flow of the source's pump goes to the emitters or through the header.
        CHECK(flow(built.source_pump) == Approx(flow(built.drive) + flow(built.header)).epsilon(1e-9));
        const auto& link = built.system.pipework.links[static_cast<std::size_t>(built.drive)];
        const double top = r.thermal.node[static_cast<std::size_t>(link.from)].kelvin();
        const double made = r.thermal.sources.front().outlet.kelvin();
        if (flow(built.header) >= 0.0) {
            CHECK(top == Approx(made).epsilon(1e-12));
        } else {
            const double back = r.thermal.inlet[static_cast<std::size_t>(built.header)].kelvin();
            CHECK(top * flow(built.drive) ==
                  Approx(made * flow(built.source_pump) - back * flow(built.header)).epsilon(1e-9));
            CHECK(top < made);
        }
        CHECK(std::abs(r.thermal.energy.relative_error) < 1e-6);
    }
}

TEST_CASE("a mixing set sends out more than it draws, and mixes by conservation") {
    auto plan = two_pipe_house(4, network::RoomControl::fixed);
    plan.junctions += 1;
    const int beyond = plan.junctions - 1;
    plan.mixers.push_back({1, beyond, constant(8'000.0), network::valve_resistance(0.15), 2500.0});
    plan.emitters.push_back(radiator(beyond, beyond, 1500.0, 0));
    const auto built = build_network(plan);
    REQUIRE(built.findings.empty());
    const auto r = solve_system(built.system);
    REQUIRE(r.solved);
    const auto& m = built.mixers.front();
    const auto flow = [&](int link) { return flow_of(r.hydraulic, static_cast<std::size_t>(link)); };
    const auto in = [&](int link) { return r.thermal.inlet[static_cast<std::size_t>(link)].kelvin(); };
    CHECK(flow(m.pump) == Approx(flow(m.valve) + flow(m.bypass)).epsilon(1e-9));
    CHECK(flow(m.back) == Approx(flow(m.valve)).epsilon(1e-9));
    CHECK(flow(m.bypass) > 0.0);
    CHECK(in(m.pump) * flow(m.pump) ==
          Approx(in(m.valve) * flow(m.valve) + in(m.bypass) * flow(m.bypass)).epsilon(1e-9));
    CHECK(in(m.pump) < in(m.valve));
    CHECK(std::abs(r.thermal.energy.relative_error) < 1e-6);
}

TEST_CASE("a pump in a section pushes the way it is told, in flow or return") {
    auto plan = two_pipe_house(3, network::RoomControl::fixed);
    const auto total = [&](std::vector<network::PlanPump> pumps) {
        plan.pumps = std::move(pumps);
        const auto built = build_network(plan);
        REQUIRE(built.findings.empty());
        const auto r = solve_system(built.system);
        REQUIRE(r.solved);
        return flow_of(r.hydraulic, static_cast<std::size_t>(built.drive));
    };
    const double alone = total({});
    const auto pump = constant(2'000.0);
    // Section 0 runs from the source outwards; its return pipe runs back.
    CHECK(total({{pump, 0, false, false}}) > alone);
    CHECK(total({{pump, 0, false, true}}) < alone);
    CHECK(total({{pump, 0, true, true}}) == Approx(total({{pump, 0, false, false}})).epsilon(1e-6));
    CHECK(total({{pump, 0, true, false}}) < alone);
}

TEST_CASE("plans with a header or mixing set that have no resistance are refused") {
    auto plan = with_header(10'000.0, 10'000.0);
    plan.header->square_resistance = 0.0;
    CHECK(has_error(build_network(plan).findings));
    plan = two_pipe_house(3, network::RoomControl::fixed);
    plan.mixers.push_back({1, 99, constant(1000.0), 0.0, 0.0});
    CHECK(build_network(plan).findings.size() == 2);
    plan.mixers.clear();
    plan.pumps.push_back({constant(1000.0), 99, false, false});
    CHECK(has_error(build_network(plan).findings));
}
