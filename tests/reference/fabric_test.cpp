// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <optional>
#include <set>
#include <string>

using namespace loopfolio;
using namespace loopfolio::reference;
using Known = tests::Certainty;
using tests::Verification;

namespace {

const std::string bands = "ABCDEFGHIJKL";

double u(UValue value) { return value.in(unit::watt_per_square_metre_kelvin); }

std::optional<WallKind> wall_named(const std::string& name) {
    for (const auto& w : wall_names()) {
        if (w.name == name) return w.value;
    }
    return std::nullopt;
}

Cited<UValue> in_table(const std::string& element, Era era) {
    if (const auto wall = wall_named(element)) return wall_u_value(*wall, era);
    return roof_u_value(element == "flat" ? RoofKind::flat : RoofKind::pitched, era);
}

template <class Q>
void check_within(Verification& v, double published, const Cited<Q>& range) {
    v.check_inside(published, u(range.low), u(range.high));
}

template <class E>
void check_names(std::span<const Named<E>> names, std::size_t count) {
    REQUIRE(names.size() == count);
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < names.size(); ++i) {
        CAPTURE(names[i].name);
        CHECK(static_cast<std::size_t>(names[i].value) == i);
        CHECK(seen.insert(names[i].name).second);
        CHECK(names[i].name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string_view::npos);
        CHECK_FALSE(label_of(names, names[i].value).empty());
    }
}

}  // namespace

TEST_CASE("vocabularies stand in enumerator order") {
    check_names(era_names(), 12);
    check_names(wall_names(), 6);
    check_names(glazing_names(), 5);
    check_names(roof_names(), 3);
    check_names(floor_names(), 4);
}

TEST_CASE("U-values by era are those of RdSAP 2012, bands A to L") {
    const auto csv = tests::read_csv("rdsap_england.csv");
    const std::string source = "RdSAP 2012, v9.93 and v9.94, Appendix S, England and Wales";
    Verification read{{"U-value of solid brick to 1975", source, Known::read, "W/m²K"}};
    Verification values{{"U-values of walls and roofs by era", source, Known::memory, "W/m²K"}};
    Verification floors{{"floor insulation by era", "RdSAP 2012, table S11 at 0.035 W/(m·K)", Known::memory, "m²K/W"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto& element = csv.rows[i][0];
        for (const auto& era : era_names()) {
            const auto band = std::string{bands[static_cast<std::size_t>(era.value)]};
            CAPTURE(element, band);
            const double expected = csv.number(i, band);
            if (element == "floor_mm") {
                floors.check(expected / 35.0, floor_insulation(era.value).value.si(), 1e-12);
            } else {
                auto& known = element == "solid_brick" && expected == 1.7 ? read : values;
                known.check(expected, u(in_table(element, era.value).value), 1e-12);
            }
        }
    }
}

TEST_CASE("the ranges take in the tables for Scotland") {
    const auto csv = tests::read_csv("rdsap_scotland.csv");
    const std::string source = "assumed U-values for Scotland, tables UV1 and UV2 on gov.scot";
    Verification v{{"range of U-values by era", source, Known::read, "W/m²K"}};
    Verification values{{"U-values of timber frame and system built to 1975", source, Known::read, "W/m²K"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        for (std::size_t b = 0; b < 11; ++b) {
            const auto cited = in_table(csv.rows[i][0], era_names()[b].value);
            CAPTURE(csv.rows[i][0], bands[b]);
            const double published = csv.number(i, std::string{bands[b]});
            check_within(v, published, cited);
            // In these bands all nations share one table; later bands have rules for each nation.
            const bool same = csv.rows[i][0] == "timber_frame" || csv.rows[i][0] == "system_built";
            if (same && era_names()[b].value <= Era::from_1967) values.check(published, u(cited.value), 1e-12);
        }
    }
}

TEST_CASE("solid brick takes in the measured mean and the sum by ISO 6946") {
    const auto wall = wall_u_value(WallKind::solid_brick, Era::before_1900);
    Verification measured{
        {"range of solid brick", "published means of measurements, 1.3 to 1.4", Known::read, "W/m²K"}};
    check_within(measured, 1.3, wall);
    check_within(measured, 1.4, wall);
    // Brick 220 mm at 0.77, plaster 13 mm at 0.57, surfaces 0.13 and 0.04.
    const double summed = 1.0 / (0.13 + 0.04 + 0.220 / 0.77 + 0.013 / 0.57);
    CHECK(summed == Approx(2.09).margin(0.01));
    Verification sum{
        {"range of solid brick, by layers", "BS EN ISO 6946, brick and plaster, by hand", Known::computed, "W/m²K"}};
    check_within(sum, summed, wall);
}

TEST_CASE("solid brick with 50 mm of insulation is near the table of RdSAP 2012") {
    // The table has steps of 0.05, so the tolerance is half of one.
    const std::string table = "RdSAP 2012 v9.94, table S6, 50 mm outside or inside, as an open library has it";
    constexpr double half_step = 0.025;
    Verification v{{"U-value of solid brick insulated later", table, Known::read, "W/m²K"}};
    struct Row {
        Era era;
        double published;
    };
    for (const auto& r :
         {Row{Era::from_1967, 0.55}, {Era::from_1976, 0.45}, {Era::from_1983, 0.35}, {Era::from_1996, 0.30}}) {
        v.check(r.published, u(wall_u_value(WallKind::insulated_solid, r.era).value), half_step);
    }
    // Up to 1966 the table is still based on the bare wall of 2.1 from the editions up to v9.92, which v9.93 changed to
    // 1.7.
    Verification older{{"U-value of solid brick before 1967 insulated later", table, Known::read, "W/m²K",
                        "the table still stands on a bare wall of 2.1, ours on the 1.7 that v9.93 put in its place"}};
    const auto with_50_mm = [](double bare) { return 1.0 / (1.0 / bare + 0.050 / 0.04); };
    older.check_known(0.60, with_50_mm(1.7) - with_50_mm(2.1),
                      u(wall_u_value(WallKind::insulated_solid, Era::from_1930).value), half_step);
}

TEST_CASE("windows are those of RdSAP 2012, table S14, and reach to the textbook") {
    Verification v{{"U-values of windows", "RdSAP 2012, table S14, wood or PVC, 12 mm", Known::memory, "W/m²K"}};
    struct Row {
        GlazingKind kind;
        double published;
    };
    for (const auto& r : {Row{GlazingKind::single, 4.8},
                          {GlazingKind::secondary, 2.4},
                          {GlazingKind::double_before_2002, 2.8},
                          {GlazingKind::double_from_2002, 2.0},
                          {GlazingKind::triple, 2.1}}) {
        v.check(r.published, u(glazing_u_value(r.kind).value), 1e-12);
    }
    Verification textbook{
        {"range of windows", "Chadderton, 5th ed., table 3.10, in wood, normal exposure", Known::read, "W/m²K"}};
    check_within(textbook, 5.3, glazing_u_value(GlazingKind::single));
    check_within(textbook, 3.0, glazing_u_value(GlazingKind::double_before_2002));
}

TEST_CASE("every value lies in its own range, and later houses lose no more") {
    const auto inside = [](const auto& cited) {
        CHECK(cited.low <= cited.value);
        CHECK(cited.value <= cited.high);
    };
    for (const auto& era : era_names()) {
        CAPTURE(era.name);
        for (const auto& w : wall_names()) inside(wall_u_value(w.value, era.value));
        inside(roof_u_value(RoofKind::pitched, era.value));
        inside(roof_u_value(RoofKind::flat, era.value));
        inside(floor_insulation(era.value));
        inside(thermal_bridge_allowance(era.value));
        if (era.value == Era::before_1900) continue;
        const auto before = era_names()[static_cast<std::size_t>(era.value) - 1].value;
        for (const auto& w : wall_names()) {
            // For a filled cavity from 1996 on, RdSAP gives the value as built, which is above that of a cavity filled
            // later.
            if (w.value == WallKind::filled_cavity && era.value == Era::from_1996) continue;
            CAPTURE(w.name);
            CHECK(wall_u_value(w.value, era.value).value <= wall_u_value(w.value, before).value);
        }
        CHECK(roof_u_value(RoofKind::pitched, era.value).value <= roof_u_value(RoofKind::pitched, before).value);
        CHECK(floor_insulation(era.value).value >= floor_insulation(before).value);
    }
    for (const auto& g : glazing_names()) inside(glazing_u_value(g.value));
}

TEST_CASE("thermal bridges are the defaults of EN 12831-1") {
    Verification v{{"allowance for thermal bridges", "EN 12831-1:2017, defaults", Known::memory, "W/m²K"}};
    v.check(0.10, u(thermal_bridge_allowance(Era::from_1996).value), 1e-12);
    v.check(0.05, u(thermal_bridge_allowance(Era::from_2003).value), 1e-12);
}
