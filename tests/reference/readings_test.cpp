// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/emitters.hpp"
#include "loopfolio/reference/fabric.hpp"
#include "loopfolio/reference/fittings.hpp"
#include "loopfolio/reference/source.hpp"
#include "support/verification.hpp"

#include <initializer_list>
#include <string>

using namespace loopfolio;
using namespace loopfolio::reference;

using tests::Verification;

namespace {

constexpr auto& u = unit::watt_per_square_metre_kelvin;

void inside(Verification& readings, double published, const Cited<UValue>& ours) {
    readings.check_inside(published, u.value_of(ours.low), u.value_of(ours.high));
}

}  // namespace

// Where a reading differs from a value that is from memory, the value stays until the edition in force is read, and its
// range holds the reading.

TEST_CASE("readings of walls that differ from ours lie in our ranges") {
    Verification readings{{"Range of default U-values of walls",
                           "RdSAP 2012 table S6, in a public transcription that names v9.94", tests::Certainty::read,
                           "W/(m²·K)"}};
    inside(readings, 2.1, wall_u_value(WallKind::cavity, Era::before_1900));
    for (const Era era : {Era::from_1900, Era::from_1930, Era::from_1950, Era::from_1967}) {
        inside(readings, 1.6, wall_u_value(WallKind::cavity, era));
        inside(readings, 0.5, wall_u_value(WallKind::filled_cavity, era));
    }
}

TEST_CASE("readings of windows that differ from ours lie in our ranges") {
    Verification readings{{"Range of default U-values of windows", "RdSAP 2012 table S14, in two public transcriptions",
                           tests::Certainty::read, "W/(m²·K)"}};
    inside(readings, 1.8, glazing_u_value(GlazingKind::triple));
    inside(readings, 3.1, glazing_u_value(GlazingKind::double_before_2002));
    inside(readings, 2.6, glazing_u_value(GlazingKind::double_before_2002));
}

TEST_CASE("readings of thermal bridges lie in our ranges") {
    Verification readings{{"Range of default thermal bridges", "RdSAP 2012 table S13, in a public transcription",
                           tests::Certainty::read, "W/(m²·K)"}};
    inside(readings, 0.15, thermal_bridge_allowance(Era::from_1930));
    inside(readings, 0.11, thermal_bridge_allowance(Era::from_2003));
    inside(readings, 0.08, thermal_bridge_allowance(Era::from_2012));
}

TEST_CASE("exponents by the outputs that manufacturers print lie in our ranges") {
    Verification readings{{"Range of default exponents",
                           "outputs at two excess temperatures, printed by manufacturers 2005 to 2023",
                           tests::Certainty::read, ""}};
    const auto check = [&](std::string_view kind, std::initializer_list<double> read) {
        const auto* ours = find_emitter_kind(kind);
        REQUIRE(ours != nullptr);
        for (const double exponent : read) readings.check_inside(exponent, ours->exponent_low, ours->exponent_high);
    };
    check("panel_11", {1.2200, 1.2721, 1.2831});
    check("panel_21", {1.2967});
    check("panel_22", {1.3000, 1.3197, 1.3295, 1.334});
    check("panel_33", {1.3159, 1.3331, 1.3417});
    check("column", {1.254, 1.228});
    check("towel_rail", {1.234});
}

TEST_CASE("valves and strainers by remembered flow coefficients lie in our ranges") {
    Verification readings{
        {"Range of loss factors", "flow coefficients of valves, 1.6e9 D^4/Kv^2", tests::Certainty::memory, ""}};
    const auto check = [&](std::string_view name, double bore, double kv) {
        const auto* ours = find_fitting(name);
        REQUIRE(ours != nullptr);
        readings.check_inside(1.6e9 * bore * bore * bore * bore / (kv * kv), ours->low, ours->high);
    };
    for (const double kv : {1.7, 2.2, 2.6}) check("lockshield_valve", 0.0136, kv);
    for (const double kv : {12.0, 10.0}) check("strainer", 0.0262, kv);
    for (const double kv : {0.8, 1.0, 1.3}) check("manifold_valve_and_meter", 0.0136, kv);
}

TEST_CASE("a regulation that the cautions name is given with its number, and how it is known") {
    for (const char* key : {"asbestos-2012", "building-regs-g3", "building-regs-p", "building-regs-j", "cdm-2015",
                            "coshh-2002", "gas-safety-1998", "work-at-height-2005"}) {
        INFO(key);
        const auto* source = find_source(key);
        REQUIRE(source != nullptr);
        CHECK(source->title.find("(SI ") != std::string_view::npos);
        CHECK(source->certainty == reference::Certainty::read);
    }
}
