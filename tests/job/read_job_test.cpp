// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "job/sample_job.hpp"
#include "support/catch.hpp"

using namespace loopfolio;
using tests::said;
using tests::sample_job;
using tests::with;

namespace {

job::Job read(const std::string& text) {
    auto result = job::read_job(text, "job.yaml");
    INFO(said(text));
    REQUIRE(result.job);
    return *result.job;
}

}  // namespace

TEST_CASE("the smallest job reads without a word") {
    const job::Job j = read(sample_job);
    CHECK(said(sample_job).empty());
    CHECK(j.identity.reference == "MILL-014");
    CHECK(j.identity.design_date == date::year{2026} / 10 / 14);
    CHECK(j.property.address == std::vector<std::string>{"19 Quarry Rise"});
    CHECK(j.conditions.outdoor.value.celsius() == Approx(-3.2));
    CHECK(j.conditions.outdoor.place == Place{8, 26});
    CHECK(j.rooms[0].floor_area.value.in(unit::square_metre) == 18.4);
    CHECK(j.rooms[0].heat_loss->value.in(unit::watt) == 1180.0);
    CHECK(j.rooms[0].place == Place{11, 5});
    CHECK_FALSE(j.rooms[1].heated);
    CHECK(j.sections[0].length.value.in(unit::metre) == 4.5);
    CHECK(j.heat_source->at == "SOURCE");
}

TEST_CASE("what a job leaves out stays absent") {
    const job::Job j = read(sample_job);
    CHECK_FALSE(j.conditions.drop.given());
    CHECK_FALSE(j.rooms[0].temperature.given());
    CHECK_FALSE(j.rooms[0].air_changes.given());
    CHECK_FALSE(j.rooms[0].fabric);
    CHECK_FALSE(j.emitters[0].exponent.given());
    CHECK(j.emitters[0].connection.empty());
    CHECK(j.emitters[0].existing);
    CHECK_FALSE(j.sections[0].bore.given());
    CHECK_FALSE(j.circulator);
    CHECK(j.fluid.kind == job::FluidName::water);
}

TEST_CASE("a value carries its basis, its bounds and its source") {
    const std::string text = with(
        sample_job, "floor_area_m2: 18.4",
        "floor_area_m2: {value: 18.4, basis: assumed, low: 18, high: 19, source: drawing, note: scaled off}");
    const auto area = read(text).rooms[0].floor_area;
    CHECK(area.value.in(unit::square_metre) == 18.4);
    CHECK(area.basis == Basis::assumed);
    CHECK(area.low->in(unit::square_metre) == 18.0);
    CHECK(area.high->in(unit::square_metre) == 19.0);
    CHECK(area.source == "drawing; scaled off");
    CHECK(area.place == Place{14, 20});
}

TEST_CASE("`plain_values` says what a plain number stands on") {
    CHECK(read(sample_job).conditions.flow.basis == Basis::measured);
    // The key holds for the whole file, wherever it is.
    CHECK(read(sample_job + "plain_values: document\n").conditions.flow.basis == Basis::document);
}

TEST_CASE("every unit is turned by name") {
    std::string text = with(sample_job, "at: SOURCE\n",
                            "at: SOURCE\n  capacity_kw: 6\n  minimum_flow_l_per_s: 0.2\n  pressure_drop_kpa: 8\n"
                            "  pressure_drop_flow_l_per_min: 12\n"
                            "circulator: {name: c, curve: [{flow_l_per_s: 0, head_kpa: 60}, {flow_l_per_min: 12, "
                            "head_kpa: 40}]}\n");
    text = with(text, "length_m: 3}", "length_m: 3, bore_mm: 13.6, insert_bore_mm: 10, roughness_mm: 0.05}");
    text = with(text, "output_at_50k_w: 1950", "output_at_50k_w: 1950\n    length_mm: 1200\n    height_mm: 600");
    text = with(text, "flow_temperature_c: 50",
                "flow_temperature_c: 50\n  temperature_drop_k: 5\n  velocity_preferred_m_per_s: 0.8\n"
                "  velocity_limit_m_per_s: 1.2\n  gradient_preferred_pa_per_m: 200\n"
                "fluid: {kind: ethylene_glycol, concentration_percent: 25, concentration_basis: volume}");
    text = with(text, "heat_loss_w: 1180",
                "temperature_c: 21\n    air_changes_per_hour: 1.5\n    heat_loss_rate_w_per_m2: 60\n"
                "    fabric: {era: from_1930_to_1949, wall: solid_brick, glazing: single, roof: flat, "
                "floor: ground,\n"
                "      outside_walls: 2, wall_u_value_w_per_m2k: 1.7, roof_u_value_w_per_m2k: 0.4,\n"
                "      glazing_u_value_w_per_m2k: 4.8, floor_insulation_m2k_per_w: 0.5, "
                "thermal_bridge_w_per_m2k: 0.1}");
    const job::Job j = read(text);
    CHECK(j.heat_source->capacity->value.si() == Approx(6000.0));
    CHECK(j.heat_source->minimum_flow->value.si() == Approx(0.2e-3));
    CHECK(j.heat_source->pressure_drop->value.si() == Approx(8000.0));
    CHECK(j.heat_source->pressure_drop_flow->value.si() == Approx(0.2e-3));
    CHECK(j.circulator->curve[1].flow.si() == Approx(0.2e-3));
    CHECK(j.circulator->curve[1].head.si() == Approx(40e3));
    CHECK(j.sections[1].bore.value.si() == Approx(0.0136));
    CHECK(j.sections[1].insert_bore.value.si() == Approx(0.010));
    CHECK(j.sections[1].roughness.value.si() == Approx(0.05e-3));
    CHECK(j.emitters[0].length.value.si() == Approx(1.2));
    CHECK(j.emitters[0].height.value.si() == Approx(0.6));
    CHECK(j.conditions.drop.value.si() == Approx(5.0));
    CHECK(j.conditions.velocity_preferred.value.si() == Approx(0.8));
    CHECK(j.conditions.velocity_limit.value.si() == Approx(1.2));
    CHECK(j.conditions.gradient_preferred.value.si() == Approx(200.0));
    CHECK(j.fluid.concentration.value == Approx(0.25));
    CHECK(j.fluid.basis == job::ConcentrationBasis::volume);
    const job::Room& room = j.rooms[0];
    CHECK(room.temperature.value.kelvin() == Approx(294.15));
    CHECK(room.air_changes.value.si() == Approx(1.5 / 3600.0));
    CHECK(room.heat_loss_rate->value.si() == Approx(60.0));
    CHECK(room.fabric->era == reference::Era::from_1930);
    CHECK(room.fabric->roof == reference::RoofKind::flat);
    CHECK(room.fabric->wall_u_value.value.si() == Approx(1.7));
    CHECK(room.fabric->roof_u_value.value.si() == Approx(0.4));
    CHECK(room.fabric->glazing_u_value.value.si() == Approx(4.8));
    CHECK(room.fabric->floor_insulation.value.si() == Approx(0.5));
    CHECK(room.fabric->thermal_bridge.value.si() == Approx(0.1));
}

TEST_CASE("elements, fittings and flags are read") {
    std::string text = with(sample_job, "heat_loss_w: 1180",
                            "thermal_bridge_w_per_m2k: 0.05\n    elements:\n"
                            "      - {kind: window, name: bay, area_m2: 3.1, u_value_w_per_m2k: 1.6}\n"
                            "      - {kind: party_wall, area_m2: 9, u_value_w_per_m2k: 0.5, beyond: unheated, factor: "
                            "0.4}\n"
                            "      - {kind: wall, area_m2: 9, u_value_w_per_m2k: 1.9, beyond: room, room: hall}\n"
                            "      - {kind: floor, area_m2: 9, u_value_w_per_m2k: 0.6, beyond: unheated, "
                            "beyond_temperature_c: 8}");
    text = with(text, "output_at_50k_w: 1950",
                "output_at_50k_w: 1950\n    state: new\n    connection: copper_15\n"
                "    fittings: [{kind: elbow, count: 3}, {kind: other, count: 1, zeta: 2.5}]");
    text += "hot_water: {store: true, unvented: true}\nold_lagging: true\n";
    const job::Job j = read(text);
    const auto& elements = j.rooms[0].elements;
    CHECK(elements[0].kind == job::ElementKind::window);
    CHECK(elements[0].name == "bay");
    CHECK(elements[0].beyond == job::Beyond::outside);
    CHECK(elements[1].factor.value == Approx(0.4));
    CHECK(elements[2].beyond_room == "hall");
    CHECK(elements[3].beyond_temperature->value.celsius() == Approx(8.0));
    CHECK(j.rooms[0].element_thermal_bridge.value.si() == Approx(0.05));
    CHECK_FALSE(j.emitters[0].existing);
    CHECK(j.emitters[0].connection == "copper_15");
    CHECK(j.emitters[0].fittings[0].count == 3);
    CHECK(j.emitters[0].fittings[1].zeta == 2.5);
    CHECK(j.hot_water_store);
    CHECK(j.unvented_hot_water);
    CHECK(j.old_lagging);
}

TEST_CASE("the ways of writing a number") {
    const std::vector<std::pair<std::string, double>> rows{
        {"18", 18}, {"+18.4", 18.4}, {"18.", 18}, {".5", 0.5}, {"1.84e1", 18.4}, {"1840E-2", 18.4}, {"0.50", 0.5}};
    for (const auto& [written, value] : rows) {
        INFO(written);
        const auto j = read(with(sample_job, "floor_area_m2: 18.4", "floor_area_m2: " + written));
        CHECK(j.rooms[0].floor_area.value.in(unit::square_metre) == value);
    }
    const auto j = read(with(sample_job, "outdoor_temperature_c: -3.2", "outdoor_temperature_c: -0.0"));
    CHECK(j.conditions.outdoor.value == Temperature::from_celsius(0.0));
}

TEST_CASE("text is taken as written") {
    const auto name = [](const std::string& written) {
        return read(with(sample_job, "name: Fernhollow Heating", "name: " + written)).firm.name;
    };
    CHECK(name("'  two spaces '") == "  two spaces ");
    CHECK(name("yes") == "yes");
    CHECK(name("1.0") == "1.0");
    CHECK(name("Siân Owen-Łukasik") == "Siân Owen-Łukasik");
    CHECK(name("\"null\"") == "null");
}

TEST_CASE("columns count characters, and carriage returns and a byte order mark do no harm") {
    CHECK(said(with(sample_job, "firm: {name: Fernhollow Heating}", "firm: {name: Siân, tel: 1}")) ==
          "job.yaml:3:20: error: firm.tel: is not a key of the job file here\n"
          "    hint: the keys here are `name`, `address`, `telephone`, `email` and `registration`\n");
    std::string windows = "\xef\xbb\xbf";
    for (const char c : sample_job) windows += c == '\n' ? std::string{"\r\n"} : std::string{c};
    CHECK(read(windows).rooms[0].name == "Living room");
    CHECK(read(windows).rooms[0].floor_area.place == Place{14, 20});
}

TEST_CASE("a text that the pack could not show is refused at its place") {
    const auto no_tilde = [](std::string_view text) { return std::string{text.find('~') == text.npos ? "" : "~"}; };
    const auto result = job::read_job(with(sample_job, "Ada Bramwell", "Ada ~ Bramwell"), "job.yaml", no_tilde);
    REQUIRE(result.diagnostics.size() == 1);
    CHECK_FALSE(result.job);
    CHECK(text_of(result.diagnostics[0]) ==
          "job.yaml:4:18: error: designer.name = Ada ~ Bramwell: holds what the pack cannot show: ~\n"
          "    hint: write it another way\n");
}
