// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"

#include <numeric>
#include <unordered_map>
#include <unordered_set>

namespace loopfolio::job {

namespace {

/// Junctions in two layers, flow and return, connected by the pipes and components that carry water. A junction with
/// only loop pipes is in both layers.
class Layers {
public:
    Layers(const Job& job, bool with_closed) : job_{job} {
        for (const auto& s : job.sections) {
            if (s.carries != Carries::loop) doubled_.insert({s.from, s.to});
        }
        for (const auto& m : job.mixers) doubled_.insert({m.from, m.to});
        if (job.heat_source->at == job.heat_source->return_at) doubled_.insert(job.heat_source->at);
        for (const auto& s : job.sections) {
            if (!s.closed || with_closed) join(s);
        }
        for (const auto& m : job.mixers) {
            join(flow(m.from), flow(m.to));
            join(back(m.from), back(m.to));
        }
    }

    bool flow_reaches(const std::string& junction) {
        return group(flow(junction)) == group(flow(job_.heat_source->at));
    }
    bool return_reaches(const std::string& junction) {
        return group(back(junction)) == group(back(job_.heat_source->return_at));
    }
    [[nodiscard]] bool single(const std::string& junction) const { return !doubled_.contains(junction); }

private:
    std::size_t flow(const std::string& junction) { return node(junction, false); }
    std::size_t back(const std::string& junction) { return node(junction, !single(junction)); }

    std::size_t node(const std::string& junction, bool is_return) {
        auto& index = is_return ? returns_ : flows_;
        const auto [at, is_new] = index.try_emplace(junction, parents_.size());
        if (is_new) parents_.push_back(parents_.size());
        return at->second;
    }

    void join(const Section& s) {
        if (s.carries == Carries::loop) return join(flow(s.from), back(s.to));
        if (s.carries != Carries::return_) join(flow(s.from), flow(s.to));
        if (s.carries != Carries::flow) join(back(s.from), back(s.to));
    }
    void join(std::size_t a, std::size_t b) {
        const std::size_t from = group(a);
        parents_[from] = group(b);
    }
    std::size_t group(std::size_t node) {
        while (parents_[node] != node) node = parents_[node] = parents_[parents_[node]];
        return node;
    }

    const Job& job_;
    std::unordered_set<std::string> doubled_;
    std::unordered_map<std::string, std::size_t> flows_, returns_;
    std::vector<std::size_t> parents_;
};

std::string closed_sections(const Job& job) {
    std::string out;
    for (const auto& s : job.sections) {
        if (s.closed) out += (out.empty() ? "" : ", ") + named(s.id);
    }
    return out;
}

/// Reports that an emitter has no flow route, or no return route.
void complain_of_way(const Draft& draft, std::size_t i, bool there, bool only_closed) {
    const std::string key = there ? "at" : has(draft.emitters[i], "return_at") ? "return_at" : "at";
    if (only_closed) {
        complain(draft.emitters[i], key,
                 std::string{"can be reached only through a closed section"} + (there ? "" : " on its way back"),
                 "closed: " + closed_sections(draft.job));
        return;
    }
    complain(draft.emitters[i], key,
             there ? "has no flow route: no flow pipe leads here from the heat source"
                   : "has no return route: no return pipe leads from here back to the heat source",
             "look at `carries` of the sections on the way");
}

}  // namespace

void check_flow_and_return(const Draft& draft) {
    const Job& job = draft.job;
    Layers open{job, false};
    Layers all{job, true};
    for (std::size_t i = 0; i < job.emitters.size(); ++i) {
        const auto& e = job.emitters[i];
        if (e.at == e.return_at && open.single(e.at)) {
            complain(draft.emitters[i], "at", "is on a one-pipe loop, and the emitter's return is not named",
                     "on a loop it joins again at a second tee: give `return_at`");
            continue;
        }
        if (!open.flow_reaches(e.at)) complain_of_way(draft, i, true, all.flow_reaches(e.at));
        else if (!open.return_reaches(e.return_at)) complain_of_way(draft, i, false, all.return_reaches(e.return_at));
    }
}

}  // namespace loopfolio::job
