// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/fault_jobs.hpp"
#include "support/small_job.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

double summed(const design::Design& d) {
    Pressure sum = d.duty.emitter + d.duty.source + d.duty.left_over;
    for (const auto& leg : d.duty.index_legs) sum += leg.pressure_drop;
    return sum.in(unit::kilopascal);
}

}  // namespace

TEST_CASE("a circuit written with pairs of pipes has the head of the same circuit written pipe by pipe") {
    const auto pairs = designed(fault_job("rrb")), single = designed(fault_job("rrs"));
    CHECK(pairs.duty.head.in(unit::kilopascal) == Approx(single.duty.head.in(unit::kilopascal)).epsilon(1e-6));
    for (const auto* d : {&pairs, &single}) {
        CHECK(d->duty.left_over.in(unit::kilopascal) == 0.0);  // there is no mixing set and no further pump
        CHECK(summed(*d) == Approx(d->duty.head.in(unit::kilopascal)).margin(0.006));
    }
    // Its flow pipe and its return pipe carry different flows, so that each has its own line.
    CHECK(std::ranges::any_of(pairs.duty.index_legs,
                              [](const auto& leg) { return leg.pipes != design::IndexPipes::both; }));
}

TEST_CASE(
    "the index circuit of every example ends at the head, with nothing left over but where pumps stand on the way") {
    for (const auto& name : example_names()) {
        INFO(name);
        const auto job = example_job(name);
        const auto d = designed(job);
        if (d.duty.index_emitter < 0) continue;
        CHECK(summed(d) == Approx(d.duty.head.in(unit::kilopascal)).margin(0.006));
        if (job.mixers.empty() && job.further_circulators.empty()) CHECK(d.duty.left_over == Pressure{});
    }
}

TEST_CASE("both pipes of a section add up to its pressure drop, and the larger flow judges it") {
    for (const auto& name : example_names()) {
        const auto d = designed(example_job(name));
        for (const auto& s : d.sections) {
            CHECK((s.flow_pipe.pressure_drop + s.return_pipe.pressure_drop).si() == Approx(s.pressure_drop.si()));
            CHECK(std::max(s.flow_pipe.flow, s.return_pipe.flow) == s.flow);
        }
    }
}

TEST_CASE("a length that takes most of the head is named") {
    for (const auto& name : example_names()) {
        const auto d = designed(example_job(name));
        double most = 0.0;
        int section = -1;
        for (std::size_t i = 0; i < d.sections.size(); ++i) {
            if (d.sections[i].head_share > most) {
                most = d.sections[i].head_share;
                section = static_cast<int>(i);
            }
        }
        INFO(name << " " << most);
        CHECK(d.duty.heaviest_section == (most > 0.5 ? section : -1));
        CHECK(most <= 1.0 + 1e-9);
    }
}
