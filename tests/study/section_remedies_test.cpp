// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/section_remedies.hpp"
#include "loopfolio/design/remedies.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/jobs_of_every_check.hpp"
#include "support/small_job.hpp"
#include "support/studied.hpp"

#include <algorithm>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

int changing(const design::Findings& findings) {
    return static_cast<int>(
        std::ranges::count_if(findings, [](const auto& f) { return f.verdict == Verdict::change; }));
}

/// The house designed again, by resolving the job with the change made in it.
design::Design designed_with(const job::Job& job, TemperatureDifference drop) {
    auto changed = job;
    changed.conditions.drop = measured(drop);
    return designed(changed);
}

}  // namespace

TEST_CASE("a way out that the pack prints passes when the house is designed with it") {
    int drops = 0, sizes = 0;
    for (const auto& name : example_names()) {
        const auto job = example_job(name);
        const auto s = studied(job);
        REQUIRE(s.remedies.size() == s.design.sections.size());
        for (std::size_t i = 0; i < s.remedies.size(); ++i) {
            const auto& r = s.remedies[i];
            INFO(name << " " << job.sections[i].id);
            if (r.drop_to_limit) {
                const auto again = designed_with(job, *r.drop_to_limit);
                CHECK(again.sections[i].verdict != Verdict::change);
                CHECK(changing(again.findings) < changing(s.design.findings));
                ++drops;
            }
            if (r.drop_to_keep) CHECK(designed_with(job, *r.drop_to_keep).sections[i].verdict == Verdict::keep);
            if (r.next_size == nullptr) continue;
            auto house = s.house;
            design::replace_pipe(house.values, static_cast<int>(i), *r.next_size);
            const auto again = design::design(house);
            REQUIRE(std::holds_alternative<design::Design>(again));
            CHECK(std::get<design::Design>(again).sections[i].verdict == Verdict::keep);
            ++sizes;
        }
    }
    CHECK(sizes > 0);
    INFO("drops: " << drops);
}

TEST_CASE("a wider drop that makes other things change is not offered") {
    int left_out = 0;
    for (const auto& name : example_names()) {
        const auto s = studied(example_job(name));
        for (const auto& r : s.remedies) {
            for (const auto& tried : {r.tried_drop_to_keep, r.tried_drop_to_limit}) {
                if (!tried || tried->holds) continue;
                ++left_out;
            }
            if (r.tried_drop_to_limit && !r.tried_drop_to_limit->holds) CHECK_FALSE(r.drop_to_limit);
            if (r.tried_drop_to_keep && !r.tried_drop_to_keep->holds) CHECK_FALSE(r.drop_to_keep);
        }
    }
    CHECK(left_out > 0);
}
