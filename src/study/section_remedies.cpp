// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/section_remedies.hpp"

#include "loopfolio/design/remedies.hpp"
#include "study/all_findings.hpp"

#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace loopfolio::study {

namespace {

using design::Finding;

std::tuple<design::Check, design::Subject, int> thing_of(const Finding& f) { return {f.check, f.subject, f.index}; }

/// What a design with another value comes to; nothing where no design is possible with it.
struct Outcome {
    int breaks = 0;                 ///< things that change only with it
    std::vector<Verdict> sections;  ///< by section
};

/// Tries values on one copy of the house, which is put back after each.
class Trials {
public:
    Trials(const design::House& house, const design::Design& design) : house_{house} {
        for (const auto& f : all_findings(house, design)) changes_[thing_of(f)] = f.verdict == Verdict::change;
    }

    /// One drop may be the way out of several sections.
    const std::optional<Outcome>& with_drop(TemperatureDifference drop) {
        const auto known = drops_.find(drop.si());
        if (known != drops_.end()) return known->second;
        auto& value = house_.values.conditions.drop.value;
        const auto kept = std::exchange(value, drop);
        auto& out = drops_[drop.si()] = outcome();
        value = kept;
        return out;
    }

    std::optional<Outcome> with_size(int section, const reference::Pipe& pipe) {
        auto& values = house_.values;
        const auto kept = values.sections[static_cast<std::size_t>(section)];
        design::replace_pipe(values, section, pipe);
        auto out = outcome();
        values.sections[static_cast<std::size_t>(section)] = kept;
        return out;
    }

private:
    [[nodiscard]] std::optional<Outcome> outcome() const {
        const auto result = design::design(house_, nullptr, design::Remedies::left_out);
        const auto* d = std::get_if<design::Design>(&result);
        if (d == nullptr) return {};
        Outcome out;
        for (const auto& f : all_findings(house_, *d)) {
            if (f.verdict != Verdict::change) continue;
            const auto was = changes_.find(thing_of(f));
            out.breaks += was == changes_.end() || !was->second ? 1 : 0;
        }
        for (const auto& section : d->sections) out.sections.push_back(section.verdict);
        return out;
    }

    design::House house_;
    std::map<std::tuple<design::Check, design::Subject, int>, bool> changes_;  ///< what has to change already
    std::map<double, std::optional<Outcome>> drops_;
};

/// `best` is the worst verdict that the section may have for the way out to hold.
Tried judged(const std::optional<Outcome>& outcome, std::size_t section, Verdict best) {
    if (!outcome) return {};
    return {outcome->breaks == 0 && worse(outcome->sections[section], best) == best, outcome->breaks};
}

}  // namespace

std::vector<SectionRemedies> try_remedies(const design::House& house, const design::Design& design) {
    std::vector<SectionRemedies> out(design.sections.size());
    std::optional<Trials> trials;
    for (std::size_t i = 0; i < design.sections.size(); ++i) {
        const auto& s = design.sections[i];
        if (s.verdict == Verdict::keep) continue;
        if (!trials) trials.emplace(house, design);
        auto& r = out[i];
        const int section = static_cast<int>(i);
        std::optional<Outcome> with_next;
        if (s.next_size != nullptr) {
            with_next = trials->with_size(section, *s.next_size);
            r.tried_next_size = judged(with_next, i, Verdict::keep);
            if (r.tried_next_size->holds) r.next_size = s.next_size;
        }
        if (s.size_for_limit != nullptr) {
            const bool same = s.size_for_limit == s.next_size;
            r.tried_size_for_limit = judged(same ? with_next : trials->with_size(section, *s.size_for_limit), i,
                                            Verdict::keep_noted);
            if (r.tried_size_for_limit->holds) r.size_for_limit = s.size_for_limit;
        }
        if (s.drop_to_keep) {
            r.tried_drop_to_keep = judged(trials->with_drop(*s.drop_to_keep), i, Verdict::keep);
            if (r.tried_drop_to_keep->holds) r.drop_to_keep = s.drop_to_keep;
        }
        if (s.drop_to_limit) {
            r.tried_drop_to_limit = judged(trials->with_drop(*s.drop_to_limit), i, Verdict::keep_noted);
            if (r.tried_drop_to_limit->holds) r.drop_to_limit = s.drop_to_limit;
        }
    }
    return out;
}

}  // namespace loopfolio::study
