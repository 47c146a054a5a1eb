// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "design/parts.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/reference/pipes.hpp"
#include "support/catch.hpp"
#include "support/small_job.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

job::Job room_with(double loss, std::vector<double> ratings, double flow = 55.0, double drop = 10.0) {
    auto job = bare_job(flow, drop);
    job.rooms.push_back(stated_room("room", loss, 20.0));
    int n = 0;
    for (const double rating : ratings) {
        job.emitters.push_back(panel("E" + std::to_string(++n), "room", "A", rating));
    }
    job.sections.push_back(section("S", "HS", "A", "copper_22", 5.0));
    return job;
}

}  // namespace

TEST_CASE("output at 55/45/20 is the EN 442 factor of the log mean") {
    // Log mean 29.720134 K, against 49.832887 K for 75/65/20, n = 1.3; both calculated to 8 digits with Python.
    const double factor = std::pow(29.720134 / 49.832887, 1.3);
    const auto d = designed(room_with(500.0, {1000.0}));
    verify(
        {"log mean excess of an emitter of a design", "its definition, in double precision", Certainty::computed, "K"},
        29.720134, d.emitters[0].excess.si(), 29.720134e-7);
    verify(
        {"output of an emitter of a design at 55/45/20", "BS EN 442-2, (dT/50)^n, by hand", Certainty::computed, "W"},
        1000.0 * factor, d.emitters[0].output.si(), 1e-4 * factor);
    Verification cantor{
        {"output factor of an emitter of a design at 55/45/20", "J. Cantor, 30 K, as a trade page quotes him",
         Certainty::read, "",
         "his is for an arithmetic mean of 30 K over one of 50 K; the log means are 29.72 and 49.83 K"}};
    cantor.check_known(0.52, factor - 0.52, d.emitters[0].factor, 1e-7);
}

TEST_CASE("a room's loss is shared by rating, and verdicts follow the share that is met") {
    struct Row {
        double loss;
        Verdict verdict;
    };
    const double output = 1000.0 * std::pow(29.720134 / 49.832887, 1.3);
    for (const Row row : {Row{0.99 * output, Verdict::keep}, Row{1.03 * output, Verdict::keep_noted},
                          Row{1.30 * output, Verdict::change}}) {
        const auto d = designed(room_with(row.loss, {750.0, 250.0}));
        CHECK(d.emitters[0].load.si() == Approx(0.75 * row.loss));
        CHECK(d.emitters[1].load.si() == Approx(0.25 * row.loss));
        CHECK(d.verdict_of(d.rooms[0].finding) == row.verdict);
        CHECK(d.verdict_of(d.emitters[0].finding) == row.verdict);
        CHECK(d.rooms[0].reached.has_value() == (row.verdict != Verdict::keep));
    }
}

TEST_CASE("the temperature reached balances what the emitters then give with what the room then loses") {
    const double loss = 900.0;
    const auto d = designed(room_with(loss, {1000.0}));
    REQUIRE(d.rooms[0].reached);
    const double t = d.rooms[0].reached->celsius();
    const double excess = 10.0 / std::log((55.0 - t) / (45.0 - t));
    CHECK(1000.0 * std::pow(excess / 49.832887, 1.3) == Approx(loss / 23.0 * (t + 3.0)).epsilon(1e-5));
    CHECK(t < 20.0);
    CHECK(t > 10.0);
}

TEST_CASE("at its lowest flow temperature an emitter gives just its load") {
    const auto d = designed(room_with(400.0, {1000.0}));
    REQUIRE(d.emitters[0].lowest_flow_temperature);
    const auto again = designed(room_with(400.0, {1000.0}, d.emitters[0].lowest_flow_temperature->celsius()));
    CHECK(again.emitters[0].output.si() == Approx(400.0).epsilon(1e-6));
}

TEST_CASE("the rating that would just do, just does") {
    const auto d = designed(room_with(900.0, {1000.0}));
    const auto again = designed(room_with(900.0, {d.emitters[0].needed_at_50k.si()}));
    CHECK(again.verdict_of(again.rooms[0].finding) == Verdict::keep);
    CHECK(*again.at(again.rooms[0].finding).margin == Approx(0.0).margin(1e-9));
}

TEST_CASE("a heated room without an emitter is a change, an unheated one is nothing") {
    auto job = room_with(500.0, {1500.0});
    job.rooms.push_back(stated_room("bare", 300.0));
    job.rooms.push_back(stated_room("larder", 300.0));
    job.rooms.back().heated = false;
    const auto d = designed(job);
    CHECK(d.verdict_of(d.rooms[1].finding) == Verdict::change);
    CHECK(d.at(d.rooms[1].finding).check == design::Check::room_has_emitter);
    CHECK_FALSE(d.rooms[2].finding);
    CHECK(d.duty.source_load.si() == Approx(800.0));  // the bare room still loses heat; the larder is not counted
    CHECK(d.duty.load.si() == Approx(500.0));
}

TEST_CASE("water no warmer than a room is refused, not extrapolated") {
    const auto result = design::design(design::resolve(room_with(500.0, {1500.0}, 24.0, 5.0)));
    const auto* refusals = std::get_if<std::vector<design::Refusal>>(&result);
    REQUIRE(refusals);
    CHECK(refusals->front().field == "rooms[0].temperature_c");
}

TEST_CASE("a rating ten times what is typical for its kind and size is flagged, one that is typical is not") {
    const auto flagged = [](double watts) {
        auto job = room_with(500.0, {watts});
        job.emitters[0].length = measured(unit::metre(1.0));
        job.emitters[0].height = measured(unit::metre(0.6));
        const auto d = designed(job);
        return std::ranges::any_of(d.flags, [](const auto& f) { return f.caveat == design::Caveat::rating_far_off; });
    };
    // Double panel double convector, 600 mm high: makers' lists have about 1.7 kW for a metre.
    CHECK_FALSE(flagged(1700.0));
    CHECK(flagged(17000.0));
    CHECK(flagged(170.0));
}

TEST_CASE("an emitter without a load has nothing in hand and nothing short") {
    auto job = room_with(500.0, {1000.0});
    job.rooms.push_back(stated_room("cold room", 0.0));
    job.emitters.push_back(panel("none", "cold room", "A", 1000.0));
    const auto d = designed(job);
    const auto& f = d.at(d.emitters.at(1).finding);
    CHECK(f.verdict == Verdict::keep);
    REQUIRE(f.margin);
    CHECK(*f.margin == 0.0);
}

TEST_CASE("the valves of a floor's loop count by the fourth power of the bores") {
    job::Emitter floor;
    floor.kind = "underfloor";
    floor.loop_pipe = "multilayer_16";
    floor.loop_length = measured(unit::metre(80.0));
    floor.fittings = {{"elbow", 2, 0.0, {}}};
    const double in_loop = design::path_of(floor).loss_factor;
    floor.connection = "copper_22";
    const double ratio = reference::find_pipe("multilayer_16")->bore / reference::find_pipe("copper_22")->bore;
    REQUIRE(in_loop > 0.0);
    CHECK(design::path_of(floor).loss_factor == Approx(in_loop * ratio * ratio * ratio * ratio));
}
