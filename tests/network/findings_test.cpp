// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/thermal.hpp"

#include "network/houses.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <functional>
#include <limits>

using namespace loopfolio;
using namespace loopfolio::tests;
using network::Finding;
using network::FindingKind;
using network::Pipework;

namespace {

const Finding* find(const network::Findings& findings, FindingKind kind) {
    const auto at = std::ranges::find(findings, kind, &Finding::kind);
    return at == findings.end() ? nullptr : &*at;
}

struct Case {
    const char* what;
    FindingKind kind;
    int link;
    std::function<void(Pipework&)> spoil;
};

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

}  // namespace

TEST_CASE("a description that cannot be solved is refused, and where") {
    const std::vector<Case> cases = {
        {"no such node", FindingKind::index_out_of_range, 3, [](Pipework& p) { p.links[3].to = 99; }},
        {"negative node", FindingKind::index_out_of_range, 3, [](Pipework& p) { p.links[3].from = -1; }},
        {"no such pump", FindingKind::index_out_of_range, 1, [](Pipework& p) { p.links[1].pump = 7; }},
        {"no such reference", FindingKind::index_out_of_range, -1, [](Pipework& p) { p.reference_node = 50; }},
        {"no nodes", FindingKind::bad_value, -1, [](Pipework& p) { p.nodes = 0; }},
        {"short list of drawn flows", FindingKind::index_out_of_range, -1, [](Pipework& p) { p.drawn.resize(2); }},
        {"self", FindingKind::link_to_itself, 2, [](Pipework& p) { p.links[2].to = p.links[2].from; }},
        {"negative length", FindingKind::bad_value, 1, [](Pipework& p) { p.links[1].length = -1.0 * unit::metre; }},
        {"no bore", FindingKind::bad_value, 1, [](Pipework& p) { p.links[1].conduit.bore = Length{}; }},
        {"too rough", FindingKind::bad_value, 1,
         [](Pipework& p) { p.links[1].conduit.roughness = 2.0 * unit::millimetre; }},
        {"length not a number", FindingKind::bad_value, 1,
         [](Pipework& p) { p.links[1].length = Length::from_si(not_a_number); }},
        {"negative loss", FindingKind::bad_value, 1, [](Pipework& p) { p.links[1].loss_factor = -0.5; }},
        {"negative valve", FindingKind::bad_value, 3, [](Pipework& p) { p.links[3].valve_resistance = -1.0; }},
        {"pipe of nothing", FindingKind::pipe_without_length, 1,
         [](Pipework& p) {
             p.links[1].length = Length{};
             p.links[1].loss_factor = 0.0;
         }},
        {"nothing at all", FindingKind::no_resistance, 1,
         [](Pipework& p) {
             p.links[1] = network::Link{};
             p.links[1].to = 1;
         }},
        {"rising curve", FindingKind::pump_curve_rising, -1, [](Pipework& p) { p.pumps[0].square = -1e9; }},
        {"rising points", FindingKind::pump_curve_rising, -1,
         [](Pipework& p) {
             p.pumps[0].points = {{VolumeFlow::from_si(0.0), Pressure::from_si(2e4)},
                                  {VolumeFlow::from_si(1e-3), Pressure::from_si(3e4)}};
         }},
        {"one point", FindingKind::bad_value, -1,
         [](Pipework& p) {
             p.pumps[0].points = {{VolumeFlow::from_si(0.0), Pressure::from_si(2e4)}};
         }},
        {"points backwards", FindingKind::bad_value, -1,
         [](Pipework& p) {
             p.pumps[0].points = {{VolumeFlow::from_si(1e-3), Pressure::from_si(2e4)},
                                  {VolumeFlow::from_si(0.0), Pressure::from_si(1e4)}};
         }},
        {"no curve", FindingKind::bad_value, -1, [](Pipework& p) { p.pumps[0] = {}; }},
        {"no set point", FindingKind::bad_value, -1,
         [](Pipework& p) { p.pumps[0].mode = network::PumpMode::constant_pressure; }},
        {"pumps in a bare ring", FindingKind::ring_without_resistance, 11,
         [](Pipework& p) {
             p.links.push_back(pump_link(0, 5, 0));
             p.links.push_back(pump_link(5, 0, 0));
         }},
        {"drawn but not fed", FindingKind::demand_not_balanced, -1,
         [](Pipework& p) {
             p.drawn.assign(static_cast<std::size_t>(p.nodes), MassFlow{});
             p.drawn[3] = MassFlow::from_si(0.1);
         }},
    };
    const auto whole = ladder(3, curve_pump(3e4, 1e10));
    REQUIRE(solve(whole).solved);
    for (const auto& c : cases) {
        auto p = whole;
        c.spoil(p);
        const auto r = solve(p);
        CAPTURE(c.what);
        CHECK_FALSE(r.solved);
        const auto* finding = find(r.findings, c.kind);
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::error);
        CHECK(finding->link == c.link);
        CHECK_FALSE(word(c.kind).empty());
    }
}

TEST_CASE("what is odd but can be solved is solved, and said") {
    const std::vector<Case> cases = {
        {"node by itself", FindingKind::node_without_path, -1, [](Pipework& p) { ++p.nodes; }},
        {"dead end", FindingKind::no_circuit, 10,
         [](Pipework& p) { p.links.push_back(pipe(2, p.nodes++, 20.2, 3.0)); }},
        {"closed valve on the only way", FindingKind::cut_off, 7, [](Pipework& p) { p.links[9].closed = true; }},
        {"a part by itself", FindingKind::separate_part, -1,
         [](Pipework& p) {
             p.links.push_back(pipe(p.nodes, p.nodes + 1, 20.2, 3.0));
             p.nodes += 2;
         }},
        {"pump shut off", FindingKind::no_drive, -1, [](Pipework& p) { p.links[0].closed = true; }},
        {"pumps against each other", FindingKind::pumps_oppose, 0,
         [](Pipework& p) {
             p.links[0].to = p.nodes;
             p.links.push_back(pump_link(0, p.nodes++, 0, 1e4));
         }},
        {"the weaker of two pumps is overrun", FindingKind::pump_driven_backwards, 10,
         [](Pipework& p) {
             p.pumps.push_back(curve_pump(1e3, 1e10));
             p.links.push_back(pump_link(4, 0, 1, 1e5));
         }},
        {"beyond the curve", FindingKind::pump_past_curve, 0,
         [](Pipework& p) {
             p.pumps[0].points = {{VolumeFlow::from_si(0.0), Pressure::from_si(3e4)},
                                  {VolumeFlow::from_si(1e-4), Pressure::from_si(2.9e4)}};
         }},
    };
    for (const auto& c : cases) {
        auto p = ladder(3, curve_pump(3e4, 1e10));
        c.spoil(p);
        const auto r = solve(p);
        CAPTURE(c.what);
        REQUIRE(r.solved);
        const auto* finding = find(r.findings, c.kind);
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::warning);
        CHECK(finding->link == c.link);
    }
}

TEST_CASE("nothing flows behind a closed valve, and the emitter is named") {
    auto system = build_network(two_pipe_house(4, network::RoomControl::fixed)).system;
    system.pipework.links[static_cast<std::size_t>(system.emitters[1].link)].closed = true;
    const auto r = solve_system(system);
    REQUIRE(r.solved);
    CHECK(r.thermal.emitters[1].output.si() == 0.0);
    CHECK(r.thermal.rooms[1].missed);
    const auto* finding = find(r.findings, FindingKind::emitter_without_flow);
    REQUIRE(finding != nullptr);
    CHECK(finding->index == 1);
}

TEST_CASE("a system that heat cannot be worked out for is refused, and where") {
    struct SystemCase {
        const char* what;
        FindingKind kind;
        std::function<void(network::System&)> spoil;
    };
    const std::vector<SystemCase> cases = {
        {"no source", FindingKind::bad_value, [](network::System& s) { s.sources.clear(); }},
        {"no such room", FindingKind::index_out_of_range, [](network::System& s) { s.emitters[0].room = 40; }},
        {"no such link", FindingKind::index_out_of_range, [](network::System& s) { s.emitters[0].link = 400; }},
        {"two on one link", FindingKind::bad_value,
         [](network::System& s) { s.emitters[0].link = s.emitters[1].link; }},
        {"exponent", FindingKind::bad_value, [](network::System& s) { s.emitters[0].rating.exponent = 2.0; }},
        {"no rating", FindingKind::bad_value, [](network::System& s) { s.emitters[0].rating.output_at_50k = {}; }},
        {"no loss", FindingKind::room_without_loss,
         [](network::System& s) {
             s.rooms[0].loss = {};
             s.rooms[0].control = network::RoomControl::free;
         }},
        {"emitter as pipe", FindingKind::pipe_loss_not_allowed,
         [](network::System& s) {
             s.pipe_loss[static_cast<std::size_t>(s.emitters[0].link)].per_metre = Conductivity::from_si(0.2);
         }},
        {"drawn", FindingKind::demand_in_heat,
         [](network::System& s) {
             s.pipework.drawn.assign(static_cast<std::size_t>(s.pipework.nodes), MassFlow::from_si(0.1));
         }},
        {"too strong", FindingKind::fluid_out_of_range,
         [](network::System& s) {
             s.fluid = {physics::FluidKind::propylene_glycol, 0.9};
         }},
    };
    for (const auto& c : cases) {
        auto system = build_network(two_pipe_house(3, network::RoomControl::fixed)).system;
        c.spoil(system);
        const auto r = solve_system(system);
        CAPTURE(c.what);
        CHECK_FALSE(r.solved);
        const auto* finding = find(r.findings, c.kind);
        REQUIRE(finding != nullptr);
        CHECK(finding->severity == Severity::error);
    }
}

TEST_CASE("a source short of flow is reported") {
    auto plan = two_pipe_house(3, network::RoomControl::fixed);
    plan.sources[0].minimum_flow = MassFlow::from_si(5.0);
    const auto r = solve_system(build_network(plan).system);
    REQUIRE(r.solved);
    CHECK(r.thermal.sources[0].below_minimum_flow);
    CHECK(find(r.findings, FindingKind::source_below_minimum_flow) != nullptr);
}
