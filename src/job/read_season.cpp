// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/draft.hpp"
#include "job/fields.hpp"

namespace loopfolio::job {

namespace {

Season read_one(const Mapping& m) {
    Season out;
    out.climate = text_at(m, "climate");
    if (m.node != nullptr) out.place = m.node->place;
    return out;
}

}  // namespace

void read_season(const Mapping& top, Draft& draft) {
    if (const auto m = open_child(top, "season", group("season"))) draft.job.season = read_one(*m);
}

}  // namespace loopfolio::job
