// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"

using namespace loopfolio;

namespace {

/// Text added after the sample job's last line.
std::string told_of(const std::string& more) { return tests::said(tests::sample_job + more); }

}  // namespace

TEST_CASE("hot water is held to what a store can be") {
    CHECK(
        told_of(
            "hot_water: {store: true, supply: {persons: 3, store_l: 0, coil_ua_w_per_k: 900, source_flow_c: 55}}\n") ==
        "job.yaml:36:56: error: hot_water.supply.store_l = 0: must lie between 20 and 2000 L\n"
        "    hint: a store of no litres is no store: leave `supply` out\n");
    CHECK(told_of("hot_water: {store: true, supply: {persons: 3, store_l: 200, source_flow_c: 55}}\n") ==
          "job.yaml:36:34: error: hot_water.supply.coil_ua_w_per_k: is missing: what heats the store must be known: a "
          "coil or a plate\n"
          "    hint: add `coil_ua_w_per_k` with a number from 20 to 20000 W/K: Heat through the coil for each kelvin "
          "of log mean difference. This or `plate_ua_w_per_k`\n");
    CHECK(told_of("hot_water:\n  store: true\n  supply: {persons: 3, store_l: 200, coil_ua_w_per_k: 900, "
                  "plate_ua_w_per_k: 900, "
                  "source_flow_c: 45, stored_c: 50}\n") ==
          "job.yaml:38:78: error: hot_water.supply.plate_ua_w_per_k = 900: stands beside `coil_ua_w_per_k`\n"
          "    hint: a store is heated by one of the two\n"
          "job.yaml:38:98: error: hot_water.supply.source_flow_c = 45: must lie above `stored_c`\n"
          "    hint: no coil brings a store up to the water that heats it\n");
    CHECK(told_of("hot_water: {supply: {persons: 3, store_l: 200, coil_ua_w_per_k: 900, source_flow_c: 55}}\n") ==
          "job.yaml:36:21: error: hot_water.supply: needs `store: true`\n"
          "    hint: what is reckoned here is a store\n");
}

TEST_CASE("pressures of the system stand in order") {
    CHECK(told_of("system_water: {height_m: 5, safety_valve_bar: 3, cold_fill_bar: 3.2, precharge_bar: 3}\n") ==
          "job.yaml:36:65: error: system_water.cold_fill_bar = 3.2: must lie below `safety_valve_bar`\n"
          "    hint: the valve would lift before the system is warm\n"
          "job.yaml:36:85: error: system_water.precharge_bar = 3: must lie below `safety_valve_bar`\n"
          "    hint: the vessel takes water only above its pre-charge: check the two pressures\n");
    CHECK(told_of("system_water: {height_m: 5, safety_valve_bar: 3, cold_fill_bar: 1, precharge_bar: 1.5}\n") ==
          "job.yaml:36:65: error: system_water.cold_fill_bar = 1: must not lie below `precharge_bar`\n"
          "    hint: the vessel would hold no water when cold\n");
    CHECK(told_of("system_water: {safety_valve_bar: 3, antifreeze_valves: true, hight_m: 4}\n"
                  "fluid: {kind: propylene_glycol, concentration_percent: 25}\n")
              .find("antifreeze_valves") != std::string::npos);
}

TEST_CASE("a unit's sound needs a power level and a place") {
    CHECK(told_of("sound: {power_level_db: 200, distance_m: 5, standing: by_the_wall}\n") ==
          "job.yaml:36:25: error: sound.power_level_db = 200: must lie between 30 and 90 dB\n"
          "    hint: check the digits, and that it is in dB\n"
          "job.yaml:36:55: error: sound.standing = by_the_wall: must be `on_ground`, `by_wall` or `in_corner`\n"
          "    hint: write one of them as it is here\n");
}
