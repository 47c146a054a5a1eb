// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/operation.hpp"

#include "design/pipes/network_routes.hpp"
#include "design/pipes/pipe_plan.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/example_jobs.hpp"
#include "support/small_job.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

job::Job house_of_three() {
    auto job = bare_job();
    for (const auto* id : {"a", "b", "c"}) job.rooms.push_back(stated_room(id, 1200.0));
    job.emitters = {panel("Ea", "a", "J2", 4500.0), panel("Eb", "b", "J3", 4500.0), panel("Ec", "c", "J4", 4500.0)};
    job.sections = {section("S1", "HS", "J1", "copper_22", 6.0), section("S2", "J1", "J2", "copper_15", 4.0),
                    section("S3", "J1", "J3", "copper_15", 9.0), section("S4", "J3", "J4", "copper_15", 5.0)};
    return job;
}

design::Operation operated(const design::House& house, const design::Design& d) {
    auto result = design::operate(house, d);
    if (auto* o = std::get_if<design::Operation>(&result)) return std::move(*o);
    throw std::runtime_error{"refused: " + std::get<1>(result).front().rule};
}

job::Circulator curve(std::vector<std::pair<double, double>> points) {
    job::Circulator pump;
    for (const auto& [flow, head] : points) {
        pump.curve.push_back({unit::litre_per_minute(flow), unit::kilopascal(head)});
    }
    return pump;
}

}  // namespace

TEST_CASE("a tree designed as a tree and as a network come to the same") {
    auto job = house_of_three();
    const auto tree = designed(job);
    // Naming an emitter's return does not change the pipework, but stating a heat loss of zero for a section makes the
    // design use the network's route.
    job.sections.front().heat_loss = measured(Conductivity::from_si(0.0));
    job.sections.front().surroundings = measured(unit::celsius(10.0));
    const auto network = designed(job);
    REQUIRE(network.sections.size() == tree.sections.size());
    for (std::size_t i = 0; i < tree.sections.size(); ++i) {
        CAPTURE(i);
        CHECK(network.sections[i].flow.si() == Approx(tree.sections[i].flow.si()).epsilon(1e-9));
        CHECK(network.sections[i].upstream == tree.sections[i].upstream);
        CHECK(network.sections[i].pressure_drop.si() == Approx(tree.sections[i].pressure_drop.si()).epsilon(1e-9));
        CHECK(network.sections[i].on_index_circuit == tree.sections[i].on_index_circuit);
    }
    CHECK(network.duty.head.si() == Approx(tree.duty.head.si()).epsilon(1e-6));
    CHECK(network.duty.index_emitter == tree.duty.index_emitter);
    for (std::size_t i = 0; i < tree.emitters.size(); ++i) {
        CHECK(network.emitters[i].circuit.si() == Approx(tree.emitters[i].circuit.si()).epsilon(1e-6));
    }
}

TEST_CASE("a ring shares its flow between both ways, which drop alike") {
    auto job = bare_job();
    for (const auto* id : {"a", "b", "c"}) job.rooms.push_back(stated_room(id, 1200.0));
    job.emitters = {panel("Ea", "a", "R1", 4500.0), panel("Eb", "b", "R2", 4500.0), panel("Ec", "c", "R3", 4500.0)};
    job.sections = {section("S0", "HS", "R0", "copper_28", 3.0), section("S1", "R0", "R1", "copper_15", 5.0),
                    section("S2", "R1", "R2", "copper_15", 5.0), section("S3", "R2", "R3", "copper_15", 5.0),
                    section("S4", "R3", "R0", "copper_15", 5.0)};
    const auto d = designed(job);
    CHECK_FALSE(d.tree);
    // By symmetry the middle emitter gets the same flow from both sides.
    CHECK(d.sections[1].flow.si() == Approx(d.sections[4].flow.si()).epsilon(1e-6));
    CHECK(d.sections[2].flow.si() == Approx(d.sections[3].flow.si()).epsilon(1e-6));
    CHECK(d.sections[2].flow.si() == Approx(0.5 * d.emitters[1].flow.si()).epsilon(1e-6));
    // Kirchhoff: both ways to the far emitter have the same pressure drop, and their flows add up to what is drawn.
    CHECK((d.sections[1].pressure_drop + d.sections[2].pressure_drop).si() ==
          Approx((d.sections[4].pressure_drop + d.sections[3].pressure_drop).si()).epsilon(1e-6));
    CHECK((d.sections[1].flow + d.sections[4].flow).si() == Approx(d.duty.flow.si()).epsilon(1e-9));

    SECTION("the order of the sections in the job makes no difference") {
        std::ranges::reverse(job.sections);
        const auto again = designed(job);
        CHECK(again.duty.head.si() == Approx(d.duty.head.si()).epsilon(1e-9));
        CHECK(again.sections[3].flow.si() == Approx(d.sections[1].flow.si()).epsilon(1e-9));
    }
    SECTION("a wider pipe in the ring never asks for more head") {
        job.sections[1].pipe = "copper_22";
        CHECK(designed(job).duty.head <= d.duty.head);
    }
}

TEST_CASE("along a one-pipe loop the water cools by what each emitter takes") {
    auto job = bare_job(60.0, 9.0);
    for (const auto* id : {"a", "b", "c"}) job.rooms.push_back(stated_room(id, 1000.0));
    std::string before = "HS";
    for (const std::string n : {"1", "2", "3"}) {
        job.sections.push_back(section("L" + n, before, "A" + n, "copper_22", 4.0));
        job.sections.push_back(section("X" + n, "A" + n, "B" + n, "copper_15", 1.0));
        before = "B" + n;
        auto e = panel("E" + n, std::string(1, static_cast<char>('a' + (n[0] - '1'))), "A" + n, 4500.0);
        e.return_at = "B" + n;
        e.fittings = {{"lockshield_valve", 1, 0.0, {}}};
        e.connection = "copper_15";
        job.emitters.push_back(e);
    }
    job.sections.push_back(section("L4", before, "HS", "copper_22", 4.0));
    for (auto& s : job.sections) s.carries = job::Carries::loop;
    const auto d = designed(job);
    // Each emitter takes a third of the heat, so the loop cools by a third of its temperature drop at each.
    const double flow = d.duty.flow.si(), cp = d.state.specific_heat.si();
    const std::string source = "heat balance, by hand";
    const double expected = 3000.0 / (cp * 9.0);
    verify({"flow of a one-pipe loop", source, Certainty::computed, "kg/s"}, expected, flow, 1e-9 * expected);
    Verification inlets{{"inlets along a one-pipe loop", source, Certainty::computed, "°C"}};
    for (std::size_t i = 0; i < 3; ++i) {
        CAPTURE(i);
        CHECK(d.emitters[i].on_loop);
        inlets.check(60.0 - static_cast<double>(i) * 1000.0 / (flow * cp), d.emitters[i].inlet.celsius(), 1e-6);
        CHECK(d.emitters[i].flow < d.duty.flow);
        CHECK(d.emitters[i].drop.si() == Approx(1000.0 / (d.emitters[i].flow.si() * cp)).epsilon(1e-9));
    }
    for (const auto& s : d.sections) CHECK(s.pipes == 1);
    const auto o = operated(design::resolve(job), d);
    for (const auto& s : o.states) CHECK(std::abs(s.energy_error) < 1e-6);
    CHECK(o.as_found.valves.empty());  // nothing to balance on a loop
}

namespace {

/// Radiators at 50 °C and a floor at 38 °C behind a mixing set.
job::Job house_with_floor() {
    auto job = house_of_three();
    job.conditions.flow = measured(unit::celsius(50.0));
    job.rooms.push_back(stated_room("floor", 1500.0));
    job::Emitter floor = panel("F", "floor", "M", 6000.0, 1.0);
    floor.kind = "underfloor";
    floor.connection = "copper_15";
    floor.fittings = {{"lockshield_valve", 1, 0.0, {}}};
    job.emitters.push_back(floor);
    job.mixers.push_back({"MX", "J1", "M", measured(unit::celsius(38.0)), measured(unit::kelvin(5.0)), {}, {}});
    return job;
}

}  // namespace

TEST_CASE("with the changes made, a mixing set's pump is set down to what its emitters need") {
    auto job = house_with_floor();
    job::Circulator pump;
    pump.curve = {{0.0 * unit::litre_per_minute, 60.0 * unit::kilopascal},
                  {30.0 * unit::litre_per_minute, 10.0 * unit::kilopascal}};
    job.mixers[0].pump = pump;
    const auto filled = design::resolve(job);
    const auto d = designed(job);
    const auto o = operated(filled, d);
    REQUIRE(o.changes.mixer_heads.size() == 1);
    REQUIRE(o.changes.mixer_heads[0]);
    const double wanted = d.emitters[3].volume_flow.si();
    const auto flow_in = [&](design::StateKind kind) {
        return std::ranges::find(o.states, kind, &design::State::kind)->emitters[3].flow.si();
    };
    CHECK(flow_in(design::StateKind::as_found) > 1.5 * wanted);
    CHECK(flow_in(design::StateKind::changed) == Approx(wanted).epsilon(0.02));
}

TEST_CASE("what comes back of radiators and a mixing set together") {
    const auto d = designed(house_with_floor());
    double carried = 0.0, back = 0.0;  // by hand: each stream with its own return
    for (int i = 0; i < 3; ++i) {
        const auto& e = d.emitters[static_cast<std::size_t>(i)];
        carried += e.flow.si();
        back += e.flow.si() * (50.0 - e.drop.si());
    }
    const double drawn = d.mixers[0].drawn.si() * d.state.density.si();
    CHECK(d.duty.back.celsius() == Approx((back + drawn * 33.0) / (carried + drawn)).margin(1e-6));
}

TEST_CASE("a mixing set draws what conservation says, and holds its temperature in every state") {
    const auto job = house_with_floor();
    const auto filled = design::resolve(job);
    const auto d = designed(job);
    REQUIRE(d.mixers.size() == 1);
    const auto& m = d.mixers.front();
    // Heat sent out is heat drawn: 5 K at 38 °C, from 50 °C down to 33 °C.
    CHECK((m.sent * d.state.density * d.state.specific_heat * unit::kelvin(5.0)).si() ==
          Approx(d.emitters[3].load.si()));
    const double drawn = m.sent.in(unit::litre_per_minute)*5.0 / 17.0;
    verify({"flow that a mixing set draws", "heat balance, by hand", Certainty::computed, "L/min"}, drawn,
           m.drawn.in(unit::litre_per_minute), 1e-9 * drawn);
    CHECK(d.emitters[3].inlet.celsius() == Approx(38.0));
    CHECK(d.duty.flow.si() ==
          Approx((d.emitters[0].flow + d.emitters[1].flow + d.emitters[2].flow).si() + (m.drawn * d.state.density).si())
              .epsilon(1e-9));
    for (const auto& s : operated(filled, d).states) {
        if (s.kind == design::StateKind::mild_day) continue;
        CHECK(s.emitters[3].inlet.celsius() == Approx(38.0).margin(0.02));
        CHECK(std::abs(s.energy_error) < 1e-6);
    }
}

TEST_CASE("what lies beyond a mixing set may not meet the rest") {
    auto job = house_of_three();
    job.mixers.push_back({"MX", "J1", "J3", measured(unit::celsius(38.0)), measured(unit::kelvin(5.0)), {}, {}});
    const auto result = design::design(design::resolve(job));
    REQUIRE(std::holds_alternative<std::vector<design::Refusal>>(result));
    CHECK(std::get<1>(result).front().field == "mixers[0].to");
}

TEST_CASE("balanced emitters get their design flow from a pump that gives the design head") {
    const auto job = house_of_three();  // no circulator: it is taken to give just that head
    const auto d = designed(job);
    const auto o = operated(design::resolve(job), d);
    REQUIRE(o.states.size() == 4);
    const auto& balanced = o.states[1];
    for (std::size_t i = 0; i < d.emitters.size(); ++i) {
        CAPTURE(i);
        // Properties follow the temperatures of each pipe, which causes a small difference.
        CHECK(balanced.emitters[i].flow.si() == Approx(d.emitters[i].volume_flow.si()).epsilon(0.01));
        CHECK(balanced.rooms[i].temperature.celsius() == Approx(21.0).margin(1e-3));
    }
    CHECK(o.as_found.head.si() == Approx(d.duty.head.si()).epsilon(1e-6));
    // The index emitter needs no extra pressure drop and comes first.
    CHECK(o.as_found.valves.front().emitter == d.duty.index_emitter);
    CHECK(o.as_found.valves.front().kv == 0.0);
    for (const auto& s : o.states) CHECK(std::abs(s.energy_error) < 1e-6);
    // Unbalanced, the near emitter takes more than its share and the far one less.
    CHECK(o.states[0].emitters[0].flow > o.states[1].emitters[0].flow);
    CHECK(o.states[0].emitters[2].flow < o.states[1].emitters[2].flow);
    // On a milder day, a lower flow temperature is enough.
    CHECK(o.states[3].source_flow < o.states[2].source_flow);
    CHECK(o.states[3].rooms[1].temperature.celsius() == Approx(21.0).margin(0.02));
}

TEST_CASE("duty points lie on the pipework's own curve and on the pump's") {
    auto job = house_of_three();
    job.circulator = curve({{0.0, 60.0}, {10.0, 52.0}, {20.0, 35.0}, {30.0, 8.0}});
    const auto filled = design::resolve(job);
    const auto o = operated(filled, designed(job));
    const auto& s = o.states.front();
    // The curve is linear between its points, so the result is close but not exact.
    const auto on = [&](const std::vector<job::CurvePoint>& points) {
        for (std::size_t i = 1; i < points.size(); ++i) {
            if (points[i].flow < s.flow) continue;
            const double share = (s.flow - points[i - 1].flow) / (points[i].flow - points[i - 1].flow);
            return (points[i - 1].head + share * (points[i].head - points[i - 1].head)).si();
        }
        return 0.0;
    };
    CHECK(on(o.pump_curve) == Approx(s.head.si()).epsilon(0.01));
    CHECK(on(s.system_curve) == Approx(s.head.si()).epsilon(0.03));
}

TEST_CASE("the pipework's curve is the one that loop equations give") {
    // Valves and connections are stated, so that every resistance is known outside the program; the heads of the
    // curve's points follow from a pump that holds 40 kPa.
    auto job = house_of_three();
    for (auto& e : job.emitters) {
        e.connection = "copper_15";
        e.valves_kv = measured(0.8);
    }
    job.circulator.emplace();
    job.circulator->mode = job::PumpMode::constant_pressure;
    job.circulator->set_head = 40.0 * unit::kilopascal;
    const auto filled = design::resolve(job);
    const auto o = operated(filled, designed(job));
    const auto& found = o.states.front().system_curve;
    const auto csv = read_csv("network/system_curve.csv");
    REQUIRE(csv.rows.size() >= 6);
    REQUIRE(found.size() == 9);
    Verification flows{{"flow that a head drives through a design's pipework",
                        "loop equations by scipy root, friction by fluids 1.3.1 (tests/reference/network_flows.py)",
                        Certainty::computed, "L/min"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto& point = found.at(static_cast<std::size_t>(csv.number(i, "point")));
        CAPTURE(i);
        CHECK(point.head.si() == Approx(csv.number(i, "head_pa")).epsilon(1e-9));
        const double expected = 6e4 * csv.number(i, "flow_m3_per_s");
        flows.check(expected, point.flow.in(unit::litre_per_minute), 1e-7 * expected);
    }
}

TEST_CASE("a header makes the source work hotter by what conservation says") {
    auto job = house_of_three();
    job.separation.emplace();
    job.separation->kind = job::SeparationKind::header;
    job.separation->source_flow = measured(unit::litre_per_minute(6.0));
    const auto d = designed(job);
    REQUIRE(d.separation);
    // 3600 W in 6 L/min of water; its density and heat are those of IAPWS-IF97 at 47.5 °C and 2 bar by iapws 1.5.5.
    const double warmer = 3600.0 / (6e-3 / 60.0 * 989.1995005079685 * 4178.859614350564);
    REQUIRE(warmer > 5.0);
    verify({"flow temperature of a source at a header", "heat balance with IAPWS-IF97 by iapws, by hand",
            Certainty::computed, "°C"},
           45.0 + warmer, d.separation->source_leaving.celsius(), 1e-9 * (45.0 + warmer));
    CHECK(d.separation->source_entering.celsius() == Approx(45.0));
    const auto o = operated(design::resolve(job), d);
    const auto& s = o.states[1];
    CHECK(s.source_flow.celsius() == Approx(d.separation->source_leaving.celsius()).margin(1e-6));
    for (const auto& state : o.states) CHECK(std::abs(state.energy_error) < 1e-6);
}

TEST_CASE("behind a plate the source makes what effectiveness asks, and the states agree with it") {
    auto job = house_of_three();
    job.separation.emplace();
    job.separation->kind = job::SeparationKind::plate;
    job.separation->plate_ua = measured(unit::watt_per_kelvin(1500.0));
    job.separation->source_flow = measured(unit::litre_per_minute(12.0));
    const auto filled = design::resolve(job);
    const auto d = designed(job);
    REQUIRE(d.separation);
    CHECK(d.separation->source_leaving > d.flow);
    const auto o = operated(filled, d);
    // Balanced at the design flow, the plate gives about the design flow temperature again.
    CHECK(o.states[1].emitters[0].inlet.celsius() == Approx(50.0).margin(0.2));
    CHECK(o.states[1].source_side.in(unit::litre_per_minute) == Approx(12.0));
}

TEST_CASE("capacities scale with the load, and joining where the load is asks for less") {
    auto job = house_of_three();
    job.heat_source->could_join_at = {"J3"};
    job.heat_source->minimum_flow = measured(unit::litre_per_minute(12.0));
    const auto filled = design::resolve(job);
    const auto d = designed(job);
    const auto o = operated(filled, d);
    REQUIRE(o.joins.size() == 2);
    CHECK(o.joins[0].is_present);
    CHECK(o.joins[1].possible);
    for (const auto& c : o.capacities) {
        if (c.limit != design::LoadLimit::velocity) continue;
        // At the calculated load, the section that sets it is at its limit.
        auto scaled = job;
        for (auto& room : scaled.rooms) room.heat_loss->value = c.factor * room.heat_loss->value;
        const auto again = designed(scaled);
        CHECK(again.sections[static_cast<std::size_t>(c.where)].hydraulic.velocity.si() == Approx(1.5).epsilon(1e-6));
    }
    for (const auto& k : o.kept) {
        if (!k.drop) continue;
        CHECK(k.total_flow < d.duty.volume_flow);
        CHECK(k.minimum_flow_kept == (k.total_flow.in(unit::litre_per_minute) >= 12.0));
    }
}

TEST_CASE("circulators in one line that push against each other are refused") {
    auto job = house_of_three();
    job::FurtherCirculator against;
    against.pump = curve({{0.0, 90.0}, {30.0, 40.0}});
    against.in = "S1";
    against.towards = "HS";
    job.circulator = curve({{0.0, 60.0}, {30.0, 8.0}});
    job.further_circulators.push_back(against);
    const auto filled = design::resolve(job);
    const auto result = design::operate(filled, designed(job));
    REQUIRE(std::holds_alternative<std::vector<design::Refusal>>(result));
    CHECK(std::get<1>(result).front().rule == "two pumps in one line push against each other");
}

TEST_CASE("equal arms get equal flows, and a larger bore never lowers the flow to its own emitter") {
    // Two equal arms from the source: equal flows and temperatures.
    auto job = bare_job();
    for (const auto* id : {"a", "b"}) job.rooms.push_back(stated_room(id, 1500.0));
    job.emitters = {panel("Ea", "a", "A", 5000.0), panel("Eb", "b", "B", 5000.0)};
    job.sections = {section("S1", "HS", "A", "copper_15", 7.0), section("S2", "HS", "B", "copper_15", 7.0)};
    job.circulator = curve({{0.0, 30.0}, {20.0, 5.0}});
    const auto o = operated(design::resolve(job), designed(job));
    const auto& s = o.states.front();
    CHECK(s.emitters[0].flow.si() == Approx(s.emitters[1].flow.si()).epsilon(1e-9));
    CHECK(s.emitters[0].outlet.celsius() == Approx(s.emitters[1].outlet.celsius()).epsilon(1e-9));

    SECTION("a larger bore to one emitter never lowers its own flow") {
        job.sections[0].pipe = "copper_22";
        const auto wider = operated(design::resolve(job), designed(job));
        CHECK(wider.states.front().emitters[0].flow > s.emitters[0].flow);
        CHECK(wider.states.front().emitters[1].flow <= s.emitters[1].flow);
    }
}

TEST_CASE("what the network refuses is told by the names of the job") {
    const auto job = design::resolve(house_of_three()).values;
    auto d = designed(house_of_three());
    const auto built = network::build_network(design::plan_of(job, d));
    network::Finding f;
    f.kind = network::FindingKind::not_converged;
    std::vector<design::Refusal> refusals;
    f.link = built.sections[1].return_;
    design::refuse({f}, job, built, refusals);
    f.link = built.system.emitters[2].link;
    design::refuse({f}, job, built, refusals);
    f.link = built.drive;
    design::refuse({f}, job, built, refusals);
    f.severity = Severity::warning;
    design::refuse({f}, job, built, refusals);
    REQUIRE(refusals.size() == 3);
    CHECK(refusals[0].field == "pipework.sections[1]");
    CHECK(refusals[0].rule.find("section `S2`") != std::string::npos);
    CHECK(refusals[1].rule.find("emitter `Ec`") != std::string::npos);
    CHECK(refusals[2].field == "circulator");
}

TEST_CASE("an emitter on a one-pipe loop gives what its water loses") {
    const auto house = design::resolve(example_job("one-pipe-loop"));
    const auto d = std::get<design::Design>(design::design(house));
    int on_loop = 0;
    for (const auto& e : d.emitters) {
        // Only beside a pair of pipes does an inlet follow the heat source in a straight line.
        if (e.on_loop || e.mixer >= 0) CHECK(e.inlet_follows == 1.0);
        if (!e.on_loop) continue;
        const auto carried = e.flow * d.state.specific_heat * (e.inlet - e.return_temperature);
        CHECK(e.output.si() > 100.0);
        CHECK(e.output.si() == Approx(carried.si()).epsilon(1e-6));
        ++on_loop;
    }
    CHECK(on_loop > 0);
}

TEST_CASE("no state names a room without emitters as the one that is served least") {
    auto job = one_section_job("copper_22", 2000.0);
    job.rooms.insert(job.rooms.begin(), stated_room("no emitter", 800.0));
    const auto house = design::resolve(job);
    const auto d = std::get<design::Design>(design::design(house));
    const auto operation = std::get<design::Operation>(design::operate(house, d));
    REQUIRE(operation.states.size() == 4);
    for (const auto& state : operation.states) CHECK(state.least_served == 1);
}
