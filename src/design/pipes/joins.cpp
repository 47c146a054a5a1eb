// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"
#include "design/states/operation.hpp"

#include <tuple>

namespace loopfolio::design {

namespace {

JoinOption option_of(const job::Job& job, const Design& d, const std::string& junction) {
    JoinOption out;
    out.junction = junction;
    out.head = d.duty.head;
    for (std::size_t i = 0; i < d.sections.size(); ++i) {
        if (d.sections[i].verdict == Verdict::keep_noted) ++out.noted;
        if (d.sections[i].verdict != Verdict::change) continue;
        out.change.push_back(static_cast<int>(i));
        out.metres += static_cast<double>(d.sections[i].pipes) * job.sections[i].length.value;
    }
    return out;
}

}  // namespace

std::optional<Design> design_joined_at(const job::Job& job, const std::string& junction, Remedies remedies) {
    job::Job moved = job;
    moved.heat_source->at = moved.heat_source->return_at = junction;
    auto result = design_values(moved, nullptr, remedies);
    if (auto* d = std::get_if<Design>(&result)) return std::move(*d);
    return {};
}

std::vector<JoinOption> compare_joins(const job::Job& job, const Design& design) {
    std::vector<JoinOption> out;
    if (!job.heat_source || job.heat_source->could_join_at.empty()) return out;
    out.push_back(option_of(job, design, job.heat_source->at));
    out.front().is_present = true;
    for (const auto& junction : job.heat_source->could_join_at) {
        if (const auto there = design_joined_at(job, junction, Remedies::left_out)) {
            out.push_back(option_of(job, *there, junction));
        } else {
            out.push_back({});
            out.back().junction = junction;
            out.back().possible = false;
        }
    }
    return out;
}

int best_of(const std::vector<JoinOption>& joins) {
    int best = -1;
    const auto cost = [&](int i) {
        const auto& j = joins[static_cast<std::size_t>(i)];
        return std::tuple{j.metres, j.noted, j.head};
    };
    for (int i = 0; i < static_cast<int>(joins.size()); ++i) {
        if (!joins[static_cast<std::size_t>(i)].possible) continue;
        if (best < 0 || cost(i) < cost(best)) best = i;
    }
    return best;
}

}  // namespace loopfolio::design
