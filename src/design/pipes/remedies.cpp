// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/remedies.hpp"
#include "loopfolio/design/operation.hpp"
#include "loopfolio/reference/thresholds.hpp"

#include "design/parts.hpp"

#include <algorithm>
#include <cmath>

namespace loopfolio::design {

namespace {

/// The wider pipe to replace a section with; null for the largest of its material.
const reference::Pipe* wider(const job::Section& s, const SectionResult& r) {
    if (r.next_size != nullptr) return r.next_size;
    const auto larger = reference::larger_sizes(*reference::find_pipe(s.pipe));
    return larger.empty() ? nullptr : &larger.front();
}

/// The check that judges the pump: by its own curve, else by what circulators of houses usually give.
FindingId pump_check(const Design& d) { return d.duty.circulator ? d.duty.circulator : d.duty.usual_circulator; }

/// The head that it gives, or that such circulators give at most.
Pressure head_there(const Design& d) {
    if (d.duty.circulator || !d.duty.usual_circulator) return d.duty.available.value_or(Pressure{});
    return limit_as<Pressure>(d.at(d.duty.usual_circulator));
}

/// Finds the section that helps most. One with a pressure drop below a certain share of what the pump lacks is not
/// worth replacing.
std::optional<PipeChange> most_helpful(const job::Job& job, const Design& d) {
    std::optional<PipeChange> best;
    Pressure most = reference::thresholds().worth_replacing.value * (d.duty.head - head_there(d));
    for (const int index : d.duty.index_sections) {
        const auto i = static_cast<std::size_t>(index);
        const auto* to = wider(job.sections[i], d.sections[i]);
        if (to == nullptr || d.sections[i].pressure_drop <= most) continue;
        most = d.sections[i].pressure_drop;
        best = PipeChange{index, to};
    }
    return best;
}

}  // namespace

void replace_pipe(job::Job& job, int index, const reference::Pipe& pipe) {
    auto& section = job.sections[static_cast<std::size_t>(index)];
    section.pipe = pipe.name;
    section.bore = {};
    section.insert_bore = {};
    section.roughness = {};
    // What the job states holds for the new pipe too; guidance goes by its size.
    if (section.velocity_preferred.basis == Basis::default_value) section.velocity_preferred = {};
    if (section.velocity_limit.basis == Basis::default_value) section.velocity_limit = {};
    fill_section(section, job.conditions);
}

namespace {

/// Records a change. A section that is widened twice counts as one change, to the last of its sizes.
void note(std::vector<PipeChange>& changes, PipeChange change) {
    const auto at = std::find_if(changes.begin(), changes.end(),
                                 [&](const PipeChange& c) { return c.section == change.section; });
    if (at == changes.end()) changes.push_back(change);
    else at->to = change.to;
}

/// Gives emitters that fall short the smallest rating that is enough at the temperatures that reach them.
void enlarge_emitters(const Design& d, job::Job& job, std::vector<int>& changed) {
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        const auto& r = d.emitters[i];
        if (d.at(r.finding).verdict != Verdict::change || r.needed_at_50k <= Power{}) continue;
        const Power rating_step = reference::thresholds().rating_step.value;
        const double steps = std::ceil(r.needed_at_50k / rating_step);
        job.emitters[i].output_at_50k = Input<Power>::filled(steps * rating_step, "common-practice");
        job.emitters[i].existing = false;
        changed.push_back(static_cast<int>(i));
    }
}

bool too_weak(const Design& d) {
    const auto check = pump_check(d);
    return check && d.at(check).verdict == Verdict::change;
}

}  // namespace

std::optional<PumpRemedy> widen_for_pump(const job::Job& filled, const Design& design) {
    if (!too_weak(design) || (design.duty.circulator && !design.duty.available)) return {};
    job::Job job = filled;
    Design d = design;
    PumpRemedy remedy;
    while (too_weak(d)) {
        const auto change = most_helpful(job, d);
        if (!change) return {};
        replace_pipe(job, change->section, *change->to);
        note(remedy.changes, *change);
        auto again = design_values(job);
        if (!std::holds_alternative<Design>(again)) return {};
        d = std::get<Design>(std::move(again));
    }
    remedy.head = d.duty.head;
    remedy.available = head_there(d);
    remedy.verdict = d.at(pump_check(d)).verdict;
    return remedy;
}

namespace {

/// Sets a pump that could give more than the design needs to the head that is needed, as commissioning does. True if it
/// was set.
bool set_to(std::optional<job::Circulator>& pump, Pressure head, const std::optional<Pressure>& available) {
    if (!pump || pump->mode != job::PumpMode::constant_speed || !available) return false;
    pump->mode = job::PumpMode::constant_pressure;
    pump->set_head = head;
    return true;
}

void set_down(const Design& d, job::Job& job, Changes& changes) {
    if (set_to(job.circulator, d.duty.head, d.duty.available)) changes.set_head = d.duty.head;
    changes.mixer_heads.resize(d.mixers.size());
    for (std::size_t m = 0; m < d.mixers.size(); ++m) {
        const auto& r = d.mixers[m];
        if (set_to(job.mixers[m].pump, r.head, r.available)) changes.mixer_heads[m] = r.head;
    }
}

}  // namespace

std::pair<job::Job, Changes> with_changes(const job::Job& filled, const Design& design) {
    std::pair<job::Job, Changes> out{filled, {}};
    auto& [job, changes] = out;
    for (std::size_t i = 0; i < design.sections.size(); ++i) {
        if (design.sections[i].verdict != Verdict::change) continue;
        const auto* to = wider(job.sections[i], design.sections[i]);
        if (to == nullptr) continue;
        replace_pipe(job, static_cast<int>(i), *to);
        changes.pipes.push_back({static_cast<int>(i), to});
    }
    enlarge_emitters(design, job, changes.emitters);
    const auto again = design_values(job, nullptr, Remedies::left_out);
    const auto* d = std::get_if<Design>(&again);
    if (d == nullptr) return out;
    if (!too_weak(*d)) {
        set_down(*d, job, changes);
        return out;
    }
    // Which pipe is wide enough is looked for only where pipes are to be widened.
    if (const auto remedy = widen_for_pump(job, std::get<Design>(design_values(job)))) {
        for (const auto& change : remedy->changes) {
            replace_pipe(job, change.section, *change.to);
            note(changes.pipes, change);
        }
        const auto wider_too = design_values(job, nullptr, Remedies::left_out);
        if (const auto* then = std::get_if<Design>(&wider_too)) set_down(*then, job, changes);
        return out;
    }
    // Where the job describes no pump, one that gives the head needed is assumed already.
    if (!d->duty.circulator) return out;
    changes.circulator = true;
    job.circulator.reset();
    return out;
}

}  // namespace loopfolio::design
