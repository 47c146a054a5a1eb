// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/topology.hpp"

#include "network/at.hpp"
#include "network/incidence.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

int other_end(const std::pair<int, int>& ends, int node) { return ends.first == node ? ends.second : ends.first; }

/// Finds the connected parts by breadth-first search; the one with the reference node comes first.
void find_parts(Topology& t, const Incidence& in, int nodes, int reference) {
    t.part.assign(at(nodes), -1);
    std::vector<int> queue;
    queue.reserve(at(nodes));
    for (int i = -1; i < nodes; ++i) {
        const int start = i < 0 ? reference : i;
        if (t.part[at(start)] >= 0) continue;
        const auto part = static_cast<int>(t.zero_node.size());
        t.zero_node.push_back(start);
        t.part[at(start)] = part;
        queue.assign(1, start);
        for (std::size_t k = 0; k < queue.size(); ++k) {
            for (const int link : in.links_of(queue[k])) {
                const int next = other_end(t.ends[at(link)], queue[k]);
                if (t.part[at(next)] >= 0) continue;
                t.part[at(next)] = part;
                queue.push_back(next);
            }
        }
    }
}

/// One visited node on the path of the depth-first search.
struct Visit {
    int node;
    int by_link;
    int next;  // position in the incidence
};

/// Marks the links that lie on some circuit: all but the bridges (Tarjan's lowest reachable number, without recursion).
std::vector<char> on_circuit(const Topology& t, const Incidence& in, int nodes) {
    std::vector<char> circuit(t.ends.size(), 0);
    std::vector<int> number(at(nodes), -1);
    std::vector<int> lowest(at(nodes), 0);
    std::vector<Visit> path;
    int count = 0;
    const auto enter = [&](int node, int by_link) {
        number[at(node)] = lowest[at(node)] = count++;
        path.push_back({node, by_link, in.first_of(node)});
    };
    for (int root = 0; root < nodes; ++root) {
        if (number[at(root)] >= 0) continue;
        enter(root, -1);
        while (!path.empty()) {
            Visit& v = path.back();
            if (v.next < in.first_of(v.node + 1)) {
                const int link = in.link_at(v.next++);
                if (link == v.by_link) continue;
                const int other = other_end(t.ends[at(link)], v.node);
                if (number[at(other)] < 0) {
                    enter(other, link);
                } else {
                    circuit[at(link)] = 1;
                    lowest[at(v.node)] = std::min(lowest[at(v.node)], number[at(other)]);
                }
                continue;
            }
            const Visit done = v;
            path.pop_back();
            if (path.empty()) continue;
            const int above = path.back().node;
            lowest[at(above)] = std::min(lowest[at(above)], lowest[at(done.node)]);
            if (lowest[at(done.node)] <= number[at(above)]) circuit[at(done.by_link)] = 1;
        }
    }
    return circuit;
}

Finding warning(FindingKind kind, int node, int link) {
    Finding f;
    f.kind = kind;
    f.severity = Severity::warning;
    f.node = node;
    f.link = link;
    return f;
}

/// By part: its number of nodes, and what drives a flow in it.
struct PartFacts {
    std::vector<int> nodes;
    std::vector<double> drawn;
    std::vector<double> drawn_size;
    std::vector<char> pumped;
};

PartFacts part_facts(const Topology& t, const Pipework& p) {
    const std::size_t parts = t.zero_node.size();
    PartFacts facts{std::vector<int>(parts, 0), std::vector<double>(parts, 0.0), std::vector<double>(parts, 0.0),
                    std::vector<char>(parts, 0)};
    for (std::size_t n = 0; n < t.part.size(); ++n) {
        const auto part = at(t.part[n]);
        ++facts.nodes[part];
        if (p.drawn.empty()) continue;
        facts.drawn[part] += p.drawn[n].si();
        facts.drawn_size[part] += std::abs(p.drawn[n].si());
    }
    for (const auto& link : p.links) {
        if (link.pump >= 0 && !link.closed) facts.pumped[at(t.part[at(link.from)])] = 1;
    }
    return facts;
}

void report_parts(Findings& out, const Topology& t, const PartFacts& facts) {
    for (std::size_t part = 0; part < t.zero_node.size(); ++part) {
        const int node = t.zero_node[part];
        if (std::abs(facts.drawn[part]) > 1e-9 * facts.drawn_size[part]) {
            Finding f;
            f.kind = FindingKind::demand_not_balanced;
            f.node = node;
            f.value = facts.drawn[part];
            out.push_back(f);
        }
        if (facts.nodes[part] == 1) {
            out.push_back(warning(FindingKind::node_without_path, node, -1));
            continue;
        }
        if (part > 0) out.push_back(warning(FindingKind::separate_part, node, -1));
        if (facts.pumped[part] == 0 && facts.drawn_size[part] == 0.0) {
            out.push_back(warning(FindingKind::no_drive, node, -1));
        }
    }
}

void report_dead_links(Findings& out, const Topology& t, const PartFacts& facts) {
    for (std::size_t i = 0; i < t.ends.size(); ++i) {
        if (t.open[i] == 0 || t.on_circuit[i] != 0) continue;
        if (facts.drawn_size[at(t.part[at(t.ends[i].first)])] > 0.0) continue;
        const auto kind = t.on_shut_circuit[i] != 0 ? FindingKind::cut_off : FindingKind::no_circuit;
        out.push_back(warning(kind, -1, static_cast<int>(i)));
    }
}

/// Follows the line of links from a pump until it branches. A pump that is met from its outlet side works against the
/// first one.
void report_opposed(Findings& out, const Topology& t, const Pipework& p, const Incidence& in, int pump_link) {
    int link = pump_link;
    int node = p.links[at(link)].to;
    for (std::size_t steps = 0; steps < p.links.size(); ++steps) {
        const auto here = in.links_of(node);
        if (here.size() != 2) return;
        link = here[0] == link ? here[1] : here[0];
        if (link == pump_link) return;
        if (p.links[at(link)].pump >= 0) {
            if (p.links[at(link)].to != node || link < pump_link) return;
            Finding f = warning(FindingKind::pumps_oppose, -1, pump_link);
            f.other = link;
            out.push_back(f);
            return;
        }
        node = other_end(t.ends[at(link)], node);
    }
}

}  // namespace

bool fits(const Topology& t, const Pipework& pipework) {
    if (t.part.size() != at(pipework.nodes) || t.ends.size() != pipework.links.size()) return false;
    if (t.zero_node.empty() || t.zero_node.front() != pipework.reference_node) return false;
    for (std::size_t i = 0; i < t.ends.size(); ++i) {
        const Link& link = pipework.links[i];
        if (t.ends[i].first != link.from || t.ends[i].second != link.to) return false;
        if ((t.open[i] == 0) != link.closed) return false;
    }
    return true;
}

Topology topology_of(const Pipework& pipework) {
    Topology t;
    t.ends.reserve(pipework.links.size());
    t.open.reserve(pipework.links.size());
    for (const auto& link : pipework.links) {
        t.ends.emplace_back(link.from, link.to);
        t.open.push_back(link.closed ? 0 : 1);
    }
    Incidence in;
    in.set(pipework.nodes, t.ends, t.open);
    find_parts(t, in, pipework.nodes, pipework.reference_node);
    t.on_circuit = on_circuit(t, in, pipework.nodes);
    t.on_shut_circuit = t.on_circuit;
    if (std::ranges::any_of(t.open, [](char open) { return open == 0; })) {
        in.set(pipework.nodes, t.ends, {});
        t.on_shut_circuit = on_circuit(t, in, pipework.nodes);
    }
    t.unknown.resize(at(pipework.nodes));
    for (std::size_t n = 0; n < t.unknown.size(); ++n) {
        const bool zero = t.zero_node[at(t.part[n])] == static_cast<int>(n);
        t.unknown[n] = zero ? -1 : t.unknowns++;
    }
    return t;
}

Findings findings_of(const Topology& t, const Pipework& pipework) {
    Findings out;
    const PartFacts facts = part_facts(t, pipework);
    report_parts(out, t, facts);
    report_dead_links(out, t, facts);
    const auto pumps = std::ranges::count_if(pipework.links, [](const Link& l) { return l.pump >= 0; });
    if (pumps > 1) {
        Incidence in;
        in.set(pipework.nodes, t.ends, t.open);
        for (std::size_t i = 0; i < pipework.links.size(); ++i) {
            if (pipework.links[i].pump < 0 || pipework.links[i].closed) continue;
            report_opposed(out, t, pipework, in, static_cast<int>(i));
        }
    }
    return out;
}

}  // namespace loopfolio::network
