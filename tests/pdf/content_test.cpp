// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "pdf/content.hpp"

#include "support/catch.hpp"

#include <limits>
#include <stdexcept>

using namespace loopfolio;
using pdf::Content;
using pdf::FontFile;
using pdf::Encoded;

// The instructions are those of ISO 32000-1, tables 59 to 61, 74 and 105 to 109.

namespace {

layout::PathItem line(double y, double width = 1.0) {
    layout::PathItem item;
    item.points = {{10.0, y}, {90.5, y}};
    item.line_width = width;
    return item;
}

layout::TextItem text_at(double x, double y, double size = 10.0) {
    layout::TextItem item;
    item.baseline = {x, y};
    item.size = size;
    return item;
}

}  // namespace

TEST_CASE("a line is drawn from the bottom of the page upwards") {
    Content content{100.0};
    content.path(line(30.0));
    CHECK(content.finish() == "1 j\n10 70 m\n90.5 70 l\nS\n");
}

TEST_CASE("what is in force is not written again") {
    Content content{100.0};
    auto red = line(10.0, 0.25);
    red.stroke = {1.0, 0.0, 0.0};
    red.dashes = {3.0, 1.5};
    content.path(red);
    red.points[0].y = 20.0;
    content.path(red);
    CHECK(content.finish() == "1 0 0 RG\n0.25 w\n[3 1.5 ] 0 d\n1 j\n10 90 m\n90.5 90 l\nS\n10 80 m\n90.5 90 l\nS\n");
}

TEST_CASE("shapes are filled, stroked or both") {
    layout::PathItem triangle;
    triangle.points = {{0.0, 0.0}, {10.0, 0.0}, {0.0, 10.0}};
    triangle.closed = true;
    triangle.fill = {0.5, 0.5, 0.5};
    SECTION("filled") {
        triangle.filled = true;
        Content content{10.0};
        content.path(triangle);
        CHECK(content.finish() == "0.5 g\n0 10 m\n10 10 l\n0 0 l\nf\n");
    }
    SECTION("both") {
        triangle.filled = true;
        triangle.line_width = 2.0;
        Content content{10.0};
        content.path(triangle);
        CHECK(content.finish() == "0.5 g\n2 w\n0 10 m\n10 10 l\n0 0 l\nb\n");
    }
    SECTION("neither") {
        Content content{10.0};
        content.path(triangle);
        CHECK(content.finish().empty());
    }
}

TEST_CASE("an upright rectangle is one instruction, whichever way round") {
    layout::PathItem frame;
    frame.closed = true;
    frame.line_width = 1.0;
    for (const std::vector<layout::Point>& points :
         {std::vector<layout::Point>{{1.0, 2.0}, {4.0, 2.0}, {4.0, 7.5}, {1.0, 7.5}},
          std::vector<layout::Point>{{1.0, 2.0}, {1.0, 7.5}, {4.0, 7.5}, {4.0, 2.0}}}) {
        frame.points = points;
        Content content{10.0};
        content.path(frame);
        CHECK(content.finish() == "1 8 3 -5.5 re\ns\n");
    }
    frame.points[1].x = 1.5;
    Content content{10.0};
    content.path(frame);
    CHECK(content.finish() == "1 8 m\n1.5 2.5 l\n4 2.5 l\n4 8 l\ns\n");
}

TEST_CASE("texts share a text object, a font and a colour while they last") {
    Content content{100.0};
    using namespace std::string_literals;
    content.text(text_at(10.0, 20.0), {"\0\1\0\2"s, {{FontFile::regular, 4}}});
    content.text(text_at(10.0, 32.0), {"\0\3\0\1"s, {{FontFile::regular, 2}, {FontFile::fallback, 4}}});
    content.path(line(40.0));
    content.text(text_at(10.0, 50.0), {"\0\2"s, {{FontFile::fallback, 2}}});
    CHECK(content.finish() ==
          "BT\n10 80 Td\n/F0 10 Tf\n(\0\1\0\2)Tj\n"
          "0 -12 Td\n(\0\3)Tj\n/F3 10 Tf\n(\0\1)Tj\nET\n"
          "1 j\n10 60 m\n90.5 60 l\nS\nBT\n10 50 Td\n(\0\2)Tj\nET\n"s);
}

TEST_CASE("marks and text objects nest") {
    using namespace std::string_literals;
    Content content{100.0};
    const Encoded word{"ab", {{FontFile::regular, 2}}};
    content.begin_mark("P", 0, true);
    content.text(text_at(10.0, 20.0), word);
    content.end_mark();
    content.begin_artifact(true);
    content.text(text_at(10.0, 30.0), word);
    content.end_mark();
    content.begin_mark("Figure", 1, false);
    content.path(line(40.0));
    content.text(text_at(10.0, 50.0), word);
    content.end_mark();
    CHECK(content.finish() ==
          "BT\n/P<</MCID 0>>BDC\n10 80 Td\n/F0 10 Tf\n(ab)Tj\nEMC\n"
          "/Artifact BMC\n0 -10 Td\n(ab)Tj\nEMC\nET\n"
          "/Figure<</MCID 1>>BDC\n1 j\n10 60 m\n90.5 60 l\nS\n"
          "BT\n10 50 Td\n(ab)Tj\nET\nEMC\n"s);
}

TEST_CASE("an image fills its box") {
    Content content{100.0};
    content.image({10.0, 20.0, 40.5, 60.0}, "I3");
    CHECK(content.finish() == "q\n30.5 0 0 40 10 40 cm\n/I3 Do\nQ\n");
}

TEST_CASE("rounded places do not drift along a page") {
    Content content{0.0};
    for (int i = 1; i <= 1000; ++i) content.text(text_at(i * 0.333, 0.0), {"ab", {{FontFile::regular, 2}}});
    const std::string out = content.finish();
    double x = 0.0;
    for (std::size_t at = 0; (at = out.find("Tj\n", at)) != std::string::npos; at += 3) {
        const std::size_t begin = out.rfind('\n', out.rfind(" Td", at)) + 1;
        x += std::stod(out.substr(begin));
    }
    CHECK(x == Approx(333.0).margin(0.005));
}

TEST_CASE("a drawing that cannot be placed is refused") {
    using Limits = std::numeric_limits<double>;
    for (const double y : {Limits::quiet_NaN(), Limits::infinity(), 1e9}) {
        Content content{100.0};
        CHECK_THROWS_AS(content.path(line(y)), std::runtime_error);
    }
}
