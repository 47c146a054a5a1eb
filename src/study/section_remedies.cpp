// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/section_remedies.hpp"

#include "loopfolio/design/remedies.hpp"
#include "study/all_findings.hpp"

#include <map>
#include <tuple>

namespace loopfolio::study {

namespace {

using design::Finding;
using design::Findings;

std::tuple<design::Check, design::Subject, int> thing_of(const Finding& f) { return {f.check, f.subject, f.index}; }

/// The house as designed, and the things of it that have to change already.
struct Before {
    const design::House& house;
    const design::Design& design;
    std::map<std::tuple<design::Check, design::Subject, int>, bool> changes;
};

/// Designs with other values and counts what has to change only then. `best` is the worst verdict that the section may
/// have for the way out to hold.
Tried try_values(const Before& before, job::Job values, int section, Verdict best) {
    design::House house{before.house.inputs, std::move(values)};
    const auto result = design::design(house, nullptr, design::Remedies::left_out);
    const auto* d = std::get_if<design::Design>(&result);
    if (d == nullptr) return {};
    Tried out;
    for (const auto& f : all_findings(house, *d)) {
        if (f.verdict != Verdict::change) continue;
        const auto was = before.changes.find(thing_of(f));
        out.breaks += was == before.changes.end() || !was->second ? 1 : 0;
    }
    const Verdict now = d->sections[static_cast<std::size_t>(section)].verdict;
    out.holds = out.breaks == 0 && worse(now, best) == best;
    return out;
}

Tried try_drop(const Before& before, TemperatureDifference drop, int section, Verdict best) {
    job::Job values = before.house.values;
    values.conditions.drop.value = drop;
    return try_values(before, std::move(values), section, best);
}

Tried try_size(const Before& before, const reference::Pipe& pipe, int section, Verdict best) {
    return try_values(before, design::with_pipe(before.house.values, section, pipe), section, best);
}

}  // namespace

std::vector<SectionRemedies> try_remedies(const design::House& house, const design::Design& design) {
    Before before{house, design, {}};
    for (const auto& f : all_findings(house, design)) before.changes[thing_of(f)] = f.verdict == Verdict::change;
    std::vector<SectionRemedies> out(design.sections.size());
    for (std::size_t i = 0; i < design.sections.size(); ++i) {
        const auto& s = design.sections[i];
        if (s.verdict == Verdict::keep) continue;
        auto& r = out[i];
        const int section = static_cast<int>(i);
        if (s.next_size != nullptr) {
            r.tried_next_size = try_size(before, *s.next_size, section, Verdict::keep);
            if (r.tried_next_size->holds) r.next_size = s.next_size;
        }
        if (s.size_for_limit != nullptr) {
            r.tried_size_for_limit = try_size(before, *s.size_for_limit, section, Verdict::keep_noted);
            if (r.tried_size_for_limit->holds) r.size_for_limit = s.size_for_limit;
        }
        if (s.drop_to_keep) {
            r.tried_drop_to_keep = try_drop(before, *s.drop_to_keep, section, Verdict::keep);
            if (r.tried_drop_to_keep->holds) r.drop_to_keep = s.drop_to_keep;
        }
        if (s.drop_to_limit) {
            r.tried_drop_to_limit = try_drop(before, *s.drop_to_limit, section, Verdict::keep_noted);
            if (r.tried_drop_to_limit->holds) r.drop_to_limit = s.drop_to_limit;
        }
    }
    return out;
}

}  // namespace loopfolio::study
