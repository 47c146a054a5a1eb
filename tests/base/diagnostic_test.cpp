// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/diagnostic.hpp"

#include "support/catch.hpp"

#include <type_traits>

using namespace loopfolio;

TEST_CASE("a diagnostic reads as place, field, value, rule and hint") {
    const Diagnostic d{Severity::error,
                       "job.yaml",
                       {12, 5},
                       "rooms[2].floor_area_m2",
                       "-3",
                       "must lie between 0.5 and 1000 m²",
                       "was a minus sign typed by mistake?"};
    CHECK(text_of(d) ==
          "job.yaml:12:5: error: rooms[2].floor_area_m2 = -3: must lie between 0.5 and 1000 m²\n"
          "    hint: was a minus sign typed by mistake?\n");
}

TEST_CASE("control characters of a bad file never reach a terminal") {
    const Diagnostic d{Severity::error, "job.yaml", {1, 1}, "job", "\x1b[2J", "is not text", "write text"};
    CHECK(text_of(d) == "job.yaml:1:1: error: job = \\x1b[2J: is not text\n    hint: write text\n");
}

TEST_CASE("the nearest name is offered only when it is near") {
    const std::vector<std::string_view> names{"floor_area_m2", "ceiling_height_m", "temperature_c"};
    CHECK(nearest_name("floor_aera_m2", names) == "floor_area_m2");
    CHECK(nearest_name("temperatur_c", names) == "temperature_c");
    CHECK(nearest_name("colour", names).empty());
}

TEST_CASE("a diagnostic leaves out what it does not have") {
    CHECK(text_of({Severity::warning, "job.yaml", {}, "", "", "the file is old", "renew it"}) ==
          "job.yaml: warning: the file is old\n    hint: renew it\n");
    CHECK(text_of({Severity::error, "job.yaml", {3, 1}, "rooms", "", "is missing", "add it"}) ==
          "job.yaml:3:1: error: rooms: is missing\n    hint: add it\n");
    CHECK(text_of({Severity::warning, "a", {1, 2}, "", "17", "has a value without a field", "h"}) ==
          "a:1:2: warning: has a value without a field\n    hint: h\n");
}

TEST_CASE("every part of a diagnostic is shown with its control characters escaped") {
    const Diagnostic d{Severity::error, "a\nb", {1, 1}, "c\td", "e\x1f\x7f g", "h\x01", "i\n"};
    CHECK(text_of(d) == "a\\nb:1:1: error: c\\td = e\\x1f\\x7f g: h\\x01\n    hint: i\\n\n");
    CHECK(text_of({Severity::error, "größer ~", {}, "", "", "r", "h"}) == "größer ~: error: r\n    hint: h\n");
}

TEST_CASE("no diagnostic goes without a hint") {
    static_assert(!std::is_constructible_v<Hint, const char(&)[1]>);  // an empty literal does not build
    static_assert(std::is_constructible_v<Hint, const char(&)[2]>);
    CHECK(Hint{}.text() == Hint::general);
    CHECK(Hint{std::string{}}.text() == Hint::general);
    CHECK(Hint{std::string{"write it"}} == "write it");
    const std::vector<std::string_view> names{"floor_area_m2", "temperature_c"};
    CHECK(did_you_mean("temperatur_c", names, "write a key") == "did you mean `temperature_c`?");
    CHECK(did_you_mean("colour", names, "write a key") == "write a key");
}

TEST_CASE("one error among warnings is an error") {
    const Diagnostic warning{Severity::warning, "", {}, "", "", "", {}}, error{Severity::error, "", {}, "", "", "", {}};
    CHECK_FALSE(has_error({}));
    CHECK_FALSE(has_error({warning, warning}));
    CHECK(has_error({warning, error}));
    CHECK(has_error({error, warning}));
}

TEST_CASE("names are near up to a third of the letters, and up to two of a short one") {
    const auto near = [](std::string_view wanted, std::string_view name) {
        return nearest_name(wanted, {name}) == name;
    };
    CHECK(near("abc", "abx"));
    CHECK(near("abc", "axx"));
    CHECK_FALSE(near("abc", "xxx"));
    CHECK(near("abcdefgh", "abcdefxx"));
    CHECK_FALSE(near("abcdefgh", "abcdexxx"));
    CHECK(near("abcdefghi", "xbcdxfghx"));        // three of nine
    CHECK_FALSE(near("abcdefghi", "xbxdxfghx"));  // four of nine
    CHECK(near("abcdefghijkl", "abcdefgh"));      // four letters fewer
    CHECK_FALSE(near("abcdefghijkl", "abcdefg"));
    CHECK(near("abcdefghijkl", "0123abcdefghijkl"));  // four letters more, in front
    CHECK_FALSE(near("abcdefghijkl", "01234abcdefghijkl"));
    CHECK(near("saturdayy", "sundayy"));     // two letters gone and one changed
    CHECK_FALSE(near("kitten", "sitting"));  // two letters changed and one added: three of six
    CHECK(near("aab", "b"));                 // two letters fewer
    CHECK_FALSE(near("aaab", "b"));
    CHECK(near("b", "aab"));
    CHECK_FALSE(near("b", "aaab"));
    CHECK(near("", "ab"));
    CHECK(near(std::string(200, 'a'), std::string(200, 'a')));
    CHECK_FALSE(near(std::string(201, 'a'), std::string(201, 'a')));
}

TEST_CASE("the nearest names are all that are equally near, in their order") {
    const std::vector<std::string_view> names{"flow_x", "flow_a", "flow", "flow_b", "glow"};
    CHECK(nearest_names("flow", names) == std::vector<std::string_view>{"flow"});
    CHECK(nearest_names("flow_c", names) == std::vector<std::string_view>{"flow_x", "flow_a", "flow_b"});
    CHECK(nearest_name("flow_c", names) == "flow_x");
    CHECK(nearest_names("plow", names) == std::vector<std::string_view>{"flow", "glow"});
    CHECK(nearest_names("pressure", names).empty());
}

TEST_CASE("a hint names up to four names") {
    CHECK(did_you_mean("pressure", {"flow"}).empty());
    CHECK(did_you_mean("flaw", {"flow"}) == "did you mean `flow`?");
    CHECK(did_you_mean("a1", {"a2", "a3"}) == "did you mean `a2` or `a3`?");
    CHECK(did_you_mean("a1", {"a2", "a3", "a4"}) == "did you mean `a2`, `a3` or `a4`?");
    CHECK(did_you_mean("a1", {"a2", "a3", "a4", "a5"}) == "did you mean `a2`, `a3`, `a4` or `a5`?");
    CHECK(did_you_mean("a1", {"a2", "a3", "a4", "a5", "a6"}) == "did you mean `a2`, `a3`, `a4` or `a5`?");
}

TEST_CASE("places are in the order of files, lines and columns") {
    CHECK(Place{9, 9, 0} < Place{1, 1, 1});
    CHECK(Place{1, 9, 1} < Place{2, 1, 1});
    CHECK(Place{2, 1, 1} < Place{2, 2, 1});
    CHECK(Place{2, 2, 1} == Place{2, 2, 1});
}
