// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/fluid.hpp"

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

struct Case {
    FluidKind kind;
    std::string name;
};
const Case both[] = {{FluidKind::propylene_glycol, "propylene"}, {FluidKind::ethylene_glycol, "ethylene"}};

}  // namespace

TEST_CASE("glycol agrees with Melinder's polynomials as CoolProp evaluates them") {
    const std::string source = "Melinder, IIF-IIR 2010, polynomials as transcribed in CoolProp";
    Verification freezing_points{{"freezing point of glycol mixtures", source, Certainty::computed, "°C"}};
    Verification densities{{"density of glycol mixtures", source, Certainty::computed, "kg/m³"}};
    Verification heats{{"specific heat of glycol mixtures", source, Certainty::computed, "J/(kg·K)"}};
    Verification viscosities{{"viscosity of glycol mixtures", source, Certainty::computed, "Pa·s"}};
    for (const auto& c : both) {
        const auto csv = tests::read_csv(c.name + "_glycol.csv");
        REQUIRE(csv.rows.size() > 40);
        for (std::size_t i = 0; i < csv.rows.size(); ++i) {
            const double x = csv.number(i, "mass_pct") / 100.0;
            const auto t = csv.number(i, "T_C") * unit::celsius;
            CAPTURE(c.name, x, t.celsius());
            const auto freezing = freezing_point(c.kind, x);
            REQUIRE(freezing);
            freezing_points.check(csv.number(i, "T_freeze_C"), freezing->celsius(), 1e-9);
            const auto state = glycol(c.kind, x, t);
            REQUIRE(state.has_value() == (csv.number(i, "above_freezing") > 0.5));
            if (!state) continue;
            const double rho = csv.number(i, "rho_kg_m3"), cp = csv.number(i, "cp_J_kgK"),
                         mu = csv.number(i, "mu_Pa_s");
            densities.check(rho, state->density.si(), 1e-9 * rho);
            heats.check(cp, state->specific_heat.si(), 1e-9 * cp);
            viscosities.check(mu, state->viscosity.si(), 1e-9 * mu);
        }
    }
}

TEST_CASE("glycol at no concentration is close to water") {
    // IAPWS against Melinder at x = 0, 5 to 60 °C: density within 0.1 %, viscosity within 2 %.
    for (const auto& c : both) {
        for (double t = 5.0; t <= 60.0; t += 5.0) {
            CAPTURE(c.name, t);
            const auto mixed = glycol(c.kind, 0.0, t * unit::celsius);
            const auto pure = water(t * unit::celsius);
            REQUIRE(mixed);
            CHECK(mixed->density.si() == Approx(pure->density.si()).epsilon(0.0015));
            CHECK(mixed->specific_heat.si() == Approx(pure->specific_heat.si()).epsilon(0.002));
            CHECK(mixed->viscosity.si() == Approx(pure->viscosity.si()).epsilon(0.02));
        }
    }
}

TEST_CASE("volume fraction turns into mass fraction by the ASHRAE 2001 table") {
    Verification masses{{"mass fraction of glycol mixtures from the volume fraction",
                         "ASHRAE Handbook Fundamentals 2001, chapter 21, as transcribed in CoolProp", Certainty::read,
                         ""}};
    for (const auto& c : both) {
        const auto csv = tests::read_csv(c.name + "_glycol_volume_to_mass.csv");
        for (std::size_t i = 0; i < csv.rows.size(); ++i) {
            const auto mass = mass_fraction_from_volume(c.kind, csv.number(i, "vol_pct") / 100.0);
            REQUIRE(mass);
            masses.check(csv.number(i, "mass_pct") / 100.0, *mass, 1e-12);
        }
        double last = -1.0;
        for (double v = 0.0; v <= 0.578; v += 0.001) {
            const auto mass = mass_fraction_from_volume(c.kind, v);
            REQUIRE(mass);
            CHECK(*mass > last);
            last = *mass;
        }
    }
}

TEST_CASE("propylene glycol by volume comes near the ASHRAE 2001 property table") {
    // ASHRAE 2001, chapter 21, inhibited fluid, as transcribed in CoolProp. The program uses Melinder, plain glycol and
    // water. CoolProp gives the difference between the two. Its cause is not established, except that one contains
    // inhibitors.
    const auto csv = tests::read_csv("propylene_glycol_by_volume.csv");
    REQUIRE(csv.rows.size() == 4);
    const std::string source =
        "ASHRAE Handbook Fundamentals 2001, chapter 21, inhibited glycol, as transcribed in CoolProp";
    const std::string why = "ours is plain glycol and water (Melinder 2010), theirs holds inhibitors";
    Verification densities{{"density of propylene glycol by volume", source, Certainty::read, "kg/m³", why}};
    Verification heats{{"specific heat of propylene glycol by volume", source, Certainty::read, "J/(kg·K)", why}};
    Verification viscosities{{"viscosity of propylene glycol by volume", source, Certainty::read, "mPa·s", why}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        CAPTURE(i);
        const auto mass = mass_fraction_from_volume(FluidKind::propylene_glycol, csv.number(i, "vol_pct") / 100.0);
        const auto state = glycol(FluidKind::propylene_glycol, *mass, csv.number(i, "T_C") * unit::celsius);
        REQUIRE(state);
        const auto check = [&](Verification& v, const std::string& quantity, double found) {
            const double ashrae = csv.number(i, "ashrae_" + quantity), melinder = csv.number(i, "melinder_" + quantity);
            v.check_known(ashrae, melinder - ashrae, found, 1e-9 * ashrae);
        };
        check(densities, "kg_m3", state->density.si());
        check(heats, "J_kgK", state->specific_heat.si());
        check(viscosities, "mPa_s", state->viscosity.in(unit::millipascal_second));
    }
}

TEST_CASE("more glycol freezes lower, runs thicker and carries less") {
    for (const auto& c : both) {
        for (double x = 0.15; x < 0.585; x += 0.01) {
            CAPTURE(c.name, x);
            CHECK(*freezing_point(c.kind, x + 0.01) < *freezing_point(c.kind, x));
            const auto thin = glycol(c.kind, x, 40.0 * unit::celsius);
            const auto thick = glycol(c.kind, x + 0.01, 40.0 * unit::celsius);
            CHECK(thick->viscosity > thin->viscosity);
            CHECK(thick->specific_heat < thin->specific_heat);
        }
    }
}

TEST_CASE("glycol outside the range of the polynomials is refused") {
    const auto kind = FluidKind::propylene_glycol;
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(glycol(kind, 0.3, 100.0 * unit::celsius));
    CHECK_FALSE(glycol(kind, 0.3, 100.1 * unit::celsius));
    CHECK_FALSE(glycol(kind, 0.3, -12.9 * unit::celsius));  // freezes at -12.79 °C
    CHECK(glycol(kind, 0.3, -12.7 * unit::celsius));
    CHECK_FALSE(glycol(kind, 0.601, 20.0 * unit::celsius));
    CHECK_FALSE(glycol(kind, -0.001, 20.0 * unit::celsius));
    CHECK_FALSE(glycol(kind, nan, 20.0 * unit::celsius));
    CHECK_FALSE(glycol(kind, 0.3, Temperature::from_kelvin(nan)));
    CHECK_FALSE(glycol(FluidKind::water, 0.3, 20.0 * unit::celsius));
    CHECK_FALSE(freezing_point(kind, 0.61));
    CHECK_FALSE(mass_fraction_from_volume(kind, 0.61));
    CHECK_FALSE(mass_fraction_from_volume(FluidKind::ethylene_glycol, 0.59));  // the table ends at 57.8 %
    CHECK_FALSE(mass_fraction_from_volume(FluidKind::water, 0.3));
}

TEST_CASE("the state of a fluid is that of its kind") {
    const auto t = 45.0 * unit::celsius;
    CHECK(state_of({FluidKind::water, 0.0}, t)->density == water(t)->density);
    CHECK(state_of({FluidKind::ethylene_glycol, 0.25}, t)->density ==
          glycol(FluidKind::ethylene_glycol, 0.25, t)->density);
}
