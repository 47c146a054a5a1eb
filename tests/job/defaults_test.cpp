// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/refusals.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/read_job.hpp"

#include <string>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// A house of three rooms on two storeys that says what it can once.
const std::string once = R"(loopfolio: 2
job: {reference: ONCE-1, revision: A, design_date: 2026-10-14}
firm: {name: Fernhollow Heating}
designer: {name: Ada Bramwell}
household: {name: The Whitlock household}
property: {address: [19 Quarry Rise]}
conditions: {outdoor_temperature_c: -3.2, flow_temperature_c: 50}
defaults:
  by_group:
    - {group: extension, fabric: {era: from_2003_to_2006, wall: filled_cavity}}
  by_storey:
    - {storey: first floor, ceiling_height_m: 2.3, fabric: {roof: pitched, floor: none}}
  every_room:
    ceiling_height_m: 2.5
    air_changes_per_hour: {value: 0.8, basis: assumed, low: 0.5, high: 1.2}
    fabric: {era: from_1930_to_1949, wall: cavity, glazing: double_from_2002, roof: none, floor: ground,
             outside_walls: 2}
  every_emitter: {kind: panel_22, connection: copper_15, fittings: [{kind: lockshield_valve, count: 1}]}
  every_section: {pipe: copper_15, where: under the floor}
rooms:
  - {id: living, name: Living room, use: living, storey: ground floor, floor_area_m2: 18}
  - {id: garden, name: Garden room, use: living, storey: ground floor, group: extension, floor_area_m2: 12,
     fabric: {outside_walls: 3}}
  - {id: bed, name: Bedroom, use: bedroom, storey: first floor, floor_area_m2: 14, air_changes_per_hour: 1.0}
  - {id: store, name: Store, use: store, storey: ground floor, floor_area_m2: 3, heated: false}
emitters:
  - {id: r1, room: living, at: J1, output_at_50k_w: 1800}
  - {id: r2, room: garden, at: J2, kind: panel_21, output_at_50k_w: 1200, fittings: []}
  - {id: r3, room: bed, at: J2, output_at_50k_w: 900}
pipework:
  sections:
    - {id: s1, from: SOURCE, to: J1, pipe: copper_22, length_m: 6}
    - {id: s2, from: J1, to: J2, length_m: 5, where: in the wall}
heat_source: {name: heat pump, at: SOURCE}
)";

job::Job job_of(const std::string& text) {
    auto read = job::read_job(text, "job.yaml");
    for (const auto& diagnostic : read.diagnostics) UNSCOPED_INFO(text_of(diagnostic));
    REQUIRE(read.job);
    return *std::move(read.job);
}

std::string told(const std::string& text) {
    std::string out = said(text);
    for (auto at = out.find("job.yaml:"); at != std::string::npos; at = out.find("job.yaml:")) out.erase(at, 9);
    return out;
}

}  // namespace

TEST_CASE("what is stated once goes into every item that leaves it out, the nearest first") {
    const auto job = job_of(once);
    const auto &living = job.rooms[0], &garden = job.rooms[1], &bed = job.rooms[2];
    CHECK(living.ceiling_height.value.in(unit::metre) == 2.5);
    CHECK(bed.ceiling_height.value.in(unit::metre) == 2.3);
    CHECK(living.fabric->era == reference::Era::from_1930);
    CHECK(garden.fabric->era == reference::Era::from_2003);
    CHECK(garden.fabric->wall == reference::WallKind::filled_cavity);
    CHECK(garden.fabric->glazing == reference::GlazingKind::double_from_2002);
    CHECK(garden.fabric->outside_walls == 3);
    CHECK(bed.fabric->roof == reference::RoofKind::pitched);
    CHECK(bed.fabric->floor == reference::FloorKind::none);
    CHECK(job.emitters[0].kind == "panel_22");
    CHECK(job.emitters[1].kind == "panel_21");
    CHECK(job.emitters[0].fittings.size() == 1);
    CHECK(job.emitters[1].fittings.empty());
    CHECK(job.sections[0].pipe == "copper_22");
    CHECK(job.sections[1].pipe == "copper_15");
    CHECK(job.sections[0].where == "under the floor");
    CHECK(job.sections[1].where == "in the wall");
}

TEST_CASE("a number that is stated once keeps its basis and range, and says for which rooms it was stated") {
    const auto job = job_of(once);
    const auto& air = job.rooms[0].air_changes;
    CHECK(air.basis == Basis::assumed);
    CHECK(air.low->in(unit::per_hour) == 0.5);
    CHECK(air.source == "stated once, for every room");
    CHECK(job.rooms[2].ceiling_height.source == "stated once, for rooms of `first floor`");
    CHECK(job.rooms[2].air_changes.source.empty());
    CHECK(job.rooms[2].air_changes.basis == Basis::measured);
}

TEST_CASE("an unheated room, and one with another way to its loss, take no fabric that is stated once") {
    const auto job = job_of(once);
    CHECK_FALSE(job.rooms[3].fabric);
    CHECK(job.rooms[3].ceiling_height.value.in(unit::metre) == 2.5);
    const auto rate = job_of(with(once, "floor_area_m2: 18", "floor_area_m2: 18, heat_loss_rate_w_per_m2: 60"));
    CHECK_FALSE(rate.rooms[0].fabric);
}

TEST_CASE("a fault in what is stated once is told once, where it stands") {
    CHECK(told(with(once, "ceiling_height_m: 2.5", "ceiling_height_m: 25")) ==
          "14:23: error: defaults.every_room.ceiling_height_m = 25: must lie between 1.5 and 8 m\n"
          "    hint: check the digits, and that it is in m\n");
    const auto unknown = told(with(once, "era: from_1930_to_1949", "area: from_1930_to_1949"));
    CHECK(unknown.find("defaults.every_room.fabric.area: is not a key") != std::string::npos);
    CHECK(told(with(once, "storey: first floor, ceiling", "storey: frist floor, ceiling"))
              .find("12:16: error: defaults.by_storey[0].storey = frist floor: is that of no room") == 0);
    CHECK(told(with(once, "every_section: {pipe", "every_section: {from: J1, pipe")).find("every_section.from") !=
          std::string::npos);
    CHECK(told(with(once, "    - {group: extension, fabric", "    - {fabric")).find("by_group[0].group: is missing") !=
          std::string::npos);
}
