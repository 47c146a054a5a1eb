// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/thermal.hpp"

#include "network/houses.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <string>

using namespace loopfolio;
using namespace loopfolio::tests;
using network::RoomControl;
using network::System;

namespace {

/// Source link 0 from node 1 to 0, then the links that are added. Flows are given, so resistances do not matter.
System bare_system(int nodes) {
    System s;
    s.pipework.nodes = nodes;
    s.pipework.links.push_back(pump_link(1, 0, 0));
    s.sources.push_back({});
    return s;
}

std::vector<MassFlow> flows(std::initializer_list<double> values) {
    std::vector<MassFlow> out;
    for (const double v : values) out.push_back(MassFlow::from_si(v));
    return out;
}

network::ThermalResult run(const System& s, const std::vector<MassFlow>& flow) {
    network::Workspace w;
    return solve_thermal(s, flow, SpecificHeat::from_si(4180.0), w);
}

void check_closed(const System& system, const network::SystemResult& r) {
    REQUIRE(r.solved);
    CHECK(std::abs(r.thermal.energy.relative_error) < 1e-6);
    CHECK(worst_mixing(system, r.hydraulic.flow, r.thermal) < 1e-6);
}

}  // namespace

TEST_CASE("a pipe loses heat by the exponential law") {
    auto s = bare_system(2);
    s.pipework.links.push_back(pipe(0, 1, 20.2, 50.0));
    s.pipe_loss.assign(2, {});
    s.pipe_loss[1] = {Conductivity::from_si(0.3), Temperature::from_celsius(10.0)};
    const auto r = run(s, flows({0.02, 0.02}));
    REQUIRE(r.solved);
    const double expected = 10.0 + 40.0 * std::exp(-0.3 * 50.0 / (0.02 * 4180.0));
    verify({"temperature at the end of a bare pipe", "exp(-k l/(m cp)), by hand", Certainty::computed, "°C"}, expected,
           r.outlet[1].celsius(), 1e-12 * expected);
    CHECK(r.energy.pipes.si() == Approx(r.energy.sources.si()).epsilon(1e-9));
}

TEST_CASE("streams mix by conservation at a tee") {
    // A bypass of 0.03 kg/s, parallel to an emitter of 0.01 kg/s.
    auto s = bare_system(2);
    s.pipework.links.push_back(valve(0, 1, 1.0));
    s.pipework.links.push_back(valve(0, 1, 1.0));
    s.rooms.push_back(room(RoomControl::fixed, 0.0));
    s.emitters.push_back({1, {1000.0 * unit::watt, 1.3}, 0});
    const auto r = run(s, flows({0.04, 0.01, 0.03}));
    REQUIRE(r.solved);
    const double back = r.emitters[0].outlet.celsius();
    CHECK(back < 50.0);
    CHECK(r.node[1].celsius() == Approx((0.01 * back + 0.03 * 50.0) / 0.04).epsilon(1e-12));
    CHECK(std::abs(r.energy.relative_error) < 1e-9);
}

TEST_CASE("an emitter at its rating temperatures gives its rating") {
    // The flow that gives 1000 W at a temperature drop of 10 K is 1000 / (4180 * 10).
    auto s = bare_system(2);
    s.sources[0].flow_temperature = Temperature::from_celsius(75.0);
    s.pipework.links.push_back(valve(0, 1, 1.0));
    s.rooms.push_back(room(RoomControl::fixed, 0.0));
    s.emitters.push_back({1, {1000.0 * unit::watt, 1.3}, 0});
    const double m = 1000.0 / 41800.0;
    const auto r = run(s, flows({m, m}));
    REQUIRE(r.solved);
    const std::string source = "BS EN 442-2, 75/65/20, as a trade page quotes it";
    verify({"output of an emitter in a network at its rating", source, Certainty::read, "W"}, 1000.0,
           r.emitters[0].output.si(), 1e-6);
    verify({"return of an emitter in a network at its rating", source, Certainty::read, "°C"}, 65.0,
           r.emitters[0].outlet.celsius(), 6.5e-8);
}

TEST_CASE("a source at its capacity adds it, and the house settles where it can") {
    auto plan = two_pipe_house(5, RoomControl::free);
    for (auto& section : plan.sections) section.heat_loss = {};
    plan.sources[0].capacity = 2000.0 * unit::watt;
    const auto built = build_network(plan);
    const auto r = solve_system(built.system);
    check_closed(built.system, r);
    const auto& source = r.thermal.sources[0];
    CHECK(source.at_capacity);
    CHECK(source.outlet.celsius() < 50.0);
    CHECK(source.power.si() == Approx(2000.0).epsilon(1e-9));
    double lost = 0.0;  // what goes in must leave by the fabric
    for (std::size_t i = 0; i < plan.rooms.size(); ++i) {
        lost += plan.rooms[i].loss.si() * (r.thermal.rooms[i].temperature.celsius() + 3.0);
    }
    CHECK(lost == Approx(2000.0).epsilon(1e-8));
}

TEST_CASE("a capacity that just suffices changes nothing") {
    // The sweep and the equations solved together must agree where both apply.
    for (const auto control : {RoomControl::fixed, RoomControl::free, RoomControl::held}) {
        auto plan = one_pipe_house(6, control);
        const auto open = solve_system(build_network(plan).system);
        REQUIRE(open.solved);
        plan.sources[0].capacity = (1.0 - 1e-9) * open.thermal.sources[0].power;
        const auto limited = solve_system(build_network(plan).system);
        REQUIRE(limited.solved);
        CHECK(limited.thermal.sources[0].at_capacity);
        for (std::size_t i = 0; i < plan.rooms.size(); ++i) {
            CHECK(limited.thermal.rooms[i].temperature.kelvin() ==
                  Approx(open.thermal.rooms[i].temperature.kelvin()).epsilon(1e-9));
            CHECK(limited.thermal.emitters[i].output.si() ==
                  Approx(open.thermal.emitters[i].output.si()).epsilon(1e-6));
        }
    }
}

TEST_CASE("energy closes in every kind of house and control") {
    for (const auto control : {RoomControl::fixed, RoomControl::held, RoomControl::free}) {
        for (const auto& plan : {two_pipe_house(8, control), one_pipe_house(6, control)}) {
            const auto built = build_network(plan);
            const auto r = solve_system(built.system);
            CAPTURE(r.rounds);
            check_closed(built.system, r);
            CHECK(r.rounds < 10);
        }
    }
}

TEST_CASE("held rooms take their need and send the rest back; short ones fall") {
    auto plan = two_pipe_house(6, RoomControl::held);
    plan.rooms[2].loss = HeatLossCoefficient::from_si(90.0);  // more than its radiator can do
    const auto built = build_network(plan);
    const auto held = solve_system(built.system);
    REQUIRE(held.solved);
    for (std::size_t i = 0; i < plan.rooms.size(); ++i) {
        const auto& room = held.thermal.rooms[i];
        CAPTURE(i);
        CHECK(room.missed == (i == 2));
        if (i == 2) {
            CHECK(room.temperature.celsius() < 19.9);
            CHECK(room.output.si() == Approx(90.0 * (room.temperature.celsius() + 3.0)).epsilon(1e-9));
        } else {
            CHECK(room.temperature.celsius() == Approx(20.0));
            CHECK(room.output.si() == Approx(room.need.si()).epsilon(1e-9));
            CHECK(room.surplus.si() > 0.0);
        }
    }
    for (auto& r : plan.rooms) r.control = RoomControl::fixed;
    const auto full = solve_system(build_network(plan).system);
    REQUIRE(full.solved);
    CHECK(held.thermal.sources[0].inlet > full.thermal.sources[0].inlet);
}

TEST_CASE("a circulating ring behind a mixing pump is solved with everything else") {
    // Source side: 0 -> header 2 -> 1. A second pump drives a floor loop from the header, with a bypass
    // from its return to its flow: 2 -> 3, pump 3 -> 4, floor 4 -> 5, back 5 -> 2' (1), bypass 5 -> 3.
    auto s = bare_system(6);
    auto& links = s.pipework.links;
    links.push_back(pipe(0, 2, 26.2, 2.0));
    links.push_back(valve(2, 1, 6.0));
    links.push_back(valve(2, 3, 1.0));
    links.push_back(pump_link(3, 4, 1, 1e4));
    links.push_back(valve(4, 5, 2.0));
    links.push_back(valve(5, 1, 1.0));
    links.push_back(valve(5, 3, 1.5));
    s.pipework.pumps = {level_pump(1e4), level_pump(2e4)};
    s.rooms.push_back(room(RoomControl::free, 60.0));
    s.emitters.push_back({5, {6000.0 * unit::watt, 1.1}, 0});
    const auto r = solve_system(s);
    check_closed(s, r);
    CHECK(flow_of(r.hydraulic, 7) > 0.0);          // the bypass runs as meant
    CHECK(r.thermal.node[4] < r.thermal.node[2]);  // and mixes the flow down
    CHECK(r.thermal.node[4] > r.thermal.node[5]);
}

TEST_CASE("a one-pipe loop agrees with all its equations solved at once elsewhere") {
    const Csv csv = read_csv("network/heat.csv");
    REQUIRE(csv.rows.size() == 5);
    Verification v{{"temperatures along a one-pipe loop and of its rooms", "scipy fsolve on all equations",
                    Certainty::computed, "°C"}};
    for (std::size_t row = 0; row < csv.rows.size(); ++row) {
        const auto at = [&](const std::string& name) { return csv.number(row, name); };
        // Nodes: source outlet 0, return 1; emitter i between tees 2 + 2i and 3 + 2i.
        auto s = bare_system(8);
        s.sources[0].flow_temperature = Temperature::from_celsius(at("flow_temperature_c"));
        s.sources[0].capacity = at("capacity_w") * unit::watt;
        const double ratings[] = {1500.0, 1200.0, 1800.0};
        const double losses[] = {22.0, 18.0, 30.0};
        std::vector<MassFlow> flow = flows({at("flow_kg_per_s")});
        const auto add = [&](const network::Link& link, double kg_per_s) {
            s.pipework.links.push_back(link);
            flow.push_back(MassFlow::from_si(kg_per_s));
        };
        int here = 0;
        for (int i = 0; i < 3; ++i) {
            add(pipe(here, 2 + 2 * i, 20.2, 8.0), at("flow_kg_per_s"));
            add(valve(2 + 2 * i, 3 + 2 * i, 1.0), at("flow_kg_per_s") - at("taken_kg_per_s"));
            add(valve(2 + 2 * i, 3 + 2 * i, 1.0), at("taken_kg_per_s"));
            s.emitters.push_back({3 + 3 * i, {ratings[i] * unit::watt, 1.3}, i});
            s.rooms.push_back(room(RoomControl::free, losses[i]));
            here = 3 + 2 * i;
        }
        add(pipe(here, 1, 20.2, 12.0), at("flow_kg_per_s"));
        s.pipe_loss.assign(s.pipework.links.size(), {});
        for (const std::size_t i : {1u, 4u, 7u, 10u}) {
            s.pipe_loss[i] = {Conductivity::from_si(0.4), Temperature::from_celsius(18.0)};
        }
        const auto r = run(s, flow);
        CAPTURE(row);
        REQUIRE(r.solved);
        const auto check = [&](const std::string& name, Temperature found) {
            v.check(at(name), found.celsius(), 1e-8 * at(name));
        };
        check("source_outlet_c", r.sources[0].outlet);
        for (std::size_t i = 0; i < 3; ++i) {
            const std::string which = std::to_string(i + 1) + "_c";
            check("return_" + which, r.emitters[i].outlet);
            check("room_" + which, r.rooms[i].temperature);
        }
    }
}

TEST_CASE("a source too small for rooms that are held lets them fall together") {
    // During the solution, emitters change from throttled to open to cold and back, so slopes jump.
    for (const double watts : {200.0, 700.0, 1500.0, 2500.0}) {
        for (auto plan : {two_pipe_house(6, RoomControl::held), one_pipe_house(4, RoomControl::held)}) {
            for (auto& section : plan.sections) section.heat_loss = {};
            for (auto& r : plan.rooms) r.loss = HeatLossCoefficient::from_si(25.0);
            plan.sources[0].flow_temperature = Temperature::from_celsius(65.0);
            plan.sources[0].capacity = watts * unit::watt;
            plan.outdoor = Temperature::from_celsius(5.0);
            const auto built = build_network(plan);
            const auto r = solve_system(built.system);
            CAPTURE(watts);
            check_closed(built.system, r);
            double need = 0.0;
            for (const auto& one : r.thermal.rooms) need += one.need.si();
            CHECK(r.thermal.energy.emitters.si() == Approx(std::min(need, watts)).epsilon(1e-7));
        }
    }
}

TEST_CASE("a trickle in a room as cold as outdoors is solved, and said to freeze") {
    auto plan = two_pipe_house(3, network::RoomControl::held);
    plan.emitters.back().valve_resistance = network::valve_resistance(1e-4);  // all but shut
    plan.rooms.back().loss = HeatLossCoefficient::from_si(2000.0);
    for (auto& s : plan.sections) s.heat_loss = {};
    const auto built = build_network(plan);
    const auto r = solve_system(built.system);
    REQUIRE(r.solved);
    const bool said = std::ranges::any_of(r.findings, [](const network::Finding& f) {
        return f.kind == network::FindingKind::would_freeze && f.severity == Severity::warning;
    });
    CHECK(said);
    CHECK(std::abs(r.thermal.energy.relative_error) < 1e-6);
}
