// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/fittings.hpp"
#include "loopfolio/reference/emitters.hpp"

#include "support/catch.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <initializer_list>
#include <set>
#include <string>
#include <string_view>

using namespace loopfolio::reference;
using Known = loopfolio::tests::Certainty;
using loopfolio::tests::Verification;

namespace {

/// Darby 3K at 3/4 inch and Re 10 000: K1/Re + Ki (1 + Kd / NPS^0.3).
double darby(double k1, double ki, double kd) { return k1 / 1e4 + ki * (1.0 + kd / std::pow(0.75, 0.3)); }

struct Row {
    std::string_view name;
    double published;
};

const Fitting& fitting_of(std::string_view name) {
    const auto* fitting = find_fitting(name);
    REQUIRE(fitting);
    return *fitting;
}

/// Rounded to this number of figures, as the table prints its factors.
double rounded(double value, int figures) {
    const double unit = std::pow(10.0, std::floor(std::log10(value)) + 1 - figures);
    return std::round(value / unit) * unit;
}

/// Published loss factors lie within the program's spreads.
void check_within(const char* of, const char* source, Known known, std::initializer_list<Row> rows) {
    Verification v{{std::string{"spread of loss factors, "} + of, source, known, ""}};
    for (const auto& r : rows) {
        CAPTURE(r.name);
        const auto& fitting = fitting_of(r.name);
        v.check_inside(r.published, fitting.low, fitting.high);
    }
}

/// The program's loss factors equal the published ones.
void check_values(const char* of, const char* source, std::initializer_list<Row> rows) {
    Verification v{{std::string{"loss factors, "} + of, source, Known::read, ""}};
    for (const auto& r : rows) {
        CAPTURE(r.name);
        v.check(r.published, fitting_of(r.name).zeta, 1e-9);
    }
}

}  // namespace

TEST_CASE("loss factors are those of the tables that they name") {
    check_values("textbook", "Faber and Kell, 9th ed. 2002, table 9.1",
                 {{"elbow", 1.7},           // sharp, 20 mm
                  {"elbow_45", 0.7 * 0.9},  // 0.7 of the long bend
                  {"bend", 0.9},            // long, 20 mm
                  {"tee_through", 0.5},
                  {"tee_branch", 0.2 + 1.7},       // 0.2 and an elbow
                  {"coupling", 0.13},              // flanged plastic joint
                  {"reducer", 0.5 * (0.4 + 0.2)},  // the mean of diameters 0.5 and 0.8
                  {"globe_valve", 8.0},            // 20 mm
                  {"manifold_connection", 1.0},
                  {"vessel_connection", 1.0}});
    check_values("reference site", "a reference site's heating table, 15 and 20 mm",
                 {{"cross_over", 0.5},
                  {"gate_valve", 0.5},  // screwed, from 20 mm
                  {"radiator_valve_straight", 4.0},
                  {"radiator_valve_angle", 7.0}});  // 15 mm
}

TEST_CASE("loss factors span what is published for 15 to 20 mm") {
    check_within("textbook", "Faber and Kell, 9th ed. 2002, table 9.1", Known::read,
                 {{"elbow", 1.7},  // sharp, 20 mm
                  {"elbow", 0.9},
                  {"elbow_45", 0.7 * 0.9},  // long, 20 mm; 0.7 of the bend
                  {"bend", 0.9},
                  {"tee_through", 0.5},
                  {"tee_branch", 0.2 + 1.7},  // 0.2 and an elbow
                  {"coupling", 0.13},         // flanged plastic joint
                  {"reducer", 0.2},
                  {"reducer", 0.4},      // diameters 0.8 and 0.5
                  {"gate_valve", 0.3},   // plain parallel
                  {"ball_valve", 0.03},  // gate with spherical seal
                  {"globe_valve", 8.0},
                  {"vessel_connection", 1.0},
                  {"non_return_valve", 1.7}});  // flap at 20 degrees
    check_within("reference site", "a reference site's heating table, 15 and 20 mm", Known::read,
                 {{"elbow", 2.0},
                  {"bend", 1.5},
                  {"tee_through", 1.5},
                  {"tee_branch", 1.5},
                  {"tee_branch", 3.0},  // counter-current
                  {"gate_valve", 1.5},
                  {"radiator_valve_straight", 4.0},
                  {"radiator_valve_straight", 2.0},
                  {"radiator_valve_angle", 7.0},
                  {"radiator_valve_angle", 4.0}});
    check_within("pump handbook", "Rishel, HVAC Pump Handbook 2006, table 3.8", Known::read,
                 {{"elbow", 2.1},
                  {"elbow_45", 0.36},  // 1/2 in, the elbow screwed
                  {"bend", 0.85}});    // long radius, 3/4 in
    check_within("3K", "Darby's 3K at 3/4 in and Re 10 000, by hand", Known::computed,
                 {{"elbow", darby(800, 0.14, 4.0)},
                  {"tee_through", darby(200, 0.091, 4.0)},  // threaded
                  {"tee_branch", darby(500, 0.274, 4.0)},
                  {"gate_valve", darby(300, 0.037, 3.9)},
                  {"ball_valve", darby(300, 0.017, 3.5)},
                  {"non_return_valve", darby(1500, 0.46, 4.0)}});  // swing check
    check_within("2K", "Hooper's 2K, screwed, 3/4 in and Re 10 000, by hand", Known::computed,
                 {{"elbow", 0.4 * (1.0 + 1.0 / 0.824) + 0.08}});
}

TEST_CASE("ball and non-return valves stand on Darby's 3K") {
    // 0.1119 and 2.616; the table keeps one and two figures of them.
    Verification v{{"loss factors of ball and non-return valves, rounded to 1 and 2 figures",
                    "Darby's 3K at 3/4 in and Re 10 000, by hand", Known::computed, ""}};
    v.check(rounded(darby(300, 0.017, 3.5), 1), find_fitting("ball_valve")->zeta, 1e-9);
    v.check(rounded(darby(1500, 0.46, 4.0), 2), find_fitting("non_return_valve")->zeta, 1e-9);
}

TEST_CASE("valves that stand on a Kv agree with it") {
    // zeta = 1.6e9 D^4 / Kv^2; Kv in m3/h, bore of the tube that the valve fits.
    // The table keeps one figure of each, and two of the first.
    Verification v{{"loss factors of control valves and filters, rounded to 1 or 2 figures",
                    "usual Kv of the trade, 1.6e9 D^4/Kv^2", Known::practice, ""}};
    struct Valve {
        std::string_view name;
        double kv, bore_m;
        int figures;
    };
    for (const auto& r : {Valve{"thermostatic_valve", 0.6, 0.0136, 2},
                          {"zone_valve", 7.3, 0.0202, 1},
                          {"diverter_valve", 6.6, 0.0202, 1},
                          {"magnetic_filter", 8.0, 0.0202, 1}}) {
        CAPTURE(r.name);
        const double zeta = 1.6e9 * std::pow(r.bore_m, 4) / (r.kv * r.kv);
        v.check(rounded(zeta, r.figures), find_fitting(r.name)->zeta, 1e-9);
    }
}

TEST_CASE("every fitting lies in its own spread and is named once") {
    std::set<std::string_view> names;
    for (const auto& f : fittings()) {
        CAPTURE(f.name);
        CHECK(names.insert(f.name).second);
        CHECK_FALSE(f.label.empty());
        CHECK(f.low >= 0.0);
        CHECK(f.low <= f.zeta);
        CHECK(f.zeta <= f.high);
    }
    CHECK(fitting_names().size() == fittings().size());
    CHECK(find_fitting("other") == nullptr);  // the job file's own word for a stated loss factor
}

TEST_CASE("emitters: exponents lie in the ranges of EN 442 and loss factors are published") {
    std::set<std::string_view> names;
    for (const auto& k : emitter_kinds()) {
        CAPTURE(k.name);
        CHECK(names.insert(k.name).second);
        CHECK(k.exponent_low <= k.exponent);
        CHECK(k.exponent <= k.exponent_high);
        CHECK(k.exponent_low >= 1.0);
        CHECK(k.exponent_high <= 1.6);
        // The pressure drop of a loop in a floor is only that of its pipe.
        if (k.name != "underfloor") CHECK(k.zeta > 0.0);
    }
    Verification exponents{{"exponents of radiators", "a trade encyclopaedia, 1.3 give or take 0.1", Known::read,
                            ""}};  // its stated accuracy
    for (const auto* name : {"panel_10", "panel_11", "panel_20", "panel_21", "panel_22", "panel_33", "column"}) {
        CAPTURE(name);
        exponents.check(1.3, find_emitter_kind(name)->exponent, 0.1);
    }
    const std::string units = "ASHRAE Handbook HVAC Systems and Equipment, hydronic heat-distributing units";
    Verification handbook{{"exponent of skirting", units, Known::memory, ""}};
    handbook.check(1.31, find_emitter_kind("skirting")->exponent, 0.005);  // two decimals
    // For convectors the program keeps one decimal.
    Verification convectors{{"exponent of convectors, rounded to one decimal", units, Known::memory, ""}};
    convectors.check(rounded(1.42, 2), find_emitter_kind("convector")->exponent, 1e-9);
    // A fan replaces part of the natural convection, so the exponent lies between those of a convector and a radiator.
    CHECK(find_emitter_kind("fan_radiator")->exponent > find_emitter_kind("fan_convector")->exponent);
    CHECK(find_emitter_kind("fan_radiator")->exponent_high <= find_emitter_kind("panel_22")->exponent);
    Verification zetas{
        {"loss factors of panel and column radiators", "Faber and Kell, 9th ed. 2002, table 9.1", Known::read, ""}};
    zetas.check(2.5, find_emitter_kind("panel_22")->zeta, 1e-12);
    zetas.check(5.0, find_emitter_kind("column")->zeta, 1e-12);
    CHECK(emitter_kind_names().size() == emitter_kinds().size());
    CHECK(find_emitter_kind("panel_44") == nullptr);
}

TEST_CASE("a radiator with more panels and convectors gives more for its length") {
    double last = 0.0;
    for (const auto* name : {"panel_10", "panel_11", "panel_21", "panel_22", "panel_33"}) {
        const double output = find_emitter_kind(name)->typical_w_per_m_at_600;
        CHECK(output > last);
        last = output;
    }
}
