// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// How long flows and temperatures take, from one house to an estate main. Prints a table; changes nothing.
#include "loopfolio/base/unit.hpp"
#include "loopfolio/network/build.hpp"

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>

using namespace loopfolio;

namespace {

constexpr int rooms_per_house = 10;

network::PlanSection section(int from, int to, double bore_mm, double length_m) {
    network::PlanSection s;
    s.from = from;
    s.to = to;
    s.conduit = {bore_mm * unit::millimetre, 0.0015 * unit::millimetre};
    s.length = length_m * unit::metre;
    s.loss_factor = 1.5;
    s.heat_loss = {Conductivity::from_si(0.2), Temperature::from_celsius(15.0)};
    return s;
}

/// A trunk from `entry` with a radiator at each of its junctions.
void add_house(network::Plan& plan, int entry, int rooms) {
    int here = entry;
    for (int r = 0; r < rooms; ++r) {
        const int next = plan.junctions++;
        plan.sections.push_back(section(here, next, r < rooms / 2 ? 26.2 : 20.2, 3.0 + r % 3));
        network::PlanEmitter e;
        e.flow_junction = e.return_junction = next;
        e.rating = {(1000.0 + 100.0 * (r % 5)) * unit::watt, 1.3};
        e.room = static_cast<int>(plan.rooms.size());
        e.connection = {13.6 * unit::millimetre, 0.0015 * unit::millimetre};
        e.loss_factor = 3.0;
        e.valve_resistance = network::valve_resistance(0.4);
        plan.emitters.push_back(e);
        network::Room room;
        room.control = network::RoomControl::held;
        room.loss = HeatLossCoefficient::from_si(15.0 + r % 7);
        plan.rooms.push_back(room);
        here = next;
    }
}

void add_source(network::Plan& plan, double rise, double square_resistance) {
    network::PlanSource source;
    source.pump.mode = network::PumpMode::constant_pressure;
    source.pump.set_rise = Pressure::from_si(rise);
    source.square_resistance = square_resistance;
    plan.sources.push_back(source);
}

network::Plan one_house(int rooms) {
    network::Plan plan;
    plan.junctions = 1;
    add_house(plan, 0, rooms);
    add_source(plan, 2e4, 1e4);
    return plan;
}

/// A main that forks at every junction, a house at each; bores follow the houses behind them. Every tenth
/// junction is joined to its neighbour, so that the main has rings.
network::Plan estate(int houses) {
    network::Plan plan;
    plan.junctions = houses;
    std::vector<int> behind(static_cast<std::size_t>(houses), 1);
    for (int h = houses - 1; h > 0; --h) {
        behind[static_cast<std::size_t>((h - 1) / 2)] += behind[static_cast<std::size_t>(h)];
    }
    const auto bore = [&](int h) { return 30.0 * std::pow(behind[static_cast<std::size_t>(h)], 0.42); };
    for (int h = 1; h < houses; ++h) {
        plan.sections.push_back(section((h - 1) / 2, h, bore(h), 12.0 + h % 7));
        if (h % 10 == 9) plan.sections.push_back(section(h - 1, h, bore(h), 15.0));
    }
    for (int h = 0; h < houses; ++h) add_house(plan, h, rooms_per_house);
    add_source(plan, 6e4, 1e4 / houses / houses);
    return plan;
}

double seconds_of(int times, const auto& work) {
    double best = 1e300;
    for (int i = 0; i < times; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    }
    return best;
}

double peak_mebibytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

void measure(const char* name, const network::Plan& plan, int times) {
    auto system = build_network(plan).system;
    const auto water = physics::water(Temperature::from_celsius(45.0)).value();
    const std::span state{&water, 1};
    network::HydraulicResult flow;
    const double cold = seconds_of(1 + times / 10, [&] { flow = solve_hydraulics(system.pipework, water); });
    network::Workspace w;
    network::SystemResult all;
    const double coupled_cold = seconds_of(1, [&] { all = solve_system(system, w); });
    // Warm: the flow temperature moves as it would from one step of a study to the next.
    double degree = 50.0;
    const double coupled = seconds_of(times, [&] {
        degree = degree > 50.5 ? 50.0 : degree + 1.0;
        system.sources[0].flow_temperature = Temperature::from_celsius(degree);
        all = solve_system(system, w);
    });
    double resistance = system.pipework.links[0].loss_factor;
    const double warm = seconds_of(times, [&] {
        system.pipework.links[0].loss_factor = (resistance = resistance > 2.0 ? 1.0 : 3.0);
        flow = solve_hydraulics(system.pipework, state, w);
    });
    std::printf("%-14s %8zu %10.3f %5d %10.3f %12.3f %10.3f %7d %9.0f %s\n", name, system.pipework.links.size(),
                1e3 * cold, flow.iterations, 1e3 * warm, 1e3 * coupled_cold, 1e3 * coupled, all.rounds,
                peak_mebibytes(), flow.solved && all.solved ? "" : "NOT SOLVED");
}

}  // namespace

int main() {
    std::printf("%-14s %8s %10s %5s %10s %12s %10s %7s %9s\n", "network", "links", "flow cold", "iter", "flow warm",
                "system cold", "sys. warm", "rounds", "peak MiB");
    std::printf("%-14s %8s %10s %5s %10s %12s %10s\n", "", "", "ms", "", "ms", "ms", "ms");
    measure("house", one_house(20), 1000);
    measure("estate 30", estate(30), 50);
    measure("estate 300", estate(300), 10);
    measure("estate 3000", estate(3000), 3);
    return 0;
}
