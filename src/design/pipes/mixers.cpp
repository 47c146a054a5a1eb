// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"
#include "design/pipes/pipe_plan.hpp"

#include "loopfolio/base/number_text.hpp"
#include "loopfolio/reference/limits.hpp"

#include <fmt/format.h>

namespace loopfolio::design {

namespace {

/// By node, the mixing set that it lies beyond; -1 on the main side. Searches the sections outwards from each `to`.
std::vector<int> mixer_of_nodes(const Design& d) {
    std::vector<std::vector<int>> next(d.nodes.size());
    for (std::size_t i = 0; i < d.junctions.section_from.size(); ++i) {
        next[static_cast<std::size_t>(d.junctions.section_from[i])].push_back(d.junctions.section_to[i]);
        next[static_cast<std::size_t>(d.junctions.section_to[i])].push_back(d.junctions.section_from[i]);
    }
    std::vector<int> mixer(d.nodes.size(), -1);
    for (std::size_t m = 0; m < d.junctions.mixer_to.size(); ++m) {
        std::vector<int> open{d.junctions.mixer_to[m]};
        while (!open.empty()) {
            const auto node = static_cast<std::size_t>(open.back());
            open.pop_back();
            if (mixer[node] == static_cast<int>(m)) continue;
            mixer[node] = static_cast<int>(m);
            open.insert(open.end(), next[node].begin(), next[node].end());
        }
    }
    return mixer;
}

}  // namespace

bool place_mixers(const job::Job& job, Design& d, std::vector<Refusal>& refusals) {
    d.mixers.resize(job.mixers.size());
    d.emitters.resize(job.emitters.size());
    if (job.mixers.empty()) return true;
    const auto beyond = mixer_of_nodes(d);
    const auto mixer_at = [&](int node) { return beyond[static_cast<std::size_t>(node)]; };
    for (std::size_t i = 0; i < d.emitters.size(); ++i) d.emitters[i].mixer = mixer_at(d.junctions.emitter_at[i]);
    for (std::size_t m = 0; m < job.mixers.size(); ++m) {
        const bool meets = mixer_at(d.junctions.mixer_to[m]) != static_cast<int>(m) || mixer_at(d.source_node) >= 0 ||
                           mixer_at(d.junctions.mixer_from[m]) >= 0;
        if (!meets) continue;
        refusals.push_back({fmt::format("mixers[{}].to", m), job.mixers[m].place,
                            "what lies beyond a mixing set must hang on it alone, and not on another mixing set",
                            "look for a section that joins it to the rest"});
    }
    return refusals.empty();
}

void size_mixers(const job::Job& job, Design& d) {
    for (std::size_t m = 0; m < d.mixers.size(); ++m) {
        auto& r = d.mixers[m];
        MassFlow sent;
        Power carried;
        for (const auto& e : d.emitters) {
            if (e.mixer != static_cast<int>(m)) continue;
            sent += e.flow;
            carried += e.load + e.downward;
        }
        r.flow = job.mixers[m].flow.value;
        r.return_ = r.flow;
        if (sent <= MassFlow{}) continue;
        r.return_ = r.flow - carried / (sent * d.state.specific_heat);
        r.sent = sent / d.state.density;
        // The water drawn from the main side gives up its heat between the main flow temperature and the return beyond
        // the mixing set.
        r.drawn = carried / (d.state.specific_heat * (d.flow - r.return_)) / d.state.density;
    }
}

void find_mixer_heads(const job::Job& job, Design& d, const Routes& routes) {
    for (std::size_t m = 0; m < d.mixers.size() && m < routes.mixer_head.size(); ++m) {
        auto& r = d.mixers[m];
        r.head = routes.mixer_head[m];
        if (job.mixers[m].pump) r.available = head_at(*job.mixers[m].pump, r.sent);
    }
}

void judge_mixers(const job::Job& job, Design& d) {
    for (std::size_t m = 0; m < d.mixers.size(); ++m) {
        auto& r = d.mixers[m];
        if (!describes_itself(job.mixers[m].pump)) continue;
        // A pump gives no head beyond the end of its curve.
        r.pump = add(d.findings, covered({Check::mixer_head, Subject::mixer, static_cast<int>(m)}, r.head,
                                         r.available.value_or(Pressure{}), reference::limits().pump_margin.value));
    }
}

}  // namespace loopfolio::design
