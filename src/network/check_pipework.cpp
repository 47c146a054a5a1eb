// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/check_pipework.hpp"

#include "network/refusals.hpp"

#include <cmath>
#include <numeric>

namespace loopfolio::network {

namespace {

bool resists(const Link& link) {
    return link.length.si() > 0.0 || link.loss_factor > 0.0 || link.valve_resistance > 0.0 ||
           link.square_resistance > 0.0;
}

void check_link(Refusals& r, const Link& link, const Pipework& p) {
    r.want_index("from", link.from, 0, at(p.nodes));
    r.want_index("to", link.to, 0, at(p.nodes));
    r.want_index("pump", link.pump, -1, p.pumps.size());
    if (link.from == link.to) r.add(FindingKind::link_to_itself);
    r.want("length", link.length.si(), 0.0);
    r.want("loss_factor", link.loss_factor, 0.0);
    r.want("valve_resistance", link.valve_resistance, 0.0);
    r.want("square_resistance", link.square_resistance, 0.0);
    const double bore = link.conduit.bore.si();
    const bool needs_bore = link.length.si() > 0.0 || link.loss_factor > 0.0;
    r.want("bore", bore, needs_bore ? 1e-6 : 0.0);
    if (needs_bore && bore > 0.0) r.want("roughness", link.conduit.roughness.si() / bore, 0.0, 0.05);
    if (bore > 0.0 && !needs_bore) {
        r.add(FindingKind::pipe_without_length);
    } else if (!link.closed && link.pump < 0 && !resists(link)) {
        r.add(FindingKind::no_resistance);
    }
}

void check_points(Refusals& r, const Pump& pump) {
    if (pump.points.size() < 2) r.add(FindingKind::bad_value, "points", static_cast<double>(pump.points.size()));
    for (std::size_t i = 0; i < pump.points.size(); ++i) {
        const double flow = pump.points[i].flow.si();
        const double rise = pump.points[i].rise.si();
        r.want("points.flow", flow, i == 0 ? 0.0 : std::nextafter(pump.points[i - 1].flow.si(), unbounded));
        r.want("points.rise", rise, i == 0 ? 1e-6 : 0.0);
        if (i > 0 && rise > pump.points[i - 1].rise.si()) r.add(FindingKind::pump_curve_rising, "points", flow);
    }
}

void check_pump(Refusals& r, const Pump& pump) {
    r.want("speed", pump.speed, 1e-3, 1.5);
    if (!pump.points.empty()) check_points(r, pump);
    r.want("shutoff", pump.shutoff.si(), 0.0);
    if (pump.linear < 0.0 || pump.square < 0.0) r.add(FindingKind::pump_curve_rising, "linear, square");
    r.want("linear", std::abs(pump.linear), 0.0);
    r.want("square", std::abs(pump.square), 0.0);
    if (pump.mode == PumpMode::constant_speed) {
        if (pump.points.empty()) r.want("shutoff", pump.shutoff.si(), 1e-6);
        return;
    }
    r.want("set_rise", pump.set_rise.si(), 1e-6);
    if (pump.mode == PumpMode::proportional_pressure) r.want("set_flow", pump.set_flow.si(), 1e-12);
}

void check_fluid(Refusals& r, std::span<const physics::FluidState> fluid, std::size_t links) {
    if (fluid.size() != 1 && fluid.size() != links) {
        r.add(FindingKind::index_out_of_range, "fluid", static_cast<double>(fluid.size()));
    }
    for (std::size_t i = 0; i < fluid.size(); ++i) {
        if (fluid.size() > 1) r.about_link(static_cast<int>(i));
        r.want("density", fluid[i].density.si(), 1e-3);
        r.want("viscosity", fluid[i].viscosity.si(), 1e-9);
    }
}

/// Pump links without any resistance must not form a ring, because the flow round it would be undetermined.
void check_bare_rings(Refusals& r, const Pipework& p) {
    std::vector<int> leader;
    const auto find = [&](int node) {
        while (leader[at(node)] != node) node = leader[at(node)] = leader[at(leader[at(node)])];
        return node;
    };
    for (std::size_t i = 0; i < p.links.size(); ++i) {
        const Link& link = p.links[i];
        if (link.closed || resists(link)) continue;
        if (leader.empty()) {
            leader.resize(at(p.nodes));
            std::iota(leader.begin(), leader.end(), 0);
        }
        const int a = find(link.from);
        const int b = find(link.to);
        r.about_link(static_cast<int>(i));
        if (a == b) r.add(FindingKind::ring_without_resistance);
        leader[at(a)] = b;
    }
}

}  // namespace

Findings refusals_of(const Pipework& p, std::span<const physics::FluidState> fluid) {
    Findings out;
    Refusals r{out};
    if (p.nodes < 1) r.add(FindingKind::bad_value, "nodes", p.nodes);
    else r.want_index("reference_node", p.reference_node, 0, at(p.nodes));
    if (!p.drawn.empty() && p.drawn.size() != at(p.nodes)) {
        r.add(FindingKind::index_out_of_range, "drawn", static_cast<double>(p.drawn.size()));
    }
    for (std::size_t n = 0; n < p.drawn.size(); ++n) {
        r.about_node(static_cast<int>(n));
        r.want("drawn", std::abs(p.drawn[n].si()), 0.0);
    }
    for (std::size_t i = 0; i < p.pumps.size(); ++i) {
        r.about_index(static_cast<int>(i));
        check_pump(r, p.pumps[i]);
    }
    for (std::size_t i = 0; i < p.links.size(); ++i) {
        r.about_link(static_cast<int>(i));
        check_link(r, p.links[i], p);
    }
    r.about_link(-1);
    check_fluid(r, fluid, p.links.size());
    if (out.empty()) check_bare_rings(r, p);
    return out;
}

}  // namespace loopfolio::network
