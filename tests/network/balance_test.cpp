// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/balance.hpp"

#include "network/houses.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;
using network::BalanceTask;
using network::Pipework;

namespace {

/// Balances, sets the lockshields, runs the network with pumps that have exactly the calculated pressure rise, and
/// compares the flows with the design.
network::BalanceResult check_balance(const Pipework& p, const BalanceTask& task) {
    network::Workspace w;
    auto r = balance(p, plain_water(), task, w);
    REQUIRE(r.solved);
    auto set = with_settings(p, task, r);
    for (std::size_t i = 0; i < task.pumps.size(); ++i) {
        const auto pump = static_cast<std::size_t>(set.links[static_cast<std::size_t>(task.pumps[i].link)].pump);
        set.pumps[pump] = level_pump(r.pump_rise[i].si());
    }
    const auto flow = solve(set);
    REQUIRE(flow.solved);
    for (const auto& e : task.emitters) {
        CAPTURE(e.link);
        CHECK(flow_of(flow, static_cast<std::size_t>(e.link)) == Approx(e.design_flow.si()).epsilon(1e-6));
    }
    return r;
}

BalanceTask task_of(const network::System& system, std::initializer_list<double> shares) {
    BalanceTask task;
    std::vector<double> share{shares};
    for (std::size_t i = 0; i < system.emitters.size(); ++i) {
        network::BalancedEmitter e;
        e.link = system.emitters[i].link;
        e.design_flow = MassFlow::from_si(0.02 * share[i % share.size()]);
        e.rating = system.emitters[i].rating;
        task.emitters.push_back(e);
    }
    task.pumps = {{system.sources[0].link, {}}};
    return task;
}

}  // namespace

TEST_CASE("a two-pipe tree is balanced to its design flows with the least pump") {
    const auto system = build_network(two_pipe_house(7, network::RoomControl::fixed)).system;
    const auto task = task_of(system, {1.0, 1.6, 0.7});
    const auto r = check_balance(system.pipework, task);
    const auto index = static_cast<std::size_t>(r.index_emitter);
    CHECK(r.emitters[index].added.si() == Approx(0.0).margin(1e-6));
    CHECK(r.emitters[index].kv == 0.0);
    CHECK(r.order.front() == r.index_emitter);
    for (std::size_t i = 0; i < r.emitters.size(); ++i) {
        const auto& e = r.emitters[i];
        if (i != index) CHECK(e.kv > 0.0);
        REQUIRE(e.return_temperature);
        // The output that its return says is the one that its rating gives there.
        const double water = task.emitters[i].design_flow.si() * 4180.0 * (50.0 - e.return_temperature->celsius());
        const auto share = physics::output_factor(Temperature::from_celsius(50.0), *e.return_temperature,
                                                  Temperature::from_celsius(20.0), 1.3);
        CHECK(water == Approx(system.emitters[i].rating.output_at_50k.si() * share.value()).epsilon(1e-9));
    }
    for (std::size_t k = 1; k < r.order.size(); ++k) {
        CHECK(r.emitters[static_cast<std::size_t>(r.order[k])].added >=
              r.emitters[static_cast<std::size_t>(r.order[k - 1])].added);
    }
}

TEST_CASE("what is added along a tree is the drop of the pipes between, by hand") {
    // Two equal branches at the same flow: the near one must add the pressure drop of the flow and return pipe between
    // them. Pressure drop and Kv are calculated by the fluids library, in turbulent flow, where all friction laws
    // agree.
    const auto csv = read_csv("network/lockshield.csv");
    const auto flow = MassFlow::from_si(csv.number(0, "flow_kg_per_s"));
    const auto p = ladder(2, curve_pump(3e4, 1e10));
    BalanceTask task;
    task.emitters = {{3, flow, {}, {}}, {6, flow, {}, {}}};
    task.pumps = {{0, {}}};
    task.least_added = Pressure::from_si(csv.number(0, "least_added_pa"));
    const auto r = check_balance(p, task);
    CHECK(r.index_emitter == 1);
    CHECK(r.emitters[1].added.si() == Approx(500.0));
    const std::string by = "fluids 1.3.1 and the definition of Kv (tests/reference/network_flows.py)";
    const double added = csv.number(0, "added_pa"), kv = csv.number(0, "kv");
    // The balance is solved until the flows change by less than about 1e-9, and the pressures are as exact as the
    // flows.
    verify({"pressure that a lockshield adds", by, Certainty::computed, "Pa"}, added, r.emitters[0].added.si(),
           1e-8 * added);
    verify({"Kv that a lockshield is set to", by, Certainty::computed, "m³/h"}, kv, r.emitters[0].kv, 1e-8 * kv);
}

TEST_CASE("a ring, a reverse return and a second pump are balanced just so") {
    auto ring = ladder(5, curve_pump(4e4, 1e10));
    ring.links.push_back(pipe(0, 5, 20.2, 8.0));
    ring.links.push_back(pipe(2, 5, 13.6, 8.0));
    BalanceTask task;
    for (int n = 0; n < 5; ++n) task.emitters.push_back({3 + 3 * n, MassFlow::from_si(0.02 + 0.004 * n), {}, {}});
    task.pumps = {{0, {}}};
    check_balance(ring, task);

    network::Plan plan;
    plan.junctions = 6;
    for (int n = 0; n < 5; ++n) {
        plan.sections.push_back(section(n, n + 1, 20.2, 4.0, network::Carries::flow_only));
        if (n > 0) plan.sections.push_back(section(n + 1, n, 20.2, 4.0, network::Carries::return_only));
        plan.emitters.push_back(radiator(n + 1, n + 1, 1000.0, 0));
    }
    plan.rooms.push_back(room(network::RoomControl::fixed, 50.0));
    plan.sources.push_back({});
    plan.sources[0].flow_junction = 0;
    plan.sources[0].return_junction = 5;
    plan.sources[0].pump = curve_pump(3e4, 1e10);
    const auto reverse = build_network(plan).system;
    const auto r = check_balance(reverse.pipework, task_of(reverse, {1.0}));
    double most = 0.0;  // what reverse return is for: little is left to add
    for (const auto& e : r.emitters) most = std::max(most, e.added.si());
    CHECK(most < 0.5 * r.pump_rise[0].si());

    // Behind a header with a pump of its own, both pumps are sized together.
    Pipework two;
    two.nodes = 8;
    two.pumps = {curve_pump(2e4, 1e10), curve_pump(3e4, 1e10)};
    two.links = {pump_link(1, 0, 0, 5e4),    pipe(0, 1, 51.6, 0.5),     pump_link(0, 2, 1, 1e4), pipe(2, 3, 20.2, 5.0),
                 pipe(3, 4, 20.2, 5.0),      pipe(6, 5, 20.2, 5.0),     pipe(5, 7, 20.2, 5.0),   pipe(7, 1, 26.2, 1.0),
                 pipe(3, 5, 13.6, 6.0, 4.0), pipe(4, 6, 13.6, 6.0, 4.0)};
    BalanceTask both;
    both.emitters = {{8, MassFlow::from_si(0.04), {}, {}}, {9, MassFlow::from_si(0.03), {}, {}}};
    both.pumps = {{0, MassFlow::from_si(0.1)}, {2, MassFlow::from_si(0.07)}};
    check_balance(two, both);
}

TEST_CASE("on a one-pipe loop an emitter that its length of loop cannot feed is out of reach") {
    const auto system = build_network(one_pipe_house(3, network::RoomControl::fixed)).system;
    auto task = task_of(system, {1.0});
    task.pumps[0].flow = MassFlow::from_si(0.2);
    const auto r = check_balance(system.pipework, task);
    CHECK(network::has_error(r.findings) == false);
    task.emitters[1].design_flow = MassFlow::from_si(0.15);
    network::Workspace w;
    const auto starved = balance(system.pipework, plain_water(), task, w);
    REQUIRE(starved.solved);
    REQUIRE(starved.findings.size() == 1);
    CHECK(starved.findings[0].kind == network::FindingKind::emitter_out_of_reach);
    CHECK(starved.findings[0].index == 1);
    CHECK(starved.index_emitter == 1);
}

TEST_CASE("a balancing task that makes no sense is refused") {
    const auto p = ladder(2, curve_pump(3e4, 1e10));
    BalanceTask good;
    good.emitters = {{3, MassFlow::from_si(0.03), {}, {}}, {6, MassFlow::from_si(0.03), {}, {}}};
    good.pumps = {{0, {}}};
    network::Workspace w;
    const auto kind_of = [&](const BalanceTask& task) {
        const auto r = balance(p, plain_water(), task, w);
        CHECK_FALSE(r.solved);
        return r.findings.at(0).kind;
    };
    auto task = good;
    task.emitters[1].link = 60;
    CHECK(kind_of(task) == network::FindingKind::index_out_of_range);
    task = good;
    task.emitters[1].link = 3;
    CHECK(kind_of(task) == network::FindingKind::bad_value);
    task = good;
    task.emitters[0].design_flow = MassFlow{};
    CHECK(kind_of(task) == network::FindingKind::bad_value);
    task = good;
    task.pumps.push_back({1, {}});
    CHECK(kind_of(task) == network::FindingKind::pump_flow_needed);
    task = good;
    task.pumps[0].flow = MassFlow::from_si(0.05);  // not what the emitters take
    CHECK(kind_of(task) == network::FindingKind::demand_not_balanced);
}
