// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/remedies.hpp"

#include "design/parts.hpp"

#include <algorithm>

namespace loopfolio::design {

namespace {

/// The wider pipe that a section would be given; null for the largest of its material.
const reference::Pipe* wider(const job::Section& s, const SectionResult& r) {
    if (r.next_size != nullptr) return r.next_size;
    const auto larger = reference::larger_sizes(*reference::find_pipe(s.pipe));
    return larger.empty() ? nullptr : &larger.front();
}

std::optional<PipeChange> most_helpful(const job::Job& job, const Design& d) {
    std::optional<PipeChange> best;
    Pressure most;
    for (const int index : d.duty.index_sections) {
        const auto i = static_cast<std::size_t>(index);
        const auto* to = wider(job.sections[i], d.sections[i]);
        if (to == nullptr || d.sections[i].pressure_drop <= most) continue;
        most = d.sections[i].pressure_drop;
        best = PipeChange{index, to};
    }
    return best;
}

void replace_pipe(job::Section& section, const reference::Pipe& pipe) {
    section.pipe = pipe.name;
    section.bore = {};
    section.insert_bore = {};
    section.roughness = {};
    fill_section(section);
}

/// A section widened twice is one change, to the last of its sizes.
void note(std::vector<PipeChange>& changes, PipeChange change) {
    const auto at = std::find_if(changes.begin(), changes.end(),
                                 [&](const PipeChange& c) { return c.section == change.section; });
    if (at == changes.end()) changes.push_back(change);
    else at->to = change.to;
}

bool too_weak(const Design& d) { return d.duty.circulator && d.duty.circulator->verdict == Verdict::change; }

}  // namespace

std::optional<PumpRemedy> widen_for_pump(const job::Job& filled, const Design& design) {
    if (!too_weak(design) || !design.duty.available) return {};
    job::Job job = filled;
    Design d = design;
    PumpRemedy remedy;
    while (too_weak(d)) {
        const auto change = most_helpful(job, d);
        if (!change) return {};
        replace_pipe(job.sections[static_cast<std::size_t>(change->section)], *change->to);
        note(remedy.changes, *change);
        auto again = design::design(job);
        if (!std::holds_alternative<Design>(again)) return {};
        d = std::get<Design>(std::move(again));
    }
    remedy.head = d.duty.head;
    remedy.available = *d.duty.available;
    remedy.verdict = d.duty.circulator->verdict;
    return remedy;
}

}  // namespace loopfolio::design
