// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/materials.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/allowances.hpp"
#include "loopfolio/reference/derating.hpp"
#include "loopfolio/reference/source.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <string>

using namespace loopfolio;
using namespace loopfolio::reference;
using Known = tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

bool is_key(std::string_view name) {
    const auto fits = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; };
    return !name.empty() && std::ranges::all_of(name, fits);
}

/// Names must be valid in a job file and unique, with a label.
template <class Table>
void check_names(const Table& table) {
    std::set<std::string_view> names;
    for (const auto& row : table) {
        CAPTURE(row.name);
        CHECK(is_key(row.name));
        CHECK(names.insert(row.name).second);
        CHECK_FALSE(row.label.empty());
    }
}

double conductivity(std::string_view name) {
    const auto* material = find_material(name);
    REQUIRE(material != nullptr);
    return material->conductivity.value.si();
}

double air(double mm, HeatFlow flow) { return air_layer(mm * unit::millimetre, flow)->resistance.si(); }

}  // namespace

TEST_CASE("materials have a conductivity inside its range, and a source") {
    check_names(materials());
    for (const auto& m : materials()) {
        CAPTURE(m.name);
        CHECK(m.conductivity.low.si() > 0.01);
        CHECK(m.conductivity.low <= m.conductivity.value);
        CHECK(m.conductivity.value <= m.conductivity.high);
        CHECK(find_source(m.conductivity.source) != nullptr);
        CHECK(find_material(m.name) == &m);
    }
    CHECK(material_names().size() == materials().size());
    CHECK(find_material("marble_cake") == nullptr);
}

TEST_CASE("conductivities that pages print") {
    Verification page{{"conductivities of brickwork and plaster", "worked table on an open page on saving energy",
                       Known::read, "W/mK"}};
    page.check(0.77, conductivity("brick_outer"), 1e-9);
    page.check(0.56, conductivity("brick_inner"), 1e-9);
    page.check(0.57, conductivity("plaster_dense"), 1e-9);
    Verification guide{
        {"conductivities of floor coverings", "CIBSE Guide A, tables 3.36 and 3.37, a copy", Known::read, "W/mK"}};
    guide.check(0.06, conductivity("carpet"), 1e-9);
    guide.check(0.10, conductivity("carpet_with_underlay"), 1e-9);
    guide.check(0.19, conductivity("vinyl"), 1e-9);
    // A table on another open page prints these; the ranges take them in.
    struct Row {
        std::string_view name;
        double printed;
    };
    for (const auto& r : {Row{"brick_outer", 0.84},
                          {"brick_inner", 0.62},
                          {"block_dense", 1.63},
                          {"block_light", 0.51},
                          {"block_light", 0.38},
                          {"chipboard", 0.15}}) {
        const auto& cited = find_material(r.name)->conductivity;
        CAPTURE(r.name, r.printed);
        CHECK(cited.low.si() <= r.printed);
        CHECK(r.printed <= cited.high.si());
    }
}

TEST_CASE("surface resistances") {
    // Convection 2.5, 5.0 and 0.7 W/(m2 K), and surfaces of emissivity 0.9 at 20 °C; outside 4 + 4 v at 4 m/s and 10
    // °C. The standard's table has two decimals.
    Verification v{{"surface resistances", "BS EN ISO 6946, annex on surfaces, by hand", Known::computed, "m²K/W"}};
    const auto radiant = [](double kelvin) { return 0.9 * 4.0 * 5.67e-8 * std::pow(kelvin, 3); };
    struct Row {
        HeatFlow flow;
        double convection;
    };
    for (const auto& row : {Row{HeatFlow::horizontal, 2.5}, {HeatFlow::upward, 5.0}, {HeatFlow::downward, 0.7}}) {
        const auto outside = surface_resistances(row.flow, true), unheated = surface_resistances(row.flow, false);
        v.check(1.0 / (row.convection + radiant(293.15)), outside.inside.si(), 0.005);
        v.check(1.0 / (20.0 + radiant(283.15)), outside.beyond.si(), 0.005);
        CHECK(unheated.inside == outside.inside);
        CHECK(unheated.beyond == unheated.inside);
        CHECK(find_source(outside.source) != nullptr);
    }
}

TEST_CASE("an air layer, tabulated and between") {
    CHECK(air(20, HeatFlow::horizontal) == Approx(0.175).epsilon(1e-12));
    CHECK(air(2.5, HeatFlow::upward) == Approx(0.055).epsilon(1e-12));
    CHECK(air(0, HeatFlow::upward) == 0.0);
    for (double mm = 0.0; mm < 300.0; mm += 3.0) {
        CHECK(air(mm, HeatFlow::upward) <= air(mm, HeatFlow::horizontal) + 1e-12);
        CHECK(air(mm, HeatFlow::horizontal) <= air(mm, HeatFlow::downward) + 1e-12);
        CHECK(air(mm, HeatFlow::downward) <= air(mm + 1.0, HeatFlow::downward) + 1e-12);
    }
    // Air by conduction or convection, surfaces grey at 10 °C: max(1.25, 0.025/d) + E 4 sigma T^3, 1/E = 2/0.9 - 1;
    // upwards at least 1.95, downwards at least 0.12 d^-0.44. The standard's table has two decimals.
    Verification v{
        {"resistance of a closed air layer", "BS EN ISO 6946, annex on air layers, by hand", Known::computed, "m²K/W"}};
    const double radiant = 4.0 * 5.67e-8 * std::pow(283.15, 3) / (2.0 / 0.9 - 1.0);
    for (const double mm : {5.0, 7.0, 10.0, 15.0, 25.0, 50.0, 100.0}) {
        v.check(1.0 / (std::max(1.25, 25.0 / mm) + radiant), air(mm, HeatFlow::horizontal), 0.005);
        v.check(1.0 / (std::max(1.95, 25.0 / mm) + radiant), air(mm, HeatFlow::upward), 0.005);
        v.check(1.0 / (std::max(0.12 * std::pow(mm / 1e3, -0.44), 25.0 / mm) + radiant), air(mm, HeatFlow::downward),
                0.005);
    }
    for (const double bad : {-1.0, 301.0, nan_value}) CHECK_FALSE(air_layer(bad * unit::millimetre, HeatFlow::upward));
    check_names(roof_spaces());
    for (const auto& space : roof_spaces()) {
        CHECK(space.resistance > ThermalResistance{});
        CHECK(find_source(space.source) != nullptr);
    }
}

TEST_CASE("deratings lie in their ranges and have sources") {
    check_names(deratings());
    for (const auto& d : deratings()) {
        CAPTURE(d.name);
        CHECK(d.low > 0.5);
        CHECK(d.low <= d.factor);
        CHECK(d.factor <= d.high);
        CHECK(d.high <= 1.0);
        CHECK(find_source(d.source) != nullptr);
        CHECK(find_derating(d.name) == &d);
    }
    CHECK(derating_names().size() == deratings().size());
    // Faber and Kell, p. 193: 0.97 to 0.95, and 0.78 to 0.84, which is the low end of the program's range.
    const auto* opposite = find_derating("top_and_bottom_opposite_ends");
    REQUIRE(opposite != nullptr);
    Verification v{{"connections of a radiator", "Faber and Kell, 9th ed., p. 193", Known::read, ""}};
    v.check(0.95, opposite->low, 1e-9);
    v.check(0.97, opposite->high, 1e-9);
    v.check(0.78, find_derating("bottom_opposite_ends")->low, 1e-9);
    check_names(usual_outputs());
    for (const auto& u : usual_outputs()) {
        CHECK(u.low_w < u.high_w);
        CHECK(find_source(u.source) != nullptr);
        CHECK(find_usual_output(u.name) == &u);
    }
}

TEST_CASE("allowances") {
    const auto& a = allowances();
    verify({"fall of the outdoor design temperature over 100 m", "rules of thumb in a trade journal", Known::read, "K"},
           0.6, 100.0 * a.lapse.value.si(), 1e-9);
    verify({"margin for intermittent heating", "BS 5449:1990, as a trade page quotes it", Known::read, ""}, 0.15,
           a.intermittent_margin.value, 1e-9);
    for (const auto* source : {&a.lapse.source, &a.leakage_divisor.source, &a.intermittent_margin.source}) {
        CHECK(find_source(*source) != nullptr);
    }
    CHECK(a.leakage_divisor.low < a.leakage_divisor.value);
    CHECK(a.leakage_divisor.value < a.leakage_divisor.high);
}

TEST_CASE("shielding and height of EN 12831:2003") {
    check_names(shieldings());
    double last = 1.0;
    for (const auto& s : shieldings()) {  // from open to heavy
        CHECK(s.one_face < s.more_faces);
        CHECK(s.more_faces < last);
        CHECK(find_source(s.source) != nullptr);
        CHECK(find_shielding(s.name) == &s);
        last = s.more_faces;
    }
    CHECK(height_factor(5.0 * unit::metre).factor == 1.0);
    CHECK(height_factor(10.0 * unit::metre).factor == 1.0);
    CHECK(height_factor(12.0 * unit::metre).factor == 1.2);
    CHECK(height_factor(31.0 * unit::metre).factor == 1.5);
    CHECK(find_source(height_factor(Length{}).source) != nullptr);
}

TEST_CASE("heating up asks for more after a deeper fall and in a shorter time") {
    CHECK(heat_up_rows().size() == 12);
    for (int hours = 1; hours <= 4; ++hours) {
        for (int fall = 1; fall <= 3; ++fall) {
            const auto row = heat_up_allowance(fall, hours);
            REQUIRE(row);
            CHECK(find_source(row->source) != nullptr);
            if (fall > 1) CHECK(row->allowance > heat_up_allowance(fall - 1, hours)->allowance);
            if (hours > 1) CHECK(row->allowance < heat_up_allowance(fall, hours - 1)->allowance);
        }
    }
    CHECK_FALSE(heat_up_allowance(0, 1));
    CHECK_FALSE(heat_up_allowance(4, 1));
    CHECK_FALSE(heat_up_allowance(1, 5));
}
