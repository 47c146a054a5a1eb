// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/design.hpp"
#include "loopfolio/physics/fabric.hpp"
#include "support/catch.hpp"
#include "support/fault_jobs.hpp"
#include "support/small_job.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

job::Element element(job::ElementKind kind, double m2, double u) {
    job::Element e;
    e.kind = kind;
    e.area = measured(unit::square_metre(m2));
    e.u_value = measured(unit::watt_per_square_metre_kelvin(u));
    return e;
}

/// The hall of Chadderton, Building Services Engineering, 5th ed. (2007), example 3.6, p. 69.
job::Room textbook_hall() {
    auto room = stated_room("hall", 1.0);
    room.heat_loss.reset();
    room.floor_area = measured(unit::square_metre(200.0));
    room.ceiling_height = measured(unit::metre(3.0));
    room.air_changes = measured(unit::per_hour(1.0));
    room.element_thermal_bridge = measured(unit::watt_per_square_metre_kelvin(0.0));
    using job::ElementKind;
    room.elements = {element(ElementKind::window, 20.0, 5.7), element(ElementKind::door, 8.0, 5.7),
                     element(ElementKind::wall, 152.0, 0.5), element(ElementKind::roof, 200.0, 0.3),
                     element(ElementKind::floor, 200.0, 0.6)};
    return room;
}

job::Job textbook_job(job::Room room) {
    auto job = one_section_job("copper_42", 1000.0);
    job.conditions.outdoor = measured(unit::celsius(-4.0));
    room.id = "room";
    job.rooms = {std::move(room)};
    return job;
}

job::Fabric semi_fabric(int outside_walls) {
    job::Fabric f;
    f.era = reference::Era::from_1930;
    f.wall = reference::WallKind::cavity;
    f.glazing = reference::GlazingKind::double_from_2002;
    f.floor = reference::FloorKind::ground;
    f.outside_walls = outside_walls;
    return f;
}

}  // namespace

TEST_CASE("handbook hall: fabric as printed, and 15,835 W with the book's own air term") {
    const auto d = designed(textbook_job(textbook_hall()));
    const auto& m = *d.rooms[0].by_elements;
    Verification book{{"heat losses of a designed hall",
                       "Chadderton, Building Services Engineering, 5th ed., example 3.6", Certainty::read, "W"}};
    book.check(415.6 * 25.0, m.to_outside.si(), 1e-8);
    // The book uses 0.33 and a factor of 1.1 for radiant panels; the program uses EN 12831's 0.34.
    const auto book_air = physics::ventilation_coefficient(0.33 * 1.1, unit::per_hour(1.0), unit::cubic_metre(600.0));
    book.check(15835.0, (m.to_outside + book_air * unit::kelvin(25.0)).si(), 1.5e-8);
    verify(
        {"heat loss of a designed hall, air at 0.34 Wh/(m³·K)", "EN 12831-1:2017, by hand", Certainty::computed, "W"},
        (415.6 + 0.34 * 600.0) * 25.0, m.loss.si(), 1.4e-8);
}

TEST_CASE("thermal bridges, unheated neighbours and warmer rooms") {
    auto room = textbook_hall();
    room.element_thermal_bridge = measured(unit::watt_per_square_metre_kelvin(0.1));
    room.elements = {element(job::ElementKind::wall, 10.0, 1.0), element(job::ElementKind::wall, 10.0, 1.0),
                     element(job::ElementKind::party_wall, 10.0, 2.0),
                     element(job::ElementKind::party_wall, 10.0, 2.0)};
    room.elements[1].beyond = job::Beyond::unheated;
    room.elements[2].beyond = room.elements[3].beyond = job::Beyond::room;
    room.elements[2].beyond_room = "cool";
    room.elements[3].beyond_room = "warm";
    auto job = textbook_job(std::move(room));
    job.rooms.push_back(stated_room("cool", 100.0, 18.0));
    job.rooms.push_back(stated_room("warm", 100.0, 24.0));
    const auto d = designed(job);
    const auto& m = *d.rooms[0].by_elements;
    CHECK(m.elements[0].si() == Approx(10.0 * 1.1 * 25.0));
    CHECK(m.elements[1].si() == Approx(10.0 * 1.1 * 12.5));  // half way to outdoors unless the job says better
    CHECK(m.elements[2].si() == Approx(10.0 * 2.0 * 3.0));
    CHECK(m.elements[3].si() == 0.0);  // what a warmer room gives is not counted on
    CHECK(d.rooms[0].loss_to_outside.si() == Approx((d.rooms[0].loss - m.elements[2]).si()));
}

TEST_CASE("the derived rate is the sum of its terms for a room of 16 m²") {
    auto room = stated_room("room", 1.0);
    room.heat_loss.reset();
    room.air_changes = measured(unit::per_hour(1.5));
    room.floor_area = measured(unit::square_metre(16.0));
    room.fabric = semi_fabric(2);
    room.fabric->wall_u_value = measured(unit::watt_per_square_metre_kelvin(1.5));
    room.fabric->glazing_u_value = measured(unit::watt_per_square_metre_kelvin(2.0));
    room.fabric->thermal_bridge = measured(unit::watt_per_square_metre_kelvin(0.1));
    const auto d = designed(textbook_job(room));
    const auto& a = *d.rooms[0].by_area;
    // By hand: walls 2 x 4 m x 2.4 m = 19.2 m², of which glazing 0.2 x 16 = 3.2 m².
    CHECK(a.walls.si() == Approx(16.0 * 1.5 / 16.0));
    CHECK(a.glazing.si() == Approx(3.2 * 2.0 / 16.0));
    CHECK(a.bridges.si() == Approx(19.2 * 0.1 / 16.0));
    CHECK(a.ventilation.si() == Approx(0.34 * 1.5 * 2.4));
    // B' = 2A/P = 4 m, no insulation, clay.
    verify({"floor of a derived rate", "BS EN ISO 13370, by hand", Certainty::computed, "W/m²K"}, 0.69756, a.floor.si(),
           6.9e-5);
    CHECK(a.per_kelvin.si() == Approx((a.walls + a.glazing + a.floor + a.bridges + a.ventilation).si()));
    CHECK(d.rooms[0].loss.si() == Approx(a.per_kelvin.si() * 25.0 * 16.0));
}

TEST_CASE("by area, a square room of any size loses what its elements lose") {
    // The same room written element by element: sides, glazing of a fifth of the floor, and ISO 13370 for its own slab.
    constexpr double wall = 1.5, glazing = 2.0, roof = 0.4, bridge = 0.1;
    for (const double area : {2.0, 3.0, 4.0, 6.0, 9.0, 12.0, 16.0, 25.0, 40.0}) {
        for (const int walls : {0, 1, 2, 3, 4}) {
            INFO(area << " m², " << walls << " outside walls");
            auto room = stated_room("room", 1.0);
            room.heat_loss.reset();
            room.floor_area = measured(unit::square_metre(area));
            room.air_changes = measured(unit::per_hour(1.0));
            room.fabric = semi_fabric(walls);
            room.fabric->wall_u_value = measured(unit::watt_per_square_metre_kelvin(wall));
            room.fabric->glazing_u_value = measured(unit::watt_per_square_metre_kelvin(glazing));
            room.fabric->roof = reference::RoofKind::pitched;
            room.fabric->roof_u_value = measured(unit::watt_per_square_metre_kelvin(roof));
            room.fabric->thermal_bridge = measured(unit::watt_per_square_metre_kelvin(bridge));
            room.fabric->floor = reference::FloorKind::none;
            const double by_area = designed(textbook_job(room)).rooms[0].by_area->loss.si();

            const double gross = walls * std::sqrt(area) * 2.4, panes = std::min(0.2 * area, 0.8 * gross);
            room.fabric.reset();
            room.element_thermal_bridge = measured(unit::watt_per_square_metre_kelvin(bridge));
            room.elements = {element(job::ElementKind::roof, area, roof)};
            if (walls > 0) {
                room.elements.push_back(element(job::ElementKind::wall, gross - panes, wall));
                room.elements.push_back(element(job::ElementKind::window, panes, glazing));
            }
            CHECK(by_area == Approx(designed(textbook_job(room)).rooms[0].by_elements->loss.si()).epsilon(0.05));
        }
    }
}

TEST_CASE("a firm's own rate is not touched by the size of the room, and the fixed size is only shown") {
    auto room = stated_room("room", 1.0);
    room.heat_loss.reset();
    room.heat_loss_rate = measured(unit::watt_per_square_metre(80.0));
    room.floor_area = measured(unit::square_metre(4.0));
    CHECK(designed(textbook_job(room)).rooms[0].loss.si() == Approx(320.0));
    const auto job = fault_job("small");
    design::Trace trace;
    const auto d = designed(job, &trace);
    for (std::size_t i = 0; i < job.rooms.size(); ++i) {
        if (!d.rooms[i].by_area || d.rooms[i].by_area->stated_rate) continue;
        const auto& a = *d.rooms[i].by_area;
        INFO(job.rooms[i].id);
        // Smaller rooms have more outside wall to the square metre.
        const double size = job.rooms[i].floor_area.value.si();
        if (size < 16.0) CHECK(a.rate > a.fixed_rate);
        if (size > 16.0) CHECK(a.rate < a.fixed_rate);
    }
}

TEST_CASE("rates rise with everything that loses heat") {
    const auto rate = [](auto&& change) {
        auto room = stated_room("room", 1.0);
        room.heat_loss.reset();
        room.fabric = semi_fabric(1);
        change(room);
        return designed(textbook_job(room)).rooms[0].by_area->rate;
    };
    const auto plain = rate([](job::Room&) {});
    CHECK(rate([](job::Room& r) { r.fabric->outside_walls = 2; }) > plain);
    CHECK(rate([](job::Room& r) { r.fabric->roof = reference::RoofKind::pitched; }) > plain);
    CHECK(rate([](job::Room& r) { r.ceiling_height = measured(unit::metre(3.0)); }) > plain);
    CHECK(rate([](job::Room& r) { r.fabric->era = reference::Era::from_2012; }) < plain);
    CHECK(rate([](job::Room& r) { r.fabric->floor = reference::FloorKind::none; }) < plain);
    CHECK(rate([](job::Room& r) { r.fabric->outside_walls = 0; }) < plain);
}

TEST_CASE("a suspended ground floor is no slab, and one whose void is assumed is flagged") {
    auto room = stated_room("room", 1.0);
    room.heat_loss.reset();
    room.fabric = semi_fabric(2);
    const auto slab = designed(textbook_job(room)).rooms[0];
    const auto flags = [](const design::Design& d) {
        return std::ranges::count(d.flags, design::Caveat::void_not_stated, &design::Flag::caveat);
    };
    room.fabric->floor = reference::FloorKind::suspended;
    const auto assumed = designed(textbook_job(room));
    CHECK(assumed.rooms[0].by_area->floor_u_value != slab.by_area->floor_u_value);
    CHECK(assumed.rooms[0].by_area->bridges == slab.by_area->bridges);  // the edge is in its own relation
    CHECK(flags(assumed) == 1);
    auto& under = room.fabric->under.emplace();
    under.height = measured(0.0 * unit::metre);
    under.openings = measured(unit::square_millimetre_per_metre(0.0));
    under.deck = measured(unit::square_metre_kelvin_per_watt(0.2));
    const auto stated = designed(textbook_job(room));
    CHECK(flags(stated) == 0);
    // A sealed void level with the ground: deck and ground in series, 0.34 + 0.2 + 1/slab. This era has no insulation.
    CHECK(1.0 / stated.rooms[0].by_area->floor_u_value.si() ==
          Approx(0.54 + 1.0 / slab.by_area->floor_u_value.si()).epsilon(1e-9));
}

TEST_CASE("a loft of unknown thickness is flagged, a stated one is not") {
    const auto flagged = [](auto&& change) {
        auto room = stated_room("room", 1.0);
        room.heat_loss.reset();
        room.fabric = semi_fabric(1);
        room.fabric->roof = reference::RoofKind::pitched;
        change(room);
        int count = 0;
        for (const auto& f : designed(textbook_job(room)).flags) {
            count += f.caveat == design::Caveat::loft_not_stated ? 1 : 0;
        }
        return count;
    };
    CHECK(flagged([](job::Room&) {}) == 1);
    CHECK(flagged([](job::Room& r) { r.fabric->era = reference::Era::from_2012; }) == 0);
    CHECK(flagged([](job::Room& r) { r.fabric->roof_u_value = measured(unit::watt_per_square_metre_kelvin(2.3)); }) ==
          0);
    CHECK(flagged([](job::Room& r) { r.heat_loss = measured(unit::watt(900.0)); }) == 0);
}
