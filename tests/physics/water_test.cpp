// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/fluid.hpp"
#include "physics/water_viscosity.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <limits>
#include <string>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;

namespace {

constexpr double digits_9 = 6e-9;  // half a unit in the ninth digit of a value that starts with 1

}  // namespace

TEST_CASE("water gives the check values of IAPWS R7-97(2012), table 5") {
    struct Row {
        double kelvin, mpa, v, h_kj, u_kj, cp_kj;
    };
    const Row rows[] = {
        {300.0, 3.0, 0.100215168e-2, 115.331273, 112.324818, 4.17301218},
        {300.0, 80.0, 0.971180894e-3, 184.142828, 106.448356, 4.01008987},
        {500.0, 3.0, 0.120241800e-2, 975.542239, 971.934985, 4.65580682},
    };
    const std::string source = "IAPWS R7-97(2012), table 5";
    Verification volumes{{"water, region 1: specific volume", source, Certainty::memory, "m³/kg"}};
    Verification heats{{"water, region 1: specific heat", source, Certainty::memory, "kJ/(kg·K)"}};
    Verification enthalpies{{"water, region 1: enthalpy", source, Certainty::memory, "kJ/kg"}};
    Verification energies{{"water, region 1: internal energy", source, Certainty::memory, "kJ/kg"}};
    for (const auto& r : rows) {
        CAPTURE(r.kelvin, r.mpa);
        const auto t = Temperature::from_kelvin(r.kelvin);
        const auto p = Pressure::from_si(r.mpa * 1e6);
        const auto state = water(t, p);
        const auto h = water_enthalpy(t, p);
        REQUIRE(state);
        REQUIRE(h);
        volumes.check(r.v, 1.0 / state->density.si(), digits_9 * r.v);
        heats.check(r.cp_kj, 1e-3 * state->specific_heat.si(), digits_9 * r.cp_kj);
        enthalpies.check(r.h_kj, 1e-3 * h->si(), digits_9 * r.h_kj);
        energies.check(r.u_kj, 1e-3 * (h->si() - p.si() / state->density.si()), digits_9 * r.u_kj);
    }
}

TEST_CASE("viscosity gives the check values of IAPWS R12-08, table 4") {
    struct Row {
        double kelvin, density, micropascal_second;
    };
    const Row rows[] = {
        {298.15, 998.0, 889.735100}, {298.15, 1200.0, 1437.649467}, {373.15, 1000.0, 307.883622},
        {433.15, 1.0, 14.538324},    {433.15, 1000.0, 217.685358},  {873.15, 1.0, 32.619287},
        {873.15, 100.0, 35.802262},  {873.15, 600.0, 77.430195},    {1173.15, 1.0, 44.217245},
        {1173.15, 100.0, 47.640433}, {1173.15, 400.0, 64.154608},
    };
    Verification v{{"viscosity of water at a density", "IAPWS R12-08, table 4", Certainty::memory, "µPa·s"}};
    for (const auto& r : rows) {
        CAPTURE(r.kelvin, r.density);
        const auto mu = water_viscosity(Temperature::from_kelvin(r.kelvin), Density::from_si(r.density));
        v.check(r.micropascal_second, mu.si() * 1e6, 6e-7);
    }
}

TEST_CASE("water agrees with iapws: IF97 to rounding, IAPWS-95 to the accuracy of IF97") {
    const auto csv = tests::read_csv("water_2bar.csv");
    REQUIRE(csv.rows.size() > 10);
    const std::string industrial = "IAPWS-IF97 by iapws 1.5.5", scientific = "IAPWS-95 by iapws 1.5.5";
    const std::string density = "kg/m³", heat = "J/(kg·K)", viscosity = "Pa·s";
    Verification rho{{"density of water at 2 bar", industrial, Certainty::computed, density}};
    Verification cp{{"specific heat of water at 2 bar", industrial, Certainty::computed, heat}};
    Verification mu{{"viscosity of water at 2 bar", industrial, Certainty::computed, viscosity}};
    // The difference of the industrial from the scientific formulation is known from iapws, which has both.
    const std::string why = "ours is the industrial formulation, fitted to the scientific one";
    Verification rho_95{
        {"density of water at 2 bar, scientific formulation", scientific, Certainty::computed, density, why}};
    Verification cp_95{
        {"specific heat of water at 2 bar, scientific formulation", scientific, Certainty::computed, heat, why}};
    Verification mu_95{
        {"viscosity of water at 2 bar, scientific formulation", scientific, Certainty::computed, viscosity, why}};
    Verification h_95{
        {"enthalpy of water at 2 bar, scientific formulation", scientific, Certainty::computed, "J/kg", why}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const auto t = csv.number(i, "T_C") * unit::celsius;
        CAPTURE(t.celsius());
        const auto state = water(t);
        REQUIRE(state);
        const auto check = [&](Verification& v, const char* column, double found, double relative) {
            v.check(csv.number(i, column), found, relative * csv.number(i, column));
        };
        check(rho, "rho_if97", state->density.si(), 1e-12);
        check(cp, "cp_if97", state->specific_heat.si(), 1e-12);
        check(mu, "mu_if97", state->viscosity.si(), 1e-12);
        const auto known = [&](Verification& v, const std::string& quantity, double found) {
            const double theirs = csv.number(i, quantity + "_95");
            v.check_known(theirs, csv.number(i, quantity + "_if97") - theirs, found, 1e-11 * theirs);
        };
        known(rho_95, "rho", state->density.si());
        known(cp_95, "cp", state->specific_heat.si());
        known(mu_95, "mu", state->viscosity.si());
        known(h_95, "h", water_enthalpy(t)->si());
    }
}

TEST_CASE("the slope of enthalpy is the specific heat") {
    for (double c = 5.0; c <= 95.0; c += 5.0) {
        CAPTURE(c);
        const double h = 0.01;
        const double rise = water_enthalpy((c + h) * unit::celsius)->si() -
                            water_enthalpy((c - h) * unit::celsius)->si();
        CHECK(rise / (2.0 * h) == Approx(water(c * unit::celsius)->specific_heat.si()).epsilon(1e-7));
    }
}

TEST_CASE("water outside the range of the relation is refused") {
    CHECK(water(0.0 * unit::celsius));
    CHECK_FALSE(water(-0.01 * unit::celsius));
    CHECK_FALSE(water(350.01 * unit::celsius, Pressure::from_si(50e6)));
    CHECK_FALSE(water(20.0 * unit::celsius, Pressure::from_si(100.1e6)));
    CHECK_FALSE(water(Temperature::from_kelvin(std::numeric_limits<double>::quiet_NaN())));
    CHECK_FALSE(water(20.0 * unit::celsius, Pressure::from_si(std::numeric_limits<double>::infinity())));
    CHECK_FALSE(water_enthalpy(-1.0 * unit::celsius));
    // Steam tables: at 0.2 MPa water boils at 120.21 °C (IAPWS-IF97, saturation line, from memory).
    CHECK(water(120.2 * unit::celsius));
    CHECK_FALSE(water(120.3 * unit::celsius));
}
