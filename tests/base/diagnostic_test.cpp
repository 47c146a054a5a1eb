// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/diagnostic.hpp"

#include "support/catch.hpp"

using namespace loopfolio;

TEST_CASE("a diagnostic reads as place, field, value, rule and hint") {
    const Diagnostic d{Severity::error, "job.yaml", {12, 5}, "rooms[2].floor_area_m2", "-3",
                       "must lie between 0.5 and 1000 m²", "was a minus sign typed by mistake?"};
    CHECK(text_of(d) ==
          "job.yaml:12:5: error: rooms[2].floor_area_m2 = -3: must lie between 0.5 and 1000 m²\n"
          "    hint: was a minus sign typed by mistake?\n");
}

TEST_CASE("control characters of a bad file never reach a terminal") {
    const Diagnostic d{Severity::error, "job.yaml", {1, 1}, "job", "\x1b[2J", "is not text", ""};
    CHECK(text_of(d) == "job.yaml:1:1: error: job = \\x1b[2J: is not text\n");
}

TEST_CASE("the nearest name is offered only when it is near") {
    const std::vector<std::string_view> names{"floor_area_m2", "ceiling_height_m", "temperature_c"};
    CHECK(nearest_name("floor_aera_m2", names) == "floor_area_m2");
    CHECK(nearest_name("temperatur_c", names) == "temperature_c");
    CHECK(nearest_name("colour", names).empty());
}
