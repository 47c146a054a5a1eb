// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/read_keys.hpp"
#include "loopfolio/job/keys/parties.hpp"

#include <algorithm>
#include <utility>

namespace loopfolio::job {

namespace {

void read_works_start(const Mapping& m, Identity& identity) {
    if (value_at(m, "works_start") == nullptr) return;
    const auto start = date_at(m, "works_start");
    if (!start.ok() || start == date::year_month_day{}) return;
    if (identity.design_date.ok() && start < identity.design_date) {
        complain(m, "works_start", "lies before `design_date`",
                 "the rules are those of the design's day: date the design before the work starts");
        return;
    }
    identity.works_start = start;
}

/// A caution that stands in every pack is refused by a rule of its own: it is known, but cannot be ruled out.
void read_ruled_out(const Mapping& m, Job& job) {
    const auto standing = standing_caution_names();
    const Node* caution = value_at(m, "caution");
    if (caution != nullptr && std::ranges::find(standing, caution->text) != standing.end()) {
        complain(m, "caution", "cannot be ruled out", "every pack prints this caution");
        return;
    }
    RuledOut out;
    read_keys(m, keys::ruled_out, out);
    out.date = date_at(m, "date");
    if (std::ranges::find(job.cautions_ruled_out, out.caution, &RuledOut::caution) != job.cautions_ruled_out.end() &&
        !out.caution.empty()) {
        complain(m, "caution", "is ruled out twice", "keep one of the two entries");
    }
    job.cautions_ruled_out.push_back(std::move(out));
}

}  // namespace

void read_parties(const Mapping& top, Draft& draft) {
    Job& job = draft.job;
    if (const auto m = open_child(top, "job", group("job"))) {
        read_keys(*m, keys::identity, job.identity);
        job.identity.design_date = date_at(*m, "design_date");
        read_works_start(*m, job.identity);
    }
    if (const auto m = open_child(top, "firm", group("firm"))) read_keys(*m, keys::firm, job.firm);
    if (const auto m = open_child(top, "designer", group("designer"))) read_keys(*m, keys::designer, job.designer);
    if (const auto m = open_child(top, "household", group("household"))) read_keys(*m, keys::household, job.household);
    if (const auto m = open_child(top, "property", group("property"))) read_keys(*m, keys::property, job.property);
    read_keys(top, keys::top, job);
    for (const auto& item : open_items(top, "cautions_ruled_out", group("cautions_ruled_out"))) {
        if (item.node != nullptr) read_ruled_out(item, job);
    }
}

}  // namespace loopfolio::job
