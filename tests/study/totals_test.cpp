// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/study/totals.hpp"
#include "support/catch.hpp"
#include "support/example_jobs.hpp"
#include "support/jobs_of_every_check.hpp"
#include "support/small_job.hpp"
#include "support/studied.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// The examples, and jobs in which something fails.
const std::vector<study::Study>& studies() {
    static const auto all = [] {
        std::vector<study::Study> out;
        for (const auto& name : example_names()) out.push_back(studied(example_job(name)));
        for (const auto& job : failing_pieces()) out.push_back(studied(job));
        return out;
    }();
    return all;
}

int with_verdict(const study::Study& s, Verdict verdict, auto&& about) {
    return static_cast<int>(
        std::ranges::count_if(s.findings, [&](const auto& f) { return f.verdict == verdict && about(f.subject); }));
}

constexpr Verdict verdicts[] = {Verdict::keep, Verdict::keep_noted, Verdict::change};

}  // namespace

TEST_CASE("what rooms lose, and what their emitters give, add up over the house") {
    for (const auto& s : studies()) {
        const auto& t = s.totals;
        const auto& rooms = s.house.values.rooms;
        INFO(s.house.values.identity.reference);
        double lost = 0.0, leaving = 0.0, area = 0.0, heated = 0.0, load = 0.0, given = 0.0;
        REQUIRE(t.rooms.size() == rooms.size());
        for (std::size_t i = 0; i < rooms.size(); ++i) {
            const auto& r = s.design.rooms[i];
            lost += r.loss.si();
            leaving += r.loss_to_outside.si();
            CHECK(t.rooms[i].surplus.si() + r.load.si() == Approx(r.output.si()));
            REQUIRE(t.rooms[i].rate);
            CHECK(t.rooms[i].rate->si() * rooms[i].floor_area.value.si() == Approx(r.loss.si()));
            if (!rooms[i].heated) continue;
            area += rooms[i].floor_area.value.si();
            heated += r.loss.si();
            load += r.load.si();
        }
        // By the list of emitters, not by the rooms' own sums.
        for (const auto& e : s.design.emitters)
            given += rooms[static_cast<std::size_t>(e.room)].heated ? e.output.si() : 0.0;
        CHECK(t.losses.si() == Approx(lost));
        CHECK(t.leaving.si() == Approx(leaving));
        CHECK(t.losses.si() + t.between_rooms.si() + t.air_not_at_once.si() == Approx(t.leaving.si()));
        CHECK(t.air_not_at_once.si() <= 1e-6);
        CHECK(t.between_rooms.si() <= 1e-6);
        CHECK(t.heated.floor_area.si() == Approx(area));
        CHECK(t.heated.loss.si() == Approx(heated));
        CHECK(t.heated.loss.si() + t.heated.heat_up.si() == Approx(load));
        CHECK(t.heated.output.si() == Approx(given));
        CHECK(t.heated.surplus.si() == Approx(given - load).margin(1e-6));
        REQUIRE(t.heated.rate);
        CHECK(t.heated.rate->si() == Approx(heated / area));
        CHECK((s.design.flow - t.drop).kelvin() == Approx(s.design.duty.back.kelvin()));
    }
}

TEST_CASE("the parts of the index circuit lead to the head, one after the other") {
    int circuits = 0;
    for (const auto& s : studies()) {
        const auto& duty = s.design.duty;
        const auto& t = s.totals;
        if (duty.index_emitter < 0) continue;
        INFO(s.house.values.identity.reference);
        REQUIRE(t.index_so_far.size() == duty.index_legs.size() + 2);
        CHECK(std::ranges::is_sorted(t.index_so_far));
        const auto at_emitter = t.index_so_far.size() - 2;
        const Pressure before = at_emitter > 0 ? t.index_so_far[at_emitter - 1] : Pressure{};
        CHECK((t.index_so_far[at_emitter] - before).si() ==
              Approx(s.design.emitters[static_cast<std::size_t>(duty.index_emitter)].pressure_drop.si()));
        // Less than 5 Pa, which no page shows, may be left.
        CHECK((t.index_so_far.back() + t.index_left_over.value_or(Pressure{})).si() ==
              Approx(duty.head.si()).margin(5.0));
        ++circuits;
    }
    CHECK(circuits > 5);
}

TEST_CASE("the velocities are from the least to the largest of all sections") {
    auto job = example_job("semi-detached");
    job.sections.at(2).velocity_preferred = measured(0.31 * unit::metre_per_second);
    job.sections.at(3).velocity_preferred = measured(2.2 * unit::metre_per_second);
    job.sections.at(2).velocity_limit = measured(0.42 * unit::metre_per_second);
    job.sections.at(3).velocity_limit = measured(3.3 * unit::metre_per_second);
    const auto t = studied(job).totals;
    CHECK(t.velocity_preferred.low.si() == Approx(0.31));
    CHECK(t.velocity_preferred.high.si() == Approx(2.2));
    CHECK(t.velocity_limit.low.si() == Approx(0.42));
    CHECK(t.velocity_limit.high.si() == Approx(3.3));
}

TEST_CASE("what is left of a rating is what the emitter was rated at against what it gives") {
    int lowered = 0;
    for (const auto& s : studies()) {
        const auto& emitters = s.house.values.emitters;
        REQUIRE(s.totals.emitters.size() == emitters.size());
        for (std::size_t i = 0; i < emitters.size(); ++i) {
            const auto& e = emitters[i];
            const auto& t = s.totals.emitters[i];
            INFO(e.id);
            if (e.deratings.empty()) CHECK((t.left == 1.0 && t.low == 1.0 && t.high == 1.0));
            if (e.deratings.empty()) continue;
            CHECK(t.left == Approx(e.output_at_50k.value / e.rating.value));
            if (e.deratings.size() == 1) {
                CHECK(t.low == e.deratings[0].factor.low.value_or(e.deratings[0].factor.value));
                CHECK(t.high == e.deratings[0].factor.high.value_or(e.deratings[0].factor.value));
            }
            CHECK(t.low < t.left);
            CHECK(t.left < t.high);
            ++lowered;
        }
    }
    CHECK(lowered > 0);
}

TEST_CASE("the share of a state is that of the room which gets least of its need") {
    int shares = 0;
    for (const auto& s : studies()) {
        REQUIRE(s.totals.share_served.size() == s.operation.states.size());
        for (std::size_t i = 0; i < s.operation.states.size(); ++i) {
            const auto& state = s.operation.states[i];
            double least = 1e300;
            for (std::size_t r = 0; r < state.rooms.size(); ++r) {
                if (s.design.rooms[r].emitters == 0 || state.rooms[r].need <= Power{}) continue;
                least = std::min(least, state.rooms[r].output / state.rooms[r].need);
            }
            if (least > 0.999) continue;  // every room gets its need
            REQUIRE(s.totals.share_served[i]);
            CHECK(*s.totals.share_served[i] == Approx(least));
            ++shares;
        }
    }
    CHECK(shares > 0);
}

TEST_CASE("the electricity of the bins is that of the season, and their hours are all of it") {
    int seasons = 0;
    for (const auto& s : studies()) {
        if (!s.plant.season) {
            CHECK(s.totals.bin_electricity.empty());
            continue;
        }
        const auto& season = s.plant.season->season;
        REQUIRE(s.totals.bin_electricity.size() == season.bins.size());
        double joules = 0.0, seconds = 0.0;
        for (std::size_t i = 0; i < season.bins.size(); ++i) {
            const auto& bin = season.bins[i];
            joules += s.totals.bin_electricity[i].si();
            seconds += bin.time.si();
            // Backup is a resistance: it turns all of its electricity into heat.
            CHECK(s.totals.bin_electricity[i].si() >= bin.source_electricity.si());
        }
        CHECK(s.totals.electricity.si() == Approx(joules));
        CHECK(s.totals.electricity.si() == Approx((season.source_electricity + season.backup_input).si()));
        CHECK(s.totals.season_time.si() == Approx(seconds));
        ++seasons;
    }
    CHECK(seasons > 0);
}

TEST_CASE("every finding is counted once, under its verdict and its kind of thing") {
    using design::Subject;
    std::array<int, 3> seen{};
    for (const auto& s : studies()) {
        for (const auto verdict : verdicts) {
            const auto v = static_cast<std::size_t>(verdict);
            const int rooms = with_verdict(s, verdict, [](Subject of) { return of == Subject::room; });
            const int emitters = with_verdict(s, verdict, [](Subject of) { return of == Subject::emitter; });
            const int plant = with_verdict(s, verdict, [](Subject of) {
                return of != Subject::room && of != Subject::emitter && of != Subject::section;
            });
            CHECK(s.totals.room_verdicts[v] == rooms);
            CHECK(s.totals.emitter_verdicts[v] == emitters);
            CHECK(s.totals.plant_verdicts[v] == plant);
            seen[v] += rooms + emitters + plant;
        }
        const auto& sections = s.totals.section_verdicts;
        CHECK(std::accumulate(sections.begin(), sections.end(), 0) == static_cast<int>(s.design.sections.size()));
        CHECK(sections[static_cast<std::size_t>(Verdict::change)] ==
              std::ranges::count(s.design.sections, Verdict::change, &design::SectionResult::verdict));
    }
    for (const int count : seen) CHECK(count > 0);
}

TEST_CASE("at the flow temperature for all every emitter gives its load, and a little below it one does not") {
    int found = 0;
    for (const auto& s : studies()) {
        if (!s.flow_for_all) continue;
        INFO(s.house.values.identity.reference);
        const auto short_at = [&](Temperature flow) {
            auto house = s.house;
            house.values.conditions.flow.value = flow;
            const auto result = design::design(house);
            const auto* d = std::get_if<design::Design>(&result);
            REQUIRE(d != nullptr);
            return std::ranges::count_if(d->emitters, [](const auto& e) { return e.output < 0.9995 * e.load; });
        };
        CHECK(short_at(*s.flow_for_all) == 0);
        CHECK(short_at(*s.flow_for_all - TemperatureDifference::from_si(0.5)) > 0);
        ++found;
    }
    CHECK(found > 0);
}
