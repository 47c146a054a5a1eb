// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/job/read_job.hpp"
#include "support/catch.hpp"

#include <algorithm>
#include <fstream>
#include <map>
#include <string>

using namespace loopfolio;

namespace {

using Files = std::map<std::string, std::string>;

const std::string tabled = R"(loopfolio: 2
job: {reference: TAB-1, revision: A, design_date: 2026-10-14}
firm: {name: Fernhollow Heating}
designer: {name: Ada Bramwell}
household: {name: The Whitlock household}
property: {address: [19 Quarry Rise]}
conditions: {outdoor_temperature_c: -3.2, flow_temperature_c: 50}
tables: {rooms: rooms.csv, emitters: emitters.csv, sections: sections.csv}
defaults:
  every_room:
    ceiling_height_m: 2.4
    fabric: {era: from_1930_to_1949, wall: cavity, glazing: double_from_2002, roof: none, floor: ground}
heat_source: {name: heat pump, at: SOURCE}
)";

const Files good = {
    {"rooms.csv",
     "id,name,use,floor_area_m2,fabric.outside_walls,fabric.floor\n"
     "living,Living room,living,18.4,2,\n"
     "bed,\"Bedroom, front\",bedroom,12?,1,none\n"},
    {"emitters.csv",
     "id,room,at,kind,output_at_50k_w,fittings,derating\n"
     "r1,living,J1,panel_22,1800,1 thermostatic_valve + 1 lockshield_valve,shelf + curtain\n"
     "r2,bed,J2,panel_11,700,none,\n"},
    {"sections.csv",
     "id,from,to,pipe,length_m,fittings\n"
     "s1,SOURCE,J1,copper_22,6.5,3 elbow\n"
     "s2,J1,J2,copper_15,4,\n"},
};

job::ReadResult read(const Files& files, const std::string& text = tabled) {
    return job::read_job(text, "job.yaml", {},
                         [&](const std::string& name) -> std::variant<std::string, job::FileFault> {
                             const auto found = files.find(name);
                             if (found == files.end()) return job::FileFault{"cannot be read: it is not there"};
                             return found->second;
                         });
}

std::string told(const Files& files, const std::string& text = tabled) {
    std::string out;
    for (const auto& diagnostic : read(files, text).diagnostics) out += text_of(diagnostic);
    return out;
}

Files with(const std::string& name, const std::string& from, const std::string& to) {
    Files out = good;
    auto& text = out.at(name);
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
    return out;
}

}  // namespace

TEST_CASE("rooms, emitters and sections come from tables, with what is stated once") {
    INFO(told(good));
    const auto result = read(good);
    REQUIRE(result.job);
    const auto& job = *result.job;
    REQUIRE(job.rooms.size() == 2);
    CHECK(job.rooms[1].name == "Bedroom, front");
    CHECK(job.rooms[0].floor_area.value.in(unit::square_metre) == 18.4);
    CHECK(job.rooms[0].floor_area.basis == Basis::measured);
    CHECK(job.rooms[0].floor_area.source == "rooms.csv, line 2");
    CHECK(job.rooms[0].fabric->floor == reference::FloorKind::ground);
    CHECK(job.rooms[1].fabric->floor == reference::FloorKind::none);
    CHECK(job.rooms[1].fabric->outside_walls == 1);
    CHECK(job.rooms[0].ceiling_height.value.in(unit::metre) == 2.4);
    REQUIRE(job.emitters.size() == 2);
    CHECK(job.emitters[0].fittings.size() == 2);
    CHECK(job.emitters[0].fittings[1].kind == "lockshield_valve");
    CHECK(job.emitters[0].deratings.size() == 2);
    CHECK(job.emitters[1].fittings.empty());
    REQUIRE(job.sections.size() == 2);
    CHECK(job.sections[0].fittings[0].count == 3);
    CHECK(result.files.size() == 3);
}

TEST_CASE("a number with a question mark in a table is assumed") {
    const auto result = read(good);
    REQUIRE(result.job);
    CHECK(result.job->rooms[1].floor_area.value.in(unit::square_metre) == 12.0);
    CHECK(result.job->rooms[1].floor_area.basis == Basis::assumed);
}

TEST_CASE("a table may have semicolons with decimal commas, tabs, and a byte-order mark") {
    Files files = good;
    files["sections.csv"] =
        "\xEF\xBB\xBFid;from;to;pipe;length_m\r\ns1;SOURCE;J1;copper_22;6,5\r\ns2;J1;J2;copper_15;4\r\n";
    files["rooms.csv"] =
        "id\tname\tuse\tfloor_area_m2\tfabric.outside_walls\nliving\tLiving "
        "room\tliving\t18.4\t2\nbed\tBed\tbedroom\t12\t1\n";
    INFO(told(files));
    const auto result = read(files);
    REQUIRE(result.job);
    CHECK(result.job->sections[0].length.value.in(unit::metre) == 6.5);
    CHECK(result.job->rooms[1].name == "Bed");
}

TEST_CASE("faults in tables are told at file, line and column, all in one run") {
    const auto said = told(with("rooms.csv", "18.4,2,", "1840,7,"));
    CHECK(said.find("rooms.csv:2:27: error: rooms[0].floor_area_m2 = 1840: must lie between 0.5 and 1000 m²") == 0);
    CHECK(said.find("rooms.csv:2:32: error: rooms[0].fabric.outside_walls = 7: must lie between 0 and 4") !=
          std::string::npos);
    CHECK(told(with("sections.csv", "J1,J2,copper_15", "J1,J2,copper_51")).find("sections.csv:3:") == 0);
    CHECK(told(with("sections.csv", "3 elbow", "three elbows"))
              .find("sections.csv:2:28: error: fittings = three elbows: must be a number and the name of a fitting") ==
          0);
    CHECK(told(with("emitters.csv", "kind,output", "kindd,output"))
              .find("kindd: is not a column of a table of emitters") != std::string::npos);
    CHECK(told(with("emitters.csv", "r2,bed", "r1,bed")).find("emitters.csv:3:") != std::string::npos);
    CHECK(told(with("rooms.csv", "id,name", "ident,name"))
              .find("id: is missing: each row of a table of rooms needs it") != std::string::npos);
    CHECK(told(with("sections.csv", "s2,J1,J2,copper_15,4,", "s2,J1,J2,copper_15,4,,,9")).find("sections.csv:3:") == 0);
}

TEST_CASE("a table that is not there, is no table, or stands beside the list is told") {
    Files files = good;
    files.erase("rooms.csv");
    CHECK(told(files).find("job.yaml:8:17: error: tables.rooms = rooms.csv: cannot be read") == 0);
    CHECK(told(good, tabled + "rooms: []\n").find("tables.rooms = rooms.csv: stands beside `rooms` of this file") !=
          std::string::npos);
    auto text = tabled;
    text.replace(text.find("rooms.csv"), 9, "rooms.txt");
    CHECK(told(good, text).find("must end in `.yaml` or `.csv`") != std::string::npos);
    Files windows = good;
    windows["rooms.csv"] += "bad,Caf\xE9,living,9,1,\n";
    CHECK(told(windows).find("is not UTF-8 text") != std::string::npos);
}

TEST_CASE("the empty tables that come along have columns that the reader knows, and nothing else") {
    for (const char* name : {"rooms", "emitters", "sections"}) {
        INFO(name);
        std::ifstream in{std::string{LOOPFOLIO_SOURCE_DIR} + "/templates/job/" + name + ".csv"};
        std::string head, rest;
        REQUIRE(std::getline(in, head));
        CHECK_FALSE(std::getline(in, rest));
        Files files = good;
        // A line with an id alone: what it lacks is told, but no column is unknown.
        files[std::string{name} + ".csv"] = head + "\nx" + std::string(std::ranges::count(head, ','), ',') + "\n";
        CHECK(told(files).find("is not a column") == std::string::npos);
    }
}
