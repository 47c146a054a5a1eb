// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/plant.hpp"

#include "support/small_job.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

using namespace loopfolio;
using namespace loopfolio::tests;
using design::Check;

namespace {

struct Planned {
    job::Job job;
    design::Plant plant;
    design::Trace trace;
};

/// 20 m of 22 mm copper, an emitter with a ΔT50 rating of 24 kW, and any other water content.
job::Job with_water(double other_litres, double emitter_litres = 0.0) {
    auto job = one_section_job("copper_22", 6000.0);
    job.emitters[0].content = measured(emitter_litres * unit::litre);
    job::SystemWater w;
    w.height = measured(4.5 * unit::metre);
    w.safety_valve = measured(3.0 * unit::bar);
    w.highest_temperature = measured(unit::celsius(55.0));
    w.other_content = measured(other_litres * unit::litre);
    job.system_water = w;
    return job;
}

job::Job with_hot_water(double coil, double flow = 55.0) {
    auto job = one_section_job("copper_28", 6000.0);
    job.heat_source->capacity = measured(6.0 * unit::kilowatt);
    job::HotWater h;
    h.persons = measured(4.0);
    h.store = measured(200.0 * unit::litre);
    h.coil = measured(coil * unit::watt_per_kelvin);
    h.source_flow = measured(unit::celsius(flow));
    h.standing_loss = measured(1.5 * unit::kilowatt_hour);
    job.hot_water = h;
    return job;
}

Planned planned(job::Job job) {
    const auto house = design::resolve(std::move(job));
    Planned out{house.values, {}, {}};
    const auto d = std::get<design::Design>(design::design(house));
    out.plant = std::get<design::Plant>(design::plan_plant(house, d, {}, &out.trace));
    return out;
}

/// The verdict of one check of the plant.
Verdict verdict_of(const Planned& p, Check check) {
    for (const auto& f : p.plant.findings) {
        if (f.check == check) return f.verdict;
    }
    throw std::runtime_error{"there is no such finding"};
}

std::string refusal_of(job::Job job) {
    const auto house = design::resolve(std::move(job));
    const auto made = design::plan_plant(house, std::get<design::Design>(design::design(house)));
    const auto* refusals = std::get_if<std::vector<design::Refusal>>(&made);
    return refusals == nullptr ? "" : refusals->front().field + ": " + refusals->front().rule;
}

}  // namespace

TEST_CASE("content of the system by what holds it") {
    const auto p = planned(with_water(8.0, 12.0));
    verify({"content of 20 m of 22 mm copper", "BS EN 1057 sizes, 0.320 L/m in makers' tables", Certainty::read, "L"},
           6.40, p.plant.water->sections.in(unit::litre), 0.0005 * 20.0);  // three decimals, for each of 20 m
    CHECK(p.plant.water->emitters.in(unit::litre) == Approx(12.0));
    CHECK(p.plant.water->content.in(unit::litre) == Approx(p.plant.water->sections.in(unit::litre) + 20.0));
    CHECK(p.plant.water->emitters_by_rating == 0);
    auto rated = with_water(0.0);
    rated.emitters[0].content.reset();
    const auto by_rating = planned(rated);
    CHECK(by_rating.plant.water->emitters_by_rating == 1);
    CHECK(by_rating.plant.water->emitters.in(unit::litre) == Approx(24.0 * 5.0));
}

TEST_CASE("expansion vessel of a system of 100 litres, by hand from EN 12828 Annex D") {
    auto job = with_water(0.0);
    job.system_water->other_content = measured(100.0 * unit::litre - planned(job).plant.water->content);
    const auto w = *planned(job).plant.water;
    verify({"expansion of a design's water, 10 to 55 °C", "IAPWS-95 densities at 2 bar (python3-iapws 1.5.2)",
            Certainty::computed, "%"},
           1.42162, 100.0 * w.expansion, 0.003);  // densities of IF97 are within 1.5e-5, and there are two of them
    // 4.5 m are 0.44 bar, so 0.7 bar; 2.5 bar in use; a vessel under 15 L keeps a reserve of 20 % of its volume.
    CHECK(w.precharge.in(unit::bar) == Approx(0.7));
    verify({"least vessel of a design of 100 L", "EN 12828:2003 Annex D, 1.42162/((2.5 − 0.7)/3.5 − 0.2) by hand",
            Certainty::memory, "L"},
           // Tolerance as for the expansion.
           1.42162 / (1.8 / 3.5 - 0.2), w.vessel.least.in(unit::litre), 0.003 / (1.8 / 3.5 - 0.2));
    CHECK(w.next_vessel->in(unit::litre) == Approx(8.0));
    job.system_water->vessel = measured(4.0 * unit::litre);
    CHECK(verdict_of(planned(job), Check::vessel_size) == Verdict::change);
    job.system_water->vessel = measured(8.0 * unit::litre);
    CHECK(verdict_of(planned(job), Check::vessel_size) == Verdict::keep);
    CHECK(verdict_of(planned(job), Check::vessel_pressure) == Verdict::keep);
    job.system_water->cold_fill = measured(2.3 * unit::bar);
    CHECK(verdict_of(planned(job), Check::vessel_pressure) == Verdict::change);
}

TEST_CASE("frost, glycol and what must always be open") {
    auto job = with_water(60.0);
    job.system_water->frost = measured(unit::celsius(-10.0));
    CHECK(verdict_of(planned(job), Check::frost_protection) == Verdict::change);
    auto valves = job;
    valves.system_water->antifreeze_valves = true;
    CHECK_FALSE(planned(valves).plant.water->frost);
    job.fluid = {job::FluidName::propylene_glycol, measured(0.30), job::ConcentrationBasis::volume};
    const auto w = *planned(job).plant.water;
    CHECK(verdict_of(planned(job), Check::frost_protection) == Verdict::keep);
    CHECK(*w.glycol / w.content == Approx(0.30));
    auto by_mass = job;
    by_mass.fluid.basis = job::ConcentrationBasis::mass;
    verify({"volume of propylene glycol in 30 % by mass",
            "ASHRAE Handbook Fundamentals 2001, chapter 21, by way of CoolProp", Certainty::read, "%"},
           29.4, 100.0 * (*planned(by_mass).plant.water->glycol / planned(by_mass).plant.water->content), 0.05);
    job.system_water->defrost_heat = measured(0.5 * unit::kilowatt_hour);
    job.system_water->always_open = measured(60.0 * unit::litre);
    const auto open = *planned(job).plant.water;
    CHECK(verdict_of(planned(job), Check::open_volume) == Verdict::change);  // 0.5 kWh and 5 K ask for some 88 L
    CHECK(open.for_defrost->in(unit::litre) == Approx(0.5 * 3.6e6 / (1020.0 * 3900.0 * 5.0) * 1000.0).epsilon(0.05));
}

TEST_CASE("hot water of four persons, by hand") {
    const auto p = planned(with_hot_water(3000.0, 60.0));
    const auto& h = *p.plant.hot_water;
    // 200 L from 10 to 40 °C: 198.45 kg times h(40) - h(10) = 167.5 - 42.0 kJ/kg (IAPWS).
    verify({"heat of 200 L of water, 10 to 40 °C", "IAPWS-IF97 densities and enthalpies, by hand", Certainty::computed,
            "kWh"},
           198.45 * 125.5 / 3600.0, h.drawn.in(unit::kilowatt_hour), 198.45 * 0.05 / 3600.0);  // 125.5 has one decimal
    CHECK(h.store_needed.in(unit::litre) == Approx(200.0 * 30.0 / 40.0 / 0.8));
    CHECK(verdict_of(p, Check::store_volume) == Verdict::keep);
    CHECK(verdict_of(p, Check::coil_flow) == Verdict::keep);
    // All of it at 6 kW: 200 L by 40 K.
    CHECK(h.reheat->time.in(unit::minute) == Approx(200.0 * 0.988 * 4.18 * 40.0 / 6.0 / 60.0).epsilon(0.01));
    CHECK(*h.hours_a_day > h.drawn / (6.0 * unit::kilowatt));
    CHECK(*h.load_with_hot_water > 6.0 * unit::kilowatt);
    CHECK_FALSE(h.hot_cycle);
    CHECK(p.trace.find(design::Subject::plant, "hot_water") != nullptr);
}

TEST_CASE("a year of hot water at the weather of the season, by hand") {
    auto job = with_hot_water(3000.0, 60.0);
    for (const auto& [outdoor, flow, ratio] :
         {std::tuple{-10.0, 35.0, 3.0}, {-10.0, 60.0, 2.0}, {10.0, 35.0, 4.0}, {10.0, 60.0, 3.0}}) {
        job.heat_source->performance.push_back(
            {unit::celsius(outdoor), unit::celsius(flow), 8.0 * unit::kilowatt, ratio, {}, {}});
    }
    CHECK_FALSE(planned(job).plant.hot_water->electricity_a_year);  // no season, no weather
    job.season.emplace();
    job.season->bins = {{unit::celsius(-5.0), unit::hour(1000.0)}, {unit::celsius(7.0), unit::hour(2000.0)}};
    const auto p = planned(job);
    const auto& h = *p.plant.hot_water;
    CHECK(h.heat_a_year.si() == Approx(365.0 * (h.drawn + *h.standing_loss).si()));
    // COP at 60 °C flow: 2.25 and 2.85. The 5,760 hours in no bin count at 7 °C.
    const double mean = (1000.0 / 2.25 + 7760.0 / 2.85) / 8760.0;
    REQUIRE(h.electricity_a_year);
    verify({"electricity of a year's hot water", "hours over ratios, by hand", Certainty::computed, "kWh"},
           mean * h.heat_a_year.in(unit::kilowatt_hour), h.electricity_a_year->in(unit::kilowatt_hour), 1e-6);
    auto cycles = job;
    cycles.hot_water->immersion = measured(3.0 * unit::kilowatt);
    cycles.hot_water->hot_cycles_a_year = measured(52.0);
    const auto hot = *planned(cycles).plant.hot_water;
    CHECK((*hot.electricity_a_year - *h.electricity_a_year).si() == Approx(hot.hot_cycle->electricity_a_year.si()));
    // Bins warmer than the table use its warmest points, 3.0 at 60 °C flow, as do the hours in no bin.
    job.season->bins.back().outdoor = unit::celsius(25.0);
    const auto warm = *planned(job).plant.hot_water;
    REQUIRE(warm.electricity_a_year);
    CHECK(warm.electricity_a_year->in(unit::kilowatt_hour) ==
          Approx((1000.0 / 2.25 + 7760.0 / 3.0) / 8760.0 * warm.heat_a_year.in(unit::kilowatt_hour)));
    job.season->bins.front().outdoor = unit::celsius(-11.0);  // colder than the table
    CHECK_FALSE(planned(job).plant.hot_water->electricity_a_year);
}

TEST_CASE("a small coil takes longer, and one too cold never gets there") {
    const auto large = planned(with_hot_water(3000.0)).plant.hot_water;
    const auto small = planned(with_hot_water(300.0)).plant.hot_water;
    CHECK(small->reheat->time > large->reheat->time);
    CHECK(verdict_of(planned(with_hot_water(300.0)), Check::coil_flow) == Verdict::keep_noted);
    CHECK(verdict_of(planned(with_hot_water(20.0)), Check::coil_flow) == Verdict::change);  // a night is not enough
    const auto cold = planned(with_hot_water(1500.0, 45.0)).plant.hot_water;
    CHECK(cold->unreachable);
    CHECK(verdict_of(planned(with_hot_water(1500.0, 45.0)), Check::coil_flow) == Verdict::change);
    auto hot = with_hot_water(1500.0);
    hot.hot_water->hot_cycles_a_year = measured(52.0);
    CHECK(planned(hot).plant.hot_water->needs_immersion);
    hot.hot_water->immersion = measured(3.0 * unit::kilowatt);
    const auto cycle = planned(hot).plant.hot_water->hot_cycle;
    REQUIRE(cycle);  // without a maker's table the immersion heater carries it from 50 to 60 °C
    CHECK(cycle->by_source.si() == 0.0);
    CHECK(cycle->electricity_a_year.in(unit::kilowatt_hour) ==
          Approx(52.0 * 200.0 * 0.983 * 4.184 * 10.0 / 3600.0).epsilon(0.005));
}

TEST_CASE("sound at the window, by hand") {
    auto job = one_section_job("copper_28", 6000.0);
    job::Sound s;
    s.power_level = measured(58.0);
    s.distance = measured(6.5 * unit::metre);
    s.standing = job::SoundPlace::by_wall;
    s.barrier = measured(5.0);
    s.background = measured(30.0);
    s.limit = measured(33.0);
    job.sound = s;
    const auto p = *planned(job).plant.sound;
    const double level = 58.0 + 10.0 * std::log10(4.0 / (4.0 * 3.14159265358979 * 6.5 * 6.5));
    verify({"level of a design's unit at 6.5 m by a wall", "ISO 9613-2 geometric divergence, by hand",
            Certainty::memory, "dB(A)"},
           level, p.at_distance, 0.001);
    CHECK(p.level == Approx(level - 5.0));
    CHECK(*p.with_background == Approx(10.0 * std::log10(std::pow(10.0, (level - 5.0) / 10.0) + 1000.0)));
    CHECK(verdict_of(planned(job), Check::sound_level) == Verdict::change);
    REQUIRE(p.far_enough);
    job.sound->distance = measured(*p.far_enough + 0.01 * unit::metre);
    CHECK(verdict_of(planned(job), Check::sound_level) == Verdict::keep);  // with the street, as the verdict counts it
    job.sound->background = measured(34.0);
    CHECK_FALSE(planned(job).plant.sound->far_enough);  // the street alone passes it
}

TEST_CASE("the sound of every unit counts, as if all stood in one place") {
    auto job = one_section_job("copper_28", 6000.0);
    job::Sound s;
    s.power_level = measured(58.0);
    s.distance = measured(6.5 * unit::metre);
    job.sound = s;
    const double one = planned(job).plant.sound->level;
    job.heat_source->number = 2;
    // ISO 9613-2, from memory: levels add by their powers, so two equal ones give 10·lg 2 = 3.01 dB more.
    CHECK(planned(job).plant.sound->level - one == Approx(3.0103).epsilon(1e-4));
    job.heat_source->number = 1;
    job.heat_source->further.push_back({"smaller", "", {}, "", {}, 2, {}, measured(52.0)});
    const auto both = *planned(job).plant.sound;
    CHECK(both.units == 3);
    CHECK(both.power_level == Approx(10.0 * std::log10(std::pow(10.0, 5.8) + 2.0 * std::pow(10.0, 5.2))));
    CHECK(both.level - one == Approx(both.power_level - 58.0));
}

TEST_CASE("what the plant adds to the verdict of a design") {
    auto job = with_water(94.0);
    job.system_water->vessel = measured(2.0 * unit::litre);
    const auto p = planned(job);
    const auto d = designed(p.job);
    CHECK(d.verdict != Verdict::change);
    CHECK(design::worst_of(p.plant.findings) == Verdict::change);
}

TEST_CASE("what a relation cannot answer for is refused, not left out") {
    auto low = with_water(10.0);
    low.system_water->safety_valve = measured(1.0 * unit::bar);
    CHECK(refusal_of(low) == "system_water.safety_valve_bar: leaves no room over the precharge of 0.70\u00a0bar");
    auto cold = with_water(10.0);
    cold.system_water->fill_temperature = measured(unit::celsius(25.0));
    cold.system_water->highest_temperature = measured(unit::celsius(20.0));
    CHECK(refusal_of(cold) ==
          "system_water.highest_temperature_c: the fluid has no density from 25.0\u00a0°C to 20.0\u00a0°C");
    auto fill = with_water(10.0);
    fill.system_water->cold_fill = measured(0.4 * unit::bar);
    CHECK(refusal_of(fill) == "system_water.cold_fill_bar: lies below the precharge of 0.70\u00a0bar");
    auto open = with_water(10.0);
    open.system_water->least_volume = measured(20.0 * unit::litre);
    open.system_water->always_open = measured(900.0 * unit::litre);
    CHECK(refusal_of(open).find("is more than the whole content") != std::string::npos);
    auto drawn = with_hot_water(1500.0, 60.0);
    drawn.hot_water->drawn = measured(unit::celsius(55.0));
    CHECK(refusal_of(drawn).find("cannot come of a store") != std::string::npos);
}

TEST_CASE("below 30 °C, where the standard's table begins, no expansion is stated by it") {
    const auto told = [](const Planned& p) {
        const auto& steps = p.trace.find(design::Subject::plant, "system_water")->steps;
        return std::ranges::any_of(steps, [](const auto& step) { return step.what.key == "expansion_by_table"; });
    };
    const auto warm = planned(with_water(10.0));
    REQUIRE(warm.plant.water->table_expansion);
    CHECK(100.0 * *warm.plant.water->table_expansion == Approx(1.490).margin(0.0005));  // 0.31 + 3.9e-4 x 55²
    CHECK(told(warm));
    auto cool = with_water(10.0);
    cool.system_water->highest_temperature = measured(unit::celsius(28.0));
    const auto p = planned(cool);
    CHECK_FALSE(p.plant.water->table_expansion);
    CHECK_FALSE(told(p));
    CHECK(p.plant.water->expansion > 0.0);
}
