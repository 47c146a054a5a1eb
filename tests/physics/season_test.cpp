// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/season.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/compensation.hpp"
#include "loopfolio/physics/source.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

Temperature c(double celsius) { return celsius * unit::celsius; }

std::vector<OutdoorBin> bins_of(const std::string& climate) {
    const auto csv = tests::read_csv("en14825_bin_hours.csv");
    std::vector<OutdoorBin> out;
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto time = csv.number(i, climate) * unit::hour;
        if (time > Duration{}) out.push_back({c(csv.number(i, "outdoor_c")), time});
    }
    return out;
}

const std::vector<OutdoorBin> average = bins_of("average");
const LoadLine ten_kilowatts{10.0 * unit::kilowatt, c(-10)};

/// A heat source that is the same at every outdoor temperature.
SeasonPlant steady(double kilowatts, double least, double performance) {
    SeasonPlant plant;
    plant.states = [=](Temperature, Power) {
        return SourceState{c(40), kilowatts * unit::kilowatt, least * unit::kilowatt, performance};
    };
    return plant;
}

SourceTable invented_source() {
    const auto csv = tests::read_csv("season_source.csv");
    std::vector<SourcePoint> points;
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        points.push_back({c(csv.number(i, "outdoor_c")), c(csv.number(i, "flow_c")),
                          csv.number(i, "capacity_w") * unit::watt, csv.number(i, "performance")});
    }
    return source_table(points).value();
}

/// The plant of one row of season.csv.
SeasonPlant plant_of(const tests::Csv& csv, std::size_t i, const SourceTable& table) {
    const EmissionDesign emission{c(csv.number(i, "flow_c")), c(csv.number(i, "return_c")), c(csv.number(i, "room_c")),
                                  csv.number(i, "exponent")};
    const auto design = csv.number(i, "design_w") * unit::watt;
    const double least = csv.number(i, "least_share");
    SeasonPlant plant;
    plant.states = [=](Temperature outdoor, Power load) -> std::optional<SourceState> {
        const auto flow = std::max(c(35), compensated_flow(emission, load / design).value().flow);
        const auto at = source_at(table, outdoor, flow);
        if (!at) return std::nullopt;
        return SourceState{flow, at->capacity, least * at->capacity, at->performance};
    };
    plant.degradation = csv.number(i, "cc");
    if (csv.number(i, "backup_w") >= 0.0) plant.backup.capacity = csv.number(i, "backup_w") * unit::watt;
    return plant;
}

}  // namespace

TEST_CASE("part loads of the reference climates") {
    struct Row {
        double design, outdoor, percent;
    };
    Verification v{{"part load", "EN 14825, (Tj - 16)/(Tdesign - 16)", Certainty::computed, "%"}};
    for (const auto& r : {Row{-10, -7, 88.46},
                          {-10, 2, 53.85},
                          {-10, 7, 34.62},
                          {-10, 12, 15.38},
                          {2, 7, 64.29},
                          {2, 12, 28.57},
                          {-22, -15, 81.58},
                          {-22, -7, 60.53}}) {
        v.check(r.percent, load_at({100.0 * unit::watt, c(r.design)}, c(r.outdoor))->in(unit::watt), 0.005);
    }
    tests::verify({"load at 0 °C of 10 kW, average climate", "Danish Energy Agency, Calculation of SCOP, 2011",
                   Certainty::read, "kW"},
                  6.2, load_at(ten_kilowatts, c(0))->in(unit::kilowatt), 0.05);
    CHECK(load_at(ten_kilowatts, c(16)) == Power{});
    CHECK(load_at(ten_kilowatts, c(20)) == Power{});
}

TEST_CASE("what cycling leaves of the performance") {
    Verification v{{"performance left by cycling, Cc 0.9", "EN 14825, CR/(Cc CR + 1 - Cc)", Certainty::computed, ""}};
    v.check(0.76923, *cycling_factor(0.25, 0.9), 5e-6);
    v.check(0.90909, *cycling_factor(0.50, 0.9), 5e-6);
    v.check(0.96774, *cycling_factor(0.75, 0.9), 5e-6);
    CHECK(*cycling_factor(1.0, 0.9) == 1.0);
    CHECK(*cycling_factor(3.0, 0.9) == 1.0);
    CHECK(*cycling_factor(0.1, 1.0) == Approx(1.0).epsilon(1e-12));
    for (const double bad : {-0.1, 1.1, nan_value}) CHECK_FALSE(cycling_factor(0.5, bad));
    CHECK_FALSE(cycling_factor(0.0, 0.9));
}

TEST_CASE("equivalent hours at full load are the published ones") {
    struct Row {
        std::string climate;
        double design, hours;
    };
    Verification v{
        {"season's demand in hours at full load", "Regulation (EU) 811/2013, HHE as quoted", Certainty::read, "h"}};
    for (const auto& r : {Row{"average", -10, 2066}, {"warmer", 2, 1336}, {"colder", -22, 2465}}) {
        const auto s = season(bins_of(r.climate), {7.0 * unit::kilowatt, c(r.design)}, steady(7, 0, 3));
        REQUIRE(s);
        v.check(r.hours, s->full_load_time.in(unit::hour), 0.5);
        CHECK(s->demand.in(unit::kilowatt_hour) == Approx(7.0 * s->full_load_time.in(unit::hour)));
    }
}

// Guidance on degree days in the United Kingdom, read in a copy: 7.5 °C for 48 hours under a base of 15.5 °C is 16 of
// them. The hours at full load of the reference climates over 24, times the span from base to design outdoor
// temperature, are their degree days.
TEST_CASE("degree days") {
    Verification v{{"degree days", "UK guidance as read; EN 14825 hours at full load", Certainty::read, "K·d"}};
    v.check(16.0, degree_days(std::vector<OutdoorBin>{{c(7.5), 48.0 * unit::hour}, {c(17), 5.0 * unit::hour}}, c(15.5)),
            1e-9);
    struct Row {
        std::string climate;
        double design, hours;
    };
    for (const auto& r : {Row{"average", -10, 2066}, {"warmer", 2, 1336}, {"colder", -22, 2465}}) {
        // The hours are whole, so the tolerance is half an hour times that difference over 24 hours.
        const double days_an_hour = (16.0 - r.design) / 24.0;
        v.check(r.hours * days_an_hour, degree_days(bins_of(r.climate), c(16)), 0.5 * days_an_hour);
    }
}

TEST_CASE("whole seasons, against the same method written in numpy") {
    const auto csv = tests::read_csv("season.csv");
    REQUIRE(csv.rows.size() == 6);
    const auto table = invented_source();
    const std::string by = "numpy and scipy (tests/reference/plant.py)";
    Verification energy{{"energies of a season by bins", by, Certainty::computed, "kWh"}};
    Verification hours{{"hours of cycling and outside the table", by, Certainty::computed, "h"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const LoadLine line{csv.number(i, "design_w") * unit::watt, c(csv.number(i, "design_outdoor_c")),
                            c(csv.number(i, "base_c"))};
        const auto s = season(bins_of(csv.rows[i][csv.column("climate")]), line, plant_of(csv, i, table));
        CAPTURE(i);
        REQUIRE(s);
        const auto check = [&](const std::string& name, Energy found) {
            energy.check(csv.number(i, name), found.in(unit::kilowatt_hour), 1e-6);
        };
        check("demand", s->demand);
        check("source", s->source_heat);
        check("backup", s->backup_heat);
        check("unmet", s->unmet);
        check("electricity", s->source_electricity);
        check("backup_input", s->backup_input);
        check("outside", s->outside_demand);
        hours.check(csv.number(i, "cycling_h"), s->cycling_time.in(unit::hour), 1e-6);
        hours.check(csv.number(i, "outside_h"), s->outside_time.in(unit::hour), 1e-6);
        CHECK(s->demand.si() ==
              Approx((s->source_heat + s->backup_heat + s->unmet + s->outside_demand).si()).epsilon(1e-12));
    }
}

TEST_CASE("a source that never changes has its own performance") {
    const auto s = season(average, ten_kilowatts, steady(10, 0, 3.2));
    REQUIRE(s);
    CHECK(*s->source_performance == Approx(3.2).epsilon(1e-12));
    CHECK(*s->performance == Approx(3.2).epsilon(1e-12));
    CHECK(s->backup_heat == Energy{});
    CHECK(s->cycling_time == Duration{});
    CHECK(s->heating_time.in(unit::hour) == Approx(4910));
    CHECK_FALSE(s->bivalent);
}

TEST_CASE("a source too small is helped by the backup below the bivalent point") {
    const auto s = season(average, ten_kilowatts, steady(7, 0, 3.0));
    REQUIRE(s);
    CHECK(s->bivalent->celsius() == Approx(16.0 - 0.7 * 26.0).epsilon(1e-9));  // -2.2 °C
    double backup = 0.0;
    for (const auto& b : average) {
        backup += std::max(0.0, 10.0 * (16.0 - b.outdoor.celsius()) / 26.0 - 7.0) * b.time.in(unit::hour);
    }
    CHECK(s->backup_heat.in(unit::kilowatt_hour) == Approx(backup).epsilon(1e-9));
    CHECK(*s->source_performance == Approx(3.0).epsilon(1e-12));
    CHECK(*s->performance < 3.0);
    const double heat = s->demand.in(unit::kilowatt_hour);
    CHECK(*s->performance == Approx(heat / ((heat - backup) / 3.0 + backup)).epsilon(1e-9));

    auto none = steady(7, 0, 3.0);
    none.backup.capacity = Power{};
    const auto cold = season(average, ten_kilowatts, none);
    CHECK(cold->unmet.si() == Approx(s->backup_heat.si()));
    CHECK(*cold->performance == Approx(3.0).epsilon(1e-12));

    auto boiler = steady(7, 0, 3.0);
    boiler.backup.performance = 0.9;
    CHECK(season(average, ten_kilowatts, boiler)->backup_input.in(unit::kilowatt_hour) == Approx(backup / 0.9));
    // Too small even for the mildest bin: it can carry the load alone in none.
    CHECK_FALSE(season(average, ten_kilowatts, steady(0.1, 0, 3.0))->bivalent);
}

TEST_CASE("a source that may not run leaves its hours to the backup") {
    SeasonPlant plant = steady(10, 0, 3.0);
    plant.states = [](Temperature outdoor, Power) {
        if (outdoor < c(-5)) return SourceState{c(50), {}, {}, 0.0};
        return SourceState{c(45), 10.0 * unit::kilowatt, {}, 3.0};
    };
    const auto s = season(average, ten_kilowatts, plant);
    REQUIRE(s);
    CHECK(s->outside_time == Duration{});
    const auto& coldest = s->bins.front();
    CHECK(coldest.reached);
    CHECK(coldest.backup_heat == coldest.demand);
    CHECK(coldest.performance == 0.0);
}

TEST_CASE("weather that the table does not reach is counted and stays out of the performance") {
    SeasonPlant plant = steady(10, 0, 3.0);
    plant.states = [](Temperature outdoor, Power) -> std::optional<SourceState> {
        if (outdoor < c(-6.5)) return std::nullopt;
        return SourceState{c(45), 10.0 * unit::kilowatt, {}, 3.0};
    };
    const auto s = season(average, ten_kilowatts, plant);
    REQUIRE(s);
    CHECK(s->outside_time.in(unit::hour) == Approx(1 + 25 + 23 + 24));
    CHECK(s->outside_share() > 0.0);
    CHECK(*s->performance == Approx(3.0).epsilon(1e-12));
    CHECK_FALSE(s->bins.front().reached);
    plant.states = [](Temperature, Power) { return std::optional<SourceState>{}; };
    const auto unknown = season(average, ten_kilowatts, plant);
    REQUIRE(unknown);
    CHECK(unknown->outside_share() == Approx(1.0));
    CHECK_FALSE(unknown->performance);
}

TEST_CASE("standby electricity counts in the whole") {
    auto plant = steady(10, 0, 3.0);
    plant.standby = {
        {unit::hour(178), unit::watt(20)}, {unit::hour(3850), unit::watt(10)}, {unit::hour(3672), unit::watt(5)}};
    const auto s = season(average, ten_kilowatts, plant);
    REQUIRE(s);
    CHECK(s->standby_electricity.in(unit::kilowatt_hour) == Approx(3.56 + 38.5 + 18.36).epsilon(1e-12));
    const Energy all = s->demand / 3.0 + s->standby_electricity;
    CHECK(*s->whole_performance == Approx(s->demand / all).epsilon(1e-12));
}

TEST_CASE("cycling starts where the load falls under the least output") {
    const auto s = season(average, ten_kilowatts, steady(10, 4, 3.0));
    REQUIRE(s);
    for (const auto& b : s->bins) {
        CAPTURE(b.outdoor.celsius());
        CHECK(b.cycles == (b.load < 4.0 * unit::kilowatt));
        const double left = *cycling_factor(b.load / (4.0 * unit::kilowatt), 0.9);
        CHECK(b.performance == Approx(3.0 * left).epsilon(1e-12));
    }
    CHECK(*s->performance < 3.0);
}

TEST_CASE("a season of nonsense is refused") {
    const auto plant = steady(10, 0, 3.0);
    CHECK_FALSE(season({}, ten_kilowatts, plant));
    auto bins = average;
    std::swap(bins[0], bins[1]);
    CHECK_FALSE(season(bins, ten_kilowatts, plant));
    bins = average;
    bins[2].time = Duration::from_si(nan_value);
    CHECK_FALSE(season(bins, ten_kilowatts, plant));
    CHECK_FALSE(season(average, {Power{}, c(-10)}, plant));
    CHECK_FALSE(season(average, {10.0 * unit::kilowatt, c(16)}, plant));
    CHECK_FALSE(season(average, ten_kilowatts, SeasonPlant{}));
    for (const auto& bad : {steady(10, 11, 3.0), steady(10, -1, 3.0), steady(10, 0, 0.0), steady(-1, 0, 3.0),
                            steady(nan_value, 0, 3.0)}) {
        CHECK_FALSE(season(average, ten_kilowatts, bad));
    }
    auto odd = plant;
    odd.degradation = 1.5;
    CHECK_FALSE(season(average, ten_kilowatts, odd));
    odd = plant;
    odd.backup.performance = 0.0;
    CHECK_FALSE(season(average, ten_kilowatts, odd));
    odd = plant;
    odd.standby = {{unit::hour(-1), unit::watt(20)}};
    CHECK_FALSE(season(average, ten_kilowatts, odd));
}
