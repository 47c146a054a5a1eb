// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/source.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <limits>
#include <vector>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

SourcePoint point(double outdoor, double flow, double kilowatts, double performance) {
    return {outdoor * unit::celsius, flow * unit::celsius, kilowatts * unit::kilowatt, performance};
}

/// Points without order, as a person may type them.
std::vector<SourcePoint> whole_table() {
    return {point(7, 35, 8.0, 4.6), point(-7, 55, 5.0, 1.9), point(2, 35, 7.0, 3.9),
            point(2, 55, 6.4, 2.5), point(-7, 35, 6.0, 3.0), point(7, 55, 7.2, 2.9)};
}

std::vector<TableFault> kinds(const std::vector<TableFinding>& findings) {
    std::vector<TableFault> out;
    for (const auto& f : findings) out.push_back(f.fault);
    return out;
}

}  // namespace

TEST_CASE("a maker's table is met at its points and bilinear between them") {
    const auto rows = whole_table();
    const auto table = source_table(rows);
    REQUIRE(table);
    for (const auto& r : rows) {
        const auto found = source_at(*table, r.outdoor, r.flow);
        REQUIRE(found);
        CHECK(found->capacity.si() == Approx(r.capacity.si()).epsilon(1e-12));
        CHECK(found->performance == Approx(r.performance).epsilon(1e-12));
    }
    // By hand: halfway between -7 and 2, a quarter of the way from 35 to 55.
    const auto between = source_at(*table, -2.5 * unit::celsius, 40.0 * unit::celsius);
    REQUIRE(between);
    CHECK(between->capacity.in(unit::kilowatt) == Approx(0.5 * (5.75 + 6.85)).epsilon(1e-12));
    CHECK(between->performance == Approx(0.5 * (2.725 + 3.55)).epsilon(1e-12));
}

TEST_CASE("outside its table a source is not known") {
    const auto table = source_table(whole_table());
    REQUIRE(table);
    CHECK_FALSE(source_at(*table, -7.1 * unit::celsius, 45.0 * unit::celsius));
    CHECK_FALSE(source_at(*table, 7.1 * unit::celsius, 45.0 * unit::celsius));
    CHECK_FALSE(source_at(*table, 2.0 * unit::celsius, 34.9 * unit::celsius));
    CHECK_FALSE(source_at(*table, 2.0 * unit::celsius, 55.1 * unit::celsius));
    CHECK_FALSE(source_at(*table, Temperature::from_kelvin(nan_value), 45.0 * unit::celsius));
}

TEST_CASE("what is wrong with a table is found, and where") {
    CHECK(faults_of(whole_table()).empty());
    CHECK(kinds(faults_of({})) == std::vector{TableFault::empty});

    auto rows = whole_table();
    rows.pop_back();
    auto found = faults_of(rows);
    REQUIRE(kinds(found) == std::vector{TableFault::hole});
    CHECK(found[0].outdoor == 7.0 * unit::celsius);
    CHECK(found[0].flow == 55.0 * unit::celsius);

    rows = whole_table();
    rows.push_back(rows[3]);
    rows.push_back(rows[3]);
    found = faults_of(rows);
    REQUIRE(kinds(found) == std::vector{TableFault::duplicate});  // once, however often it is repeated
    CHECK(found[0].outdoor == 2.0 * unit::celsius);

    rows = whole_table();
    rows[4].capacity = 7.5 * unit::kilowatt;  // -7/35 gives more than 2/35
    rows[3].performance = 4.0;                // 2/55 is better than 2/35, and better than any machine
    found = faults_of(rows);
    REQUIRE(kinds(found) == std::vector{TableFault::capacity_rises_in_cold, TableFault::performance_rises_with_flow,
                                        TableFault::unlikely_performance});
    CHECK(found[0].outdoor == -7.0 * unit::celsius);
    CHECK(found[1].flow == 55.0 * unit::celsius);
    CHECK(source_table(rows));  // odd, but a table

    for (const double bad : {nan_value, 0.0, -1.0}) {
        rows = whole_table();
        rows[1].performance = bad;
        CHECK(kinds(faults_of(rows)) == std::vector{TableFault::bad_value});
        CHECK_FALSE(source_table(rows));
        rows = whole_table();
        rows[1].capacity = bad * unit::kilowatt;
        CHECK(kinds(faults_of(rows)) == std::vector{TableFault::bad_value});
    }
}

TEST_CASE("faults that leave no table forbid its use") {
    auto rows = whole_table();
    rows.pop_back();
    CHECK_FALSE(source_table(rows));
    rows.push_back(rows[0]);
    CHECK_FALSE(source_table(rows));
    CHECK_FALSE(source_table({}));
    CHECK(forbids_use(TableFault::hole));
    CHECK_FALSE(forbids_use(TableFault::capacity_rises_in_cold));
}

TEST_CASE("share of Carnot of field-trial performance") {
    // Staffell et al. 2012, Energy Environ. Sci. 5, 9291: air source 6.81 - 0.121 dT + 0.000630 dT2.
    tests::Verification v{
        {"share of Carnot's performance", "Staffell et al. 2012, air source curve", Certainty::read, ""}};
    struct Row {
        double outdoor, flow, share;
    };
    for (const auto& r :
         {Row{7, 35, 0.356}, {7, 45, 0.373}, {7, 55, 0.359}, {2, 35, 0.375}, {-7, 35, 0.387}, {-7, 55, 0.327}}) {
        const double dt = r.flow - r.outdoor;
        const double cop = 6.81 - 0.121 * dt + 0.000630 * dt * dt;
        v.check(r.share, *share_of_carnot(r.outdoor * unit::celsius, r.flow * unit::celsius, cop), 0.0006);
    }
    CHECK_FALSE(share_of_carnot(35.0 * unit::celsius, 35.0 * unit::celsius, 3.0));
    CHECK_FALSE(share_of_carnot(7.0 * unit::celsius, 35.0 * unit::celsius, 0.0));
}

TEST_CASE("a cascade runs as few as meet the load") {
    const SourceOutput small{4.0 * unit::kilowatt, 3.0}, large{10.0 * unit::kilowatt, 4.0};
    const std::vector<SourceOutput> sources{small, large, small};
    struct Row {
        double load;
        std::size_t running;
        double heat, performance;
    };
    const double both = 14.0 / (4.0 / 3.0 + 10.0 / 4.0), all = 18.0 / (8.0 / 3.0 + 10.0 / 4.0);
    for (const auto& r : {Row{1, 1, 1, 4.0},
                          {10, 1, 10, 4.0},
                          {10.1, 2, 10.1, both},
                          {14, 2, 14, both},
                          {14.5, 3, 14.5, all},
                          {18, 3, 18, all},
                          {20, 3, 18, all}}) {
        const auto c = cascade(sources, r.load * unit::kilowatt);
        CAPTURE(r.load);
        REQUIRE(c);
        CHECK(c->running == r.running);
        CHECK(c->capacity.in(unit::kilowatt) == Approx(18.0));
        CHECK(c->heat.in(unit::kilowatt) == Approx(r.heat));
        CHECK(c->shortfall.in(unit::kilowatt) == Approx(r.load - r.heat).margin(1e-12));
        CHECK(c->performance == Approx(r.performance).epsilon(1e-12));
    }
}

TEST_CASE("equal sources have the performance of one, and one the least number that carries the load") {
    const std::vector<SourceOutput> four(4, {5.0 * unit::kilowatt, 3.3});
    for (double load = 0.5; load < 20.0; load += 0.5) {
        const auto c = cascade(four, load * unit::kilowatt);
        REQUIRE(c);
        CHECK(c->performance == Approx(3.3).epsilon(1e-12));
        CHECK(c->running_capacity >= load * unit::kilowatt);
        CHECK(c->running_capacity - 5.0 * unit::kilowatt < load * unit::kilowatt);
    }
    CHECK_FALSE(cascade({}, 1.0 * unit::kilowatt));
    CHECK_FALSE(cascade(four, Power{}));
    CHECK_FALSE(cascade(four, Power::from_si(nan_value)));
    CHECK_FALSE(cascade(std::vector<SourceOutput>{{5.0 * unit::kilowatt, 0.0}}, 1.0 * unit::kilowatt));
}
