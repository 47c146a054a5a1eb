// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

#include <algorithm>
#include <numeric>
#include <unordered_map>

namespace loopfolio::job {

namespace {

/// Numbers the junctions, and groups those that sections connect.
class Junctions {
public:
    std::size_t number(std::string_view name) {
        const auto [at, is_new] = numbers_.try_emplace(name, parents_.size());
        if (is_new) {
            parents_.push_back(parents_.size());
            names_.push_back(name);
        }
        return at->second;
    }
    [[nodiscard]] bool known(std::string_view name) const { return numbers_.contains(name); }
    [[nodiscard]] const std::vector<std::string_view>& names() const { return names_; }

    std::size_t group_of(std::size_t junction) {
        while (parents_[junction] != junction) {
            parents_[junction] = parents_[parents_[junction]];
            junction = parents_[junction];
        }
        return junction;
    }
    std::size_t group_of(std::string_view name) { return group_of(number(name)); }

    void join(std::string_view a, std::string_view b) {
        const std::size_t x = group_of(a);
        parents_[x] = group_of(b);
    }

private:
    std::unordered_map<std::string_view, std::size_t> numbers_;
    std::vector<std::size_t> parents_;
    std::vector<std::string_view> names_;
};

bool complete(const Section& section) { return !section.from.empty() && !section.to.empty(); }

Junctions join_sections(const Draft& draft) {
    Junctions out;
    for (std::size_t i = 0; i < draft.sections.size(); ++i) {
        const Section& section = draft.job.sections[i];
        if (!complete(section)) continue;
        if (section.from == section.to) {
            (void)out.number(section.from);
            complain(draft.sections[i], "to", "is the junction that the section starts from",
                     "name the junction at its other end");
        } else {
            out.join(section.from, section.to);
        }
    }
    for (const auto& mixer : draft.job.mixers) {
        if (!mixer.from.empty() && !mixer.to.empty()) out.join(mixer.from, mixer.to);
    }
    return out;
}

/// Maps `J1O` and `J10`, or `j-1` and `J_1`, to the same text: such names look alike in handwriting.
std::string as_written_by_hand(std::string_view name) {
    std::string out = lower_snake(name);
    std::erase(out, '_');
    std::erase(out, '.');
    std::replace(out.begin(), out.end(), 'o', '0');
    std::replace(out.begin(), out.end(), 'i', '1');
    std::replace(out.begin(), out.end(), 'l', '1');
    return out;
}

/// Suggests the look-alike of `wanted` among `names`, or else, for a name that is long enough, the nearest.
std::string junction_hint(std::string_view wanted, const std::vector<std::string_view>& names) {
    for (const auto name : names) {
        if (name != wanted && as_written_by_hand(name) == as_written_by_hand(wanted)) {
            return "did you mean " + named(name) + "?";
        }
    }
    if (wanted.size() < 4) return {};
    return did_you_mean(wanted, names);
}

Hint junction_hint_or_names(std::string_view wanted, const std::vector<std::string_view>& names) {
    constexpr std::size_t few = 12;
    std::string near = junction_hint(wanted, names);
    if (!near.empty()) return near;
    if (!names.empty() && names.size() <= few) return "the junctions are " + listed(names, "and");
    return "look for its name among the ends of the sections";
}

bool check_junction(const Mapping& m, std::string_view key, const std::string& at, const Junctions& junctions) {
    if (at.empty() || junctions.known(at)) return !at.empty();
    complain(m, key, "is not a junction: no section starts or ends there",
             junction_hint_or_names(at, junctions.names()));
    return false;
}

std::string list_words(const std::vector<std::string>& ids) {
    constexpr std::size_t most = 8;
    std::string out;
    for (std::size_t i = 0; i < std::min(ids.size(), most); ++i) {
        if (i > 0) out += i + 1 == ids.size() ? " and " : ", ";
        out += named(ids[i]);
    }
    if (ids.size() > most) out += " and " + std::to_string(ids.size() - most) + " more";
    return out;
}

/// A part of the pipework that water from the heat source cannot reach.
struct Stray {
    std::size_t first = 0;  ///< index of its first section
    std::vector<std::string> ids;
    std::vector<std::string_view> junctions;
};

std::vector<Stray> strays(const Draft& draft, Junctions& junctions, std::size_t root) {
    std::vector<Stray> out;
    std::unordered_map<std::size_t, std::size_t> index;
    for (std::size_t i = 0; i < draft.sections.size(); ++i) {
        const Section& section = draft.job.sections[i];
        if (!complete(section) || junctions.group_of(section.from) == root) continue;
        const auto [at, is_new] = index.try_emplace(junctions.group_of(section.from), out.size());
        if (is_new) out.push_back({i, {}, {}});
        Stray& stray = out[at->second];
        stray.ids.push_back(section.id);
        stray.junctions.insert(stray.junctions.end(), {section.from, section.to});
    }
    return out;
}

bool check_joined(const Draft& draft, Junctions& junctions, const std::string& root_name) {
    const std::size_t root = junctions.group_of(root_name);
    std::vector<std::string_view> reached;
    for (const auto name : junctions.names()) {
        if (junctions.group_of(name) == root) reached.push_back(name);
    }
    const auto found = strays(draft, junctions, root);
    for (const auto& stray : found) {
        std::string hint;
        for (const auto junction : stray.junctions) {
            const std::string near = junction_hint(junction, reached);
            if (hint.empty() && !near.empty()) hint = named(junction) + ": " + near;
        }
        complain(draft.sections[stray.first], "",
                 (stray.ids.size() == 1 ? "section " : "sections ") + list_words(stray.ids) +
                     (stray.ids.size() == 1 ? " is" : " are") + " not joined to the heat source at `" + root_name + "`",
                 hint.empty() ? Hint{"look for a section that is not listed, or a junction that has two names"}
                              : Hint{hint});
    }
    return found.empty();
}

void warn_of_dead_ends(const Draft& draft, const std::string& root) {
    std::unordered_map<std::string_view, int> uses;
    for (const auto& section : draft.job.sections) {
        ++uses[section.from];
        ++uses[section.to];
    }
    for (const auto& emitter : draft.job.emitters) {
        ++uses[emitter.at];
        ++uses[emitter.return_at];
    }
    for (const auto& mixer : draft.job.mixers) {
        ++uses[mixer.from];
        ++uses[mixer.to];
    }
    ++uses[root];
    ++uses[draft.job.heat_source->return_at];
    for (std::size_t i = 0; i < draft.sections.size(); ++i) {
        const Section& section = draft.job.sections[i];
        for (const auto& [key, end] : {std::pair{"from", section.from}, std::pair{"to", section.to}}) {
            if (uses[end] > 1) continue;
            warn(draft.sections[i], key, "is a dead end: no emitter hangs there, so no water flows to it",
                 "leave the section out, or check the names of its junctions");
        }
    }
}

}  // namespace

void check_pipework(const Draft& draft) {
    Junctions junctions = join_sections(draft);
    const auto& sections = draft.job.sections;
    if (sections.empty() || !std::all_of(sections.begin(), sections.end(), complete)) return;
    if (!draft.heat_source || draft.job.heat_source->at.empty()) return;
    const std::string& root = draft.job.heat_source->at;
    bool whole = check_junction(*draft.heat_source, "at", root, junctions);
    const std::string& start = whole ? root : sections.front().from;
    if (has(*draft.heat_source, "return_at")) {
        whole = check_junction(*draft.heat_source, "return_at", draft.job.heat_source->return_at, junctions) && whole;
    }
    for (const auto& candidate : draft.job.heat_source->could_join_at) {
        if (candidate == root)
            complain(*draft.heat_source, "could_join_at", "names `" + root + "`, where it joins already",
                     "name other junctions, or leave the key out");
        else if (!junctions.known(candidate)) {
            complain(*draft.heat_source, "could_join_at",
                     "`" + candidate + "` is not a junction: no section starts or ends there",
                     junction_hint_or_names(candidate, junctions.names()));
        }
    }
    for (std::size_t i = 0; i < draft.emitters.size(); ++i) {
        const auto& emitter = draft.job.emitters[i];
        whole = check_junction(draft.emitters[i], "at", emitter.at, junctions) && whole;
        if (emitter.return_at != emitter.at) {
            whole = check_junction(draft.emitters[i], "return_at", emitter.return_at, junctions) && whole;
        }
    }
    whole = check_joined(draft, junctions, start) && whole;
    if (!whole) return;
    warn_of_dead_ends(draft, root);  // with other errors present, a dead end is only a consequence of them
    check_flow_and_return(draft);
}

}  // namespace loopfolio::job
