// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/pack_text.hpp"
#include "support/catch.hpp"

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

job::Layer solid(std::string material, double millimetres) {
    job::Layer out;
    out.material = std::move(material);
    out.thickness = measured(millimetres * unit::millimetre);
    return out;
}

/// The sample, with layers, a slab, an unheated space and fans in one room, and with emitters rated in other ways.
job::Job job_in_depth() {
    auto job = sample_job();
    job.conditions.height_above_station = measured(120.0 * unit::metre);
    job.conditions.heat_up = measured(11.0 * unit::watt_per_square_metre);
    auto& bed = job.rooms[3];
    bed.ventilation = job::MechanicalVentilation{
        measured(0.4 * unit::per_hour), measured(0.7), measured(0.2 * unit::per_hour), {}};
    auto& wall = bed.elements[0];
    wall.u_value = {};
    wall.layers = {solid("plaster_dense", 13.0), solid("mineral_wool_board", 100.0), solid("brick_outer", 102.0)};
    wall.layers[1].bridge = job::LayerBridge{"timber", {}, measured(0.12)};
    job::Element floor;
    floor.kind = job::ElementKind::floor;
    floor.beyond = job::Beyond::ground;
    floor.area = measured(14.0 * unit::square_metre);
    floor.slab = job::GroundSlab{measured(7.6 * unit::metre), measured(0.0 * unit::square_metre_kelvin_per_watt)};
    auto second_wall = wall;
    second_wall.name = "side wall";
    bed.elements.push_back(floor);
    bed.elements.push_back(second_wall);
    job.emitters[1].deratings = {{"cover_with_grille", {}}};
    auto& loop = job.emitters[0];
    loop.kind = "underfloor";
    loop.output_at_50k = {};
    loop.loop_pipe = "multilayer_16";
    job::HeatedFloor heated;
    heated.area = measured(17.0 * unit::square_metre);
    heated.pitch = measured(150.0 * unit::millimetre);
    heated.covering = "stone";
    heated.screed_cover = measured(45.0 * unit::millimetre);
    heated.below = measured(2.0 * unit::square_metre_kelvin_per_watt);
    heated.below_temperature = measured(8.0 * unit::celsius);
    loop.floor = heated;
    return job;
}

const report::Report& pack() {
    static const auto made = composed(studied(job_in_depth()));
    return made;
}

std::vector<std::string> lines(std::size_t part) { return lines_of(pack().parts.at(part), true); }

}  // namespace

TEST_CASE("the assessor reads what a U-value is made of, once for all elements that have it") {
    const auto all = lines(assessor);
    CHECK(line_with(all, {"Front bedroom: Front wall", "Front bedroom: Side wall"}) != "");
    CHECK(line_with(all, {"Mineral wool, board or batt | 100.0 | 0.038 | 2.632 | Softwood, 12.0%"}) != "");
    CHECK(line_with(all, {"U = 0.4", "R between", "off"}) != "");
    CHECK(line_with(all, {"Front bedroom: Floor | 14.00 | 7.60 | 3.68 | 0.00 | 1.5 | 0.7"}) != "");
    CHECK(line_with(all, {"Front bedroom | 0.20 | 0.40 | 70 | 0.32"}) != "");
}

TEST_CASE("gaps, fasteners and what is added for them are read with the layers") {
    CHECK(line_with(lines(assessor), {"No air gaps in insulation and no fasteners"}) != "");
    auto job = job_in_depth();
    auto& insulation = job.rooms[3].elements[0].layers[1];
    insulation.air_gap_level = 2;
    insulation.fasteners = job::Fasteners{
        "steel_stainless", {}, measured(12.5 * unit::square_millimetre), measured(2.5), {}};
    const auto made = composed(studied(job));
    const auto all = lines_of(made.parts.at(assessor), true);
    CHECK(line_with(all, {"Softwood, 12.0%; air gaps, level 2; 2.5 fasteners/m² of 12.5\u00a0mm², Stainless steel"}) !=
          "");
    CHECK(line_with(all, {"ΔU = 0.0", "W/(m²·K)", "%"}) != "");
    CHECK(line_with(all, {"ΔU is added for air gaps"}) != "");
    CHECK(line_with(all, {"Air gaps and fasteners", "ΔU″", "not between metal sheets"}) != "");
}

TEST_CASE("the warmest spot of a heated floor stands beside its limit, and the mean beside both") {
    const auto made = studied(job_in_depth());
    const auto& f = *made.design.emitters[0].floor;
    REQUIRE(f.warmest);
    CHECK(*f.warmest > f.surface);
    CHECK((*f.warmest > f.surface_limit) == (f.flux > f.limit->flux));
    const std::string line = line_with(lines(installer), {"R1 | Living room | 17.0 | 150"});
    CHECK(has(line, fixed(f.surface.celsius(), 1) + " | " + fixed(f.warmest->celsius(), 1) + " | " +
                        fixed(f.surface_limit.celsius(), 0)));
}

TEST_CASE("the sum of the rooms leads to what the heat source must make") {
    const auto& sample = studied(job_in_depth());
    const auto all = lines(assessor);
    CHECK(line_with(all, {"To warm up after a set-back", fixed(sample.design.duty.heat_up.si(), 0)}) != "");
    CHECK(line_with(all, {"Heat that floors lose below", fixed(sample.design.duty.downward.si(), 0)}) != "");
    CHECK(line_with(all, {"What the heat source must make", fixed(sample.design.duty.source_load.si(), 0)}) != "");
    CHECK(line_with(all, {"Outdoor temperature: −3.7", "−3.0", "at the station", "120", "lower"}) != "");
}

TEST_CASE("the installer reads ratings and floors") {
    const auto all = lines(installer);
    const std::string covered = line_with(all, {"cover with a grille in front"});
    CHECK(has(covered, "R2 | 5,000"));
    CHECK(has(covered, "| 5,000 | cover with a grille in front | 0.80 | 0.60 to 0.90 | 4,000"));
    const std::string floor = line_with(all, {"R1 | Living room | 17.0 | 150"});
    CHECK(has(floor, "loop too long"));  // 17 m² at 150 mm are 113 m
    CHECK(line_with(all, {"longer than is usual for one loop", "R1"}) != "");
    CHECK(line_with(all, {"Living room | 22.0", "| 242 |"}) != "");  // 22 m² at 11 W/m²
}

TEST_CASE("without any of it no page says so") {
    const auto plain = composed(studied(sample_job()));
    const auto all = joined(lines_of(plain.parts.at(assessor), true)) +
                     joined(lines_of(plain.parts.at(installer), true));
    for (const auto* caption :
         {"from the room outwards", "Floors on the ground", "Unheated spaces", "Air changes with fans",
          "How the ratings came about", "Heated floors", "set-back", "lose below"}) {
        CHECK_FALSE(has(all, caption));
    }
}
