// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/reference/underfloor.hpp"
#include "loopfolio/base/unit.hpp"
#include "loopfolio/reference/source.hpp"

#include "support/catch.hpp"
#include "support/csv.hpp"
#include "support/verification.hpp"

#include <algorithm>
#include <string>
#include <tuple>

using namespace loopfolio;
using namespace loopfolio::reference;
using Known = tests::Certainty;
using tests::Verification;

namespace {

const std::string from_library = "EN 1264-2, as read in an open library of building physics";

void check_limits(const std::string& name, std::span<const FloorLimitPoint> points) {
    const auto csv = tests::read_csv("floor_limits.csv");
    Verification v{{"limit curves of a heated floor, " + name, from_library, Known::read, ""}};
    std::size_t next = 0;
    for (std::size_t i = 0; i < csv.rows.size(); ++i) {
        if (csv.rows[i][csv.column("name")] != name) continue;
        REQUIRE(next < points.size());
        CHECK(points[next].pitch.in(unit::millimetre) == Approx(csv.number(i, "pitch_mm")));
        CHECK(points[next].cover.si() == Approx(csv.number(i, "cover_m2k_per_w")));
        v.check(csv.number(i, "value"), points[next].value, 1e-9);
        ++next;
    }
    CHECK(next == points.size());
    CHECK(std::ranges::is_sorted(points, {}, [](const FloorLimitPoint& p) { return std::tuple{p.pitch, p.cover}; }));
}

}  // namespace

TEST_CASE("factors of a heated floor are those that the tests of other rooms read") {
    const auto csv = tests::read_csv("floor_factors.csv");
    const auto rows = floor_factors();
    REQUIRE(rows.size() == csv.rows.size());
    Verification v{{"factors of a heated floor, type A", from_library, Known::read, ""}};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK(rows[i].covering.si() == Approx(csv.number(i, "covering_m2k_per_w")).margin(1e-12));
        CHECK(rows[i].pitch.in(unit::millimetre) == Approx(csv.number(i, "pitch_mm")));
        v.check(csv.number(i, "a_pitch"), rows[i].a_pitch, 1e-9);
        v.check(csv.number(i, "a_cover"), rows[i].a_cover, 1e-9);
        v.check(csv.number(i, "a_diameter"), rows[i].a_diameter, 1e-9);
    }
    CHECK(std::ranges::is_sorted(rows, {}, [](const FloorFactors& f) { return std::tuple{f.covering, f.pitch}; }));
    CHECK(find_source(floor_tables_source()) != nullptr);
}

TEST_CASE("limit curves of a heated floor are those that the tests of other rooms read") {
    check_limits("coefficient", floor_limit_coefficients());
    check_limits("exponent", floor_limit_exponents());
    for (const auto& p : floor_limit_exponents()) CHECK((p.value >= 0.0 && p.value < 1.0));
}

TEST_CASE("how warm a floor may be") {
    struct Row {
        std::string_view name;
        double limit, excess;
    };
    Verification v{{"limits of a floor's surface", "EN 1264-2, as trade pages print them", Known::read, "°C"}};
    for (const auto& r : {Row{"occupied", 29, 9}, {"edge", 35, 15}, {"bathroom", 33, 9}}) {
        const auto* limit = find_floor_surface_limit(r.name);
        REQUIRE(limit != nullptr);
        v.check(r.limit, limit->limit.celsius(), 1e-9);
        CHECK((limit->limit - limit->room).si() == Approx(r.excess));
        CHECK(find_source(limit->source) != nullptr);
    }
    CHECK(floor_surface_limits().size() == 3);
    CHECK(find_floor_surface_limit("ceiling") == nullptr);
}

TEST_CASE("coverings and rules for a loop") {
    for (const auto& covering : floor_coverings()) {
        CAPTURE(covering.name);
        CHECK(covering.resistance.low <= covering.resistance.value);
        CHECK(covering.resistance.value <= covering.resistance.high);
        CHECK(covering.resistance.value.si() <= 0.15);  // beyond it EN 1264 does not go
        CHECK(find_source(covering.resistance.source) != nullptr);
        CHECK(find_floor_covering(covering.name) == &covering);
    }
    CHECK(find_source(loop_limits().length.source) != nullptr);
    CHECK(find_source(loop_limits().pressure.source) != nullptr);
    CHECK(loop_limits().length.value <= loop_limits().length.high);
    CHECK(loop_limits().pressure.value <= loop_limits().pressure.high);
}
