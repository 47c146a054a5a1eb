// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/design/season.hpp"
#include "support/catch.hpp"
#include "support/fault_jobs.hpp"
#include "support/inputs.hpp"
#include "support/small_job.hpp"

#include <cmath>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

design::SeasonPlan season_with_loss(double watts_per_metre_kelvin) {
    auto job = fault_job("sl4");
    job.sections.at(0).heat_loss = measured(unit::watt_per_metre_kelvin(watts_per_metre_kelvin));
    const auto house = design::resolve(job);
    const auto plan = design::plan_season(house.values, designed(job));
    REQUIRE(plan);
    return *plan;
}

}  // namespace

TEST_CASE("the temperature drop at the heat source counts the heat that pipes lose") {
    const auto job = fault_job("ploss");
    const auto d = designed(job);
    REQUIRE(d.duty.source_maximum_drop);
    const auto& f = d.at(d.duty.source_maximum_drop);
    // 4,000 W at 7.5 K, and 0.4 W/(m·K) over 30 m of flow pipe at 45 °C and 30 m of return pipe at about 37 °C to 4 °C:
    // worked by hand with T_out = T_amb + (T_in - T_amb) exp(-U'L/(m cp)) along both pipes.
    const double capacity = 4000.0 / 7.5;
    const double keeps = std::exp(-0.4 * 30.0 / capacity);
    const double inlet = 4.0 + (45.0 - 4.0) * keeps;
    const double back = 4.0 + (inlet - 7.5 - 4.0) * keeps;
    CHECK(design::figure_as<TemperatureDifference>(f).si() == Approx(45.0 - back).margin(0.01));
    CHECK(f.verdict == Verdict::change);
    CHECK(d.duty.back.celsius() == Approx(back).margin(0.01));
    CHECK(d.duty.carried.si() == Approx(d.duty.load.si() + d.pipe_loss.si()));
}

TEST_CASE("more heat lost by pipes never makes a better season") {
    double performance = 1e9, electricity = 0.0;
    for (const double loss : {0.0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.6, 0.8}) {
        INFO(loss << " W/(m·K)");
        const auto plan = season_with_loss(loss);
        REQUIRE(plan.season.whole_performance);
        CHECK(*plan.season.whole_performance <= performance);
        CHECK(design::all_electricity(plan.season).si() >= electricity);
        performance = *plan.season.whole_performance;
        electricity = design::all_electricity(plan.season).si();
    }
}

TEST_CASE("the weather compensation curve makes up for what the water loses on its way") {
    // At a fixed flow, an inlet is T_amb + (T_flow - T_amb) exp(-U'L/(m cp)), by hand from the pipe's own relation.
    const auto job = fault_job("sl4");
    const auto d = designed(job);
    const auto& e = d.emitters.at(0);
    const double keeps = std::exp(-0.4 * 30.0 / (e.flow.si() * d.state.specific_heat.si()));
    CHECK(e.inlet_follows == Approx(keeps).epsilon(1e-4));
    CHECK(e.inlet.celsius() == Approx(4.0 + (45.0 - 4.0) * keeps).margin(0.005));
    const auto lossless = season_with_loss(0.0), lossy = season_with_loss(0.4);
    REQUIRE(lossless.curve.size() == lossy.curve.size());
    for (std::size_t i = 0; i < lossy.curve.size(); ++i) CHECK(lossy.curve[i].emitters > lossless.curve[i].emitters);
}
