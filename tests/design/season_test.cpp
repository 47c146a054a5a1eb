// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/season.hpp"

#include "loopfolio/physics/emitter.hpp"
#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/season_house.hpp"
#include "support/small_job.hpp"
#include "support/verification.hpp"

#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

design::SeasonPlan planned(const job::Job& job, std::optional<Volume> content = {}, design::Trace* trace = nullptr) {
    const auto plan = design::plan_season(design::resolve(job).values, designed(job), content, {}, trace);
    REQUIRE(plan);
    return *plan;
}

double kilowatt_hours(Energy energy) { return energy.in(unit::kilowatt_hour); }

const physics::SeasonBin& bin_at(const design::SeasonPlan& plan, double outdoor) {
    for (const auto& bin : plan.season.bins) {
        if (std::abs(bin.outdoor.celsius() - outdoor) < 1e-9) return bin;
    }
    throw std::runtime_error{"no such bin"};
}

}  // namespace

TEST_CASE("from a job to the season: the same as an independent loop over the bins") {
    // From tests/reference/plant.py in numpy: its curve uses scipy's brentq, its table scipy's RegularGridInterpolator.
    const auto csv = read_csv("season.csv");
    Verification energies{{"energies of a season from a job", "numpy loop over the bins, tests/reference/plant.py",
                           Certainty::computed, "kWh"}};
    Verification times{{"hours of a season from a job", "numpy loop over the bins, tests/reference/plant.py",
                        Certainty::computed, "h"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const std::string& climate = csv.rows[i].front();
        const auto number = [&](const char* name) { return csv.number(i, name); };
        INFO(climate << " " << number("design_w"));
        auto job = season_house({number("design_w"), number("design_outdoor_c"), number("flow_c"), number("return_c"),
                                 number("room_c"), number("exponent"), number("least_share")});
        job.season->climate = climate;
        job.season->base = measured(unit::celsius(number("base_c")));
        job.season->cycling_factor = measured(number("cc"));
        const double backup = number("backup_w");
        job.heat_source->backup = measured(unit::watt(backup < 0.0 ? 50'000.0 : backup));
        const auto plan = planned(job);
        const auto& s = plan.season;
        struct Row {
            const char* name;
            Energy found;
        };
        for (const auto& r : {Row{"demand", s.demand},
                              {"source", s.source_heat},
                              {"backup", s.backup_heat},
                              {"unmet", s.unmet},
                              {"electricity", s.source_electricity},
                              {"outside", s.outside_demand}}) {
            energies.check(number(r.name), kilowatt_hours(r.found), 1e-6 + 1e-7 * number(r.name));
        }
        times.check(number("cycling_h"), s.cycling_time.in(unit::hour), 1e-6);
        times.check(number("outside_h"), s.outside_time.in(unit::hour), 1e-6);
        CHECK(plan.taken_as_changed == 0);
    }
}

TEST_CASE("load and hours of the average climate are those of EN 14825") {
    // EN 14825: 10 kW at -10 degrees is 16/26 of it at 0, 6.154 kW; 2066 hours at full load; 178 h with the thermostat
    // off and 3672 h off make the hours without heating.
    SeasonHouse h;
    h.load = 10'000.0;
    auto job = season_house(h);
    job.season->standby = measured(unit::watt(10.0));
    const auto plan = planned(job);
    verify({"load of a job's season at 0 °C, 10 kW at -10 °C",
            "EN 14825 load line, 10 x 16/26; 6.2 kW in Calculation of SCOP (Danish "
            "Energy Agency, 2011)",
            Certainty::read, "kW"},
           6.154, bin_at(plan, 0.0).load.in(unit::kilowatt), 0.0005);
    verify({"hours at full load of a job's season, average climate", "EN 14825, H_HE 2066 h", Certainty::read, "h"},
           2066.0, plan.season.full_load_time.in(unit::hour), 0.5);  // whole hours
    verify({"standing by of a job's season at 10 W", "EN 14825, hours 178 and 3672 of the average climate",
            Certainty::memory, "kWh"},
           10.0 * (178.0 + 3672.0) / 1000.0, kilowatt_hours(plan.season.standby_electricity), 1e-6);
}

TEST_CASE("power held ready for warming up is no heat that the season needs") {
    auto job = season_house();
    const auto without = planned(job);
    job.conditions.intermittent_margin = measured(0.15);
    const auto with = planned(job);
    CHECK(with.season.demand.si() == Approx(without.season.demand.si()));
}

TEST_CASE("defrosting takes its share of the capacity between its temperatures and nowhere else") {
    auto job = season_house();
    const auto before = planned(job);
    job.heat_source->defrost_derating = measured(0.2);
    job.heat_source->defrost_from = measured(unit::celsius(-3.0));
    job.heat_source->defrost_to = measured(unit::celsius(5.0));
    const auto after = planned(job);
    for (const double outdoor : {-3.0, 0.0, 5.0})
        CHECK(bin_at(after, outdoor).load_ratio == Approx(bin_at(before, outdoor).load_ratio / 0.8));
    for (const double outdoor : {-4.0, 6.0})
        CHECK(bin_at(after, outdoor).load_ratio == Approx(bin_at(before, outdoor).load_ratio));
}

TEST_CASE("two units do the work of one of twice the size that turns down to half") {
    SeasonHouse h;
    h.load = 10'000.0;
    auto two = season_house(h);
    two.heat_source->number = 2;
    h.least_share = 0.15;
    auto one = season_house(h);
    for (auto& p : one.heat_source->performance) {
        p.capacity = 2.0 * *p.capacity;
        p.least = 2.0 * *p.least;
    }
    const auto a = planned(two), b = planned(one);
    CHECK(a.season.source_electricity.si() == Approx(b.season.source_electricity.si()));
    CHECK(a.season.cycling_time.si() == Approx(b.season.cycling_time.si()));
    CHECK(a.largest_share == Approx(b.largest_share));
}

TEST_CASE("what lies outside the maker's table is told and never reckoned") {
    auto job = season_house();
    std::erase_if(job.heat_source->performance, [](const auto& p) { return p.outdoor < unit::celsius(-1.0); });
    const auto plan = planned(job);
    Energy colder;
    for (const auto& bin : plan.season.bins) {
        CHECK(bin.reached == (bin.outdoor >= unit::celsius(2.0)));
        if (!bin.reached) colder += bin.demand;
    }
    CHECK(plan.season.outside_demand.si() == Approx(colder.si()));
    CHECK(plan.season.source_heat.si() + plan.season.backup_heat.si() == Approx((plan.season.demand - colder).si()));
}

TEST_CASE("the curve just meets the room, and the source makes the lift of a separation on top") {
    auto job = season_house();
    const auto plain = planned(job);
    job.separation.emplace();
    job.separation->kind = job::SeparationKind::plate;
    job.separation->plate_ua = measured(Quantity<1, 2, -3, -1>::from_si(2000.0));
    const auto lifted = planned(job);
    const auto lift = designed(job).separation->lift.si();
    REQUIRE(lift > 0.5);
    REQUIRE(plain.curve.size() == lifted.curve.size());
    REQUIRE(plain.curve.size() > 5);
    for (std::size_t i = 0; i < plain.curve.size(); ++i) {
        const auto& p = plain.curve[i];
        const double share = (16.0 - p.outdoor.celsius()) / 26.0;
        CHECK(lifted.curve[i].emitters.kelvin() == Approx(p.emitters.kelvin()));
        const double made = std::max(p.emitters.celsius() + share * lift, 35.0);
        CHECK(lifted.curve[i].made.celsius() == Approx(made).margin(1e-9));
    }
    job.season->compensation = false;
    for (const auto& p : planned(job).curve) CHECK(p.emitters.celsius() == Approx(45.0));
}

TEST_CASE("a cooler flow on the design day uses less, and counts the emitters that are too small for it") {
    auto job = season_house();
    job.season->compare_flows = {unit::celsius(40.0), unit::celsius(45.0), unit::celsius(55.0)};
    const auto plan = planned(job);
    REQUIRE(plan.options.size() == 3);
    CHECK(plan.options[0].electricity < plan.options[1].electricity);
    CHECK(plan.options[1].electricity < plan.options[2].electricity);
    CHECK(plan.options[1].electricity.si() == Approx(design::all_electricity(plan.season).si()));
    CHECK(plan.options[0].too_small == 1);
    CHECK(plan.options[1].too_small == 0);
    CHECK(plan.options[2].too_small == 0);
    // An emitter too small even for the design is calculated at the smallest rating that is enough.
    job.emitters[0].output_at_50k.value = 0.8 * job.emitters[0].output_at_50k.value;
    const auto small = planned(job);
    CHECK(small.taken_as_changed == 1);
    CHECK(design::all_electricity(small.season).si() == Approx(design::all_electricity(plan.season).si()));
}

TEST_CASE("below its least output: water for the stated run, and starts with the water there is") {
    auto job = season_house();
    job.heat_source->allowed_swing = measured(unit::kelvin(5.0));
    job.heat_source->least_run = measured(unit::minute(10.0));
    const auto filled = designed(job);
    const auto plan = planned(job, unit::litre(80.0));
    REQUIRE(plan.part_load);
    const auto& part = *plan.part_load;
    const double heat_of_litre = filled.state.density.si() * filled.state.specific_heat.si() * 1e-3 * 5.0;
    const auto& mildest = plan.season.bins.back();
    CHECK(part.smallest_load.si() == Approx(mildest.load.si()));
    CHECK(part.for_run->in(unit::litre) ==
          Approx((part.least_output - part.smallest_load).si() * 600.0 / heat_of_litre));
    REQUIRE(part.busiest);
    // No cycle has more starts than one at half of the largest minimum output of the season's bins with cycling.
    CHECK(part.busiest->starts_per_hour <= 3600.0 * part.least_output.si() / (4.0 * 80.0 * heat_of_litre) + 1e-9);
    CHECK(part.busiest->starts_per_hour > 0.8 * 3600.0 * part.least_output.si() / (4.0 * 80.0 * heat_of_litre));
    CHECK_FALSE(planned(job).part_load->busiest);
}

TEST_CASE("with valves shut the source keeps its least flow only where emitters stay open") {
    auto job = season_house();
    job.rooms[0].heat_loss = measured(unit::watt(4000.0));
    job.rooms.push_back(stated_room("other", 2000.0));
    job.emitters.push_back(panel("E2", "other", "A", 8000.0));
    CHECK_FALSE(planned(job).open_circuit);
    job.heat_source->minimum_flow = measured(unit::litre_per_minute(5.0));  // E takes 11.5 L/min, E2 5.8
    auto open = planned(job).open_circuit;
    REQUIRE(open);
    CHECK(open->emitter == 1);
    CHECK(open->always_open.empty());
    job.heat_source->minimum_flow = measured(unit::litre_per_minute(10.0));
    CHECK(planned(job).open_circuit->always_open == std::vector<int>{0});
    job.heat_source->minimum_flow = measured(unit::litre_per_minute(15.0));
    CHECK(planned(job).open_circuit->always_open == std::vector<int>{0, 1});
}

TEST_CASE("without a table, without a capacity or without a season there is no plan") {
    auto job = season_house();
    job.season.reset();
    CHECK_FALSE(design::plan_season(design::resolve(job).values, designed(job)));
    job = season_house();
    job.heat_source->performance[3].capacity.reset();
    CHECK_FALSE(design::plan_season(design::resolve(job).values, designed(job)));
    job = season_house();
    job.heat_source->performance.clear();
    CHECK_FALSE(design::plan_season(design::resolve(job).values, designed(job)));
}

TEST_CASE("the derivation is written by the calculation") {
    design::Trace trace;
    const auto plan = planned(season_house(), {}, &trace);
    const auto* found = trace.find(design::Subject::plant, "season");
    REQUIRE(found != nullptr);
    CHECK(found->steps.size() >= 8);
    CHECK(found->steps.front().source == "en-14825");
}

TEST_CASE("a further unit with the same table is one more of the same kind") {
    auto pair = season_house({.load = 12000.0});
    pair.heat_source->number = 2;
    auto further = season_house({.load = 12000.0});
    further.heat_source->further.push_back({"second", "", further.heat_source->performance, "", {}, 1, {}});
    const auto a = planned(pair).season, b = planned(further).season;
    CHECK(a.source_electricity.si() == Approx(b.source_electricity.si()));
    CHECK(a.source_heat.si() == Approx(b.source_heat.si()));
    CHECK(a.cycling_time == b.cycling_time);
}

TEST_CASE("units of different kinds: the largest alone in mild weather, both in the cold") {
    auto alone = season_house(), both = season_house({.load = 9000.0});
    const auto scaled = [](std::vector<job::PerformancePoint> points, double capacity, double ratio) {
        for (auto& p : points) {
            *p.capacity = capacity * *p.capacity;
            if (p.least) *p.least = capacity * *p.least;
            p.performance *= ratio;
        }
        return points;
    };
    both.heat_source->further.push_back(
        {"smaller", "", scaled(both.heat_source->performance, 0.5, 0.8), "", {}, 1, {}});
    const auto one = planned(alone).season, two = planned(both).season;
    bool mild = false, cold = false;
    for (std::size_t i = 0; i < one.bins.size(); ++i) {
        const auto& x = one.bins[i];
        const auto& y = two.bins[i];
        if (!x.reached || !y.reached || x.time <= Duration{} || x.load <= Power{}) continue;
        // By hand: the load's share is the same in both houses, so the water is too; capacity of two is half as much
        // again.
        const double capacity = x.load.si() / x.load_ratio;
        CHECK(y.load.si() / y.load_ratio == Approx(1.5 * capacity));
        if (y.cycles) continue;
        if (y.load.si() <= capacity) {
            mild = true;
            if (!x.cycles) CHECK(y.performance == Approx(x.performance));
        } else {
            cold = true;
            CHECK(y.performance == Approx(x.performance * 1.5 / (1.0 + 0.5 / 0.8)));
        }
    }
    CHECK(mild);
    CHECK(cold);
}
