// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "support/catch.hpp"
#include "support/fault_jobs.hpp"
#include "support/studied.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

TEST_CASE("every state says where the heat source's temperature drop is more than it allows") {
    const auto s = studied(fault_job("ploss"));
    REQUIRE(!s.operation.states.empty());
    const auto most = s.house.values.heat_source->maximum_drop->value;
    bool above = false;
    for (const auto& state : s.operation.states) {
        CHECK(state.above_maximum_drop == (state.source_drop > 1.000001 * most));
        above = above || state.above_maximum_drop;
    }
    CHECK(above);
}
