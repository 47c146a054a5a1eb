// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT

// A reader with a pocket calculator puts the figures of a step into its formula and gets its result, as near as the
// figures are printed.

#include "design/step_rules.hpp"
#include "loopfolio/design/design.hpp"
#include "loopfolio/design/plant.hpp"
#include "support/catch.hpp"
#include "support/every_key.hpp"
#include "support/example_jobs.hpp"
#include "support/season_house.hpp"
#include "support/small_job.hpp"

#include <set>

using namespace loopfolio;
using namespace loopfolio::tests;

namespace {

/// Steps whose formula is in words, or needs what the derivation does not print. Other tests hold their results to the
/// outside; here they are looked for, as a step that is missing leaves a page without it.
const std::set<std::string_view>& in_words() {
    static const std::set<std::string_view> all{
        // heat loss
        "roof",
        "permeability",
        "minimum_air",
        "leakage_of_room",
        "windward",
        "outdoor_air",
        "changes_of_air",
        "loss_in_house",
        "air_at_once",
        "air_of_house",
        "air_adjustment",
        "floor",
        "thermal_bridges",
        "element",
        "loss_by_elements",
        "loss_adopted",
        "rate",
        "layers_bridged",
        "lower_limit",
        "air_gaps",
        "fasteners",
        "slab",
        // emitters and floors
        "load_share",
        "emitter_return",
        "lowest_flow",
        "emitter_pressure_drop",
        "output_at_50k",
        "derating",
        "floor_transfer",
        "floor_mean",
        "floor_flux_limit",
        "floor_warmest",
        "floor_downward",
        // pipes and pump
        "mass_flow",
        "section_load",
        "friction_factor",
        "capacity_velocity_preferred",
        "capacity_gradient_preferred",
        "capacity_velocity",
        "drop_to_limit",
        "drop_to_keep",
        "total_flow",
        "index_emitter",
        "index_sections",
        "index_emitter_drop",
        "source_drop",
        "index_helped",
        "pump_head_there",
        "emitters_side_flow",
        "source_side_flow",
        "transfer_units",
        "effectiveness",
        "source_leaving",
        "source_entering",
        // plant
        "expansion",
        "precharge",
        "cold_fill",
        "final_pressure",
        "defrost_water",
        "store_needed",
        "store_capacity",
        "exchanger",
        "reheat_time",
        "standing_loss",
        "hot_water_hours",
        "hot_water_electricity",
        "sound_power",
        "sound_by_rule",
        "sound_far_enough",
        // season
        "season_flow",
        "season_source_flow",
        "season_capacity",
        "season_performance",
        "degree_days",
        "season_heat",
        "heat_outside_table",
        "source_heat",
        "backup_heat",
        "unmet_heat",
        "standby_electricity",
        "performance_band",
        "run_water",
        "most_starts",
    };
    return all;
}

struct House {
    std::string name;
    design::House house;
    design::Design design;
    design::Plant plant;
    design::Trace trace;
};

design::SeasonBands bands() {
    design::SeasonBands out;
    out.ranges = 7;
    out.performance = {3.11, 3.42, 3.73};
    return out;
}

House house_of(std::string name, design::House house) {
    House out{std::move(name), std::move(house), {}, {}, {}};
    out.design = std::get<design::Design>(design::design(out.house, &out.trace));
    out.plant = std::get<design::Plant>(design::plan_plant(out.house, out.design, bands(), &out.trace));
    return out;
}

/// A room with one wall, of plasterboard and brick.
job::Job brick_wall() {
    auto job = one_section_job("copper_22", 1000.0);
    job.rooms[0].heat_loss.reset();
    job.rooms[0].air_changes = measured(unit::per_hour(0.5));
    job.rooms[0].element_thermal_bridge = measured(unit::watt_per_square_metre_kelvin(0.0));
    job::Element wall;
    wall.kind = job::ElementKind::wall;
    wall.area = measured(unit::square_metre(10.0));
    for (const auto& [material, mm] : {std::pair{"plasterboard", 12.5}, std::pair{"brick_outer", 215.0}}) {
        job::Layer layer;
        layer.material = material;
        layer.thickness = measured(unit::millimetre(mm));
        wall.layers.push_back(layer);
    }
    job.rooms[0].elements = {wall};
    return job;
}

/// A source that is too small in the cold, with nothing beside it.
job::Job short_of_heat() {
    auto job = season_house({.load = 20000.0});
    job.heat_source->backup = {};
    return job;
}

/// The examples, and houses that state every key.
/// The same with fans that take heat back, and leaks that the job states.
job::Job fans() {
    auto job = brick_wall();
    job.rooms[0].air_changes = {};
    job.rooms[0].ventilation = job::MechanicalVentilation{
        measured(unit::per_hour(0.5)), measured(0.7), measured(unit::per_hour(0.2)), {}};
    return job;
}

const std::vector<House>& houses() {
    static const auto all = [] {
        std::vector<House> out;
        for (const auto& name : example_names()) out.push_back(house_of(name, design::resolve(example_job(name))));
        for (const auto& job : jobs_with_every_key()) out.push_back(house_of("every key", {job, job}));
        out.push_back(house_of("brick wall", design::resolve(brick_wall())));
        out.push_back(house_of("fans", design::resolve(fans())));
        out.push_back(house_of("cycles", design::resolve(season_house({.least_share = 0.95}))));
        out.push_back(house_of("short of heat", design::resolve(short_of_heat())));
        return out;
    }();
    return all;
}

/// Whether a text of this key is among a text's figures.
bool names(const KeyedText& text, std::string_view key) {
    return text.key == key || std::ranges::any_of(text.figures, [&](const Figure& figure) {
               return figure.text() != nullptr && names(*figure.text(), key);
           });
}

std::string name_of(const design::Step& step) {
    const std::string formula{step.formula.key}, own{step.what.key};
    // Beside a second material heat goes through both, which the sum of the layers does not count.
    if (formula == "layers_formula" && names(step.formula, "layer_bridged")) return "layers_bridged";
    return rules().contains(formula) ? formula : own;
}

}  // namespace

TEST_CASE("who puts the figures of a step into its formula gets its result") {
    std::set<std::string> reckoned_ones, told;
    for (const auto& h : houses()) {
        for (const auto& derivation : h.trace.derivations()) {
            for (std::size_t i = 0; i < derivation.steps.size(); ++i) {
                const auto& step = derivation.steps[i];
                const std::string name = name_of(step);
                INFO(h.name << ", " << derivation.id << ": " << name);
                const auto rule = rules().find(name);
                if (rule == rules().end()) {
                    CHECK(in_words().contains(name));
                    told.insert(name);
                    continue;
                }
                const auto operands = operands_of(rule->second, {derivation, i});
                const auto result = result_of(step);
                if (!operands) FAIL_CHECK("an operand is missing");
                if (!operands) continue;
                REQUIRE(result);
                const auto again = reckoned(rule->second, *operands);
                CHECK(std::abs(again.value - result->value) <= 1.001 * (again.half + result->half));
                reckoned_ones.insert(name);
            }
        }
    }
    for (const auto& [name, rule] : rules()) {
        INFO(name);
        CHECK(reckoned_ones.contains(name));
    }
    for (const auto name : in_words()) {
        INFO(name);
        CHECK(told.contains(std::string{name}));
    }
}

TEST_CASE("capacities of a derivation are those of its section, each under its own limit") {
    int sections = 0;
    for (const auto& h : houses()) {
        for (std::size_t i = 0; i < h.design.sections.size(); ++i) {
            const auto& s = h.design.sections[i];
            const auto& job = h.house.values.sections[i];
            const auto* derivation = h.trace.find(design::Subject::section, job.id);
            REQUIRE(derivation);
            INFO(h.name << ", " << job.id);
            // The flow at the velocity limit, from the bore: q = v (pi/4) d2 rho c dT.
            const double bore = job.bore.value.si();
            const double most = job.velocity_limit.value.si() * 0.25 * std::numbers::pi * bore * bore *
                                h.design.state.density.si() * h.design.state.specific_heat.si() * h.design.drop.si();
            for (const auto& step : derivation->steps) {
                if (step.what.key == "capacity_velocity")
                    CHECK(std::abs(result_of(step)->value - most / 1000.0) <= 0.0051);
                if (step.what.key == "drop_to_keep")
                    CHECK(result_of(step)->value == Approx(s.drop_to_keep->si()).margin(0.0501));
            }
            ++sections;
        }
    }
    CHECK(sections > 50);
}

TEST_CASE("a pressure that the job states is said to be stated, and one that it leaves out has its formula") {
    int stated = 0, found = 0;
    for (const auto& h : houses()) {
        const auto* water = h.trace.find(design::Subject::plant, "system_water");
        if (water == nullptr) continue;
        const auto& w = *h.house.values.system_water;
        for (const auto& step : water->steps) {
            const bool fill = step.what.key == "cold_fill";
            if (!fill && step.what.key != "precharge") continue;
            const bool given = fill ? w.cold_fill.has_value() : w.precharge.has_value();
            INFO(h.name << " " << step.what.key);
            CHECK((step.formula.key == "as_stated") == given);
            ++(given ? stated : found);
        }
    }
    CHECK(stated > 0);
    CHECK(found > 0);
}

TEST_CASE("the band of the season's performance is that of the study, with the number of its ranges") {
    int seen = 0;
    for (const auto& h : houses()) {
        const auto* season = h.trace.find(design::Subject::plant, "season");
        if (season == nullptr) continue;
        for (const auto& step : season->steps) {
            if (step.what.key != "performance_band") continue;
            CHECK(numbers_of(step.formula).at(0).value == 7.0);
            std::vector<Printed> ends;
            collect(step.result, ends);
            REQUIRE(ends.size() == 2);
            CHECK(ends[0].value == 3.11);
            CHECK(ends[1].value == 3.73);
            ++seen;
        }
    }
    CHECK(seen > 0);
}
