// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/reference.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

using namespace loopfolio;
using namespace loopfolio::reference;
using Known = tests::Certainty;
using tests::Verification;

namespace {

const std::string standard = "EN 14825 / Regulation (EU) 811/2013";

double hours_of(const Climate& c) {
    double sum = 0.0;
    for (const auto& r : c.rows) sum += r.time.in(unit::hour);
    return sum;
}

/// Hours at full load that need as much heat as the season.
double full_load_hours(const Climate& c) {
    double sum = 0.0;
    for (const auto& r : c.rows) {
        sum += r.time.in(unit::hour) * ((c.limit - r.outdoor) / (c.limit - c.design));
    }
    return sum;
}

}  // namespace

TEST_CASE("hours of the reference heating seasons") {
    struct Row {
        std::string climate;
        double sum, full_load;
    };
    Verification sums{{"hours of a heating season", standard + ", Table 12", Known::memory, "h"}};
    Verification full{{"equivalent hours at full load", standard + ", HHE as quoted", Known::read, "h"}};
    for (const auto& r : {Row{"average", 4910, 2066}, {"warmer", 3590, 1336}, {"colder", 6446, 2465}}) {
        const auto* climate = find_climate(r.climate);
        REQUIRE(climate != nullptr);
        sums.check(r.sum, hours_of(*climate), 1e-9);
        full.check(r.full_load, full_load_hours(*climate), 0.5);
    }
}

TEST_CASE("240 hours at 0 °C in the average climate") {
    const auto& average = *find_climate("average");
    const auto at_zero = std::ranges::find(average.rows, unit::celsius(0.0), &ClimateRow::outdoor);
    REQUIRE(at_zero != average.rows.end());
    tests::verify(
        {"hours at 0 °C, average climate", "Danish Energy Agency, Calculation of SCOP, 2011", Known::read, "h"}, 240.0,
        at_zero->time.in(unit::hour), 1e-9);
}

TEST_CASE("an average year is heating, thermostat off and off") {
    const auto& average = *find_climate("average");
    REQUIRE(average.standby);
    const auto& s = *average.standby;
    tests::verify({"hours of a year, average climate", "the calendar", Known::computed, "h"}, 8760.0,
                  hours_of(average) + (s.thermostat_off + s.standby + s.off).in(unit::hour), 1e-9);
    CHECK(s.crankcase_heater == s.thermostat_off + s.off);  // warm whenever it does not run
    CHECK_FALSE(find_climate("warmer")->standby);
}

TEST_CASE("the seasons that the tests of other rooms read are these") {
    const auto csv = tests::read_csv("en14825_bin_hours.csv");
    for (const auto& climate : climates()) {
        std::map<double, double> hours;
        for (const auto& r : climate.rows) hours[std::round(r.outdoor.celsius())] = r.time.in(unit::hour);
        CAPTURE(climate.name);
        for (std::size_t i = 0; i < csv.rows.size(); ++i) {
            const auto found = hours.find(csv.number(i, "outdoor_c"));
            const double wanted = csv.number(i, std::string{climate.name});
            CHECK((found == hours.end() ? 0.0 : found->second) == Approx(wanted));
        }
    }
}

TEST_CASE("rows rise by whole degrees from the design temperature to just under the limit") {
    CHECK(climate_names() == std::vector<std::string_view>{"average", "warmer", "colder"});
    CHECK(find_climate("tropical") == nullptr);
    for (const auto& c : climates()) {
        CAPTURE(c.name);
        CHECK(find_source(c.source) != nullptr);
        CHECK(c.limit == unit::celsius(16.0));
        CHECK(c.rows.front().outdoor == c.design);
        CHECK(c.rows.back().outdoor == unit::celsius(15.0));
        for (std::size_t i = 1; i < c.rows.size(); ++i) {
            CHECK((c.rows[i].outdoor - c.rows[i - 1].outdoor).si() == Approx(1.0).epsilon(1e-12));
        }
    }
}

TEST_CASE("vessel sizes rise, and have a source") {
    const auto vessels = vessel_sizes();
    CHECK(find_source(vessels.source) != nullptr);
    CHECK(std::ranges::is_sorted(vessels.sizes));
    CHECK(std::ranges::adjacent_find(vessels.sizes) == vessels.sizes.end());
    CHECK(vessels.sizes.front() > Volume{});
}
