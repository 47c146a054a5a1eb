// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/ventilation.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

using namespace loopfolio;
using namespace loopfolio::reference;
using Known = tests::Certainty;
using tests::Verification;

TEST_CASE("minimum air changes and permeability are those of the guide and the scheme") {
    Verification least{{"minimum air changes by use of a room",
                        "Domestic Heating Design Guide, 2026, as pages quote it", Known::read, "1/h"}};
    struct Row {
        RoomUse use;
        double published;
    };
    for (const auto& r : {Row{RoomUse::living, 0.5},
                          {RoomUse::bedroom, 0.5},
                          {RoomUse::kitchen, 0.5},
                          {RoomUse::bathroom, 0.5},
                          {RoomUse::store, 0.5},
                          {RoomUse::hall, 0.0},
                          {RoomUse::landing, 0.0}}) {
        least.check(r.published, minimum_air(r.use).value.in(unit::per_hour), 1e-12);
    }
    Verification untested{
        {"permeability where it was not tested", "MIS 3005-D, issue 3.0, as pages quote it", Known::read, "m³/(h·m²)"}};
    const auto day = date::year{2026} / date::November / 30;
    const auto found = untested_permeability(Nation::england, day, {});
    untested.check(12.0, found.value.in(unit::cubic_metre_per_hour_square_metre), 1e-12);
    CHECK(found.source == "mis-3005-d");
    // The mean of tests of existing houses, from memory, lies in the range of older ones.
    Verification mean{{"range of the permeability of older houses", "BRE, Airtightness in UK dwellings (2000): mean",
                       Known::memory, "m³/(h·m²)"}};
    mean.check_inside(11.5, found.low.in(unit::cubic_metre_per_hour_square_metre),
                      found.high.in(unit::cubic_metre_per_hour_square_metre));
}

TEST_CASE("every value of the air tables lies in its own range") {
    for (const auto& room : room_uses()) {
        CAPTURE(room.name);
        const auto least = minimum_air(room.use);
        CHECK(least.low <= least.value);
        CHECK(least.value <= least.high);
        double before = 1e9;
        for (const auto& category : guide_category_names()) {
            const auto rate = replaced_air_changes(AirBy::guide_categories, room.use, category.value);
            CHECK(rate.low <= rate.value);
            CHECK(rate.value <= rate.high);
            CHECK(rate.value.si() <= before);  // a later building has no more
            before = rate.value.si();
        }
        CHECK(replaced_air_changes(AirBy::bs_5449_1990, room.use, GuideCategory::a).source == room.air_changes_source);
    }
    for (const auto& flue : flue_names()) {
        const auto air = flue_air(flue.value);
        CHECK(air.low <= air.value);
        CHECK(air.value <= air.high);
        CHECK((air.value.si() == 0.0) == (flue.value == Flue::none));
    }
    const auto factor = standard_air().volume_flow_factor;
    CHECK(factor.low < factor.value);
    CHECK(factor.value < factor.high);
    for (const auto& by : air_by_names()) CHECK(find_edition(edition_of(by.value)) != nullptr);
}
