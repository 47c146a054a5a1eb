// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/pipes/pipe_plan.hpp"

#include "design/parts.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace {

/// Resistance of the passages in a mixing set or a header: small beside anything else, but not zero, so that the flow
/// in them is determined. Pa/(kg/s)2: 100 Pa at 0.2 kg/s.
constexpr double open_passage = 2500.0;
/// Resistance of a header or close-coupled tees: 20 Pa at 0.3 kg/s.
constexpr double header_passage = 220.0;

constexpr Pressure least_head = Pressure::from_si(1.0);
/// A pump that the job does not describe is assumed to hold its design flow. It is modelled with this head behind a
/// resistance that takes all of it at that flow.
constexpr Pressure stiff_head = Pressure::from_si(1e6);

network::Carries carries_of(job::Carries c) {
    switch (c) {
        case job::Carries::both: return network::Carries::both;
        case job::Carries::flow: return network::Carries::flow_only;
        case job::Carries::return_: return network::Carries::return_only;
        case job::Carries::loop: return network::Carries::loop;
    }
    return network::Carries::both;
}

network::PlanSection section_of(const job::Section& s, int from, int to) {
    network::PlanSection out;
    out.from = from;
    out.to = to;
    out.conduit = {s.bore.value, s.roughness.value};
    out.length = s.length.value;
    out.loss_factor = loss_factor(s.fittings);
    if (s.insert_bore.given()) {
        out.loss_factor += narrowed_joints(s.fittings) * physics::insert_loss_factor(s.bore.value, s.insert_bore.value);
    }
    out.carries = carries_of(s.carries);
    if (s.heat_loss) out.heat_loss = {s.heat_loss->value, s.surroundings.value};
    out.closed = s.closed;
    return out;
}

network::PlanEmitter emitter_of(const job::Emitter& e, const EmitterResult& r, int at, int back) {
    const auto path = path_of(e);
    network::PlanEmitter out;
    out.flow_junction = at;
    out.return_junction = back;
    out.rating = {e.output_at_50k.value, e.exponent.value};
    out.room = r.room;
    out.connection = path.conduit;
    out.length = path.length;
    out.loss_factor = path.loss_factor;
    out.valve_resistance = path.valve_resistance;
    if (r.load > Power{}) out.beyond = r.downward / r.load;
    // Even an emitter without any hydraulic data has some resistance: 10 Pa at 0.05 kg/s.
    if (path.loss_factor <= 0.0 && path.length <= Length{} && path.valve_resistance <= 0.0)
        out.square_resistance = 4000.0;
    return out;
}

/// Square-law resistance, in Pa/(kg/s)2, of something with the pressure drop `drop` at `flow`.
double square_of(Pressure drop, VolumeFlow flow, Density density) {
    const double mass = (flow * density).si();
    return drop.si() / (mass * mass);
}

double resistance_at_source(const job::Job& job, const Design& d) {
    double sum = 0.0;
    const auto& separation = job.separation;
    // Until the header is designed, only its secondary side is calculated.
    if (through_header(job) && !d.separation) return sum;
    const bool plate = separation && separation->kind == job::SeparationKind::plate;
    if (!plate && job.heat_source && job.heat_source->pressure_drop && job.heat_source->pressure_drop_flow) {
        sum += square_of(job.heat_source->pressure_drop->value, job.heat_source->pressure_drop_flow->value,
                         d.state.density);
    }
    if (separation && separation->pressure_drop && separation->pressure_drop_flow) {
        sum += square_of(separation->pressure_drop->value, separation->pressure_drop_flow->value, d.state.density);
    }
    return sum;
}

network::PlanSource source_of(const job::Job& job, const Design& d) {
    network::PlanSource out;
    out.flow_junction = d.junctions.source_at;
    out.return_junction = d.junctions.source_return;
    out.pump = pump_of(job.circulator, d.duty.head);
    out.square_resistance = resistance_at_source(job, d);
    out.flow_temperature = d.separation && through_header(job) ? d.separation->source_leaving : d.flow;
    if (!job.heat_source) return out;
    out.capacity = d.duty.capacity;
    if (job.heat_source->minimum_flow) out.minimum_flow = job.heat_source->minimum_flow->value * d.state.density;
    return out;
}

void add_pumps(const job::Job& job, const Design& d, network::Plan& plan) {
    for (const auto& f : job.further_circulators) {
        for (std::size_t i = 0; i < job.sections.size(); ++i) {
            if (job.sections[i].id != f.in) continue;
            plan.pumps.push_back(
                {pump_of(f.pump, {}), static_cast<int>(i), f.in_return, f.towards == job.sections[i].from});
        }
    }
    for (std::size_t i = 0; i < job.mixers.size(); ++i) {
        const Pressure head = i < d.mixers.size() ? d.mixers[i].head : Pressure{};
        plan.mixers.push_back(
            {d.junctions.mixer_from[i], d.junctions.mixer_to[i], pump_of(job.mixers[i].pump, head), 0.0, open_passage});
    }
}

network::Room room_of(const job::Job& job, const Design& d, std::size_t i) {
    network::Room out;
    out.set_temperature = job.rooms[i].temperature.value;
    if (!job.rooms[i].heated || d.rooms[i].loss <= Power{}) return out;
    out.control = network::RoomControl::held;
    out.loss = d.rooms[i].loss / (out.set_temperature - job.conditions.outdoor.value);
    return out;
}

}  // namespace

bool describes_itself(const std::optional<job::Circulator>& c) {
    return c && (!c->curve.empty() || c->quadratic || c->set_head);
}

network::Pump pump_of(const std::optional<job::Circulator>& c, Pressure otherwise) {
    network::Pump out;
    if (!describes_itself(c)) {
        out.mode = network::PumpMode::constant_pressure;
        out.set_rise = std::max(otherwise, least_head);
        return out;
    }
    switch (c->mode) {
        case job::PumpMode::constant_speed: out.mode = network::PumpMode::constant_speed; break;
        case job::PumpMode::constant_pressure: out.mode = network::PumpMode::constant_pressure; break;
        case job::PumpMode::proportional_pressure: out.mode = network::PumpMode::proportional_pressure; break;
    }
    for (const auto& p : c->curve) out.points.push_back({p.flow, p.head});
    if (c->quadratic) {
        out.shutoff = c->quadratic->shutoff;
        out.linear = c->quadratic->linear;
        out.square = c->quadratic->square;
    }
    out.set_rise = c->set_head.value_or(Pressure{});
    out.set_flow = c->set_flow.value_or(VolumeFlow{});
    return out;
}

network::Plan plan_of(const job::Job& job, const Design& d) {
    network::Plan plan;
    plan.junctions = static_cast<int>(d.nodes.size());
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        plan.sections.push_back(section_of(job.sections[i], d.junctions.section_from[i], d.junctions.section_to[i]));
    }
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        plan.emitters.push_back(
            emitter_of(job.emitters[i], d.emitters[i], d.junctions.emitter_at[i], d.junctions.emitter_return[i]));
    }
    plan.sources.push_back(source_of(job, d));
    add_pumps(job, d, plan);
    if (d.separation && through_header(job)) {
        plan.header = network::PlanHeader{pump_of(job.separation->source_pump, stiff_head), header_passage};
        if (!describes_itself(job.separation->source_pump)) {
            plan.sources.front().square_resistance = square_of(stiff_head, d.separation->source_flow, d.state.density);
        }
    }
    for (std::size_t i = 0; i < job.rooms.size(); ++i) plan.rooms.push_back(room_of(job, d, i));
    plan.fluid = d.fluid;
    plan.outdoor = job.conditions.outdoor.value;
    return plan;
}

void close_unused(const Design& d, network::BuiltNetwork& built) {
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        if (d.emitters[i].load > Power{}) continue;
        built.system.pipework.links[static_cast<std::size_t>(built.system.emitters[i].link)].closed = true;
    }
}

DesignTask task_of(const job::Job& job, const Design& d, const network::BuiltNetwork& built) {
    DesignTask out;
    MassFlow drive;
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        const auto& r = d.emitters[i];
        if (r.load <= Power{}) continue;
        if (r.on_loop) {
            drive += (r.load + r.downward) / (d.state.specific_heat * d.drop);
            continue;
        }
        const double both = 1.0 + r.downward / r.load;
        const physics::EmitterRating rating{both * job.emitters[i].output_at_50k.value, job.emitters[i].exponent.value};
        out.task.emitters.push_back({built.system.emitters[i].link, r.flow, rating,
                                     job.rooms[static_cast<std::size_t>(r.room)].temperature.value});
        out.emitters.push_back(static_cast<int>(i));
        if (r.mixer < 0) drive += r.flow;
    }
    std::vector<network::SizedPump> mixing;
    for (std::size_t i = 0; i < d.mixers.size(); ++i) {
        const MassFlow drawn = d.mixers[i].drawn * d.state.density;
        if (drawn <= MassFlow{}) continue;
        out.task.emitters.push_back({built.mixers[i].valve, drawn, {}, {}});
        mixing.push_back({built.mixers[i].pump, d.mixers[i].sent * d.state.density});
        drive += drawn;
    }
    out.task.pumps.push_back({built.drive, drive});
    out.task.pumps.insert(out.task.pumps.end(), mixing.begin(), mixing.end());
    out.task.flow_temperature = d.flow;
    return out;
}

}  // namespace loopfolio::design
