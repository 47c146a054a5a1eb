// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/network/build.hpp"

#include "network/refusals.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::network {

namespace {

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
        ends(i, "flow_junction", plan.emitters[i].flow_junction, "return_junction",
             plan.emitters[i].return_junction);
    }
    for (std::size_t i = 0; i < plan.sources.size(); ++i) {
        ends(i, "flow_junction", plan.sources[i].flow_junction, "return_junction",
             plan.sources[i].return_junction);
    }
    return out;
}

/// Which junctions have a flow and a return node of their own.
std::vector<char> doubled_junctions(const Plan& plan) {
    std::vector<char> doubled(at(plan.junctions), 0);
    for (const auto& s : plan.sections) {
        if (s.carries != Carries::loop) doubled[at(s.from)] = doubled[at(s.to)] = 1;
    }
    for (const auto& s : plan.sources) {
        if (s.flow_junction == s.return_junction) doubled[at(s.flow_junction)] = 1;
    }
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
        if (e.loss_factor > 0.0) link.conduit = e.connection;
        link.loss_factor = e.loss_factor;
        link.valve_resistance = e.valve_resistance;
        link.square_resistance = e.square_resistance;
        out_.system.emitters.push_back({add_link(link, {}), e.rating, e.room});
    }

    void add_source(const PlanSource& s) {
        Link link;
        link.from = return_node(s.return_junction);
        link.to = flow_node(s.flow_junction);
        link.square_resistance = s.square_resistance;
        link.pump = static_cast<int>(out_.system.pipework.pumps.size());
        out_.system.pipework.pumps.push_back(s.pump);
        out_.system.sources.push_back({add_link(link, {}), s.flow_temperature, s.capacity, s.minimum_flow});
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
