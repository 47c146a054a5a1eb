// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fittings.hpp"

#include "support/catch.hpp"

#include <cmath>
#include <set>

using namespace loopfolio::reference;

namespace {

/// Darby 3K at 3/4 inch and Re 10 000: K1/Re + Ki (1 + Kd / NPS^0.3).
double darby(double k1, double ki, double kd) { return k1 / 1e4 + ki * (1.0 + kd / std::pow(0.75, 0.3)); }

}  // namespace

TEST_CASE("loss factors span what is published for 15 to 20 mm") {
    struct Row { std::string_view name; double published; const char* where; };
    const Row rows[] = {
        {"elbow", 1.7, "Faber and Kell table 9.1, sharp, 20 mm"},
        {"elbow", 0.9, "Faber and Kell table 9.1, long, 20 mm"},
        {"elbow", 2.0, "reference site's heating table, 15 and 20 mm"},
        {"elbow", 2.1, "Rishel, HVAC Pump Handbook 2006, table 3.8, 1/2 in screwed"},
        {"elbow", darby(800, 0.14, 4.0), "Darby 3K, threaded"},
        {"elbow", 0.4 * (1.0 + 1.0 / 0.824) + 0.08, "Hooper 2K, screwed, 3/4 in"},
        {"elbow_45", 0.36, "Rishel table 3.8, 1/2 in"},
        {"elbow_45", 0.7 * 0.9, "Faber and Kell: 0.7 of the bend"},
        {"bend", 0.9, "Faber and Kell, 20 mm"},
        {"bend", 1.5, "reference site's heating table, 15 and 20 mm"},
        {"bend", 0.85, "Rishel table 3.8, long radius, 3/4 in"},
        {"tee_through", 0.5, "Faber and Kell"},
        {"tee_through", 1.5, "reference site's heating table"},
        {"tee_through", darby(200, 0.091, 4.0), "Darby 3K, threaded"},
        {"tee_branch", 0.2 + 1.7, "Faber and Kell: 0.2 and an elbow"},
        {"tee_branch", 1.5, "reference site's heating table"},
        {"tee_branch", 3.0, "reference site's heating table, counter-current"},
        {"tee_branch", darby(500, 0.274, 4.0), "Darby 3K, threaded"},
        {"coupling", 0.13, "Faber and Kell, flanged plastic joint"},
        {"reducer", 0.2, "Faber and Kell, diameters 0.8"},
        {"reducer", 0.4, "Faber and Kell, diameters 0.5"},
        {"gate_valve", 0.3, "Faber and Kell, plain parallel"},
        {"gate_valve", 1.5, "reference site's heating table, 15 mm"},
        {"gate_valve", darby(300, 0.037, 3.9), "Darby 3K"},
        {"ball_valve", darby(300, 0.017, 3.5), "Darby 3K"},
        {"ball_valve", 0.03, "Faber and Kell, gate with spherical seal"},
        {"globe_valve", 8.0, "Faber and Kell, 20 mm"},
        {"radiator_valve_straight", 4.0, "reference site's heating table, 15 mm"},
        {"radiator_valve_straight", 2.0, "reference site's heating table, 20 mm"},
        {"radiator_valve_angle", 7.0, "reference site's heating table, 15 mm"},
        {"radiator_valve_angle", 4.0, "reference site's heating table, 20 mm"},
        {"vessel_connection", 1.0, "Faber and Kell, entry and exit"},
        {"non_return_valve", darby(1500, 0.46, 4.0), "Darby 3K, swing check"},
        {"non_return_valve", 1.7, "Faber and Kell, flap at 20 degrees"},
    };
    for (const auto& r : rows) {
        CAPTURE(r.name, r.where);
        const auto* fitting = find_fitting(r.name);
        REQUIRE(fitting);
        CHECK(fitting->low <= Approx(r.published));
        CHECK(fitting->high >= Approx(r.published));
    }
    CHECK(find_fitting("ball_valve")->zeta == Approx(darby(300, 0.017, 3.5)).epsilon(0.15));
    CHECK(find_fitting("non_return_valve")->zeta == Approx(darby(1500, 0.46, 4.0)).epsilon(0.02));
}

TEST_CASE("valves that stand on a Kv agree with it") {
    // zeta = 1.6e9 D^4 / Kv^2; Kv in m3/h common practice, no source; bore of the tube that the valve fits.
    struct Row { std::string_view name; double kv, bore_m; };
    for (const auto& r : {Row{"thermostatic_valve", 0.6, 0.0136}, {"zone_valve", 7.3, 0.0202},
                          {"diverter_valve", 6.6, 0.0202}, {"magnetic_filter", 8.0, 0.0202}}) {
        CAPTURE(r.name);
        const double zeta = 1.6e9 * std::pow(r.bore_m, 4) / (r.kv * r.kv);
        CHECK(find_fitting(r.name)->zeta == Approx(zeta).epsilon(0.05));
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
    CHECK(find_fitting("other") == nullptr);   // the job file's own word for a stated loss factor
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
        // A loop in a floor drops what its pipe drops.
        if (k.name != "underfloor") CHECK(k.zeta > 0.0);
    }
    // 1.3, give or take 0.1: a trade encyclopaedia, for radiators.
    for (const auto* name : {"panel_10", "panel_11", "panel_21", "panel_22", "panel_33", "column"}) {
        CAPTURE(name);
        CHECK(find_emitter_kind(name)->exponent == Approx(1.3).epsilon(0.0).margin(0.1));
    }
    // Faber and Kell, table 9.1: panel radiator 2.5, column radiator 5.
    CHECK(find_emitter_kind("panel_22")->zeta == 2.5);
    CHECK(find_emitter_kind("column")->zeta == 5.0);
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
