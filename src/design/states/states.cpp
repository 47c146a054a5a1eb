// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/states/operation.hpp"

#include "design/judge.hpp"
#include "design/pipes/network_routes.hpp"
#include "loopfolio/base/root.hpp"
#include "loopfolio/physics/exchanger.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double settled = 1e-4;  // K; tolerance for temperatures set by a plate heat exchanger or mixing valve
constexpr int most_rounds = 60;

/// A network with its valves set, and the results of solving it.
struct Solving {
    const StateTask& task;
    network::BuiltNetwork built;
    network::Workspace& workspace;
    network::SystemResult result;

    bool run() {
        result = network::solve_system(built.system, workspace);
        return result.solved;
    }
    [[nodiscard]] network::Link& link(int i) { return built.system.pipework.links[at(i)]; }
    [[nodiscard]] MassFlow flow(int i) const { return result.hydraulic.flow[at(i)]; }
};

void set_valves(Solving& s) {
    if (s.task.valves == nullptr) return;
    for (const auto& v : s.task.valves->valves) {
        auto& link = s.link(s.built.system.emitters[at(v.emitter)].link);
        if (v.kv > 0.0) link.valve_resistance += network::valve_resistance(v.kv);
    }
}

/// Effectiveness of the plate heat exchanger with this flow on the secondary side; its primary side runs at the design
/// flow.
double effectiveness_at(const Solving& s, MassFlow emitters) {
    const auto& d = s.task.design;
    const HeatLossCoefficient here = emitters * s.result.specific_heat;
    const HeatLossCoefficient other = d.separation->source_flow * d.state.density * s.result.specific_heat;
    const auto least = std::min(here, other);
    return physics::counterflow_effectiveness(s.task.job.separation->plate_ua->value / least,
                                              least / std::max(here, other));
}

/// Temperature that the plate heat exchanger sends to the emitters, from the temperature that comes back to it.
Temperature after_plate(const Solving& s) {
    const auto& d = s.task.design;
    const auto& source = s.result.thermal.sources.front();
    const HeatLossCoefficient emitters = source.flow * s.result.specific_heat;
    const HeatLossCoefficient other = d.separation->source_flow * d.state.density * s.result.specific_heat;
    const double share = effectiveness_at(s, source.flow) * (std::min(emitters, other) / emitters);
    return source.inlet + share * (d.separation->source_leaving - source.inlet);
}

constexpr double wide_open = 1e-6;  // h2/m6: a valve of Kv 1000
constexpr double shut = 1e6;        // h2/m6: a valve of Kv 0.001

/// Bounds on a mixing valve's setting: one known to be too open, and one too shut.
struct ValveSearch {
    double too_open = wide_open;
    double too_shut = shut;
    int rounds = 0;
};

/// The next setting of a mixing valve: the one calculated from the flows where it lies within the bounds, and otherwise
/// the middle of the bounds on the logarithmic scale of valves.
double next_opening(ValveSearch& search, double now, double asked) {
    const double middle = std::sqrt(search.too_open * search.too_shut);
    const bool inside = asked > search.too_open && asked < search.too_shut;
    return ++search.rounds % 3 == 0 || !inside ? (now <= wide_open ? 1.0 : middle) : asked;
}

/// Moves the valve of a mixing set towards the setting that gives its temperature. True once it does, or is wide open.
bool adjust_mixer(Solving& s, std::size_t m, ValveSearch& search) {
    const auto& links = s.built.mixers[m];
    const auto& nodes = s.result.thermal.node;
    const Temperature wanted = s.task.job.mixers[m].flow.value;
    const Temperature mixed = nodes[at(s.link(links.pump).from)];
    auto& resistance = s.link(links.valve).valve_resistance;
    if (std::abs((mixed - wanted).si()) < 0.005 || (mixed < wanted && resistance <= wide_open)) return true;
    resistance = std::max(resistance, wide_open);
    (mixed > wanted ? search.too_open : search.too_shut) = resistance;
    const Temperature hot = s.result.thermal.inlet[at(links.valve)];
    const Temperature cold = nodes[at(s.link(links.bypass).from)];
    if (hot <= wanted) {
        resistance = wide_open;
        return false;
    }
    const double needed = std::clamp((wanted - cold) / (hot - cold), 0.01, 1.0);
    const double there = std::clamp((mixed - cold) / (hot - cold), 0.01, 1.0);
    resistance = next_opening(search, resistance, resistance * std::pow(there / needed, 2.0));
    return false;
}

/// Solves until the temperatures from plate heat exchangers and mixing valves converge.
bool settle(Solving& s) {
    std::vector<ValveSearch> searches(s.built.mixers.size());
    for (int round = 0; round < most_rounds; ++round) {
        if (!s.run()) return false;
        bool still = true;
        if (s.task.job.separation && s.task.job.separation->kind == job::SeparationKind::plate) {
            auto& made = s.built.system.sources.front().flow_temperature;
            const Temperature next = after_plate(s);
            still = std::abs((next - made).si()) < settled;
            made = next;
        }
        for (std::size_t m = 0; m < s.built.mixers.size(); ++m) still = adjust_mixer(s, m, searches[m]) && still;
        if (still) return true;
    }
    return true;  // a mixing valve may still oscillate by a few hundredths of a kelvin
}

/// Whether a room counts: only one with a loss and with emitters can be improved.
bool counts(const Design& d, std::size_t room) { return d.rooms[room].loss > Power{} && d.rooms[room].emitters > 0; }

/// Sets the heat source to the flow temperature at which the worst room just meets its need, with the present flows.
/// False where the temperatures cannot be found.
bool compensate(Solving& s) {
    auto& made = s.built.system.sources.front().flow_temperature;
    const auto& d = s.task.design;
    bool solved = true;
    const auto spare = [&](double celsius) {
        made = Temperature::from_celsius(celsius);
        const auto heat = network::solve_thermal(s.built.system, s.result.hydraulic.flow, s.result.specific_heat,
                                                 s.workspace);
        solved = solved && heat.solved;
        double least = 1e300;
        for (std::size_t i = 0; solved && i < d.rooms.size(); ++i) {
            if (!counts(d, i)) continue;
            // A positive figure is the margin of a room that meets its need; a negative one is the shortfall.
            const auto& r = heat.rooms[i];
            least = std::min(least, r.missed ? -(r.shortfall / r.need) : r.surplus / r.need);
        }
        return least;
    };
    Temperature warmest = Temperature::from_celsius(0.0);
    for (const auto& room : s.task.job.rooms) {
        if (room.heated) warmest = std::max(warmest, room.temperature.value);
    }
    const double low = warmest.celsius() + 0.5;
    const double high = made.celsius();
    if (spare(high) <= 0.0) return solved;  // too little even at the design flow temperature, which then stays
    const auto root = find_root(spare, low, high, 1e-3);
    made = Temperature::from_celsius(root.value_or(low));
    return solved;
}

Velocity velocity_in(const job::Section& s, VolumeFlow flow) {
    const double d = s.bore.value.si();
    return Velocity::from_si(flow.si() / (0.25 * 3.14159265358979323846 * d * d));
}

void take_sections(const Solving& s, State& out) {
    const auto& job = s.task.job;
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        const auto& links = s.built.sections[i];
        MassFlow most;
        double reynolds = 0.0;
        for (const int link : {links.flow, links.return_}) {
            if (link < 0) continue;
            const MassFlow m = s.flow(link) < MassFlow{} ? -s.flow(link) : s.flow(link);
            most = std::max(most, m);
            reynolds = std::max(reynolds, std::abs(s.result.hydraulic.reynolds[at(link)]));
        }
        const VolumeFlow flow = most / s.task.design.state.density;
        const Velocity v = velocity_in(job.sections[i], flow);
        if (v > out.highest_velocity) {
            out.highest_velocity = v;
            out.fastest_section = static_cast<int>(i);
        }
        out.section_flow.push_back(flow);
        const auto in = [&](int link) { return link < 0 ? VolumeFlow{} : s.flow(link) / s.task.design.state.density; };
        out.pipes.push_back({in(links.flow), in(links.return_)});
        out.reynolds.push_back(reynolds);
    }
    for (const auto& links : s.built.mixers) {
        const auto in = [&](int link) { return s.flow(link) / s.task.design.state.density; };
        out.mixers.push_back({in(links.valve), in(links.pump), in(links.bypass)});
    }
    if (s.built.header >= 0) out.through_separation = s.flow(s.built.header) / s.task.design.state.density;
}

/// Margin of a room as a share of its need; negative for a shortfall.
double standing(const network::RoomResult& r) { return r.missed ? -(r.shortfall / r.need) : r.surplus / r.need; }

void take_rooms(const Solving& s, State& out) {
    const auto& d = s.task.design;
    const auto& heat = s.result.thermal;
    const auto density = d.state.density;
    out.downward = heat.energy.emitters;
    for (const auto& e : heat.emitters) {
        out.emitters.push_back({e.flow / density, e.inlet, e.outlet, e.output});
        out.downward -= e.output;
    }
    // What is left of a difference of like sums is rounding where no floor gives heat below.
    if (out.downward < 1e-9 * heat.energy.emitters) out.downward = {};
    for (std::size_t i = 0; i < d.rooms.size(); ++i) {
        const auto& r = heat.rooms[i];
        out.rooms.push_back({r.temperature, r.need, r.output});
        if (!counts(d, i)) continue;
        if (out.least_served < 0 || standing(r) < standing(heat.rooms[at(out.least_served)])) {
            out.least_served = static_cast<int>(i);
        }
    }
}

void take_plant(const Solving& s, State& out) {
    const auto& d = s.task.design;
    const auto density = d.state.density;
    const auto& source = s.result.thermal.sources.front();
    const auto& pipes = s.built.system.pipework;
    out.outdoor = s.built.system.outdoor;
    out.source_flow = source.outlet;
    out.source_drop = source.outlet - source.inlet;
    out.flow = s.flow(s.built.drive) / density;
    out.source_side = source.flow / density;
    if (d.separation && d.separation->effectiveness) {
        // On the primary side of the plate heat exchanger, the heat source runs at its own flow and at the temperature
        // that the plate needs.
        const HeatLossCoefficient side = d.separation->source_flow * density * s.result.specific_heat;
        const HeatLossCoefficient least = std::min(side, source.flow * s.result.specific_heat);
        out.source_flow = source.inlet + source.power / (effectiveness_at(s, source.flow) * least);
        out.source_side = d.separation->source_flow;
        out.source_drop = source.power / side;
    }
    out.head = s.result.hydraulic.rise[at(pipes.links[at(s.built.drive)].pump)];
    out.heat = source.power;
    out.pipe_loss = s.result.thermal.energy.pipes;
    for (std::size_t i = 0; i < pipes.links.size(); ++i) {
        const int pump = pipes.links[i].pump;
        // A primary pump without any data is modelled as holding its flow, so its head here is the one from the design.
        if (static_cast<int>(i) == s.built.source_pump && s.built.header >= 0 &&
            !describes_itself(s.task.job.separation->source_pump)) {
            out.pump_power += d.separation->head * out.source_side;
        } else if (pump >= 0)
            out.pump_power += s.result.hydraulic.rise[at(pump)] * (s.flow(static_cast<int>(i)) / density);
    }
    out.source_at_capacity = source.at_capacity;
    if (s.task.job.heat_source && s.task.job.heat_source->minimum_flow) {
        out.below_minimum_flow = out.source_side < s.task.job.heat_source->minimum_flow->value;
    }
    if (s.task.job.heat_source && s.task.job.heat_source->maximum_drop) {
        const auto most = s.task.job.heat_source->maximum_drop->value;
        out.above_maximum_drop = out.source_drop > (1.0 + rounding) * most;
    }
    for (const auto& f : s.result.findings) {
        out.pump_backwards = out.pump_backwards || f.kind == network::FindingKind::pump_driven_backwards;
        out.would_freeze = out.would_freeze || f.kind == network::FindingKind::would_freeze;
        out.past_curve = out.past_curve || f.kind == network::FindingKind::pump_past_curve;
    }
    out.rounds = s.result.rounds;
    out.pressure_residual = s.result.hydraulic.pressure_residual;
    out.continuity_residual = s.result.hydraulic.continuity_residual;
    out.energy_error = s.result.thermal.energy.relative_error;
}

/// The head at each of a series of flows: the pipework's own curve, whatever pump it has.
void take_system_curve(Solving& s, State& out) {
    constexpr int points = 8;
    auto& pump = s.built.system.pipework.pumps[at(s.link(s.built.drive).pump)];
    const auto kept = pump;
    const Pressure most = 1.6 * std::max(out.head, s.task.design.duty.head);
    for (int i = 0; i <= points; ++i) {
        const double share = static_cast<double>(i) / points;
        const Pressure head = share * share * most;  // gives points evenly spaced along the flow
        if (i == 0) {
            out.system_curve.push_back({});
            continue;
        }
        pump = {};
        pump.mode = network::PumpMode::constant_pressure;
        pump.set_rise = head;
        const auto flow = network::solve_hydraulics(s.built.system.pipework, std::span{&s.task.design.state, 1},
                                                    s.workspace);
        if (!flow.solved) break;
        out.system_curve.push_back({flow.flow[at(s.built.drive)] / s.task.design.state.density, head});
    }
    pump = kept;
}

/// Pumps that work against each other in one line are a mistake in the job, not a state to calculate.
bool refuse_opposed(const Solving& s, std::vector<Refusal>& refusals) {
    for (const auto& f : s.result.findings) {
        if (f.kind != network::FindingKind::pumps_oppose) continue;
        const auto& pumps = s.task.job.further_circulators;
        refusals.push_back({"further_circulators", pumps.empty() ? Place{} : pumps.front().pump.place,
                            std::string{network::word(f.kind)}, "turn one of them round with `towards` or `pipe`"});
        return true;
    }
    return false;
}

}  // namespace

std::optional<State> solve_state(const StateTask& task, network::Workspace& workspace, std::vector<Refusal>& refusals) {
    Solving s{task, network::build_network(plan_of(task.job, task.design)), workspace, {}};
    close_unused(task.design, s.built);
    set_valves(s);
    const bool mild = task.kind == StateKind::mild_day;
    if (mild) {
        s.built.system.outdoor = task.job.conditions.mild_day.value;
        s.built.system.sources.front().capacity.reset();  // the stated capacity applies to the design day only
    }
    const bool settled_down = settle(s);
    if (settled_down && refuse_opposed(s, refusals)) return {};
    if (!settled_down || (mild && (!compensate(s) || !s.run()))) {
        refuse(s.result.findings, task.job, s.built, refusals);
        if (refusals.empty()) {
            refusals.push_back({"pipework",
                                {},
                                "the temperatures on a milder day are not found",
                                "choose a colder `mild_day_temperature_c` under `conditions`"});
        }
        return {};
    }
    State out;
    out.kind = task.kind;
    take_plant(s, out);
    take_rooms(s, out);
    take_sections(s, out);
    if (!mild && task.extent == Extent::whole) take_system_curve(s, out);
    return out;
}

}  // namespace loopfolio::design
