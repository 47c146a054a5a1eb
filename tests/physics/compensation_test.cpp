// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/compensation.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/physics/emitter.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <limits>

using namespace loopfolio;
using namespace loopfolio::physics;

namespace {

Temperature c(double celsius) { return celsius * unit::celsius; }

}  // namespace

TEST_CASE("flow temperature at part load, against the emitter's equation solved numerically") {
    const auto csv = tests::read_csv("compensated_flow.csv");
    REQUIRE(csv.rows.size() > 100);
    tests::Verification v{{"flow temperature by weather compensation", "scipy brentq (tests/reference/plant.py)",
                           tests::Certainty::computed, "°C"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const EmissionDesign design{c(csv.number(i, "flow_c")), c(csv.number(i, "return_c")),
                                    c(csv.number(i, "room_c")), csv.number(i, "exponent")};
        const auto found = compensated_flow(design, csv.number(i, "share"));
        CAPTURE(i);
        REQUIRE(found);
        v.check(csv.number(i, "answer_c"), found->flow.celsius(), 1e-9);
    }
}

TEST_CASE("it is the same emitter with the same water flow") {
    const EmissionDesign design{c(50), c(43), c(21), 1.3};
    const auto cp = SpecificHeat::from_si(4180.0);
    const Power load = 5.0 * unit::kilowatt;
    const MassFlow flow = load / (cp * (design.flow - design.return_));
    const EmitterRating rating{load / *output_factor(design.flow, design.return_, design.room, 1.3), 1.3};
    double last = 21.0;
    for (double share = 0.02; share < 1.3; share += 0.04) {
        const auto at = compensated_flow(design, share);
        REQUIRE(at);
        const auto balance = balance_at_flow(rating, flow, cp, at->flow, design.room);  // by iteration
        REQUIRE(balance);
        CHECK(balance->output / load == Approx(share).epsilon(1e-9));
        CHECK(balance->return_temperature.celsius() == Approx(at->return_.celsius()).epsilon(1e-10));
        CHECK(at->flow.celsius() > last);
        last = at->flow.celsius();
    }
    CHECK(compensated_flow(design, 1.0)->flow.celsius() == Approx(50.0).epsilon(1e-12));
    const EmissionDesign no_drop{c(45), c(45), c(20), 1.0};
    CHECK(compensated_flow(no_drop, 0.5)->flow.celsius() == Approx(32.5).epsilon(1e-12));
}

TEST_CASE("a design or share outside the relation is refused") {
    const EmissionDesign design{c(50), c(43), c(21), 1.3};
    for (const double share : {0.0, -0.1, std::numeric_limits<double>::quiet_NaN()}) {
        CHECK_FALSE(compensated_flow(design, share));
    }
    CHECK_FALSE(compensated_flow(design, 20.0));  // above 95 °C
    CHECK_FALSE(compensated_flow({c(43), c(50), c(21), 1.3}, 0.5));
    CHECK_FALSE(compensated_flow({c(50), c(20), c(21), 1.3}, 0.5));
    CHECK_FALSE(compensated_flow({c(50), c(43), c(21), 1.7}, 0.5));
}
