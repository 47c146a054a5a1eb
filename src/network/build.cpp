// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/build.hpp"

#include "network/refusals.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::network {

namespace {

constexpr double least_resistance = 1e-9;  // Pa/(kg/s)2

Findings refusals_of(const Plan& plan) {
    Findings out;
    Refusals r{out};
    const auto junctions = at(std::max(plan.junctions, 0));
    if (plan.junctions < 1) r.add(FindingKind::bad_value, "junctions", plan.junctions);
    const auto ends = [&](std::size_t i, std::string_view a, int first, std::string_view b, int second) {
        r.about_index(static_cast<int>(i));
        r.want_index(a, first, 0, junctions);
        r.want_index(b, second, 0, junctions);
    };
    for (std::size_t i = 0; i < plan.sections.size(); ++i) {
        ends(i, "from", plan.sections[i].from, "to", plan.sections[i].to);
    }
    for (std::size_t i = 0; i < plan.emitters.size(); ++i) {
        ends(i, "flow_junction", plan.emitters[i].flow_junction, "return_junction", plan.emitters[i].return_junction);
    }
    for (std::size_t i = 0; i < plan.sources.size(); ++i) {
        ends(i, "flow_junction", plan.sources[i].flow_junction, "return_junction", plan.sources[i].return_junction);
    }
    for (std::size_t i = 0; i < plan.mixers.size(); ++i) {
        ends(i, "from", plan.mixers[i].from, "to", plan.mixers[i].to);
        r.want("square_resistance", plan.mixers[i].square_resistance, least_resistance);
    }
    for (std::size_t i = 0; i < plan.pumps.size(); ++i) {
        r.about_index(static_cast<int>(i));
        r.want_index("section", plan.pumps[i].section, 0, plan.sections.size());
    }
    r.about_index(-1);
    if (plan.header) {
        r.want("square_resistance", plan.header->square_resistance, least_resistance);
        if (plan.sources.empty()) r.add(FindingKind::bad_value, "sources", 0.0);
    }
    return out;
}

/// Marks the junctions that have separate flow and return nodes.
std::vector<char> doubled_junctions(const Plan& plan) {
    std::vector<char> doubled(at(plan.junctions), 0);
    for (const auto& s : plan.sections) {
        if (s.carries != Carries::loop) doubled[at(s.from)] = doubled[at(s.to)] = 1;
    }
    for (const auto& s : plan.sources) {
        if (s.flow_junction == s.return_junction) doubled[at(s.flow_junction)] = 1;
    }
    for (const auto& m : plan.mixers) doubled[at(m.from)] = doubled[at(m.to)] = 1;
    return doubled;
}

class Builder {
public:
    explicit Builder(const Plan& plan) : plan_{plan}, doubled_{doubled_junctions(plan)} {
        out_.junctions.resize(at(plan.junctions));
    }

    BuiltNetwork build() {
        for (const auto& s : plan_.sections) add_section(s);
        for (const auto& e : plan_.emitters) add_emitter(e);
        for (const auto& s : plan_.sources) add_source(s);
        if (!plan_.sources.empty()) out_.drive = out_.source_pump = out_.system.sources.front().link;
        if (plan_.header) add_header(*plan_.header);
        for (const auto& m : plan_.mixers) add_mixer(m);
        for (const auto& p : plan_.pumps) add_pump_in_section(p);
        out_.system.rooms = plan_.rooms;
        out_.system.fluid = plan_.fluid;
        out_.system.outdoor = plan_.outdoor;
        if (!plan_.sources.empty()) {
            out_.system.pipework.reference_node = return_node(plan_.sources.front().return_junction);
        }
        return std::move(out_);
    }

private:
    int new_node() { return out_.system.pipework.nodes++; }

    int flow_node(int junction) {
        auto& nodes = out_.junctions[at(junction)];
        if (nodes.flow < 0) nodes.flow = new_node();
        if (doubled_[at(junction)] == 0) nodes.return_ = nodes.flow;
        return nodes.flow;
    }

    int return_node(int junction) {
        if (doubled_[at(junction)] == 0) return flow_node(junction);
        auto& nodes = out_.junctions[at(junction)];
        if (nodes.return_ < 0) nodes.return_ = new_node();
        return nodes.return_;
    }

    int add_link(const Link& link, const PipeLoss& loss) {
        out_.system.pipework.links.push_back(link);
        out_.system.pipe_loss.push_back(loss);
        return static_cast<int>(out_.system.pipework.links.size()) - 1;
    }

    void add_section(const PlanSection& s) {
        Link link;
        link.conduit = s.conduit;
        link.length = s.length;
        link.loss_factor = s.loss_factor;
        link.closed = s.closed;
        SectionLinks links;
        if (s.carries != Carries::return_only) {
            link.from = flow_node(s.from);
            link.to = s.carries == Carries::loop ? return_node(s.to) : flow_node(s.to);
            links.flow = add_link(link, s.heat_loss);
        }
        if (s.carries == Carries::both || s.carries == Carries::return_only) {
            link.from = return_node(s.to);
            link.to = return_node(s.from);
            links.return_ = add_link(link, s.heat_loss);
        }
        out_.sections.push_back(links);
    }

    void add_emitter(const PlanEmitter& e) {
        Link link;
        link.from = flow_node(e.flow_junction);
        link.to = return_node(e.return_junction);
        if (e.loss_factor > 0.0 || e.length > Length{}) link.conduit = e.connection;
        link.length = e.length;
        link.loss_factor = e.loss_factor;
        link.valve_resistance = e.valve_resistance;
        link.square_resistance = e.square_resistance;
        out_.system.emitters.push_back({add_link(link, {}), e.rating, e.room, e.beyond});
    }

    void add_source(const PlanSource& s) {
        Link link;
        link.from = return_node(s.return_junction);
        link.to = flow_node(s.flow_junction);
        link.square_resistance = s.square_resistance;
        link.pump = new_pump(s.pump);
        out_.system.sources.push_back({add_link(link, {}), s.flow_temperature, s.capacity, s.minimum_flow});
    }

    int new_pump(const Pump& pump) {
        out_.system.pipework.pumps.push_back(pump);
        return static_cast<int>(out_.system.pipework.pumps.size()) - 1;
    }

    /// Moves the source's link, with its resistance, to the primary side of the header; the link that remains drives
    /// the emitters.
    void add_header(const PlanHeader& h) {
        const int top = new_node();
        auto& links = out_.system.pipework.links;
        const int bottom = links[at(out_.drive)].from;
        Link source = links[at(out_.drive)];
        source.to = top;
        source.pump = new_pump(h.source_pump);
        links[at(out_.drive)].from = top;
        links[at(out_.drive)].square_resistance = 0.0;
        out_.source_pump = add_link(source, {});
        out_.system.sources.front().link = out_.source_pump;
        Link header;
        header.from = top;
        header.to = bottom;
        header.square_resistance = h.square_resistance;
        out_.header = add_link(header, {});
    }

    void add_mixer(const PlanMixer& m) {
        const int mixed = new_node();
        const auto between = [&](int from, int to, double square, double valve, int pump) {
            Link link;
            link.from = from;
            link.to = to;
            link.square_resistance = square;
            link.valve_resistance = valve;
            link.pump = pump;
            return add_link(link, {});
        };
        MixerLinks links;
        links.valve = between(flow_node(m.from), mixed, m.square_resistance, m.valve_resistance, -1);
        links.bypass = between(return_node(m.to), mixed, m.square_resistance, 0.0, -1);
        links.pump = between(mixed, flow_node(m.to), 0.0, 0.0, new_pump(m.pump));
        links.back = between(return_node(m.to), return_node(m.from), m.square_resistance, 0.0, -1);
        out_.mixers.push_back(links);
    }

    /// The pipe now ends at a new node, and the pump connects this node to the pipe's former end.
    void add_pump_in_section(const PlanPump& p) {
        const auto& section = out_.sections[at(p.section)];
        const bool in_return = section.flow < 0 || (p.in_return && section.return_ >= 0);
        const int pipe = in_return ? section.return_ : section.flow;
        const int middle = new_node();
        const int end = std::exchange(out_.system.pipework.links[at(pipe)].to, middle);
        Link link;
        link.closed = out_.system.pipework.links[at(pipe)].closed;
        // A return pipe runs from the section's `to` to its `from`.
        const bool along = in_return == p.towards_from;
        link.from = along ? middle : end;
        link.to = along ? end : middle;
        link.pump = new_pump(p.pump);
        (void)add_link(link, {});
    }

    const Plan& plan_;
    std::vector<char> doubled_;
    BuiltNetwork out_;
};

}  // namespace

BuiltNetwork build_network(const Plan& plan) {
    Findings refused = refusals_of(plan);
    if (has_error(refused)) {
        BuiltNetwork out;
        out.findings = std::move(refused);
        return out;
    }
    return Builder{plan}.build();
}

}  // namespace loopfolio::network
