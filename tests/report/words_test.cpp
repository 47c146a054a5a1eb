// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/words.hpp"

#include "support/catch.hpp"

using namespace loopfolio::report;

TEST_CASE("counts agree with their nouns") {
    CHECK(count_of(0, "pipe", "pipes") == "no pipes");
    CHECK(count_of(1, "pipe", "pipes") == "1 pipe");
    CHECK(count_of(1200, "pipe", "pipes") == "1,200 pipes");
}

TEST_CASE("lists read as English") {
    CHECK(list_of({}).empty());
    CHECK(list_of({"a"}) == "a");
    CHECK(list_of({"a", "b"}) == "a and b");
    CHECK(list_of({"a", "b", "c"}) == "a, b and c");
    CHECK(list_of({"a", "b", "c", "d"}, 2) == "a, b and 2 more");
}

TEST_CASE("dates are written out") {
    using namespace date;
    CHECK(date_text(2026_y / 10 / 14) == "14 October 2026");
    CHECK(date_text(2027_y / 1 / 1) == "1 January 2027");
}

TEST_CASE("no star survives that could be markup") {
    CHECK(plain("a ** b") == "a ' b");
    CHECK(plain("*a*") == "'a'");
    CHECK(plain("plain") == "plain");
}

TEST_CASE("comparisons are as people say them") {
    CHECK(times_as_much(0.3) == "about a quarter of");
    CHECK(times_as_much(1.0) == "about the same as");
    CHECK(times_as_much(2.0) == "about twice");
    CHECK(times_as_much(2.9) == "about 3 times");
}
