// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/limits.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <set>
#include <string>

using namespace loopfolio;
using namespace loopfolio::reference;
using Known = tests::Certainty;
using tests::Verification;
using tests::verify;

TEST_CASE("rooms take the temperature and air changes of BS 5449:1990") {
    const std::string source = "BS 5449:1990, as a trade page quotes it";
    Verification temperatures{{"temperature by use of a room", source, Known::read, "°C"}};
    Verification air{{"air changes by use of a room", source, Known::read, "1/h"}};
    struct Row {
        RoomUse use;
        double celsius, air_changes;
    };
    const Row rows[] = {{RoomUse::living, 21, 1.5}, {RoomUse::dining, 21, 1.5},  {RoomUse::bedroom, 18, 1.0},
                        {RoomUse::hall, 18, 1.5},   {RoomUse::landing, 18, 1.5}, {RoomUse::bathroom, 22, 3.0},
                        {RoomUse::toilet, 18, 3.0}, {RoomUse::kitchen, 18, 2.0}};
    for (const auto& r : rows) {
        const auto& room = defaults_for(r.use);
        CAPTURE(room.name);
        temperatures.check(r.celsius, room.temperature_c, 1e-12);
        air.check(r.air_changes, room.air_changes_per_hour, 1e-12);
    }
}

TEST_CASE("the ranges of air changes take in categories A to C and a physicist's draught-proofed house") {
    const std::string range = "range of air changes, ";
    Verification guide{{range + "rooms of categories A and C", "Domestic Heating Design Guide", Known::memory, "1/h"}};
    Verification tight{
        {range + "draught-proofed rooms", "MacKay, Sustainable Energy (2008), table E.1", Known::read, "1/h"}};
    const auto check_within = [](Verification& v, RoomUse use, double published) {
        const auto& room = defaults_for(use);
        CAPTURE(room.name);
        v.check_inside(published, room.air_changes_low, room.air_changes_high);
    };
    struct Row {
        RoomUse use;
        double published;
    };
    for (const auto& r : {Row{RoomUse::living, 1.5},
                          {RoomUse::living, 0.5},
                          {RoomUse::kitchen, 0.5},
                          {RoomUse::hall, 2.0},
                          {RoomUse::hall, 0.5},
                          {RoomUse::bathroom, 0.5},
                          {RoomUse::toilet, 1.5},
                          {RoomUse::study, 0.5},
                          {RoomUse::utility, 3.0},
                          {RoomUse::bedroom_with_ensuite, 1.0},
                          {RoomUse::store, 0.5}}) {
        check_within(guide, r.use, r.published);
    }
    for (const auto& r : {Row{RoomUse::living, 1.0}, {RoomUse::bedroom, 0.5}, {RoomUse::bathroom, 2.0}}) {
        check_within(tight, r.use, r.published);
    }
}

TEST_CASE("room uses stand in enumerator order, each in its own range") {
    std::set<std::string_view> names;
    REQUIRE(room_uses().size() == 12);
    for (std::size_t i = 0; i < room_uses().size(); ++i) {
        const auto& room = room_uses()[i];
        CAPTURE(room.name);
        CHECK(static_cast<std::size_t>(room.use) == i);
        CHECK(&defaults_for(room.use) == &room);
        CHECK(names.insert(room.name).second);
        CHECK_FALSE(room.label.empty());
        CHECK(room.air_changes_low <= room.air_changes_per_hour);
        CHECK(room.air_changes_per_hour <= room.air_changes_high);
    }
}

TEST_CASE("the reference room is square, and its window is a fifth of its floor") {
    CHECK(reference_room().floor_area.si() == 16.0);
    verify({"height of a room that is not measured", "sayings of the trade", Known::practice, "m"}, 2.4,
           reference_room().ceiling_height.si(), 1e-12);
    verify({"glazing over the floor of its room", "sayings of the trade", Known::practice, ""}, 0.20,
           reference_room().glazing_share_of_floor, 1e-12);
}

TEST_CASE("limits lie in their own ranges, the preferred under the hard one") {
    const auto& l = limits();
    const auto inside = [](const auto& cited) { return cited.low <= cited.value && cited.value <= cited.high; };
    for (const auto& guide : velocity_guides()) {
        CHECK(inside(guide.preferred));
        CHECK(inside(guide.limit));
        CHECK(guide.preferred.value < guide.limit.value);
        // At most 1.0 m/s to 50 mm, 300 Pa/m.
        CHECK(guide.preferred.value.in(unit::metre_per_second) <= 1.0);
    }
    CHECK(inside(l.gradient_preferred));
    CHECK(inside(l.temperature_drop));
    CHECK(inside(l.shortfall_noted));
    CHECK(inside(l.pump_margin));
    CHECK(inside(l.source_margin));
    CHECK(inside(l.thermal_bridge));
    CHECK(inside(l.exposed_floor_uninsulated));
    verify({"preferred gradient", "CIBSE Guide B 1986, table B1.13, as quoted", Known::read, "Pa/m"}, 300.0,
           l.gradient_preferred.value.in(unit::pascal_per_metre), 1e-9);
    // BS 6700: copper at 90 °C up to 2.0 m/s, read.
    for (const auto& guide : velocity_guides()) CHECK(guide.limit.value.in(unit::metre_per_second) <= 2.0);
    // Boards 20 mm at 0.13 on joists, surfaces 0.17 and 0.04, gap 0.17 to 0.22 (BS EN ISO 6946): 1.4 to 1.9.
    CHECK(l.exposed_floor_uninsulated.high.si() >= 1.0 / (0.17 + 0.04 + 0.020 / 0.13 + 0.22));
}
