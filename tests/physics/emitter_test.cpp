// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/physics/emitter.hpp"
#include "loopfolio/base/unit.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <cmath>
#include <limits>
#include <string>

using namespace loopfolio;
using namespace loopfolio::physics;
using tests::Certainty;
using tests::Verification;
using tests::verify;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

Temperature c(double celsius) { return celsius * unit::celsius; }

}  // namespace

TEST_CASE("log mean excess, worked examples") {
    struct Row {
        double flow, back, room, excess;
    };  // computed in double precision from the definition
    const Row rows[] = {{55, 45, 20, 29.720134},
                        {50, 40, 20, 24.663035},
                        {45, 40, 20, 22.407101},
                        {70, 50, 20, 39.152304},
                        {75, 65, 20, 49.832887}};
    Verification v{{"log mean excess of an emitter", "its definition, in double precision", Certainty::computed, "K"}};
    for (const auto& r : rows) v.check(r.excess, log_mean_excess(c(r.flow), c(r.back), c(r.room))->si(), 6e-7);
    v.check(49.832887, rating_excess().si(), 6e-7);
}

TEST_CASE("the log mean of close temperatures keeps its digits and lies under the arithmetic mean") {
    CHECK(log_mean_excess(c(45), c(45), c(20))->si() == Approx(25.0).epsilon(1e-15));
    for (double drop = 1e-9; drop < 20.0; drop *= 3.0) {
        const double excess = log_mean_excess(c(50), Temperature::from_celsius(50.0 - drop), c(20))->si();
        const double mean = 30.0 - 0.5 * drop;
        // Series of the log mean about the mean: m (1 - s2/3 - 4 s4/45 ...), s = drop / (2 m).
        const double s2 = std::pow(0.5 * drop / mean, 2);
        CHECK(excess == Approx(mean * (1.0 - s2 / 3.0 - 4.0 * s2 * s2 / 45.0)).epsilon(1e-11 + s2 * s2 * s2));
    }
}

TEST_CASE("the output factor is a power of the excess over the rating") {
    // BS EN 442-2. The table is of dT/50; an excess of dT on the log mean basis is 49.8329/50 of it.
    const auto csv = tests::read_csv("emitter_factors.csv");
    Verification v{
        {"output factor of an emitter", "BS EN 442-2, (dT/50)^n in double precision", Certainty::computed, ""}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        for (const std::string n : {"1.1", "1.2", "1.25", "1.3", "1.33", "1.35", "1.4"}) {
            const double excess = csv.number(i, "dT_K") * rating_excess().si() / 50.0;
            const auto flow = c(20.0 + excess);
            const double factor = csv.number(i, "n=" + n);
            v.check(factor, *output_factor(flow, flow, c(20), std::stod(n)), 1e-11 * factor);
        }
    }
    CHECK(*output_factor(c(75), c(65), c(20), 1.3) == Approx(1.0).epsilon(1e-15));
}

TEST_CASE("factors on trade pages are met to their last digit") {
    // J. Cantor's factors by mean water to air temperature difference, n = 1.3, as a trade page quotes them. They have
    // two decimals, so the tolerance is half of the last digit.
    Verification v{{"output factors for a mean excess of 20 to 45 K", "J. Cantor, as a trade page quotes him",
                    Certainty::read, ""}};
    struct Row {
        double excess, factor;
    };
    for (const auto& r : {Row{20, 0.30}, {25, 0.41}, {30, 0.52}, {35, 0.63}, {40, 0.75}, {45, 0.87}}) {
        CAPTURE(r.excess);
        v.check(r.factor, *output_factor(c(20 + r.excess + 2.5), c(20 + r.excess - 2.5), c(20), 1.3), 0.005);
    }
    // Old outputs are at 60 K (90/70/20), as a trade page says; its means are arithmetic.
    Verification old{{"output at 90/70/20 over that at 75/65/20, n = 1.3", "(60/50)^1.3, by hand", Certainty::computed,
                      "", "arithmetic means there; log means are 59.44 and 49.83 K"}};
    const auto log_mean = [](double hot, double cold) { return (hot - cold) / std::log(hot / cold); };
    const double by_log_means = std::pow(log_mean(70, 50) / log_mean(55, 45), 1.3);
    const double by_arithmetic_means = std::pow(60.0 / 50.0, 1.3);
    old.check_known(by_arithmetic_means, by_log_means - by_arithmetic_means, *output_factor(c(90), c(70), c(20), 1.3),
                    1e-12);
}

TEST_CASE("water side and room side balance") {
    const auto csv = tests::read_csv("emitter_balance.csv");
    REQUIRE(csv.rows.size() > 150);
    const std::string source = "scipy brentq on the relation of BS EN 442";
    Verification returns{{"return temperature of an emitter at a flow", source, Certainty::computed, "°C"}};
    Verification outputs{{"output of an emitter at a flow", source, Certainty::computed, "W"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const EmitterRating rating{Power::from_si(csv.number(i, "rated_w")), csv.number(i, "exponent")};
        const auto m = MassFlow::from_si(csv.number(i, "kg_per_s"));
        const auto cp = SpecificHeat::from_si(4180.0);
        const auto flow = c(csv.number(i, "flow_c"));
        const auto room = c(csv.number(i, "room_c"));
        CAPTURE(i, rating.exponent, m.si());
        const auto balance = balance_at_flow(rating, m, cp, flow, room);
        REQUIRE(balance);
        returns.check(csv.number(i, "return_c"), balance->return_temperature.celsius(), 1e-9);
        outputs.check(csv.number(i, "output_w"), balance->output.si(), 1e-9 * csv.number(i, "output_w"));
        // A return within a thousandth of a kelvin of the room is too close for a temperature in kelvin to resolve.
        if ((balance->return_temperature - room).si() < 1e-3) continue;
        const auto factor = output_factor(flow, balance->return_temperature, room, rating.exponent);
        CHECK(balance->output.si() == Approx((*factor * rating.output_at_50k).si()).epsilon(1e-9));
    }
}

TEST_CASE("more flow gives more output, and never more than the flow temperature allows") {
    const EmitterRating rating{1500.0 * unit::watt, 1.3};
    const auto cp = SpecificHeat::from_si(4180.0);
    double last = 0.0;
    for (double m = 1e-7; m < 100.0; m *= 1.3) {
        const auto b = balance_at_flow(rating, MassFlow::from_si(m), cp, c(50), c(21));
        REQUIRE(b);
        CHECK(b->output.si() > last);
        CHECK(b->return_temperature > c(20.999999));
        CHECK(b->return_temperature < c(50));
        last = b->output.si();
    }
    CHECK(last == Approx(1500.0 * *output_factor(c(50), c(50), c(21), 1.3)).epsilon(1e-4));
}

TEST_CASE("lowest flow temperature") {
    const auto csv = tests::read_csv("lowest_flow_temperature.csv");
    REQUIRE(csv.rows.size() > 50);
    Verification v{{"lowest flow temperature of an emitter", "scipy brentq on the relation of BS EN 442",
                    Certainty::computed, "°C"}};
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        const EmitterRating rating{Power::from_si(csv.number(i, "rated_w")), csv.number(i, "exponent")};
        const auto wanted = Power::from_si(csv.number(i, "wanted_w"));
        const auto drop = csv.number(i, "drop_k") * unit::kelvin;
        const auto room = c(csv.number(i, "room_c"));
        CAPTURE(i);
        const auto flow = lowest_flow_temperature(rating, wanted, drop, room);
        REQUIRE(flow);
        v.check(csv.number(i, "flow_c"), flow->celsius(), 1e-9);
        CHECK(*output_factor(*flow, *flow - drop, room, rating.exponent) ==
              Approx(wanted / rating.output_at_50k).epsilon(1e-10));
    }
    // The rating formula solved for the temperature: full output at 10 K needs 75 °C.
    const EmitterRating kilowatt{1.0 * unit::kilowatt, 1.3};
    verify({"flow temperature at which an emitter gives its rating", "BS EN 442-2, 75/65/20, as a trade page quotes it",
            Certainty::read, "°C"},
           75.0, lowest_flow_temperature(kilowatt, 1.0 * unit::kilowatt, 10.0 * unit::kelvin, c(20))->celsius(),
           75e-12);
}

TEST_CASE("an emitter outside the range of the relation is refused") {
    const EmitterRating rating{1000.0 * unit::watt, 1.3};
    const auto m = MassFlow::from_si(0.02);
    const auto cp = SpecificHeat::from_si(4180.0);
    CHECK_FALSE(log_mean_excess(c(45), c(46), c(20)));
    CHECK_FALSE(log_mean_excess(c(45), c(20), c(20)));
    CHECK_FALSE(log_mean_excess(Temperature::from_kelvin(nan_value), c(40), c(20)));
    CHECK_FALSE(output_factor(c(45), c(40), c(20), 0.99));
    CHECK_FALSE(output_factor(c(45), c(40), c(20), 1.61));
    CHECK_FALSE(output_factor(c(45), c(40), c(20), nan_value));
    CHECK_FALSE(balance_at_flow(rating, MassFlow{}, cp, c(45), c(20)));
    CHECK_FALSE(balance_at_flow(rating, m, cp, c(20), c(20)));
    CHECK_FALSE(balance_at_flow({Power{}, 1.3}, m, cp, c(45), c(20)));
    CHECK_FALSE(balance_at_flow({Power::from_si(nan_value), 1.3}, m, cp, c(45), c(20)));
    CHECK_FALSE(lowest_flow_temperature(rating, Power{}, 5.0 * unit::kelvin, c(20)));
    CHECK_FALSE(lowest_flow_temperature(rating, 500.0 * unit::watt, TemperatureDifference{}, c(20)));
    CHECK_FALSE(lowest_flow_temperature(rating, 2000.0 * unit::watt, 5.0 * unit::kelvin, c(20)));  // > 95 °C
}
