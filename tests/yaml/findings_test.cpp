// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/yaml/findings.hpp"

#include "support/catch.hpp"

#include <string>

using namespace loopfolio;
using namespace loopfolio::yaml;

namespace {

Diagnostic at(int line, int file = 0, Severity severity = Severity::error) {
    Diagnostic d;
    d.severity = severity;
    d.place = {line, 1, file};
    d.rule = "rule " + std::to_string(line);
    return d;
}

}  // namespace

TEST_CASE("a finding takes the name of its file, and findings are shown in the order of the files") {
    Findings findings{"job.yaml", {}, {"first.yaml", "second.csv"}};
    findings.add(at(3, 2));
    findings.add(at(9));
    findings.add(at(1, 1));
    findings.add(at(2));
    const auto list = shown(findings);
    REQUIRE(list.size() == 4);
    CHECK(list[0].rule == "rule 2");
    CHECK(list[0].file == "job.yaml");
    CHECK(list[1].rule == "rule 9");
    CHECK(list[2].file == "first.yaml");
    CHECK(list[3].file == "second.csv");
}

TEST_CASE("a hundred findings are shown, and the rest are counted") {
    const auto filled = [](std::size_t count, Severity last) {
        Findings findings{"job.yaml", {}};
        for (std::size_t i = 1; i <= count; ++i) {
            findings.add(at(static_cast<int>(i), 0, i > 100 ? last : Severity::error));
        }
        return shown(findings);
    };
    CHECK(filled(100, Severity::error).size() == 100);
    CHECK(filled(100, Severity::error).back().rule == "rule 100");
    const auto more = filled(103, Severity::warning);
    REQUIRE(more.size() == 101);
    CHECK(more[99].rule == "rule 100");
    CHECK(more[100].rule == "and 3 more");
    CHECK(more[100].hint == "put these right first, and read the file again");
    CHECK(more[100].file == "job.yaml");
    CHECK(more[100].severity == Severity::warning);
    CHECK(filled(101, Severity::error)[100].severity == Severity::error);
    CHECK(filled(101, Severity::error)[100].rule == "and 1 more");
    CHECK(filled(999, Severity::error)[100].rule == "and 899 more");
    CHECK(filled(1000, Severity::error)[100].rule == "and at least 900 more");
    CHECK(filled(1200, Severity::error)[100].rule == "and at least 900 more");  // what comes after is dropped
}

TEST_CASE("decimals are the shortest that read back, without an exponent where it can be avoided") {
    struct Row {
        double value;
        const char* text;
    };
    for (const auto& r : {Row{0.0, "0"},
                          {0.1, "0.1"},
                          {-12.5, "-12.5"},
                          {1e-6, "0.000001"},
                          {9e-7, "9e-07"},
                          {-9e-7, "-9e-07"},
                          {123456789012345.0, "123456789012345"},
                          {999999999999999.0, "999999999999999"},
                          {1e15, "1e+15"},
                          {-1e15, "-1e+15"}}) {
        CHECK(decimal(r.value) == r.text);
    }
}

TEST_CASE("names and places in words") {
    CHECK(words({12, 5}) == "line 12, column 5");
    CHECK(named("flow_c") == "`flow_c`");
    CHECK(listed({}).empty());
    CHECK(listed({"a"}) == "`a`");
    CHECK(listed({"a", "b"}) == "`a` or `b`");
    CHECK(listed({"a", "b", "c"}) == "`a`, `b` or `c`");
    CHECK(listed({"a", "b", "c", "d"}, "and") == "`a`, `b`, `c` and `d`");
}
