// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/air.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/reference/ventilation.hpp"
#include "support/catch.hpp"
#include "support/small_job.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;
using reference::RoomUse;

namespace {

constexpr auto per = unit::cubic_metre_per_hour_square_metre;
constexpr auto flow = unit::cubic_metre_per_hour;

job::Element element(job::ElementKind kind, double m2, job::Beyond beyond) {
    job::Element e;
    e.kind = kind;
    e.area = measured(unit::square_metre(m2));
    e.u_value = measured(unit::watt_per_square_metre_kelvin(1.0));
    e.beyond = beyond;
    return e;
}

job::Room room_of(std::string id, RoomUse use, std::vector<job::Element> elements) {
    auto room = stated_room(std::move(id), 1.0, 20.0);
    room.heat_loss.reset();
    room.use = use;
    room.elements = std::move(elements);
    return room;
}

/// A living room of 48 m³ with 25 m² of outside area and a slab, a hall of 48 m³ with 10 m², by 6 m³/(h·m²).
job::Job two_rooms() {
    auto job = one_section_job("copper_28", 1000.0);
    job.conditions.outdoor = measured(unit::celsius(-4.0));
    job.conditions.air_permeability = measured(per(6.0));
    using job::Beyond, job::ElementKind;
    job.rooms = {
        room_of(
            job.rooms[0].id, RoomUse::living,
            {element(ElementKind::wall, 15.0, Beyond::outside), element(ElementKind::window, 4.0, Beyond::outside),
             element(ElementKind::ceiling, 6.0, Beyond::unheated), element(ElementKind::floor, 20.0, Beyond::ground)}),
        room_of("hall", RoomUse::hall, {element(ElementKind::wall, 10.0, Beyond::outside)})};
    auto second = job.emitters[0];
    second.id = "second";
    second.room = "hall";
    job.emitters.push_back(second);
    return job;
}

design::HouseAir air_in(const job::Job& job) { return design::air_of(design::resolve(job).values); }

Power ventilation_in(const job::Job& job, std::size_t room) {
    return designed(job).rooms[room].by_elements->ventilation;
}

}  // namespace

TEST_CASE("a room takes the greater of its envelope's air and its minimum") {
    const auto job = two_rooms();
    const auto air = air_in(job);
    CHECK(air.zone.envelope.si() == Approx(35.0));  // no slab
    CHECK(air.rooms[0].leakage.in(flow) == Approx(25.0 * 6.0 * 0.05));
    CHECK(air.rooms[0].through_envelope.in(flow) == Approx(10.5));  // twice its part is more than the whole house has
    CHECK(air.rooms[0].minimum.in(flow) == Approx(24.0));
    CHECK(air.rooms[0].outdoor.in(flow) == Approx(24.0));
    CHECK(air.rooms[0].outdoor_in_house.in(flow) == Approx(12.0));  // half of the minimum
    CHECK(air.rooms[1].outdoor.in(flow) == Approx(6.0));            // a hall has no minimum
    CHECK(air.rooms[1].outdoor_in_house.in(flow) == Approx(3.0));
    // 24 K: 0.34 × 24 × 24 in the room; the house's load counts half of it.
    const auto d = designed(job);
    CHECK(d.rooms[0].by_elements->ventilation.si() == Approx(0.34 * 24.0 * 24.0));
    CHECK(d.rooms[0].air_not_at_once.si() == Approx(0.34 * 12.0 * 24.0));
    CHECK(d.rooms[0].loss_to_outside.si() == Approx((d.rooms[0].loss - d.rooms[0].air_not_at_once).si()));
}

TEST_CASE("the rooms' leakage is the house's, and more permeability never loses less") {
    double before = -1.0;
    for (const double permeability : {0.0, 2.0, 6.0, 12.0, 30.0, 50.0}) {
        auto job = two_rooms();
        job.conditions.air_permeability = measured(per(permeability));
        const auto air = air_in(job);
        CHECK((air.rooms[0].leakage + air.rooms[1].leakage).si() ==
              Approx(air.air.through_envelope.si()).margin(1e-12));
        const double loss = (ventilation_in(job, 0) + ventilation_in(job, 1)).si();
        CHECK(loss >= before);
        before = loss;
    }
}

TEST_CASE("what is left where nothing leaks, and where nothing is asked for") {
    auto job = two_rooms();
    job.conditions.air_permeability = measured(per(0.0));
    CHECK(ventilation_in(job, 0).si() == Approx(0.34 * 24.0 * 24.0));
    CHECK(ventilation_in(job, 1).si() == 0.0);
    job.rooms[0].minimum_air = measured(unit::per_hour(0.0));
    CHECK(ventilation_in(job, 0).si() == 0.0);
}

TEST_CASE("stated air goes before the standard") {
    auto job = two_rooms();
    job.rooms[0].air_changes = measured(unit::per_hour(1.25));
    const auto filled = design::resolve(job);
    CHECK(filled.values.rooms[0].air_changes.value.in(unit::per_hour) == Approx(1.25));
    CHECK_FALSE(filled.values.rooms[0].house_air.given());
    CHECK_FALSE(filled.values.rooms[0].minimum_air.given());
    CHECK(designed(job).rooms[0].air_not_at_once.si() == 0.0);
    CHECK(filled.values.rooms[1].air_changes.basis == Basis::derived);
    // It still has its part of the house's envelope.
    CHECK(design::air_of(filled.values).zone.envelope.si() == Approx(35.0));
}

TEST_CASE("a test in air changes is converted by the rooms' volume and outside area") {
    auto job = two_rooms();
    job.conditions.air_permeability = {};
    job.conditions.leakage_at_50_pa = measured(unit::per_hour(7.0));
    const auto filled = design::resolve(job);
    CHECK(filled.values.conditions.air_permeability.value.in(per) == Approx(7.0 * 96.0 / 35.0));
    CHECK(filled.values.conditions.air_permeability.basis == Basis::derived);
    CHECK_FALSE(filled.inputs.conditions.air_permeability.given());
    // So the house leaks what the test found, whatever its envelope.
    CHECK(design::air_of(filled.values).air.leakage.in(flow) == Approx(0.05 * 7.0 * 96.0));
    auto moved = filled;
    moved.inputs.conditions.leakage_at_50_pa.value = unit::per_hour(14.0);
    design::derive(moved);
    CHECK(moved.values.conditions.air_permeability.value.in(per) == Approx(2.0 * 7.0 * 96.0 / 35.0));
}

TEST_CASE("an envelope that was not tested has the figure in force, with a range by age") {
    auto job = two_rooms();
    job.conditions.air_permeability = {};
    job.property.nation = reference::Nation::england;
    const auto older = design::resolve(job).values.conditions.air_permeability;
    CHECK(older.value.in(per) == Approx(12.0));
    CHECK(older.basis == Basis::default_value);
    CHECK(older.source == "mis-3005-d");
    CHECK(older.high->in(per) == Approx(20.0));
    job.rooms[0].fabric.emplace();
    job.rooms[0].fabric->era = reference::Era::from_2012;
    CHECK(design::resolve(job).values.conditions.air_permeability.high->in(per) == Approx(12.0));
    // Before the scheme's issue and the guide nothing is in force that sets one.
    job.identity.design_date = date::year{2024} / 1 / 1;
    CHECK(design::resolve(job).values.conditions.air_permeability.source == "common-practice");
}

TEST_CASE("fans and flues draw air in, and count towards the minimum") {
    auto job = two_rooms();
    job.rooms[0].flue = reference::Flue::open_fireplace;
    auto air = air_in(job);
    CHECK(air.rooms[0].combustion.in(flow) == Approx(80.0));
    CHECK(air.air.drawn_in.in(flow) == Approx(80.0));
    CHECK(air.rooms[0].outdoor == air.rooms[0].through_envelope);  // 24 − 80 is below it
    CHECK((air.rooms[0].outdoor_in_house + air.rooms[1].outdoor_in_house).si() ==
          Approx(air.air.through_envelope.si()).epsilon(1e-12));
    // Wind reaches further on one side.
    const auto adjustment = air.air.adjustment;
    job.conditions.exposed_sides = 1;
    CHECK(air_in(job).air.adjustment < adjustment);

    job = two_rooms();
    job.rooms[0].ventilation = job::MechanicalVentilation{
        measured(unit::per_hour(0.0)), measured(0.0), {}, measured(unit::per_hour(1.0))};
    air = air_in(job);
    CHECK(air.air.drawn_in.in(flow) == Approx(48.0));
    CHECK(air.air.through_envelope > air.air.drawn_in);
}

TEST_CASE("balanced fans with recovery warm what is not recovered, and what leaks") {
    auto job = two_rooms();
    job.rooms[0].ventilation = job::MechanicalVentilation{measured(unit::per_hour(0.5)), measured(0.8), {}, {}};
    const auto air = air_in(job);
    CHECK(air.air.drawn_in.si() == 0.0);
    CHECK(air.air.adjustment == 1.0);
    CHECK(air.rooms[0].outdoor.in(flow) == Approx(10.5));  // the fans bring the minimum
    CHECK(ventilation_in(job, 0).si() == Approx(0.34 * (10.5 + 0.2 * 24.0) * 24.0));
    // Leaks that the room states go before the standard.
    job.rooms[0].ventilation->infiltration = measured(unit::per_hour(0.1));
    CHECK(ventilation_in(job, 0).si() == Approx(0.34 * (4.8 + 0.2 * 24.0) * 24.0));
}

TEST_CASE("a replaced table gives the air of its uses") {
    auto job = two_rooms();
    job.conditions.air_permeability = {};
    job.conditions.air_by = reference::AirBy::bs_5449_1990;
    auto filled = design::resolve(job).values;
    CHECK(filled.rooms[0].air_changes.value.in(unit::per_hour) == Approx(1.5));
    CHECK(filled.rooms[0].air_changes.source == "bs-5449-1990");
    CHECK_FALSE(filled.conditions.air_permeability.given());
    CHECK(designed(job).rooms[0].air_not_at_once.si() == 0.0);
    job.conditions.air_by = reference::AirBy::guide_categories;
    job.conditions.guide_category = reference::GuideCategory::c;
    filled = design::resolve(job).values;
    CHECK(filled.rooms[0].air_changes.value.in(unit::per_hour) == Approx(0.5));
    CHECK(filled.rooms[0].air_changes.source == "dhdg");
}

TEST_CASE("the outside area of a room by the area method") {
    auto room = stated_room("room", 1000.0);
    CHECK(design::outside_area(room).si() == 0.0);
    room.fabric.emplace();
    room.floor_area = measured(unit::square_metre(16.0));
    room.fabric->outside_walls = 2;
    CHECK(design::outside_area(room).si() == Approx(2 * 4.0 * 2.4));
    room.fabric->roof = reference::RoofKind::pitched;
    room.fabric->floor = reference::FloorKind::ground;
    CHECK(design::outside_area(room).si() == Approx(2 * 4.0 * 2.4 + 16.0));
    room.fabric->floor = reference::FloorKind::exposed;
    CHECK(design::outside_area(room).si() == Approx(2 * 4.0 * 2.4 + 32.0));
    room.fabric->floor = reference::FloorKind::suspended;  // over a ventilated void
    CHECK(design::outside_area(room).si() == Approx(2 * 4.0 * 2.4 + 32.0));
}
