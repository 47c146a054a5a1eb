// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/base/number_text.hpp"

#include "support/catch.hpp"

#include <cmath>
#include <limits>

using namespace loopfolio;

TEST_CASE("numbers are rounded as a person rounds their decimals") {
    struct Row {
        double value;
        int decimals;
        const char* text;
    };
    const Row rows[] = {
        {0.125, 2, "0.13"},
        {2.675, 2, "2.68"},
        {0.5, 0, "1"},
        {1.5, 0, "2"},
        {9.995, 2, "10.00"},
        {999.5, 0, "1,000"},
        {1234567.0, 0, "1,234,567"},
        {-0.04, 1, "0.0"},
        {-3.25, 1, "\u22123.3"},
        {0.0, 3, "0.000"},
        {15835.0, 0, "15,835"},
        {1e-9, 3, "0.000"},
        {12.0, 2, "12.00"},
        {100000.0, 0, "100,000"},
        {99.95, 1, "100.0"},
        {0.999, 2, "1.00"},
        {1.4999, 0, "1"},
        {2.449, 1, "2.4"},
        {0.25, 3, "0.250"},
        {7.0, 1, "7.0"},
        {1234.5678, 2, "1,234.57"},
        {-1000.0, 0, "\u22121,000"},
        {999.0, 0, "999"},
        {1000.0, 0, "1,000"},
        {-0.5, 0, "\u22121"},
        {-0.4, 0, "0"},
        {1e-7, 8, "0.00000010"},
        {1e22, 0, "10,000,000,000,000,000,000,000"},
        {19.96, 1, "20.0"},
        {0.05, 1, "0.1"},
    };
    for (const auto& row : rows) CHECK(fixed(row.value, row.decimals) == row.text);
}

TEST_CASE("what is not finite prints as a dash, never as a word") {
    CHECK(fixed(std::numeric_limits<double>::quiet_NaN(), 1) == "\u2013");
    CHECK(fixed(std::numeric_limits<double>::infinity(), 1) == "\u2013");
    CHECK(significant(std::numeric_limits<double>::quiet_NaN(), 3) == "\u2013");
    CHECK(significant(-std::numeric_limits<double>::infinity(), 3) == "\u2013");
}

TEST_CASE("a unit follows its number behind a no-break space") {
    CHECK(text(1.42 * unit::kilowatt, unit::watt, 0) == "1,420\u00a0W");
    CHECK(text(Temperature::from_celsius(-3.2), unit::celsius, 1) == "\u22123.2\u00a0°C");
    CHECK(text(0.05, unit::percent, 0) == "5%");
}

TEST_CASE("significant figures") {
    CHECK(significant(0.067912, 3) == "0.0679");
    CHECK(significant(4181.1146, 5) == "4,181.1");
    CHECK(significant(0.0000123, 2) == "1.2 × 10^-5");
    CHECK(significant(-0.0000123, 3) == "\u22121.23 × 10^-5");
    CHECK(significant(0.000123, 2) == "0.00012");  // the fourth power is the smallest that is written out
    CHECK(significant(0.0, 4) == "0");
    CHECK(significant(123456.0, 3) == "123,456");  // digits before the point are never left out
    CHECK(significant(1.0, 4) == "1.000");
    CHECK(significant(99.0, 2) == "99");
    CHECK(significant(-12.345, 3) == "\u221212.3");
    CHECK(significant(0.000123456789, 9) == "0.000123457");  // at most nine decimals
}
