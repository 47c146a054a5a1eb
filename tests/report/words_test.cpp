// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/shared/phrases.hpp"

#include "report/pack_text.hpp"
#include "support/catch.hpp"
#include "texts/common.hpp"

using namespace loopfolio;
using namespace loopfolio::report;

namespace {

const templates::Texts& words = tests::default_look().texts;

// A text with a figure left out must not compile, whatever the warning flags.
template <class Text>
constexpr bool builds_whole = requires {
    Text{.before = "a", .item = "b"};
};
template <class Text>
constexpr bool builds_without_the_last = requires {
    Text{.before = "a"};
};
template <class Text>
constexpr bool builds_without_the_first = requires {
    Text{.item = "b"};
};
template <class Text>
constexpr bool builds_of_nothing = requires {
    Text{};
};
static_assert(builds_whole<texts::common::list_last>);
static_assert(!builds_without_the_last<texts::common::list_last>);
static_assert(!builds_without_the_first<texts::common::list_last>);
static_assert(!builds_of_nothing<texts::common::rooms>);

}  // namespace

TEST_CASE("counts agree with their nouns") {
    CHECK(words(texts::common::rooms{.count = 0}) == "no rooms");
    CHECK(words(texts::common::rooms{.count = 1}) == "1 room");
    CHECK(words(texts::common::rooms{.count = 1200}) == "1,200 rooms");
}

TEST_CASE("lists read as English") {
    CHECK(list_of(words, {}).empty());
    CHECK(list_of(words, {"a"}) == "a");
    CHECK(list_of(words, {"a", "b"}) == "a and b");
    CHECK(list_of(words, {"a", "b", "c"}) == "a, b and c");
    CHECK(list_of(words, {"a", "b", "c", "d"}, 2) == "a, b and 2 more");
}

TEST_CASE("dates are written out") {
    using namespace date;
    CHECK(date_text(words, 2026_y / 10 / 14) == "14 October 2026");
    CHECK(date_text(words, 2027_y / 1 / 1) == "1 January 2027");
}

TEST_CASE("no star survives that could be markup") {
    CHECK(plain("a ** b") == "a ' b");
    CHECK(plain("*a*") == "'a'");
    CHECK(plain("plain") == "plain");
}

TEST_CASE("comparisons are as people say them") {
    CHECK(times_as_much(words, 0.3) == "about a quarter of");
    CHECK(times_as_much(words, 1.0) == "about the same as");
    CHECK(times_as_much(words, 2.0) == "about twice");
    CHECK(times_as_much(words, 2.9) == "about 3 times");
}
