// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/pipes.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"

#include <numbers>
#include <set>

using namespace loopfolio;
using namespace loopfolio::reference;

TEST_CASE("bores hold the water that a textbook says they hold") {
    const auto csv = tests::read_csv("pipe_content.csv");
    REQUIRE(csv.rows.size() == 12);
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        CAPTURE(csv.rows[i][0]);
        const auto* pipe = find_pipe(csv.rows[i][0]);
        REQUIRE(pipe);
        const Area section = std::numbers::pi / 4.0 * (pipe->bore * pipe->bore);
        CHECK((section * (1.0 * unit::metre)).in(unit::litre) ==
              Approx(csv.number(i, "l_per_m")).epsilon(0.01));
    }
}

TEST_CASE("outside diameters and bores, from the standards") {
    // EN 1057 (R250), EN 10255 medium and ISO 21003 as trade pages quote them, mm.
    struct Row { std::string_view name; double outside, bore; };
    const Row rows[] = {{"copper_8", 8, 6.8},        {"copper_10", 10, 8.8},      {"copper_15", 15, 13.6},
                        {"copper_22", 22, 20.2},     {"copper_28", 28, 26.2},     {"copper_35", 35, 32.6},
                        {"copper_42", 42, 39.6},     {"copper_54", 54, 51.6},     {"steel_dn15", 21.3, 16.1},
                        {"steel_dn25", 33.7, 27.3},  {"steel_dn50", 60.3, 53.1},  {"multilayer_16", 16, 12},
                        {"multilayer_20", 20, 16},   {"multilayer_26", 26, 20},   {"multilayer_32", 32, 26}};
    for (const auto& r : rows) {
        CAPTURE(r.name);
        const auto* pipe = find_pipe(r.name);
        REQUIRE(pipe);
        CHECK(pipe->outside_diameter.in(unit::millimetre) == Approx(r.outside));
        CHECK(pipe->bore.in(unit::millimetre) == Approx(r.bore));
    }
}

TEST_CASE("every pipe is possible, named once and in rising bore within its material") {
    std::set<std::string_view> names;
    const Pipe* last = nullptr;
    std::set<PipeMaterial> begun;
    for (const auto& p : pipes()) {
        CAPTURE(p.name);
        CHECK(names.insert(p.name).second);
        CHECK_FALSE(p.label.empty());
        CHECK(p.bore < p.outside_diameter);
        CHECK(p.bore > 0.5 * p.outside_diameter);
        CHECK(p.insert_bore < p.bore);
        CHECK(p.roughness / p.bore < 0.01);
        const bool narrows = p.material != PipeMaterial::copper && p.material != PipeMaterial::steel;
        CHECK((p.insert_bore.si() > 0.0) == narrows);
        if (last && last->material == p.material) CHECK(p.bore > last->bore);
        else CHECK(begun.insert(p.material).second);
        last = &p;
    }
    CHECK(begun.size() == 5);
    CHECK(pipe_names().size() == pipes().size());
    CHECK(find_pipe("copper_23") == nullptr);
}

TEST_CASE("larger sizes are of the same material") {
    const auto larger = larger_sizes(*find_pipe("copper_22"));
    REQUIRE(larger.size() == 4);
    CHECK(larger.front().name == "copper_28");
    CHECK(larger.back().name == "copper_54");
    CHECK(larger_sizes(*find_pipe("copper_54")).empty());
    CHECK(larger_sizes(*find_pipe("steel_dn50")).empty());
    CHECK(larger_sizes(*find_pipe("pb_28")).empty());
    for (const auto& p : pipes()) {
        for (const auto& q : larger_sizes(p)) {
            CHECK(q.material == p.material);
            CHECK(q.bore > p.bore);
        }
    }
}
