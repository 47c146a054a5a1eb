// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/job/unusual.hpp"

#include "job/refusals.hpp"
#include "loopfolio/base/unit.hpp"
#include "support/inputs.hpp"

#include <string>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// All messages about the sample with a manufacturer's table after it, and with `from` made `to`.
std::string told_with(const std::string& lines, const std::string& from = "", const std::string& to = "") {
    std::string out = said(with(sample_job + lines, from, to));
    for (auto at = out.find("job.yaml:"); at != std::string::npos; at = out.find("job.yaml:")) out.erase(at, 9);
    return out;
}

std::string table_of(const std::string& rows) { return "  performance:\n    points:\n" + rows; }

const std::string usual_table = table_of(
    "      - {outdoor_c: -7, flow_c: 50, capacity_kw: 5.0, ratio: 2.2}\n"
    "      - {outdoor_c: 2, flow_c: 50, capacity_kw: 5.6, ratio: 2.6}\n"
    "      - {outdoor_c: 7, flow_c: 50, capacity_kw: 7.0, ratio: 3.3}\n");

}  // namespace

TEST_CASE("a design outdoor temperature that the British Isles do not have is asked about") {
    const std::string told = "8:26: warning: conditions.outdoor_temperature_c = ";
    const std::string rest =
        ": lies outside the usual design outdoor temperatures, -15 °C to 3 °C\n"
        "    hint: look it up again for this place, in °C\n";
    check_refusals({{"outdoor_temperature_c: -3.2", "outdoor_temperature_c: -15.1", told + "-15.1" + rest},
                    {"outdoor_temperature_c: -3.2", "outdoor_temperature_c: 3.1", told + "3.1" + rest},
                    {"outdoor_temperature_c: -3.2", "outdoor_temperature_c: -15", ""},
                    {"outdoor_temperature_c: -3.2", "outdoor_temperature_c: 3", ""}});
}

TEST_CASE("a room smaller or larger than rooms of houses, or of another's name, is asked about") {
    const std::string rest =
        ": is unusual for one room: most have 1 m² to 150 m² (room hall)\n    hint: check the figure and its unit\n";
    check_refusals(
        {{"floor_area_m2: 6", "floor_area_m2: 0.99", "21:20: warning: rooms[1].floor_area_m2 = 0.99" + rest},
         {"floor_area_m2: 6", "floor_area_m2: 150.1", "21:20: warning: rooms[1].floor_area_m2 = 150.1" + rest},
         {"floor_area_m2: 6", "floor_area_m2: 1", ""},
         {"floor_area_m2: 6", "floor_area_m2: 150", ""},
         {"name: Hall", "name: living  Room",
          "18:11: warning: rooms[1].name = living  Room: is the name of another room too (room hall)\n"
          "    hint: name each so that a reader can tell them apart\n"}});
}

TEST_CASE("an emitter longer than a wall of its room is asked about") {
    // The room of 18.4 m2: twice the side of a square is 8.579 m.
    const std::string rest =
        ": is longer than a wall of its room is likely to be (emitter r1)\n"
        "    hint: check the length, and the `floor_area_m2` of room `living`\n";
    check_refusals(
        {{"    output_at_50k_w: 1950", "    output_at_50k_w: 1950\n    length_mm: 8580",
          "29:16: warning: emitters[0].length_mm = 8580" + rest},
         {"    output_at_50k_w: 1950", "    output_at_50k_w: 1950\n    length_mm: 8578", ""},
         {"panel_22\n    output_at_50k_w: 1950", "skirting\n    output_at_50k_w: 1950\n    length_mm: 12000", ""}});
}

TEST_CASE("a length of pipework that no house has is asked about at its longest section") {
    check_refusals({{"length_m: 4.5}", "length_m: 497.5}",
                     "31:65: warning: pipework.sections[0].length_m = 497.5: belongs to 500.5 m of pipework one way, "
                     "and few houses have over 500 m (section S1)\n"
                     "    hint: check the longest sections, and that lengths are in metres\n"},
                    {"length_m: 4.5}", "length_m: 497}", ""}});
}

TEST_CASE("performance that rises as it gets colder is asked about, except where frost explains it") {
    CHECK(told_with(usual_table) == "");
    const std::string hint =
        "    hint: a heat pump makes heat less easily in colder air, except where frost forms: check the two rows\n";
    CHECK(told_with(usual_table, "ratio: 3.3", "ratio: 2.5") ==
          "38:7: warning: heat_source.performance.points: have a higher `ratio` at 2 °C outdoors than at 7 °C, at 50 "
          "°C flow\n" +
              hint);
    // At 2 °C the coil frosts, in the usual range and in the one that the job states.
    CHECK(told_with(usual_table, "ratio: 2.6", "ratio: 2.1") == "");
    const std::string defrosting = "  defrost_derating_percent: 10\n  defrost_from_c: -4\n";
    CHECK(told_with(usual_table + defrosting + "  defrost_to_c: 2\n", "ratio: 2.6", "ratio: 2.1") == "");
    CHECK(told_with(usual_table + defrosting + "  defrost_to_c: 1.9\n", "ratio: 2.6", "ratio: 2.1") ==
          "38:7: warning: heat_source.performance.points: have a higher `ratio` at -7 °C outdoors than at 2 °C, at 50 "
          "°C flow\n" +
              hint);
}

TEST_CASE("a further unit's table is asked about in its own place") {
    const std::string further =
        "  further_units:\n    - name: second\n      performance:\n        points:\n"
        "          - {outdoor_c: -7, flow_c: 50, capacity_kw: 4.0, ratio: 2.2}\n"
        "          - {outdoor_c: 7, flow_c: 50, capacity_kw: 5.0, ratio: 2.1}\n";
    CHECK(told_with(usual_table + further) ==
          "45:11: warning: heat_source.further_units[0].performance.points: have a higher `ratio` at -7 °C outdoors "
          "than at 7 °C, at 50 °C flow\n"
          "    hint: a heat pump makes heat less easily in colder air, except where frost forms: check the two rows\n");
}

TEST_CASE("a capacity that looks like the nominal one is asked about") {
    const std::string rated =
        "36:16: warning: heat_source.capacity_kw = 7: is the capacity that the manufacturer's table has at 7 °C "
        "outdoors\n"
        "    hint: give what the source makes at the design outdoor and flow temperatures, or leave the key out\n";
    const auto stated = [](const std::string& capacity) { return "  capacity_kw: " + capacity + "\n"; };
    CHECK(told_with(stated("7") + usual_table) == rated);
    CHECK(told_with(stated("6.9") + usual_table) == "");
    CHECK(told_with(stated("5.6") + usual_table) == "");
    CHECK(told_with(stated("7") + usual_table, "capacity_kw: 5.6", "capacity_kw: 7.0") == "");
    CHECK(told_with(stated("14") + "  number: 2\n" + usual_table) ==
          with(rated, "capacity_kw = 7:", "capacity_kw = 14:"));
    const std::string one = table_of(
        "      - {outdoor_c: -7, flow_c: 50, capacity_kw: 8, ratio: 2.2}\n"
        "      - {outdoor_c: 7, flow_c: 50, capacity_kw: 8, ratio: 3.3}\n");
    CHECK(told_with(one) ==
          "38:7: warning: heat_source.performance.points: have one capacity for all outdoor temperatures, as a nominal "
          "output does\n"
          "    hint: give what the manufacturer states at each of them\n");
    CHECK(told_with(one, "outdoor_c: -7", "outdoor_c: -2") == "");  // both within 10 K
}

TEST_CASE("a least output above the capacity is refused") {
    const auto least = [](const std::string& kilowatts) { return "  minimum_output_kw: " + kilowatts + "\n"; };
    const std::string hint = "    hint: it is what one unit can be turned down to\n";
    CHECK(told_with(least("7") + usual_table) == "");
    CHECK(told_with(least("7.1") + usual_table) ==
          "36:22: error: heat_source.minimum_output_kw = 7.1: must not be above the capacity, at most 7 kW by the "
          "points\n" +
              hint);
    CHECK(told_with("  capacity_kw: 9\n" + least("50")) ==
          "37:22: error: heat_source.minimum_output_kw = 50: must not be above `capacity_kw`\n" + hint);
    CHECK(told_with("  capacity_kw: 9\n  number: 2\n" + least("4.5")) == "");
    CHECK(told_with("  capacity_kw: 9\n  number: 2\n" + least("4.6")) ==
          "38:22: error: heat_source.minimum_output_kw = 4.6: must not be above the share of one unit in "
          "`capacity_kw`\n" +
              hint);
}

TEST_CASE("hours that are neither a year nor all of it that needs heat are refused unless the job says what they are") {
    const auto bins = [](const std::string& list) { return usual_table + "season: {bins: " + list + "}\n"; };
    const std::string rest =
        ", which is neither a year nor all of it that needs heat\n"
        "    hint: give all hours of a year that are colder than 16 °C, or say with `period` what they are: `January "
        "2026`\n";
    CHECK(told_with(bins("[{outdoor_c: 0, hours: 1}]")) == "41:16: error: season.bins: have 1 hours up to 0 °C" + rest);
    // Enough hours, and none in the mild weather that still needs heat.
    CHECK(told_with(bins("[{outdoor_c: 0, hours: 1500}, {outdoor_c: 7, hours: 1500}]")) ==
          "41:16: error: season.bins: have 3000 hours up to 7 °C" + rest);
    // Up to the base, and too few.
    CHECK(told_with(bins("[{outdoor_c: 0, hours: 999}, {outdoor_c: 8, hours: 1000}]")) ==
          "41:16: error: season.bins: have 1999 hours up to 8 °C" + rest);
    CHECK(told_with(bins("[{outdoor_c: 0, hours: 1000}, {outdoor_c: 8, hours: 1000}]")) == "");
    CHECK(told_with(bins("[{outdoor_c: 0, hours: 8672}]"), "outdoor_c: 0, hours: 8672", "outdoor_c: 0, hours: 8673") ==
          "");
    CHECK(told_with(bins("[{outdoor_c: 0, hours: 1}], period: one hour")) == "");
    CHECK(told_with(usual_table + "season: {climate: average, period: January}\n") ==
          "41:36: error: season.period = January: is read only with `bins` or `climate_file`: a reference climate is a "
          "whole year's\n    hint: leave it out, or state the hours of the period\n");
}

TEST_CASE("values that are not given are not asked about") { CHECK(job::unusual_values(job::Job{}).empty()); }
