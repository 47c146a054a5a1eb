// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/sample_job.hpp"
#include "loopfolio/base/unit.hpp"
#include "support/catch.hpp"

using namespace loopfolio;

namespace {

const std::string table = R"(  performance:
    points:
      - {outdoor_c: -7, flow_c: 35, capacity_kw: 5.6, ratio: 3.0}
      - {outdoor_c: -7, flow_c: 55, capacity_kw: 5.2, ratio: 2.0}
      - {outdoor_c: 7, flow_c: 35, capacity_kw: 7.4, ratio: 4.6}
      - {outdoor_c: 7, flow_c: 55, capacity_kw: 7.0, ratio: 3.1}
)";

/// The sample with a maker's table and these lines after it.
std::string job_with(const std::string& lines, const std::string& points = table) {
    return tests::sample_job + points + lines;
}

/// All diagnostics, without the name of the file.
std::string told(const std::string& text) {
    std::string out = tests::said(text);
    for (auto at = out.find("job.yaml:"); at != std::string::npos; at = out.find("job.yaml:")) out.erase(at, 9);
    return out;
}

}  // namespace

TEST_CASE("a season is read with the running of its source") {
    const std::string lines = R"(  minimum_output_kw: {value: 1.8, basis: document, low: 1.6, high: 2.2}
  defrost_derating_percent: 10
  defrost_from_c: -3
  defrost_to_c: 5
  number: 2
  backup_kw: 3
  minimum_run_min: 8
  allowed_swing_k: 5
season:
  bins: [{outdoor_c: 5, hours: 8600}, {outdoor_c: -3, hours: 80}]
  base_c: 15.5
  compensation: false
  compare_flows_c: [55, 45]
  electricity_price_per_kwh: 0.27
  currency: GBP
)";
    const auto read = job::read_job(job_with(lines), "job.yaml");
    REQUIRE(told(job_with(lines)).empty());
    const auto& source = *read.job->heat_source;
    CHECK(source.least_output->value.in(unit::kilowatt) == Approx(1.8));
    CHECK(source.defrost_derating->value == Approx(0.1));
    CHECK(source.number == 2);
    CHECK(source.least_run->value.in(unit::minute) == Approx(8.0));
    const auto& season = *read.job->season;
    REQUIRE(season.bins.size() == 2);
    CHECK(season.bins[0].outdoor.celsius() == Approx(-3.0));
    CHECK(season.bins[0].time.in(unit::hour) == Approx(80.0));
    CHECK_FALSE(season.compensation);
    CHECK(season.compare_flows.front().celsius() == Approx(45.0));
    CHECK(season.currency == "GBP");
}

TEST_CASE("what a season needs and does not get is said with its place and a way out") {
    const struct {
        std::string lines, said;
    } rows[] = {
        {"season: {}\n",
         "42:9: error: season.climate: is missing: a season needs hours at each outdoor temperature\n"
         "    hint: name one of `average`, `warmer` or `colder`, or give `bins` or a `climate_file`\n"},
        {"season: {climate: avrage}\n",
         "42:19: error: season.climate = avrage: must be `average`, `warmer` or `colder`\n    hint: did you mean "
         "`average`?\n"},
        {"season: {climate: average, bins: [{outdoor_c: 1, hours: 10}]}\n",
         "42:34: error: season.bins: says the same as `climate`\n    hint: keep one of them\n"},
        {"season: {bins: [{outdoor_c: 1, hours: 10}, {outdoor_c: 1, hours: 20}]}\n",
         "42:56: error: season.bins[1].outdoor_c = 1: stands twice\n    hint: add the hours up in one of the two\n"},
        {"season: {bins: [{outdoor_c: 1, hours: -10}]}\n",
         "42:39: error: season.bins[0].hours = -10: must lie between 0 and 8784 h\n"
         "    hint: a year has 8760 hours, a leap year 8784\n"},
        {"season: {bins: [{outdoor_c: 1, hours: 8000}, {outdoor_c: 2, hours: 1000}]}\n",
         "42:16: error: season.bins: have 9000 hours together, and a year has at most 8784\n"
         "    hint: give one year\n"},
        {"season: {climate: average, electricity_price_per_kwh: 0.27}\n",
         "42:9: error: season.currency: is missing: a price is in a currency\n"
         "    hint: add `currency` with its text: Needed with a price: `GBP`, `£`\n"},
        {"season: {climate: average, currency: GBP}\n",
         "42:9: error: season.electricity_price_per_kwh: is missing: a currency belongs to a price\n"
         "    hint: add `electricity_price_per_kwh` with a number from 0 to 10000 per kWh: In `currency`. Nothing, or "
         "far from usual in pounds, euros, dollars or francs (0.02 to 2), draws a warning\n"},
        {"season: {climate: average, base_c: 7.9}\n",
         "42:36: error: season.base_c = 7.9: must lie between 8 and 24 °C\n"
         "    hint: check the digits, and that it is in °C\n"},
        {"season: {climate: average, compare_flows_c: [45, 90]}\n",
         "42:50: error: season.compare_flows_c[1] = 90: must lie between 25 and 80 °C\n"
         "    hint: check the digits, and that it is in °C\n"},
        {"season: {climate: average, compare_flows_c: [45, 45]}\n",
         "42:45: error: season.compare_flows_c: have the same temperature twice\n"
         "    hint: name each once\n"},
        {"season: {climate: average, compare_flows_c: [41, 42, 43, 44, 45]}\n",
         "42:45: error: season.compare_flows_c: must have between 1 and 4 numbers, and has 5\n"
         "    hint: keep those that the pack is to show\n"},
    };
    for (const auto& row : rows) {
        INFO(row.lines);
        CHECK(told(job_with(row.lines)) == row.said);
    }
}

TEST_CASE("a season without a maker's table, or with one that states no capacity, is refused") {
    CHECK(told(job_with("season: {climate: average}\n", "")) ==
          "34:3: error: heat_source.performance: is missing: `season` is reckoned from the maker's table\n"
          "    hint: give its `points` with `outdoor_c`, `flow_c`, `capacity_kw` and `ratio`\n");
    CHECK(told(job_with("season: {climate: average}\n", tests::with(table, "capacity_kw: 7.4, ", ""))) ==
          "38:7: error: heat_source.performance.points: state no capacity at 7 °C outdoors, and `season` is reckoned "
          "from the maker's table\n"
          "    hint: give `capacity_kw` at every point\n");
}

TEST_CASE("slips in a maker's table are found") {
    const auto with_table = [](std::string_view from, std::string_view to) {
        return told(job_with("", tests::with(table, from, to)));
    };
    CHECK(with_table("      - {outdoor_c: 7, flow_c: 55, capacity_kw: 7.0, ratio: 3.1}\n", "") ==
          "38:7: error: heat_source.performance.points: have a hole: none at 7 °C outdoors and 55 °C flow\n"
          "    hint: give every outdoor temperature with every flow temperature\n");
    CHECK(with_table("{outdoor_c: 7, flow_c: 55", "{outdoor_c: 7, flow_c: 35") ==
          "38:7: error: heat_source.performance.points: have a hole: none at 7 °C outdoors and 55 °C flow\n"
          "    hint: give every outdoor temperature with every flow temperature\n"
          "41:32: error: heat_source.performance.points[3].flow_c = 35: stands twice at this outdoor temperature\n"
          "    hint: keep one of the two points\n");
    CHECK(with_table("capacity_kw: 5.6", "capacity_kw: 7.6") ==
          "38:7: warning: heat_source.performance.points: have more capacity at -7 °C outdoors than at 7 °C, with the "
          "same flow temperature\n"
          "    hint: check the two rows against the maker's table\n");
    CHECK(with_table("capacity_kw: 5.6", "capacity_kw: 5.6, least_kw: 2") ==
          "39:9: error: heat_source.performance.points[1].least_kw: is missing: other points state it\n"
          "    hint: give it at every point, or once as `minimum_output_kw`\n");
}

TEST_CASE("slips in how the source runs are found") {
    const struct {
        std::string lines, said;
    } rows[] = {
        {"  defrost_derating_percent: 10\n  defrost_from_c: -3\n",
         "34:3: error: heat_source.defrost_to_c: is missing: defrosting takes its share between two outdoor "
         "temperatures\n"
         "    hint: add `defrost_to_c` with a number from -25 to 15 °C: The same, above `defrost_from_c`\n"},
        {"  defrost_derating_percent: 10\n  defrost_from_c: 5\n  defrost_to_c: 5\n",
         "44:17: error: heat_source.defrost_to_c = 5: must be above `defrost_from_c`\n"
         "    hint: swap the two, or check their signs\n"},
        {"  minimum_run_min: 8\n",
         "34:3: error: heat_source.allowed_swing_k: is missing: how long it runs depends on how far the water may "
         "swing\n"
         "    hint: add `allowed_swing_k` with a number from 1 to 20 K: How far the water may swing between start and "
         "stop; needed with `minimum_run_min`\n"},
        {"  number: 9\n",
         "42:11: error: heat_source.number = 9: must lie between 1 and 8\n"
         "    hint: check the digits and where the decimal point is\n"},
        {"  number: 1.5\n",
         "42:11: error: heat_source.number = 1.5: must be a whole number\n"
         "    hint: write it without a decimal point\n"},
    };
    for (const auto& row : rows) {
        INFO(row.lines);
        CHECK(told(job_with(row.lines)) == row.said);
    }
}

TEST_CASE("a price that no electricity has draws a warning, in currencies whose size is known") {
    const auto priced = [](const std::string& price, const std::string& currency) {
        return told(job_with("season: {climate: average, electricity_price_per_kwh: " + price +
                             ", currency: " + currency + "}\n"));
    };
    const std::string where = "42:55: warning: season.electricity_price_per_kwh = ";
    CHECK(priced("28", "GBP") ==
          where + "28: is far from what a kilowatt-hour costs in GBP\n    hint: 28 pence or cents is 0.28\n");
    CHECK(
        priced("0.001", "EUR") ==
        where +
            "0.001: is far from what a kilowatt-hour costs in EUR\n    hint: a megawatt-hour is 1000 kilowatt-hours\n");
    CHECK(priced("0", "GBP") == where + "0: is nothing\n    hint: leave it out where it is not known\n");
    for (const auto* price : {"0.02", "0.27", "2"}) CHECK(priced(price, "£") == "");
    CHECK(priced("2500", "VND") == "");
}
